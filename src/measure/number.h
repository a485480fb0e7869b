#pragma once

#include <string>
#include <string_view>

#include "measure/error.h"

namespace gw {

/// A number at the start of a text, and what stands behind it with the blanks around it taken off.
struct LeadingNumber {
    double value = 0;
    std::string_view rest;
};

/// Reads the number a text begins with: an optional sign, digits, and a comma or a point for the decimals.
/// A thousands mark is never guessed at: "1.000,5" and "1,000" (a thousand, or one?) are refused, as a wrong
/// guess would be wrong a thousandfold. "0,125" and "1.125" are plain. Exponents are not read. Errors:
/// BadInput when there is no number, or it cannot be read in one way only.
Result<LeadingNumber> leadingNumber(std::string_view text);

/// A number rounded to at most so many decimals, without trailing zeros beyond the least number of decimals
/// and without "-0"; "not a number" when it is none.
std::string numberWords(double value, int decimals, int leastDecimals = 0);

/// Blanks at both ends taken off: ASCII white space and the no-break blanks that tablets type.
std::string_view trimmed(std::string_view text);

} // namespace gw
