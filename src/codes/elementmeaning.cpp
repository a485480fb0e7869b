#include "codes/elementmeaning.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <string_view>

#include "codes/labeldate.h"

namespace gw {

namespace {

struct Measure {
    std::string_view family; ///< the first three digits of the identifier
    double inBase; ///< how many g, ml or m one of its unit is
    Dimension dimension;
};

// Exact by definition, NIST SP 811 appendix B.8: pound 453.592 37 g, troy ounce 31.103 476 8 g, inch 25.4 mm,
// US gallon 231 in3. Fluid ounces, quarts and gallons of the identifiers 357n, 360n, 361n are the US ones.
constexpr double cubicInch = 2.54 * 2.54 * 2.54;
constexpr double gallon = 231 * cubicInch;

constexpr std::array measures {
    Measure { "310", 1000, Dimension::Mass },
    Measure { "320", 453.59237, Dimension::Mass },
    Measure { "356", 31.1034768, Dimension::Mass },
    Measure { "315", 1000, Dimension::Volume },
    Measure { "316", 1e6, Dimension::Volume },
    Measure { "357", gallon / 128, Dimension::Volume },
    Measure { "360", gallon / 4, Dimension::Volume },
    Measure { "361", gallon, Dimension::Volume },
    Measure { "364", cubicInch, Dimension::Volume },
    Measure { "365", 1728 * cubicInch, Dimension::Volume },
    Measure { "366", 46656 * cubicInch, Dimension::Volume },
    Measure { "311", 1, Dimension::Length },
    Measure { "321", 0.0254, Dimension::Length },
    Measure { "322", 0.3048, Dimension::Length },
    Measure { "323", 0.9144, Dimension::Length },
};

double whole(std::string_view digits)
{
    double value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return value;
}

const Element* find(const std::vector<Element>& elements, std::string_view ai)
{
    const auto found
        = std::find_if(elements.begin(), elements.end(), [&](const Element& e) { return e.ai == ai; });
    return found == elements.end() ? nullptr : &*found;
}

std::optional<Date> dateOf(
    const std::vector<Element>& elements, std::string_view ai, DayZero dayZero, int currentYear)
{
    const Element* element = find(elements, ai);
    if (!element)
        return std::nullopt;
    const auto date = labelDate(std::string_view(element->value).substr(0, 6), dayZero, currentYear);
    return date ? std::optional(*date) : std::nullopt;
}

/// The item the code is about: itself, what is in it, or what it is a piece of.
std::optional<Gtin> itemOf(const std::vector<Element>& elements)
{
    for (const std::string_view ai : { "01", "02", "03", "8006", "8026" }) {
        if (const Element* element = find(elements, ai))
            return Gtin { element->value.substr(0, 14) };
    }
    return std::nullopt;
}

} // namespace

std::optional<Amount> labelAmount(const Element& element)
{
    if (element.ai == "30" || element.ai == "37")
        return pieces(whole(element.value));
    if (element.ai.size() != 4)
        return std::nullopt;
    const std::string_view family = std::string_view(element.ai).substr(0, 3);
    const auto measure = std::find_if(
        measures.begin(), measures.end(), [&](const Measure& m) { return m.family == family; });
    if (measure == measures.end())
        return std::nullopt;
    constexpr std::array powers { 1.0, 10.0, 100.0, 1e3, 1e4, 1e5 };
    const auto decimals = static_cast<std::size_t>(element.ai[3] - '0');
    if (decimals >= powers.size())
        return std::nullopt;
    return amountOf(whole(element.value) * measure->inBase / powers[decimals], measure->dimension);
}

void giveMeaning(Code& code, int currentYear)
{
    const auto textOf = [&](std::string_view ai) {
        const Element* element = find(code.elements, ai);
        return element ? element->value : std::string();
    };
    if (!code.gtin)
        code.gtin = itemOf(code.elements);
    code.lot = textOf("10");
    code.serial = textOf("21");
    code.made = dateOf(code.elements, "11", DayZero::FirstOfMonth, currentYear);
    if (!code.made)
        code.made = dateOf(code.elements, "8008", DayZero::Refused, currentYear);
    code.packed = dateOf(code.elements, "13", DayZero::FirstOfMonth, currentYear);
    code.bestBefore = dateOf(code.elements, "15", DayZero::LastOfMonth, currentYear);
    code.useBy = dateOf(code.elements, "17", DayZero::LastOfMonth, currentYear);
    if (!code.useBy)
        code.useBy = dateOf(code.elements, "7003", DayZero::Refused, currentYear);

    if (const Element* inside = find(code.elements, "37"); inside && whole(inside->value) >= 1)
        code.itemsInside = static_cast<int>(whole(inside->value));
    for (const Element& element : code.elements) {
        const auto amount = labelAmount(element);
        if (!amount || std::find(code.amounts.begin(), code.amounts.end(), *amount) != code.amounts.end())
            continue;
        if (amount->milli > 0)
            code.amounts.push_back(*amount);
        else
            code.warnings.push_back(
                "The code gives an amount of nothing in (" + element.ai + "): type what the label says.");
    }
}

} // namespace gw
