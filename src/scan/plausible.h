#pragma once

#include <vector>

#include "scan/symbolreader.h"

namespace gw {

/// EAN-8, UPC-E and ITF say little about themselves: half of an EAN-13 that a slanted scan line cuts off
/// passes for a UPC-E, part of an ITF for a shorter one. One look at them is not enough.
bool isWeak(const Symbol& symbol);

/// The weak ones, and EAN-13 and UPC-A: a single check digit lets one misreading in ten pass. They are
/// believed when another look confirms them. (Code 128 has a check of 1 in 103, the square codes correct
/// their errors.)
bool wantsConfirming(const Symbol& symbol);

/// Adds what is not there yet by symbology and text.
void addUnseen(std::vector<Symbol>& symbols, std::vector<Symbol> more);

/// Drops every weak bar code that stands where another bar code was read that is not weak, or is longer.
void dropContradicted(std::vector<Symbol>& symbols);

} // namespace gw
