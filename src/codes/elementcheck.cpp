#include "codes/elementcheck.h"

#include <algorithm>
#include <array>
#include <string>

#include "codes/gtin.h"
#include "codes/labeldate.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr std::string_view capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
constexpr std::string_view smalls = "abcdefghijklmnopqrstuvwxyz";
constexpr std::string_view numerals = "0123456789";

// GS1 General Specifications 7.11, figures 7.11-1 to 7.11-3: the characters besides letters and digits.
constexpr std::string_view marksOf82 = "!\"%&'()*+,-./:;<=>?_";
constexpr std::string_view marksOf39 = "#-/";
constexpr std::string_view marksOf64 = "-_=";

constexpr std::size_t setCount = 4;

constexpr std::array<std::array<bool, 256>, setCount> makeSets()
{
    std::array<std::array<bool, 256>, setCount> sets {};
    const auto put = [&](CharSet set, std::string_view characters) {
        for (const char c : characters)
            sets[static_cast<std::size_t>(set)][static_cast<unsigned char>(c)] = true;
    };
    for (const CharSet set : { CharSet::Digits, CharSet::Set82, CharSet::Set39, CharSet::Set64 })
        put(set, numerals);
    for (const CharSet set : { CharSet::Set82, CharSet::Set39, CharSet::Set64 })
        put(set, capitals);
    for (const CharSet set : { CharSet::Set82, CharSet::Set64 })
        put(set, smalls);
    put(CharSet::Set82, marksOf82);
    put(CharSet::Set39, marksOf39);
    put(CharSet::Set64, marksOf64);
    return sets;
}

constexpr auto sets = makeSets();

bool allIn(CharSet set, std::string_view text)
{
    const auto& members = sets[static_cast<std::size_t>(set)];
    return std::all_of(
        text.begin(), text.end(), [&](char c) { return members[static_cast<unsigned char>(c)]; });
}

std::string_view setKind(CharSet set)
{
    switch (set) {
    case CharSet::Digits:
        return "non-digit";
    case CharSet::Set82:
        return "character set 82";
    case CharSet::Set39:
        return "character set 39";
    case CharSet::Set64:
        return "character set 64";
    }
    return {};
}

int number(std::string_view digits)
{
    int value = 0;
    for (const char c : digits)
        value = value * 10 + (c - '0');
    return value;
}

/// The kind of what is wrong with the content of a part whose characters and length are right; empty when
/// nothing is.
std::string_view wrongContent(const Part& part, std::string_view value, int currentYear)
{
    const auto dateKind = [&](DayZero dayZero) {
        const auto date = labelDate(value, dayZero, currentYear);
        return date ? std::string_view() : date.error();
    };
    switch (part.content) {
    case Content::Anything:
        return {};
    case Content::CheckDigit:
        return checkDigit(value.substr(0, value.size() - 1)) == value.back() - '0' ? "" : "check digit";
    case Content::DayMayBeZero:
        return dateKind(DayZero::LastOfMonth);
    case Content::Day:
        return dateKind(DayZero::Refused);
    case Content::Hour:
        return number(value) < 24 ? "" : "hour";
    case Content::Minute:
        return number(value) < 60 ? "" : "minute";
    case Content::Second:
        return number(value) < 60 ? "" : "second";
    case Content::YesNo:
        return number(value) < 2 ? "" : "value";
    case Content::Zero:
        return number(value) == 0 ? "" : "value";
    case Content::NotZero:
        return number(value) != 0 ? "" : "value";
    case Content::PieceOfTotal: {
        const int piece = number(value.substr(0, 2));
        const int total = number(value.substr(2));
        return piece > 0 && piece <= total ? "" : "value";
    }
    case Content::Hyphen:
        return value == "-" ? "" : "value";
    }
    return {};
}

std::string reason(std::string_view kind, std::string_view part)
{
    if (kind == "check digit") {
        return "its check digit would have to be "
            + std::to_string(*checkDigit(part.substr(0, part.size() - 1)))
            + ". Scan it again, or look at the label";
    }
    if (kind == "month")
        return "there is no such month. Look at the label";
    if (kind == "day")
        return "that month has no such day. Look at the label";
    if (kind == "hour" || kind == "minute" || kind == "second")
        return "there is no such " + std::string(kind) + ". Look at the label";
    if (kind == "non-digit")
        return "only digits may stand there. Scan it again, or type it from the label";
    if (kind == "value too short")
        return "it is too short. Scan it again, or type it from the label";
    if (kind == "value too long")
        return "it is too long. Scan it again, or type it from the label";
    if (kind == "empty value")
        return "nothing stands behind it. Scan it again, or type it from the label";
    if (kind.starts_with("character set"))
        return "it holds a character that labels cannot carry there. Scan it again, or type it from the "
               "label";
    return "that cannot stand there. Look at the label";
}

CodeError wrong(std::string_view kind, const Identifier& identifier, std::string_view ai,
    std::string_view value, std::string_view part)
{
    return { std::string(kind),
        named(identifier, ai) + " reads " + inQuotes(value) + ": " + reason(kind, part) + '.' };
}

} // namespace

std::optional<CodeError> checkValue(
    const Identifier& identifier, std::string_view ai, std::string_view value, int currentYear)
{
    const auto is = [&](std::string_view kind, std::string_view part = {}) {
        return wrong(kind, identifier, ai, value, part);
    };
    if (value.empty())
        return is("empty value");
    if (value.size() < identifier.shortest())
        return is("value too short");
    if (value.size() > identifier.longest())
        return is("value too long");

    std::string_view rest = value;
    for (const Part& part : identifier.usedParts()) {
        if (part.optional && rest.empty())
            break;
        const std::string_view piece = rest.substr(0, part.longest);
        rest.remove_prefix(piece.size());
        if (!allIn(part.set, piece))
            return is(setKind(part.set));
        if (piece.size() < part.shortest)
            return is("value too short");
        if (const std::string_view kind = wrongContent(part, piece, currentYear); !kind.empty())
            return is(kind, piece);
    }
    return std::nullopt;
}

} // namespace gw
