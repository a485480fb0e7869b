#include "scan/look.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

#include <QPainter>

namespace gw {

namespace {

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

} // namespace

Look scaledLook(const QImage& grey, double by)
{
    const QSize size = (QSizeF(grey.size()) * by).toSize().expandedTo(QSize(1, 1));
    return { grey.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation),
        QTransform::fromScale(1 / by, 1 / by) };
}

Look turnedLook(const QImage& grey, double degrees)
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

Look invertedLook(const QImage& grey)
{
    QImage copy = grey;
    copy.invertPixels();
    return { copy, {} };
}

Look smoothedLook(const QImage& grey)
{
    return {
        scaledLook(grey, 0.5).picture.scaled(grey.size(), Qt::IgnoreAspectRatio, Qt::SmoothTransformation), {}
    };
}

Look framedLook(const QImage& grey)
{
    constexpr int margin = 20;
    QImage copy(grey.size() + QSize(2 * margin, 2 * margin), QImage::Format_Grayscale8);
    if (copy.isNull())
        return {};
    copy.fill(255);
    QPainter(&copy).drawImage(margin, margin, grey);
    return { copy, QTransform::fromTranslate(-margin, -margin) };
}

Look levelledLook(const QImage& grey)
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

/// By the gradients, their angle doubled so that light to dark and dark to light count alike.
double turnToUpright(const QImage& grey)
{
    double same = 0;
    double cross = 0;
    for (int y = 1; y + 1 < grey.height(); ++y) {
        const uchar* above = grey.constScanLine(y - 1);
        const uchar* row = grey.constScanLine(y);
        const uchar* below = grey.constScanLine(y + 1);
        for (int x = 1; x + 1 < grey.width(); ++x) {
            const int dx = row[x + 1] - row[x - 1];
            const int dy = below[x] - above[x];
            same += dx * dx - dy * dy;
            cross += 2 * dx * dy;
        }
    }
    constexpr double degrees = 57.29577951308232;
    return -std::atan2(cross, same) / 2 * degrees;
}

} // namespace gw
