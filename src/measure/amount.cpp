#include "measure/amount.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

struct Unit {
    std::string_view name;
    double inBase; ///< how many g, ml, pieces or m one of it is
    Dimension dimension;
};

// Exact by definition. Pound 453.592 37 g (international yard and pound agreement, 1959), ounce its
// sixteenth; US gallon 231 cubic inches = 3785.411 784 ml, its parts 1/4, 1/8, 1/128; inch 25.4 mm. NIST SP
// 811, appendix B.8.
constexpr double pound = 453.59237;
constexpr double ounce = pound / 16;
constexpr double gallon = 3785.411784;
constexpr double fluidOunce = gallon / 128;

using enum Dimension;

// A pair counts as one: gloves are bought, stocked and used by the pair.
constexpr std::array units {
    Unit { "g", 1, Mass },
    Unit { "gram", 1, Mass },
    Unit { "grams", 1, Mass },
    Unit { "kg", 1000, Mass },
    Unit { "kilo", 1000, Mass },
    Unit { "kilos", 1000, Mass },
    Unit { "kilogram", 1000, Mass },
    Unit { "kilograms", 1000, Mass },
    Unit { "mg", 0.001, Mass },
    Unit { "milligram", 0.001, Mass },
    Unit { "milligrams", 0.001, Mass },
    Unit { "lb", pound, Mass },
    Unit { "lbs", pound, Mass },
    Unit { "pound", pound, Mass },
    Unit { "pounds", pound, Mass },
    Unit { "oz", ounce, Mass },
    Unit { "ounce", ounce, Mass },
    Unit { "ounces", ounce, Mass },

    Unit { "ml", 1, Volume },
    Unit { "millilitre", 1, Volume },
    Unit { "millilitres", 1, Volume },
    Unit { "milliliter", 1, Volume },
    Unit { "milliliters", 1, Volume },
    Unit { "cl", 10, Volume },
    Unit { "dl", 100, Volume },
    Unit { "l", 1000, Volume },
    Unit { "litre", 1000, Volume },
    Unit { "litres", 1000, Volume },
    Unit { "liter", 1000, Volume },
    Unit { "liters", 1000, Volume },
    Unit { "fl oz", fluidOunce, Volume },
    Unit { "floz", fluidOunce, Volume },
    Unit { "fluid ounce", fluidOunce, Volume },
    Unit { "fluid ounces", fluidOunce, Volume },
    Unit { "pt", gallon / 8, Volume },
    Unit { "pint", gallon / 8, Volume },
    Unit { "pints", gallon / 8, Volume },
    Unit { "qt", gallon / 4, Volume },
    Unit { "quart", gallon / 4, Volume },
    Unit { "quarts", gallon / 4, Volume },
    Unit { "gal", gallon, Volume },
    Unit { "gallon", gallon, Volume },
    Unit { "gallons", gallon, Volume },

    Unit { "each", 1, Count },
    Unit { "ea", 1, Count },
    Unit { "piece", 1, Count },
    Unit { "pieces", 1, Count },
    Unit { "pc", 1, Count },
    Unit { "pcs", 1, Count },
    Unit { "pr", 1, Count },
    Unit { "pair", 1, Count },
    Unit { "pairs", 1, Count },
    Unit { "sheet", 1, Count },
    Unit { "sheets", 1, Count },
    Unit { "pad", 1, Count },
    Unit { "pads", 1, Count },

    Unit { "m", 1, Length },
    Unit { "metre", 1, Length },
    Unit { "metres", 1, Length },
    Unit { "meter", 1, Length },
    Unit { "meters", 1, Length },
    Unit { "cm", 0.01, Length },
    Unit { "mm", 0.001, Length },
    Unit { "ft", 0.3048, Length },
    Unit { "foot", 0.3048, Length },
    Unit { "feet", 0.3048, Length },
    Unit { "yd", 0.9144, Length },
    Unit { "in", 0.0254, Length },
    Unit { "inch", 0.0254, Length },
    Unit { "inches", 0.0254, Length },
};

constexpr std::size_t longestUnit = 24;
constexpr double mostBaseUnits = 1e9;
constexpr double mostMilli = 9e18;

