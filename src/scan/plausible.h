#pragma once

#include <vector>

#include "scan/symbolreader.h"

namespace gw {

/// EAN-8, UPC-E and ITF say little about themselves: half of an EAN-13 that a slanted scan line cuts off
/// passes for a UPC-E, part of an ITF for a shorter one. One look at them is not enough.
bool isWeak(const Symbol& symbol);

/// Any, and all of them weak.
bool allWeak(const std::vector<Symbol>& symbols);

/// Adds what is not there yet by symbology and text.
void addUnseen(std::vector<Symbol>& symbols, std::vector<Symbol> more);

/// Drops every weak bar code that stands where another bar code was read that is not weak, or is longer.
void dropContradicted(std::vector<Symbol>& symbols);

} // namespace gw
