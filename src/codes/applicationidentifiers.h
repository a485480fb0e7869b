#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace gw {

/// Character sets of the GS1 General Specifications (7.11): digits, the 82 characters, the 39, the 64.
enum class CharSet : std::uint8_t { Digits, Set82, Set39, Set64 };

/// What a part of a value must hold besides its characters and length.
enum class Content : std::uint8_t {
    Anything,
    CheckDigit, ///< the last digit is the check digit of the others
    DayMayBeZero, ///< yymmdd, day 00 standing for the month as a whole
    Day, ///< yymmdd
    Hour,
    Minute,
    Second,
    YesNo, ///< 0 or 1
    Zero,
    NotZero,
    PieceOfTotal, ///< two digits of which piece, two of how many
    Hyphen, ///< a minus
};

struct Part {
    CharSet set = CharSet::Digits;
    std::uint8_t shortest = 0;
    std::uint8_t longest = 0;
    Content content = Content::Anything;
    bool optional = false;
};

/// One application identifier, or a run of them that differ in the last digit only (its decimals).
/// Source: GS1 Application Identifier Syntax Dictionary, the machine-readable form of the General
/// Specifications.
struct Identifier {
    std::uint16_t first = 0;
    std::uint16_t last = 0;
    std::uint8_t digits = 0; ///< how many digits the identifier itself has
    bool predefinedLength
        = false; ///< ends by its length; any other ends with a separator unless it is the last
    bool linkAttribute = false; ///< may stand in the query of a Digital Link
    std::uint8_t partCount = 0;
    std::array<Part, 5> parts {};
    std::string_view
        needs; ///< "01,02;30,31nn": one of each group beside it; "01+21" wants both; n is any digit
    std::string_view excludes; ///< none of these beside it
    std::string_view name; ///< in the trade's words, for sentences

    std::span<const Part> usedParts() const { return { parts.data(), partCount }; }
    std::size_t shortest() const;
    std::size_t longest() const;
};

/// The identifier that digits begin with, or null. The first two digits say how long identifiers there are.
const Identifier* identifierAtStart(std::string_view data);
/// The identifier that is exactly this text, or null.
const Identifier* identifierNamed(std::string_view ai);

/// "(17) use by", for sentences.
std::string named(const Identifier& identifier, std::string_view ai);

/// A key that a Digital Link may begin with, and the identifiers that may follow it in the path, in this
/// order.
struct LinkKey {
    std::string_view ai;
    std::array<std::string_view, 2> qualifiers; ///< alternatives, each "22,10,21"; empty when there is none
};

/// Null when the identifier is no Digital Link key.
const LinkKey* linkKey(std::string_view ai);

} // namespace gw
