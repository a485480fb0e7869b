#include "scan/closelook.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <QPainter>

namespace gw {

namespace {

/// Room on either side, as a share of the region: quiet zones have no edges.
constexpr double room = 0.2;
constexpr double roomAtLeast = 10; ///< pixels

using Weights = std::vector<float>; ///< of the middle pixel and those on one side

Weights gaussian(double sigma)
{
    Weights weights;
    float sum = 0;
    for (int i = 0; i <= static_cast<int>(std::ceil(sigma * 2.5)); ++i) {
        weights.push_back(static_cast<float>(std::exp(-i * i / (2 * sigma * sigma))));
        sum += i == 0 ? weights.back() : 2 * weights.back();
    }
    for (float& weight : weights)
        weight /= sum;
    return weights;
}

/// from has as much room on either side as the weights reach, filled with what stands at its ends.
void blur(const std::vector<float>& from, std::vector<float>& to, const Weights& weights)
{
    const std::size_t reach = weights.size() - 1;
    for (std::size_t x = 0; x < to.size(); ++x) {
        const float* middle = from.data() + x + reach;
        float sum = weights[0] * *middle;
        for (std::size_t i = 1; i < weights.size(); ++i)
            sum += weights[i] * (*(middle - i) + *(middle + i));
        to[x] = sum;
    }
}

void fillEnds(std::vector<float>& line, std::size_t reach)
{
    std::fill_n(line.begin(), reach, line[reach]);
    std::fill_n(line.end() - static_cast<std::ptrdiff_t>(reach), reach, line[line.size() - reach - 1]);
}

uchar pixel(float value) { return static_cast<uchar>(std::clamp(value + 0.5F, 0.0F, 255.0F)); }

QImage blurredRows(const QImage& grey, const Weights& weights)
{
    QImage out(grey.size(), QImage::Format_Grayscale8);
    if (out.isNull())
        return out;
    const std::size_t reach = weights.size() - 1;
    const auto width = static_cast<std::size_t>(grey.width());
    std::vector<float> line(width + 2 * reach);
    std::vector<float> to(width);
    for (int y = 0; y < grey.height(); ++y) {
        std::copy_n(grey.constScanLine(y), width, line.begin() + static_cast<std::ptrdiff_t>(reach));
        fillEnds(line, reach);
        blur(line, to, weights);
        std::transform(to.begin(), to.end(), out.scanLine(y), pixel);
    }
    return out;
}

} // namespace

Look closeLook(const QImage& grey, const Region& region, double by)
{
    const QSizeF shown(region.size.width() + 2 * std::max(roomAtLeast, region.size.width() * room),
        region.size.height() + 2 * std::max(roomAtLeast, region.size.height() * room));
    QImage copy((shown * by).toSize().expandedTo(QSize(16, 16)), QImage::Format_Grayscale8);
    if (copy.isNull())
        return {};
    copy.fill(255);
    QTransform to = QTransform::fromTranslate(-region.middle.x(), -region.middle.y());
    to *= QTransform().rotate(region.degrees) * QTransform::fromScale(by, by)
        * QTransform::fromTranslate(copy.width() / 2.0, copy.height() / 2.0);
    QPainter painter(&copy);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(to);
    painter.drawImage(0, 0, grey);
    painter.end();
    return { copy, to.inverted() };
}

Look stripsLook(const QImage& upright)
{
    constexpr int strips = 24;
    constexpr int rowsEach = 2;
    QImage lines(upright.width(), strips * rowsEach, QImage::Format_Grayscale8);
    if (lines.isNull())
        return {};
    const int width = upright.width();
    const int height = upright.height();
    std::vector<unsigned> sums(static_cast<std::size_t>(width));
    for (int strip = 0; strip < strips; ++strip) {
        // They overlap by half.
        const int top = std::max(0, (2 * strip - 1) * height / (2 * strips));
        const int bottom = std::clamp((2 * strip + 3) * height / (2 * strips), top + 1, height);
        std::fill(sums.begin(), sums.end(), 0U);
        for (int y = top; y < bottom; ++y) {
            const uchar* row = upright.constScanLine(y);
            for (int x = 0; x < width; ++x)
                sums[static_cast<std::size_t>(x)] += row[x];
        }
        for (int i = 0; i < rowsEach; ++i) {
            uchar* to = lines.scanLine(strip * rowsEach + i);
            for (int x = 0; x < width; ++x)
                to[x] = static_cast<uchar>(
                    sums[static_cast<std::size_t>(x)] / static_cast<unsigned>(bottom - top));
        }
    }
    return { lines, QTransform::fromScale(1, double(height) / (strips * rowsEach)) };
}

QImage refocused(const QImage& lines, double sigma)
{
    constexpr int rounds = 16;
    QImage out(lines.size(), QImage::Format_Grayscale8);
    if (out.isNull())
        return out;
    const Weights weights = gaussian(sigma);
    const std::size_t reach = weights.size() - 1;
    const auto width = static_cast<std::size_t>(lines.width());
    std::vector<float> guess(width + 2 * reach);
    std::vector<float> seen(width);
    for (int y = 0; y < lines.height(); ++y) {
        const uchar* from = lines.constScanLine(y);
        // Strips have equal rows.
        if (y > 0 && std::equal(from, from + width, lines.constScanLine(y - 1))) {
            std::copy_n(out.constScanLine(y - 1), width, out.scanLine(y));
            continue;
        }
        const auto [black, white] = std::minmax_element(from, from + width);
        const float least = *black;
        const float most = *white;
        std::copy_n(from, width, guess.begin() + static_cast<std::ptrdiff_t>(reach));
        for (int round = 0; round < rounds; ++round) {
            fillEnds(guess, reach);
            blur(guess, seen, weights);
            for (std::size_t x = 0; x < width; ++x)
                guess[x + reach]
                    = std::clamp(guess[x + reach] + 1.5F * (float(from[x]) - seen[x]), least, most);
        }
        std::transform(guess.begin() + static_cast<std::ptrdiff_t>(reach),
            guess.end() - static_cast<std::ptrdiff_t>(reach), out.scanLine(y), pixel);
    }
    return out;
}

QImage sharpened(const QImage& grey, double sigma)
{
    const Weights weights = gaussian(sigma);
    const QTransform quarter = QTransform().rotate(90);
    QImage soft = blurredRows(grey, weights).transformed(quarter).convertToFormat(QImage::Format_Grayscale8);
    soft = blurredRows(soft, weights)
               .transformed(quarter.inverted())
               .convertToFormat(QImage::Format_Grayscale8);
    if (soft.size() != grey.size())
        return {};
    for (int y = 0; y < soft.height(); ++y) {
        uchar* to = soft.scanLine(y);
        const uchar* from = grey.constScanLine(y);
        for (int x = 0; x < soft.width(); ++x)
            to[x] = static_cast<uchar>(std::clamp(from[x] + 2 * (from[x] - to[x]), 0, 255));
    }
    return soft;
}

Look unrolledLook(const QImage& grey, double width, double radians)
{
    const double radius = width / 2 / std::sin(radians);
    const double flat = radius * radians; // half of the width once it is laid flat
    const double beside = (grey.width() - width) / 2;
    QImage out(std::max(1, static_cast<int>(2 * (flat + beside))), grey.height(), QImage::Format_Grayscale8);
    if (out.isNull())
        return {};
    struct Place {
        int left;
        int share; ///< of the pixel to its right, in 256ths
    };
    std::vector<Place> places;
    places.reserve(static_cast<std::size_t>(out.width()));
    for (int x = 0; x < out.width(); ++x) {
        const double from = x + 0.5 - out.width() / 2.0;
        const double seen = std::abs(from) <= flat ? radius * std::sin(from / radius)
                                                   : from - std::copysign(flat - width / 2, from);
        const double at = std::clamp(seen + grey.width() / 2.0 - 0.5, 0.0, grey.width() - 1.001);
        places.push_back({ static_cast<int>(at), static_cast<int>((at - std::floor(at)) * 256) });
    }
    for (int y = 0; y < out.height(); ++y) {
        const uchar* from = grey.constScanLine(y);
        uchar* to = out.scanLine(y);
        for (int x = 0; x < out.width(); ++x) {
            const auto [left, share] = places[static_cast<std::size_t>(x)];
            const int right = std::min(left + 1, grey.width() - 1);
            to[x] = static_cast<uchar>((from[left] * (256 - share) + from[right] * share) >> 8);
        }
    }
    return { out, QTransform::fromScale(double(grey.width()) / out.width(), 1) };
}

} // namespace gw
