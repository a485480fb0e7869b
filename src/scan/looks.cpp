#include "scan/looks.h"

#include <algorithm>
#include <array>
#include <cmath>

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
/// Of these, the ones that tell half of a long bar code from a short one.
constexpr std::size_t coarseAngles = 3;

/// A copy of a picture in which a reader may see what it does not see in the picture itself. All are
/// Grayscale8.
struct Look {
    QImage picture;
    QTransform back; ///< from its pixels to those of the picture it was made from
};

std::vector<Symbol> lookAt(const Look& look, SymbolReader& reader)
{
    if (look.picture.isNull())
        return {};
    auto symbols = reader.read({ look.picture.constBits(), look.picture.width(), look.picture.height(),
        look.picture.bytesPerLine() });
    for (Symbol& symbol : symbols)
        symbol.outline = look.back.map(symbol.outline);
    dropContradicted(symbols);
    return symbols;
}

/// A coarse picture of the light: the brightest of each block, which is paper where there is any.
QImage lightOf(const QImage& grey)
{
    const int block = std::max(16, std::min(grey.width(), grey.height()) / 16);
    QImage light(
        (grey.width() + block - 1) / block, (grey.height() + block - 1) / block, QImage::Format_Grayscale8);
    light.fill(0);
    for (int y = 0; y < grey.height(); ++y) {
        const uchar* from = grey.constScanLine(y);
        uchar* to = light.scanLine(y / block);
        for (int x = 0; x < grey.width(); ++x)
            to[x / block] = std::max(to[x / block], from[x]);
    }
    return light.scaled(grey.size(), Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
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
    const QImage light = lightOf(grey);
    if (copy.isNull() || light.isNull())
        return {};
    std::array<qint64, 256> counts {};
    for (int y = 0; y < copy.height(); ++y) {
        uchar* to = copy.scanLine(y);
        const uchar* bright = light.constScanLine(y);
        for (int x = 0; x < copy.width(); ++x) {
            to[x] = static_cast<uchar>(std::min(255, to[x] * 255 / std::max(16, int(bright[x]))));
            ++counts[to[x]];
        }
    }
    const qint64 pixels = qint64(copy.width()) * copy.height();
    const int black = quantile(counts, pixels, 0.01);
    const int white = std::max(black + 1, quantile(counts, pixels, 0.99));
    std::array<uchar, 256> spread {};
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

} // namespace

std::vector<Symbol> findSymbols(const QImage& picture, SymbolReader& reader)
{
    const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
    if (grey.isNull())
        return {};
    std::vector<Symbol> found = lookAt({ grey, {} }, reader);
    const auto settled = [&found] { return !found.empty() && !allWeak(found); };

    const double pixels = double(grey.width()) * grey.height();
    const Look base
        = pixels > mostPixelsAgain ? scaled(grey, std::sqrt(mostPixelsAgain / pixels)) : Look { grey, {} };
    const int shorter = std::min(base.picture.width(), base.picture.height());
    const auto again = [&](Look look) {
        look.back *= base.back;
        addUnseen(found, lookAt(look, reader));
        dropContradicted(found);
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
    for (const double angle : angles) {
        if (settled())
            return found;
        again(turned(base.picture, angle));
    }
    if (found.empty())
        again(inverted(base.picture));
    if (found.empty() && shorter >= 100)
        again(smoothed(base.picture));
    return found;
}

std::vector<Symbol> findInFrame(const LuminanceView& frame, qint64 number, SymbolReader& reader)
{
    const QImage grey(frame.data, frame.width, frame.height, frame.stride, QImage::Format_Grayscale8);
    if (grey.isNull())
        return {};
    const Look look = number % 2 == 0 ? Look { grey, {} } : levelled(grey);
    auto found = lookAt(look, reader);
    for (std::size_t i = 0; i < coarseAngles && allWeak(found); ++i) {
        addUnseen(found, lookAt(turned(look.picture, angles[i]), reader));
        dropContradicted(found);
    }
    return found;
}

} // namespace gw
