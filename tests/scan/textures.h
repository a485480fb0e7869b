#pragma once

#include <QImage>

namespace gw::test {

/// Pictures of a workshop that hold no symbol; each seed gives another.
QImage noise(QSize size, unsigned seed); ///< every pixel for itself
QImage clouds(QSize size, unsigned seed); ///< soft patches, as in a photograph out of focus
QImage woodGrain(QSize size, unsigned seed); ///< wavy dark lines along the board
QImage stripes(QSize size, unsigned seed); ///< straight bars of random widths, as on cloth or a radiator
QImage checks(QSize size, unsigned seed); ///< black and white squares at random, as on tiles
QImage digits(QSize size, unsigned seed); ///< strokes and boxes, as in small print seen from afar

} // namespace gw::test
