#pragma once

#include <QImage>
#include <QTransform>

namespace gw {

/// A copy of a picture in which a reader may see what it does not see in the picture itself. All are
/// Grayscale8, and so is what they are made from; the picture is null when there is no memory for it.
struct Look {
    QImage picture;
    QTransform back; ///< from its pixels to those of the picture it was made from
};

Look scaledLook(const QImage& grey, double by);
/// With paper in the corners that a turn leaves bare.
Look turnedLook(const QImage& grey, double degrees);
Look invertedLook(const QImage& grey);
/// Grain goes, bars wider than two pixels stay.
Look smoothedLook(const QImage& grey);
/// With a margin of paper, for a picture that was cropped to the symbol.
Look framedLook(const QImage& grey);
/// Light falling off across the picture is evened out and what contrast there is is spread: the darkest
/// hundredth becomes black, the lightest white.
Look levelledLook(const QImage& grey);

/// The angle, in degrees, by which a picture of bars must be turned for them to stand upright.
double turnToUpright(const QImage& grey);

} // namespace gw
