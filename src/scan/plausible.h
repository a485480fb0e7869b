#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "scan/symbolreader.h"

namespace gw {

bool isBarCode(const Symbol& symbol); ///< not a square code

/// EAN-8, UPC-E and ITF say little about themselves: half of an EAN-13 that a slanted scan line cuts off
/// passes for a UPC-E, part of an ITF for a shorter one. One look at them is not enough.
bool isWeak(const Symbol& symbol);

/// The weak ones, and EAN-13 and UPC-A: a single check digit lets one misreading in ten pass. A Code 128 of a
/// few characters, whose check lets 1 in 103 pass, and every bar code that an engine other than the first
/// saw. They are believed when another look confirms them. (The square codes correct their errors.)
bool wantsConfirming(const Symbol& symbol);

/// The symbology identifier of an ITF (ISO/IEC 15424): "]I1" when its last digit is the check digit of the
/// others, else "]I0".
std::string itfIdentifier(std::string_view digits);

/// Adds what is not there yet by symbology and text.
void addUnseen(std::vector<Symbol>& symbols, std::vector<Symbol> more);

/// Drops every weak bar code that stands where another bar code was read that is not weak, or is longer.
void dropContradicted(std::vector<Symbol>& symbols);

} // namespace gw
