#include "scan/looks.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <QPainter>
#include <QTransform>

#include "scan/plausible.h"

namespace gw {

namespace {

/// Looks beyond the first are at no more than this; a symbol that takes more would have been seen in the
/// first.
constexpr double mostPixelsAgain = 4'000'000;

/// Angles that, with the quarter turn a reader tries by itself, leave no bar code more than six degrees off.
constexpr std::array angles { 45.0, 22.5, 67.5, 11.25, 33.75, 56.25, 78.75 };
/// Of these, enough for a symbol that is not long.
constexpr std::size_t coarseAngles = 3;

/// A copy of a picture in which a reader may see what it does not see in the picture itself. All are
/// Grayscale8.
struct Look {
    QImage picture;
    QTransform back; ///< from its pixels to those of the picture it was made from
};

enum class Sought { Everything, Bars };

std::vector<Symbol> lookAt(const Look& look, SymbolReader& reader, Sought sought = Sought::Everything)
{
    if (look.picture.isNull())
        return {};
    const LuminanceView view { look.picture.constBits(), look.picture.width(), look.picture.height(),
        look.picture.bytesPerLine() };
    auto symbols = sought == Sought::Bars ? reader.readBars(view) : reader.read(view);
    for (Symbol& symbol : symbols)
        symbol.outline = look.back.map(symbol.outline);
    dropContradicted(symbols);
    return symbols;
}

/// A coarse map of the light: the brightest of each block, which is paper where there is any, and what lies
/// between the middles of blocks in proportion.
class Light {
public:
    explicit Light(const QImage& grey)
        : m_block(std::max(16, std::min(grey.width(), grey.height()) / 16))
        , m_columns((grey.width() + m_block - 1) / m_block)
        , m_rows((grey.height() + m_block - 1) / m_block)
        , m_brightest(static_cast<std::size_t>(m_columns) * static_cast<std::size_t>(m_rows))
        , m_across(static_cast<std::size_t>(m_columns))
    {
        m_places.reserve(static_cast<std::size_t>(grey.width()));
        for (int x = 0; x < grey.width(); ++x)
            m_places.push_back(between(x, m_columns));
        for (int y = 0; y < grey.height(); ++y) {
            const uchar* from = grey.constScanLine(y);
            for (int column = 0; column < m_columns; ++column) {
                const uchar* start = from + std::ptrdiff_t { column } * m_block;
                const uchar* end = from
                    + std::min(std::ptrdiff_t { grey.width() }, std::ptrdiff_t { column + 1 } * m_block);
                int& brightest = at(column, y / m_block);
                brightest = std::max(brightest, int(*std::max_element(start, end)));
            }
        }
    }

    /// To be called before the pixels of a row.
    void goToRow(int y)
    {
        const auto [above, below, share] = between(y, m_rows);
        for (int column = 0; column < m_columns; ++column)
            m_across[static_cast<std::size_t>(column)]
                = (at(column, above) * (256 - share) + at(column, below) * share) >> 8;
    }
    int atPixel(int x) const
    {
        const auto [left, right, share] = m_places[static_cast<std::size_t>(x)];
        return (m_across[static_cast<std::size_t>(left)] * (256 - share)
                   + m_across[static_cast<std::size_t>(right)] * share)
            >> 8;
    }

private:
    struct Between {
        int before;
        int after;
        int share; ///< of the one after, in 256ths
    };
    Between between(int pixel, int blocks) const
    {
        const int fromFirstMiddle = std::max(0, pixel - m_block / 2);
        const int before = std::min(blocks - 1, fromFirstMiddle / m_block);
        return { before, std::min(blocks - 1, before + 1), fromFirstMiddle % m_block * 256 / m_block };
    }
    int& at(int column, int row)
    {
        return m_brightest[static_cast<std::size_t>(row) * static_cast<std::size_t>(m_columns)
            + static_cast<std::size_t>(column)];
    }