/// Lower case, points dropped, runs of blanks as one: "Fl. Oz." is "fl oz".
std::string plainUnit(std::string_view text)
{
    std::string plain;
    for (const char c : text.substr(0, longestUnit)) {
        if (c == '.')
            continue;
        const bool blank = c == ' ' || c == '\t';
        if (blank && (plain.empty() || plain.back() == ' '))
            continue;
        plain += blank ? ' ' : (c >= 'A' && c <= 'Z') ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return std::string(trimmed(plain));
}

Error unknownUnit(std::string_view unit)
{
    if (unit.empty())
        return { ErrorCode::BadInput,
            "The amount has no unit: type one behind the number, such as 500g, 8 fl oz or 2 each." };
    if (unit.front() == '/')
        return { ErrorCode::BadInput, "Fractions are not read: type decimals, such as 0.5 for a half." };
    if (unit.front() >= '0' && unit.front() <= '9')
        return { ErrorCode::BadInput,
            "There is a blank inside the number: type the number in one, such as 1000 g." };
    return { ErrorCode::BadInput,
        inQuotes(unit)
            + " is not a unit known here: use g, kg, mg, lb, oz, ml, l, fl oz, pint, qt, gal, each, pair, m, "
              "cm, mm, ft or in." };
}

} // namespace

Amount amountOf(double value, Dimension dimension)
{
    assert(!std::isnan(value));
    return { std::llround(std::clamp(value * 1000.0, -mostMilli, mostMilli)), dimension };
}

Amount operator+(Amount a, Amount b)
{
    assert(a.dimension == b.dimension);
    return { a.milli + b.milli, a.dimension };
}

Amount operator-(Amount a, Amount b)
{
    assert(a.dimension == b.dimension);
    return { a.milli - b.milli, a.dimension };
}

Result<Amount> parseAmount(std::string_view text)
{
    if (trimmed(text).empty())
        return fail(ErrorCode::BadInput,
            "There is no amount: type a number and a unit, such as 500g, 8 fl oz or 2 each.");
    const auto number = leadingNumber(text);
    if (!number)
        return tl::unexpected(number.error());

    const std::string name = number->rest.size() > longestUnit ? std::string() : plainUnit(number->rest);
    const auto unit = std::find_if(units.begin(), units.end(), [&](const Unit& u) { return u.name == name; });
    if (unit == units.end())
        return tl::unexpected(unknownUnit(number->rest));
    if (number->value < 0)
        return fail(ErrorCode::BadInput, "An amount cannot be less than nothing: type it without the minus.");

    const double value = number->value * unit->inBase;
    if (value > mostBaseUnits)
        return fail(ErrorCode::BadInput,
            inQuotes(trimmed(text)) + " is more than any shop holds: look at the number and the unit again.");
    const Amount amount = amountOf(value, unit->dimension);
    if (amount.milli == 0 && number->value > 0)
        return fail(ErrorCode::BadInput,
            inQuotes(trimmed(text))
                + " is too little to keep count of: the least is 0.001 g, ml, m or piece.");
    return amount;
}

std::string_view baseUnit(Dimension dimension)
{
    switch (dimension) {
    case Mass:
        return "g";
    case Volume:
        return "ml";
    case Count:
        return "each";
    case Length:
        return "m";
    }
    return {};
}

std::optional<Dimension> dimensionOfUnit(std::string_view unit)
{
    for (const Dimension dimension : { Mass, Volume, Count, Length }) {
        if (unit == baseUnit(dimension))
            return dimension;
    }
    return std::nullopt;
}

std::optional<Amount> convert(Amount amount, Dimension to, std::optional<GramsPerMillilitre> density)
{
    if (amount.dimension == to)
        return amount;
    if (!density || !std::isfinite(density->value) || density->value <= 0)
        return std::nullopt;
    if (amount.dimension == Mass && to == Volume)
        return amountOf(amount.value() / density->value, to);
    if (amount.dimension == Volume && to == Mass)
        return amountOf(amount.value() * density->value, to);
    return std::nullopt;
}

} // namespace gw
