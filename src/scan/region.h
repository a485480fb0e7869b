#pragma once

#include <vector>

#include <QImage>
#include <QPointF>
#include <QSizeF>

namespace gw {

/// A part of a picture that looks like a symbol: many edges close together.
struct Region {
    QPointF middle;
    QSizeF size; ///< in pixels, along the axes it has once it is turned
    double degrees = 0; ///< the turn by which its bars or edges stand upright
    double parallel = 0; ///< from 0, edges in every direction, to 1, all edges alike as those of bars
};

/// The likeliest first, at most so many. The picture is Grayscale8.
std::vector<Region> likelyRegions(const QImage& grey, std::size_t most);

} // namespace gw
