#pragma once

#include <vector>

#include <QImage>

#include "scan/symbolreader.h"

namespace gw {

/// Everything that can be found in a picture which is the only one there is. As it is first, then in other
/// looks, cheap ones first, until one shows a symbol. What wants confirming is read with its bars upright as
/// well, or is not believed.
std::vector<Symbol> findSymbols(const QImage& picture, SymbolReader& reader);

/// What can be found in one frame of many. Frames take turns by their number: the first of three is looked at
/// as it is, the second levelled, the third closer where its edges crowd. ITF is taken as ITF-14 only.
std::vector<Symbol> findInFrame(const LuminanceView& frame, qint64 number, SymbolReader& reader);

} // namespace gw
