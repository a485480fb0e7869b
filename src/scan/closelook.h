#pragma once

#include <QImage>

#include "scan/look.h"
#include "scan/region.h"

namespace gw {

/// The region with some room around it, its bars or edges upright, enlarged. All pictures here are
/// Grayscale8; they are null when there is no memory for them.
Look closeLook(const QImage& grey, const Region& region, double by);
/// For upright bars: a few lines, each the mean of a strip of the picture. Grain goes and bars stay, whatever
/// covers part of their height.
Look stripsLook(const QImage& upright);
/// Undoes a blur across the bars, as if out of focus by so many pixels (the sigma of a Gaussian): by
/// constrained iterations (van Cittert), which brightness between black and white allows.
QImage refocused(const QImage& lines, double sigma);
/// Edges in all directions made steeper.
QImage sharpened(const QImage& grey, double sigma);
/// Seen as if laid flat: what lies across the picture's middle part, so many pixels wide, was bent round an
/// upright cylinder and is seen to so many radians on either side. Columns towards the sides are spread.
Look unrolledLook(const QImage& grey, double width, double radians);

} // namespace gw
