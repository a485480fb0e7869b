#include "codes/code.h"

#include <algorithm>
#include <array>

#include "codes/associations.h"
#include "codes/digitallink.h"
#include "codes/elementmeaning.h"
#include "codes/elementstring.h"
#include "codes/ownlabel.h"
#include "measure/number.h"

namespace gw {

namespace {

/// The largest symbols hold 7,089 digits; what is longer was not scanned.
constexpr std::size_t longestText = 8192;
/// Scanners send a composite symbol as its linear part, a bar, and its element string.
constexpr char compositeMark = '|';

bool isDigit(char c) { return c >= '0' && c <= '9'; }

bool allDigits(std::string_view text)
{
    return !text.empty() && std::all_of(text.begin(), text.end(), isDigit);
}

bool isSymbology(std::string_view id)
{
    const auto isLetter = [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); };
    return id.size() == 3 && id[0] == ']' && isLetter(id[1]) && (isDigit(id[2]) || isLetter(id[2]));
}

/// Symbols that say themselves that they carry an element string (ISO/IEC 15424): GS1-128, DataBar and
/// composites, Data Matrix, QR, DotCode, Aztec; some with extended channels too.
bool carriesElements(std::string_view symbology)
{
    constexpr std::array<std::string_view, 9> identifiers { "]C1", "]e0", "]d2", "]d5", "]Q3", "]Q4", "]J1",
        "]J4", "]z1" };
    return std::find(identifiers.begin(), identifiers.end(), symbology) != identifiers.end();
}

/// "<GS>" as byte 29.
std::string withSeparators(std::string_view text)
{
    constexpr std::string_view written = "<GS>";
    std::string plain;
    plain.reserve(text.size());
    for (std::size_t at = text.find(written); at != std::string_view::npos; at = text.find(written)) {
        plain.append(text.substr(0, at)).append(1, groupSeparator);
        text.remove_prefix(at + written.size());
    }
    return plain.append(text);
}

void takeElements(Code& code, ElementsRead read, CodeKind kind, int currentYear)
{
    code.kind = kind;
    code.elements = std::move(read.elements);
    code.error = read.error ? std::move(read.error) : checkTogether(code.elements);
    if (code.error) {
        code.gtin.reset();
        return;
    }
    code.warnings = missingCompanions(code.elements, code.gtin.has_value());
    giveMeaning(code, currentYear);
}

void takeGtin(Code& code, std::string_view digits)
{
    code.kind = CodeKind::Gtin;
    if (auto gtin = parseGtin(digits))
        code.gtin = std::move(*gtin);
    else
        code.error = CodeError { "check digit", std::move(gtin.error().sentence) };
}

bool takeUpcE(Code& code, std::string_view digits)
{
    const auto full
        = digits.size() == 8 ? expandUpcE(digits) : Result<std::string>(fail(ErrorCode::BadInput, {}));
    if (full)
        takeGtin(code, *full);
    return full.has_value();
}

void refuseNumber(Code& code, std::string_view kind, std::string sentence)
{
    code.kind = CodeKind::Gtin;
    code.error = CodeError { std::string(kind), std::move(sentence) };
}

/// EAN and UPC symbols carry nothing but an item number; a composite component may follow behind a bar.
/// A scanner sends all UPC forms as 13 digits, so that 12 or 8 of them behind a typed "]E0" are an EAN-13 cut
/// short unless the 8 hold as UPC-E; a reader that names the symbology apart gives UPC-A as its own 12.
void readItemNumber(
    Code& code, std::string_view text, std::string_view symbology, bool namedApart, int currentYear)
{
    const std::size_t bar = text.find(compositeMark);
    const std::string_view digits = text.substr(0, std::min(bar, text.size()));
    const std::size_t length = symbology == "]E4" ? 8 : 13;
    const bool wholeUpc = symbology == "]E0" && namedApart && digits.size() == 12;
    if (symbology == "]E0" && allDigits(digits) && takeUpcE(code, digits))
        return;
    if (digits.size() != length && !wholeUpc)
        return refuseNumber(code, "wrong length",
            "This symbol carries " + std::to_string(length) + " digits, and " + std::to_string(digits.size())
                + " characters came. Scan it again, or type the digits under the bars.");
    if (!allDigits(digits))
        return refuseNumber(code, "non-digit",
            "An item number has digits only. Scan it again, or type the digits under the bars.");
    takeGtin(code, digits);
    if (code.error || bar == std::string_view::npos)
        return;
    std::string_view component = text.substr(bar + 1);
    if (component.starts_with("]e0"))
        component.remove_prefix(3);
    takeElements(code, readElementString(component, currentYear), CodeKind::Gs1, currentYear);
}

/// EAN-13 with a two- or five-digit add-on behind it: the add-on is an issue number or a price, of no use on
/// a shelf.
bool readWithAddOn(Code& code, std::string_view text)
{
    if ((text.size() != 15 && text.size() != 18) || !allDigits(text))
        return false;
    takeGtin(code, text.substr(0, 13));
    return true;
}

/// What nothing but the text itself says. Digits with blanks between them are an item number only when they
/// hold.
bool readBareNumber(Code& code, std::string_view text)
{
    const bool length = text.size() == 8 || text.size() == 12 || text.size() == 13 || text.size() == 14;
    if (const auto gtin = parseGtin(text)) {
        takeGtin(code, text);
        return true;
    }
    if (!length || !allDigits(text))
        return false;
    if (!takeUpcE(code, text))
        takeGtin(code, text);
    return true;
}

/// A keyboard scanner may send no symbology identifier: then a separator, or a whole item number behind 01,
/// tells.
bool looksLikeElements(std::string_view text)
{
    constexpr std::size_t itemLength = 16;
    if (text.find(groupSeparator) != std::string_view::npos)
        return true;
    return text.size() >= itemLength && text.starts_with("01") && parseGtin(text.substr(2, 14)).has_value()
        && allDigits(text.substr(2, 14));
}

bool readOwnLabel(Code& code, std::string_view text)
{
    if (parseOwnLabel(text)) {
        code.kind = CodeKind::OwnLabel;
        return true;
    }
    if (!looksLikeOwnLabel(text))
        return false;
    code.kind = CodeKind::OwnLabel;
    code.error = CodeError { "check character",
        "The label code does not hold: a character is wrong, or two are swapped. Scan the label, or type it "
        "again." };
    return true;
}

} // namespace

