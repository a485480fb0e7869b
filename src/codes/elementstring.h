#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "codes/code.h"

namespace gw {

/// ASCII 29, which ends an element that has no predefined length.
inline constexpr char groupSeparator = '\x1D';

/// What was read, up to the first thing wrong with it.
struct ElementsRead {
    std::vector<Element> elements;
    std::optional<CodeError> error;
};

/// An element string as a symbol carries it, without its symbology identifier. A separator that is missing is
/// not repaired: what follows belongs to the element before, as the rules say. One too many, behind an
/// element of predefined length or at the end, does no harm.
ElementsRead readElementString(std::string_view data, int currentYear);

/// The form printed under symbols and typed by people: "(01)09520123456788(10)ABC". A "\(" is a bracket in a
/// value.
ElementsRead readBracketed(std::string_view text, int currentYear);

/// Whether a text means to be the bracketed form: an opening bracket and a digit.
bool looksBracketed(std::string_view text);

} // namespace gw
