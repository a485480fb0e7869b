#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "measure/error.h"

namespace gw {

/// A trade item number, always as 14 digits with leading zeros, its check digit right.
struct Gtin {
    std::string digits14;
    friend auto operator<=>(const Gtin&, const Gtin&) = default;
};

/// The GS1 check digit of a run of digits that lacks it: from the right, weights 3,1,3,1... (GS1 General
/// Specifications 7.9). None when the text is empty or not all digits.
std::optional<int> checkDigit(std::string_view digitsWithoutCheck);

/// A GTIN-8, -12, -13 or -14 as typed or scanned. Errors: BadInput with a sentence: not digits, wrong length,
/// wrong check digit (says what it would have to be, and to look at the label again).
Result<Gtin> parseGtin(std::string_view text);

/// UPC-E (6, 7 or 8 digits) expanded to the 12 digits of its UPC-A. Errors: BadInput.
Result<std::string> expandUpcE(std::string_view text);

/// What the first of the 14 digits says of a pack (GS1 General Specifications 2.1.7).
enum class PackLevel {
    Item, ///< 0: the item itself
    Case, ///< 1 to 8: several of one item packed together
    VariableMeasure, ///< 9: cut or filled to order; the number does not say how much
};
PackLevel packLevel(const Gtin& gtin);
/// The number of the item that a case is of: indicator 1 to 8 taken off, with its own check digit. None when
/// the number is no case's. A maker may also give a case a number of its own, then that is it.
std::optional<Gtin> itemInside(const Gtin& gtin);

/// The shortest of 8, 12, 13, 14 digits that carries it, as printed on packs.
std::string printedForm(const Gtin& gtin);

} // namespace gw