Code readCode(std::string_view text, std::string_view symbology, Date today)
{
    Code code;
    if (text.size() > longestText) {
        code.text = text.substr(0, longestText);
        code.error = CodeError { "too long",
            "The text is longer than any bar code or square code can carry. Scan or type one code." };
        return code;
    }
    const int currentYear = static_cast<int>(today.year());
    const bool namedApart = isSymbology(symbology);
    if (!namedApart)
        symbology = isSymbology(text.substr(0, 3)) ? text.substr(0, 3) : std::string_view();
    if (!symbology.empty() && text.starts_with(symbology))
        text.remove_prefix(symbology.size());

    code.text = text;
    const std::string separated = withSeparators(text);
    const std::string_view typed = trimmed(separated);
    const auto elements = [&](ElementsRead read) {
        code.text = separated;
        takeElements(code, std::move(read), CodeKind::Gs1, currentYear);
        return code;
    };

    // Some readers give DataBar already bracketed.
    if (carriesElements(symbology))
        return elements(looksBracketed(separated) ? readBracketed(separated, currentYear)
                                                  : readElementString(separated, currentYear));
    if (symbology == "]E0" || symbology == "]E4") {
        readItemNumber(code, separated, symbology, namedApart, currentYear);
        return code;
    }
    if (symbology == "]E3" && readWithAddOn(code, text))
        return code;
    if (symbology == "]I1" && text.size() == 14 && allDigits(text)) {
        takeGtin(code, text);
        return code;
    }

    if (readOwnLabel(code, typed))
        return code;
    if (looksBracketed(typed))
        return elements(readBracketed(typed, currentYear));
    if (auto link = readDigitalLink(typed, currentYear)) {
        takeElements(code, std::move(*link), CodeKind::DigitalLink, currentYear);
        return code;
    }
    if (symbology.empty()) {
        if (looksLikeElements(typed))
            return elements(readElementString(typed, currentYear));
        readBareNumber(code, typed);
    }
    return code;
}

} // namespace gw
