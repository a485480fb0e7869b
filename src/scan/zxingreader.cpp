#include "scan/symbolreader.h"

#include <algorithm>
#include <limits>
#include <string_view>

#include <QImage>
#include <QPainter>
#include <QTransform>

#include "scan/abortguard.h"
#include "scan/databartext.h"
#include "scan/luminance.h"
#include "scan/plausible.h"

// The engine's face changed from 1.4 to 2 to 3; all that knows of it is in this file.
#if __has_include(<ZXing/ReaderOptions.h>)
#include <ZXing/ReadBarcode.h>
#include <ZXing/ReaderOptions.h>
#else
#define ZX_USE_UTF8
#include <ZXing/DecodeHints.h>
#include <ZXing/ReadBarcode.h>
#endif
#if __has_include(<ZXing/Version.h>)
#include <ZXing/Version.h>
#else
#include <ZXing/ZXVersion.h>
#endif

namespace gw {

namespace {

#if ZXING_VERSION_MAJOR >= 2
using Options = ZXing::ReaderOptions;
#else
using Options = ZXing::DecodeHints;
#endif

/// What is asked of the engine at a time. Bar codes are asked for one by one: 1.4 compares those it finds and
/// fails an assertion when two say the same, as on a shelf of equal bottles. The weak ones go apart, lest
/// they stand before a better one.
enum class Question { Squares, DataMatrixAlone, Bars, WeakBars, DataBars };

Options optionsFor(Question question, Effort effort)
{
    using enum ZXing::BarcodeFormat;
    Options options;
    switch (question) {
    case Question::Squares:
        options.setFormats(DataMatrix | QRCode);
        options.setMaxNumberOfSymbols(16);
        break;
    case Question::DataMatrixAlone:
        options.setFormats(DataMatrix);
        options.setMaxNumberOfSymbols(1);
        break;
    case Question::Bars:
        options.setFormats(EAN13 | UPCA | Code128);
        options.setMaxNumberOfSymbols(1);
        break;
    case Question::WeakBars:
        options.setFormats(EAN8 | UPCE | ITF);
        options.setMaxNumberOfSymbols(1);
        break;
    case Question::DataBars:
#if ZXING_VERSION_MAJOR >= 3
        options.setFormats(DataBar);
#else
        options.setFormats(DataBar | DataBarExpanded);
#endif
        options.setMaxNumberOfSymbols(1);
        break;
    }
#if ZXING_VERSION_MAJOR >= 2
    // The default there is for people to read: brackets in place of group separators.
    options.setTextMode(ZXing::TextMode::Plain);
    options.setTryInvert(false); // a look of its own
#endif
    options.setTryHarder(true);
    options.setTryRotate(true);
    // Its own way of it compares what it finds, see above; done here instead.
    options.setTryDownscale(false);
    // A picture is looked at once, so a reading must be borne out by more of it. DataBar is weighed by the
    // engine itself, and a second line of it fails an assertion in 1.4.
    options.setMinLineCount(question == Question::DataBars ? 1 : (effort == Effort::Picture ? 3 : 2));
    return options;
}

/// The trade's name of a symbology. Named after the identifier of ISO/IEC 15424, which is the same in every
/// version.
std::string formatName(const std::string& identifier, ZXing::BarcodeFormat format)
{
    const char family = identifier.size() > 1 ? identifier[1] : ' ';
    switch (family) {
    case 'C':
        return "Code 128";
    case 'd':
        return "Data Matrix";
    case 'Q':
        return "QR Code";
    case 'I':
        return "ITF";
    case 'e':
        return std::string_view(ZXing::ToString(format)).find("Exp") == std::string_view::npos
            ? "DataBar"
            : "DataBar Expanded";
    default:
        break;
    }
    switch (format) {
    case ZXing::BarcodeFormat::EAN8:
        return "EAN-8";
    case ZXing::BarcodeFormat::UPCA:
        return "UPC-A";
    case ZXing::BarcodeFormat::UPCE:
        return "UPC-E";
    default:
        return "EAN-13";
    }
}

/// What the symbol prints and its symbology transmits, whatever the engine's version makes of it.
std::string messageText(std::string text, const std::string& format)
{
    if (format == "UPC-A" && text.size() == 13 && text.front() == '0')
        return text.substr(1);
    if (format.starts_with("DataBar"))
        return dataBarElementString(text);
    return text;
}

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
        const auto* a = picture.data + y * shrinkBy * picture.stride;
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

class ZxingReader final : public SymbolReader {
public:
    explicit ZxingReader(Effort effort)
        : m_squares(optionsFor(Question::Squares, effort))
        , m_dataMatrix(optionsFor(Question::DataMatrixAlone, effort))
        , m_bars(optionsFor(Question::Bars, effort))
        , m_weakBars(optionsFor(Question::WeakBars, effort))
        , m_dataBars(optionsFor(Question::DataBars, effort))
        , m_effort(effort)
    {
    }

    std::string name() const override
    {
        return "zxing-cpp " + std::to_string(ZXING_VERSION_MAJOR) + '.' + std::to_string(ZXING_VERSION_MINOR)
            + '.' + std::to_string(ZXING_VERSION_PATCH);
    }

