#pragma once

#include <optional>

#include "codes/code.h"

namespace gw {

/// Fills in what the elements of a code say that a shop can use: item number, lot, serial number, dates,
/// amounts. All of them must have passed checkValue(). Adds a warning for what is there but says nothing (a
/// net weight of zero).
void giveMeaning(Code& code, int currentYear);

/// The amount that a trade measure or count says, or nothing when it says none a ledger keeps (areas, gross
/// weights).
std::optional<Amount> labelAmount(const Element& element);

} // namespace gw
