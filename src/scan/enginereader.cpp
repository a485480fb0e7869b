#include "scan/engine.h"

#include <algorithm>
#include <array>
#include <limits>

#include <QImage>
#include <QPainter>
#include <QTransform>

#include "scan/luminance.h"
#include "scan/plausible.h"

namespace gw {

namespace {

/// Pictures with a shorter side from this on are looked at in a smaller size too: large symbols, and grainy
/// ones, are found there.
constexpr int shrinkFrom = 500;
constexpr int shrinkBy = 3;

/// Every pixel the mean of nine.
Luminance shrunk(const LuminanceView& picture)
{
    Luminance small;
    small.width = picture.width / shrinkBy;
    small.height = picture.height / shrinkBy;
    small.bytes.resize(static_cast<std::size_t>(small.width) * static_cast<std::size_t>(small.height));
    auto* to = small.bytes.data();
    for (int y = 0; y < small.height; ++y) {
        const auto* a = picture.data + qsizetype { y } * shrinkBy * picture.stride;
        const auto* b = a + picture.stride;
        const auto* c = b + picture.stride;
        for (int x = 0; x < small.width; ++x, a += shrinkBy, b += shrinkBy, c += shrinkBy)
            *to++ = static_cast<std::uint8_t>(
                (a[0] + a[1] + a[2] + b[0] + b[1] + b[2] + c[0] + c[1] + c[2]) / 9);
    }
    return small;
}

/// An even number: so many rows beside the middle one.
constexpr int offCentreRows = 14;

/// The first engine looks at every size of the picture; where it sees nothing the others are asked about
/// pictures, and in frames about the likely parts alone.
class EngineReader final : public SymbolReader {
public:
    EngineReader(Effort effort, std::vector<std::unique_ptr<Engine>> engines)
        : m_engines(std::move(engines))
        , m_effort(effort)
    {
        std::erase(m_engines, nullptr);
    }

    std::string name() const override
    {
        std::string names;
        for (const auto& engine : m_engines)
            names += (names.empty() ? "" : ", ") + engine->name();
        return names;
    }

    std::vector<Symbol> read(const LuminanceView& picture) override
    {
        ++m_turn;
        return firstThenOthers(picture, { Question::Bars, Question::Squares, Question::WeakBars },
            [this](const LuminanceView& view) {
                auto symbols = first().ask(view, Question::Squares);
                addOffCentre(symbols, view);
                addAllBars(symbols, view);
                return symbols;
            });
    }

    std::vector<Symbol> readBars(const LuminanceView& picture) override
    {
        return firstThenOthers(
            picture, { Question::Bars, Question::WeakBars }, [this](const LuminanceView& view) {
                std::vector<Symbol> symbols;
                addAllBars(symbols, view);
                return symbols;
            });
    }

    std::vector<Symbol> readByEach(const LuminanceView& picture, Sought sought) override
    {
        static constexpr std::array squares { Question::Squares, Question::DataMatrixAlone };
        static constexpr std::array bars { Question::Bars, Question::WeakBars, Question::DataBars };
        std::vector<Symbol> symbols;
        if (!isReadable(picture))
            return symbols;
        const auto ask = [&](Engine& engine, Question question) {
            for (Symbol& symbol : engine.ask(picture, question))
                symbols.push_back(std::move(symbol));
        };
        for (const auto& engine : m_engines) {
            if (sought != Sought::Bars)
                for (const Question question : squares)
                    ask(*engine, question);
            if (sought != Sought::Squares)
                for (const Question question : bars)
                    ask(*engine, question);
        }
        return symbols;
    }

private:
    bool isReadable(const LuminanceView& picture) const
    {
        constexpr int widest = std::numeric_limits<std::int16_t>::max();
        return !m_engines.empty() && picture.data && picture.width >= 1 && picture.height >= 1
            && picture.width <= widest && picture.height <= widest;
    }

    Engine& first() { return *m_engines.front(); }

    template <class ReadOne>
    std::vector<Symbol> firstThenOthers(
        const LuminanceView& picture, std::initializer_list<Question> questions, ReadOne readOne)
    {
        if (!isReadable(picture))
            return {};
        auto symbols = readLevels(picture, readOne);
        // A whole frame would take the others longer than there is.
        const auto asked = m_effort == Effort::Picture ? m_engines.size() : 1;
        for (std::size_t i = 1; i < asked && symbols.empty(); ++i)
            for (const Question question : questions)
                addUnseen(symbols, m_engines[i]->ask(picture, question));
        return symbols;
    }

