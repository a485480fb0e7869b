#include "measure/temperature.h"

#include <cmath>

#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr double coldest = -90;
constexpr double hottest = 300;

/// The degree sign, the ordinal sign often typed for it, or "deg": none of them says which degrees.
std::string_view withoutDegreeSign(std::string_view unit)
{
    for (const std::string_view sign : { "\u00B0", "\u00BA", "degrees", "deg" }) {
        if (unit.starts_with(sign))
            return trimmed(unit.substr(sign.size()));
    }
    return unit;
}

} // namespace

Result<Celsius> parseTemperature(std::string_view text)
{
    if (trimmed(text).empty())
        return fail(ErrorCode::BadInput, "There is no temperature: type one such as 18C or 65F.");
    const auto number = leadingNumber(text);
    if (!number)
        return tl::unexpected(number.error());

    const std::string_view unit = withoutDegreeSign(number->rest);
    double value = number->value;
    if (unit.empty())
        return fail(ErrorCode::BadInput,
            "The temperature has no unit: type C or F behind the number, such as 18C or 65F.");
    if (unit == "F" || unit == "f")
        value = celsiusOf(value, UnitSystem::Us).value;
    else if (unit != "C" && unit != "c")
        return fail(ErrorCode::BadInput,
            inQuotes(unit) + " is not a unit of temperature known here: type C or F, such as 18C or 65F.");

    if (!(value >= coldest && value <= hottest))
        return fail(ErrorCode::BadInput,
            inQuotes(trimmed(text)) + " is no temperature a shop meets: it must lie between -90C and 300C.");
    return Celsius { value };
}

double degreesShown(Celsius temperature, UnitSystem system)
{
    return system == UnitSystem::Us ? temperature.value * 1.8 + 32 : temperature.value;
}

Celsius celsiusOf(double degrees, UnitSystem system)
{
    return Celsius { system == UnitSystem::Us ? (degrees - 32) / 1.8 : degrees };
}

std::string formatTemperature(Celsius temperature, UnitSystem system)
{
    const double shown = degreesShown(temperature, system);
    if (!std::isfinite(shown))
        return "not known";
    return numberWords(shown, 1) + (system == UnitSystem::Us ? " \u00B0F" : " \u00B0C");
}

} // namespace gw
