#pragma once

#include <vector>

#include <QImage>

#include "scan/symbolreader.h"

namespace gw {

/// Everything that can be found in a picture which is the only one there is. As it is first, then in other
/// looks, cheap ones first, until one shows a symbol that is not weak; a weak one is checked against turned
/// looks.
std::vector<Symbol> findSymbols(const QImage& picture, SymbolReader& reader);

/// What can be found in one frame of many. Frames take turns: an even one is looked at as it is, an odd one
/// levelled.
std::vector<Symbol> findInFrame(const LuminanceView& frame, qint64 number, SymbolReader& reader);

} // namespace gw