    std::vector<Symbol> read(const LuminanceView& picture) override
    {
        constexpr int widest = std::numeric_limits<std::int16_t>::max();
        if (!picture.data || picture.width < 1 || picture.height < 1 || picture.width > widest
            || picture.height > widest)
            return {};
        auto symbols = lookFor(picture);
        Luminance smaller;
        LuminanceView view = picture;
        double scale = 1;
        while (std::min(view.width, view.height) >= shrinkFrom) {
            smaller = shrunk(view);
            view = smaller.view();
            scale *= shrinkBy;
            auto more = lookFor(view);
            for (Symbol& symbol : more)
                symbol.outline = QTransform::fromScale(scale, scale).map(symbol.outline);
            addUnseen(symbols, std::move(more));
        }
        return symbols;
    }

private:
    std::vector<Symbol> lookFor(const LuminanceView& view)
    {
        auto symbols = ask(view, m_squares);
        addOffCentre(symbols, view);
        QImage rest;
        addBars(symbols, view, rest, m_bars);
        addBars(symbols, view, rest, m_weakBars);
        if (m_effort == Effort::Picture) {
            // Seen on loose food and coupons, hardly on what a workshop buys: not worth a frame's time.
            addBars(symbols, view, rest, m_dataBars);
        }
        return symbols;
    }

    /// Where the engine is built without coroutines, as 1.4 is in Debian 12, it finds a Data Matrix only on
    /// the middle row of what it is given. So it is given parts whose middle rows are spread over the
    /// picture: a picture all of them until one shows, frames one each in turn.
    void addOffCentre(std::vector<Symbol>& symbols, const LuminanceView& view)
    {
        const bool all = m_effort == Effort::Picture;
        const auto known = symbols.size();
        for (int i = 0; i < (all ? offCentreRows : 1) && symbols.size() == known; ++i) {
            const int turn = all ? i : m_turn++ % offCentreRows;
            // From the middle outwards, above and below by turns.
            const int away = (turn / 2 + 1) * view.height / (offCentreRows + 2);
            const int height = view.height - 2 * away;
            const int top = turn % 2 == 0 ? 2 * away : 0;
            if (height < 16)
                continue;
            auto found
                = ask({ view.data + top * view.stride, view.width, height, view.stride }, m_dataMatrix);
            for (Symbol& symbol : found)
                symbol.outline.translate(0, top);
            addUnseen(symbols, std::move(found));
        }
    }

    /// One bar code after the other: each is painted over in a copy of the picture, and the rest looked at
    /// again.
    void addBars(
        std::vector<Symbol>& symbols, const LuminanceView& view, QImage& rest, const Options& options)
    {
        const int most = m_effort == Effort::Picture ? 8 : 1;
        for (int i = 0; i < most; ++i) {
            auto found = ask(rest.isNull() ? view : viewOf(rest), options);
            if (found.empty())
                return;
            const QPolygonF outline = found.front().outline;
            addUnseen(symbols, std::move(found));
            if (m_effort == Effort::Frame)
                return;
            if (rest.isNull())
                rest = QImage(view.data, view.width, view.height, view.stride, QImage::Format_Grayscale8)
                           .copy();
            QPainter painter(&rest);
            // A stroke as well: the outline may be a mere line.
            painter.setPen(QPen(Qt::white, 9));
            painter.setBrush(Qt::white);
            painter.drawPolygon(outline);
        }
    }

    static LuminanceView viewOf(const QImage& grey)
    {
        return { grey.constBits(), grey.width(), grey.height(), grey.bytesPerLine() };
    }

    /// One question, whatever becomes of it. The engine signals broken symbols by throwing, and now and then
    /// lets one out; distributions build it with its assertions on, and a bent QR Code can fail them (1.4
    /// and 2.3 alike).
    std::vector<Symbol> ask(const LuminanceView& view, const Options& options) const
    {
        std::vector<Symbol> symbols;
        auto work = [this, &view, &options, &symbols]() noexcept {
            try {
                symbols = find(view, options);
            } catch (...) {
                symbols.clear();
            }
        };
        if (!survivesAbort(work))
            return {};
        return symbols;
    }

    std::vector<Symbol> find(const LuminanceView& picture, const Options& options) const
    {
        const ZXing::ImageView view(picture.data, picture.width, picture.height, ZXing::ImageFormat::Lum,
            static_cast<int>(picture.stride));
        std::vector<Symbol> symbols;
        for (const auto& found : ZXing::ReadBarcodes(view, options)) {
            if (!found.isValid())
                continue;
            Symbol symbol;
            symbol.symbology = found.symbologyIdentifier();
            symbol.format = formatName(symbol.symbology, found.format());
            symbol.text = messageText(found.text(), symbol.format);
            if (symbol.text.empty())
                continue;
            symbol.engine = name();
            for (const auto& corner : found.position())
                symbol.outline.append(QPointF(corner.x, corner.y));
            symbols.push_back(std::move(symbol));
        }
        return symbols;
    }

    Options m_squares;
    Options m_dataMatrix;
    Options m_bars;
    Options m_weakBars;
    Options m_dataBars;
    Effort m_effort;
    int m_turn = 0;
};

} // namespace

std::unique_ptr<SymbolReader> makeZxingReader(Effort effort) { return std::make_unique<ZxingReader>(effort); }

} // namespace gw