    /// The picture, and smaller ones of it.
    template <class ReadOne>
    static std::vector<Symbol> readLevels(const LuminanceView& picture, ReadOne readOne)
    {
        std::vector<Symbol> symbols = readOne(picture);
        Luminance smaller;
        LuminanceView view = picture;
        double scale = 1;
        while (std::min(view.width, view.height) >= shrinkFrom) {
            smaller = shrunk(view);
            view = smaller.view();
            scale *= shrinkBy;
            auto more = readOne(view);
            for (Symbol& symbol : more)
                symbol.outline = QTransform::fromScale(scale, scale).map(symbol.outline);
            addUnseen(symbols, std::move(more));
        }
        return symbols;
    }

    void addAllBars(std::vector<Symbol>& symbols, const LuminanceView& view)
    {
        QImage rest;
        addBars(symbols, view, rest, Question::Bars);
        addBars(symbols, view, rest, Question::WeakBars);
        // Seen on loose food and coupons, hardly on what a workshop buys: not worth a frame's time.
        if (m_effort == Effort::Picture)
            addBars(symbols, view, rest, Question::DataBars);
    }

    /// Where the engine is built without coroutines, as 1.4 is in Debian 12, it finds a Data Matrix only on
    /// the middle row of what it is given. So it is given parts whose middle rows are spread over the
    /// picture: a picture all of them until one shows, frames one each in turn.
    void addOffCentre(std::vector<Symbol>& symbols, const LuminanceView& view)
    {
        const bool all = m_effort == Effort::Picture;
        const auto known = symbols.size();
        for (int i = 0; i < (all ? offCentreRows : 1) && symbols.size() == known; ++i) {
            const int turn = all ? i : m_turn % offCentreRows;
            // From the middle outwards, above and below by turns.
            const int away = (turn / 2 + 1) * view.height / (offCentreRows + 2);
            const int height = view.height - 2 * away;
            const int top = turn % 2 == 0 ? 2 * away : 0;
            if (height < 16)
                continue;
            auto found = first().ask({ view.data + top * view.stride, view.width, height, view.stride },
                Question::DataMatrixAlone);
            for (Symbol& symbol : found)
                symbol.outline.translate(0, top);
            addUnseen(symbols, std::move(found));
        }
    }

    /// One bar code after the other: each is painted over in a copy of the picture, and the rest looked at
    /// again.
    void addBars(std::vector<Symbol>& symbols, const LuminanceView& view, QImage& rest, Question question)
    {
        const int most = m_effort == Effort::Picture ? 8 : 1;
        for (int i = 0; i < most; ++i) {
            auto found = first().ask(rest.isNull() ? view : viewOf(rest), question);
            if (found.empty())
                return;
            const QPolygonF outline = found.front().outline;
            addUnseen(symbols, std::move(found));
            if (m_effort == Effort::Frame)
                return;
            if (rest.isNull())
                rest = QImage(view.data, view.width, view.height, view.stride, QImage::Format_Grayscale8)
                           .copy();
            QPainter(&rest).fillRect(wholeBarCode(outline), Qt::white);
        }
    }

    /// The engine outlines no more of a bar code than the few lines it needed: it is taken to reach a quarter
    /// of its length beyond them on either side.
    static QRectF wholeBarCode(const QPolygonF& outline)
    {
        const QRectF lines = outline.boundingRect();
        const double more = std::max(lines.width(), lines.height()) / 4 + 4;
        return lines.width() >= lines.height() ? lines.adjusted(-4, -more, 4, more)
                                               : lines.adjusted(-more, -4, more, 4);
    }

    static LuminanceView viewOf(const QImage& grey)
    {
        return { grey.constBits(), grey.width(), grey.height(), grey.bytesPerLine() };
    }

    std::vector<std::unique_ptr<Engine>> m_engines;
    Effort m_effort;
    int m_turn = 0;
};

} // namespace

std::unique_ptr<SymbolReader> makeReader(Effort effort, std::vector<std::unique_ptr<Engine>> engines)
{
    return std::make_unique<EngineReader>(effort, std::move(engines));
}

std::unique_ptr<SymbolReader> makeReader(Effort effort)
{
    std::vector<std::unique_ptr<Engine>> engines;
    engines.push_back(makeZxingEngine(effort));
    engines.push_back(makeQzxingEngine());
    engines.push_back(makeZbarEngine(effort));
    return makeReader(effort, std::move(engines));
}

std::string engineNames()
{
    return makeReader(Effort::Frame)->name() + (makeQzxingEngine() ? "" : " (built without QZXing)");
}

} // namespace gw