    int m_block;
    int m_columns;
    int m_rows;
    std::vector<int> m_brightest;
    std::vector<int> m_across;
    std::vector<Between> m_places; ///< of each pixel of a row
};

using Row = std::array<uchar, 256>;

/// By the light that falls somewhere and the brightness there: how much of the light the surface throws back,
/// 255 for all. Light under 16 is darkness, in which noise would be all there is.
const std::array<Row, 256>& sharesOfLight()
{
    static const auto table = [] {
        std::array<Row, 256> shares {};
        for (int light = 0; light < 256; ++light)
            for (int value = 0; value < 256; ++value)
                shares[static_cast<std::size_t>(light)][static_cast<std::size_t>(value)]
                    = static_cast<uchar>(std::min(255, value * 255 / std::max(16, light)));
        return shares;
    }();
    return table;
}

/// The brightness that a share of the pixels stays below.
int quantile(const std::array<qint64, 256>& counts, qint64 pixels, double share)
{
    qint64 below = 0;
    for (int value = 0; value < 256; ++value) {
        below += counts[static_cast<std::size_t>(value)];
        if (static_cast<double>(below) >= share * static_cast<double>(pixels))
            return value;
    }
    return 255;
}

Look scaled(const QImage& grey, double by)
{
    const QSize size = (QSizeF(grey.size()) * by).toSize().expandedTo(QSize(1, 1));
    return { grey.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation),
        QTransform::fromScale(1 / by, 1 / by) };
}

/// With paper in the corners that a turn leaves bare.
Look turned(const QImage& grey, double degrees)
{
    const QTransform whole = QImage::trueMatrix(QTransform().rotate(degrees), grey.width(), grey.height());
    QImage copy(whole.mapRect(grey.rect()).size().expandedTo(QSize(1, 1)), QImage::Format_Grayscale8);
    if (copy.isNull())
        return {};
    copy.fill(255);
    QPainter painter(&copy);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(whole);
    painter.drawImage(0, 0, grey);
    painter.end();
    return { copy, whole.inverted() };
}

Look inverted(const QImage& grey)
{
    QImage copy = grey;
    copy.invertPixels();
    return { copy, {} };
}

/// Grain goes, bars wider than two pixels stay.
Look smoothed(const QImage& grey)
{
    return { scaled(grey, 0.5).picture.scaled(grey.size(), Qt::IgnoreAspectRatio, Qt::SmoothTransformation),
        {} };
}

/// With a margin of paper, for a picture that was cropped to the symbol.
Look framed(const QImage& grey)
{
    constexpr int margin = 20;
    QImage copy(grey.size() + QSize(2 * margin, 2 * margin), QImage::Format_Grayscale8);
    if (copy.isNull())
        return {};
    copy.fill(255);
    QPainter(&copy).drawImage(margin, margin, grey);
    return { copy, QTransform::fromTranslate(-margin, -margin) };
}

/// Light falling off across the picture is evened out and what contrast there is is spread: the darkest
/// hundredth becomes black, the lightest white.
Look levelled(const QImage& grey)
{
    QImage copy = grey.copy();
    if (copy.isNull())
        return {};
    Light light(grey);
    const auto& shares = sharesOfLight();
    std::array<qint64, 256> counts {};
    for (int y = 0; y < copy.height(); ++y) {
        uchar* to = copy.scanLine(y);
        light.goToRow(y);
        for (int x = 0; x < copy.width(); ++x) {
            to[x] = shares[static_cast<std::size_t>(light.atPixel(x))][to[x]];
            ++counts[to[x]];
        }
    }
    const qint64 pixels = qint64(copy.width()) * copy.height();
    const int black = quantile(counts, pixels, 0.01);
    const int white = std::max(black + 1, quantile(counts, pixels, 0.99));
    Row spread {};
    for (int value = 0; value < 256; ++value)
        spread[static_cast<std::size_t>(value)]
            = static_cast<uchar>(std::clamp((value - black) * 255 / (white - black), 0, 255));
    for (int y = 0; y < copy.height(); ++y) {
        uchar* to = copy.scanLine(y);
        for (int x = 0; x < copy.width(); ++x)
            to[x] = spread[to[x]];
    }
    return { copy, {} };
}

/// Looks again, at other angles, round about each weak bar code: the longer one that it may be a part of
/// shows there.
void checkWeak(
    std::vector<Symbol>& found, const QImage& grey, SymbolReader& reader, std::size_t howManyAngles)
{
    const std::vector<Symbol> before = found;
    for (const Symbol& weak : before) {
        if (!isWeak(weak))
            continue;
        const QRect box = weak.outline.boundingRect().toAlignedRect();
        const int room = std::max(box.width(), box.height()) * 5 / 4 + 8;
        const QRect around = box.adjusted(-room, -room, room, room).intersected(grey.rect());
        const QImage part = grey.copy(around);
        for (std::size_t i = 0; i < howManyAngles; ++i) {
            Look look = turned(part, angles[i]);
            look.back *= QTransform::fromTranslate(around.x(), around.y());
            addUnseen(found, lookAt(look, reader, Sought::Bars));
        }
    }
    dropContradicted(found);
}

} // namespace

std::vector<Symbol> findSymbols(const QImage& picture, SymbolReader& reader)
{
    const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    if (grey.isNull())
        return {};
    std::vector<Symbol> found = lookAt({ grey, {} }, reader);

    const double pixels = double(grey.width()) * grey.height();
    const Look base
        = pixels > mostPixelsAgain ? scaled(grey, std::sqrt(mostPixelsAgain / pixels)) : Look { grey, {} };
    const int shorter = std::min(base.picture.width(), base.picture.height());
    const auto again = [&](Look look, Sought sought = Sought::Everything) {
        look.back *= base.back;
        found = lookAt(look, reader, sought);
    };

    if (found.empty()) {
        const Look wider = framed(base.picture);
        Look look = levelled(wider.picture);
        look.back = wider.back;
        again(std::move(look));
    }
    if (found.empty() && shorter >= 200)
        again(scaled(base.picture, 0.5));
    if (found.empty() && pixels <= 1'500'000)
        again(scaled(base.picture, 2));
    for (std::size_t i = 0; i < angles.size() && found.empty(); ++i)
        // A square code seen from the side sometimes shows at another angle; the finer ones are for long bar
        // codes.
        again(turned(base.picture, angles[i]), i < coarseAngles ? Sought::Everything : Sought::Bars);
    if (found.empty())
        again(inverted(base.picture));
    if (found.empty() && shorter >= 100)
        again(smoothed(base.picture));
    checkWeak(found, grey, reader, angles.size());
    return found;
}

std::vector<Symbol> findInFrame(const LuminanceView& frame, qint64 number, SymbolReader& reader)
{
    const QImage grey(frame.data, frame.width, frame.height, frame.stride, QImage::Format_Grayscale8);
    if (grey.isNull())
        return {};
    const Look look = number % 2 == 0 ? Look { grey, {} } : levelled(grey);
    auto found = lookAt(look, reader);
    checkWeak(found, look.picture, reader, coarseAngles);
    return found;
}

} // namespace gw
