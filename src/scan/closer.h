#pragma once

#include <vector>

#include <QImage>

#include "scan/budget.h"
#include "scan/symbolreader.h"

namespace gw {

/// How many parts of a picture are looked at, and how large.
enum class Closeness { Frame, Picture };

/// What can be found in a picture by looking closer where its edges crowd: each likely part of it upright,
/// enlarged, its light levelled, grain averaged away along the bars, refocused, inverted, laid flat as from
/// round a bottle, and each of these shown to every engine until enough of them agree. Outlines in pixels of
/// the picture, which is Grayscale8.
std::vector<Symbol> lookCloser(
    const QImage& grey, SymbolReader& reader, Closeness closeness, const Budget& budget);

} // namespace gw
