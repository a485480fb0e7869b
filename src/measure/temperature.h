#pragma once

#include <compare>
#include <string>
#include <string_view>

#include "measure/amount.h"
#include "measure/error.h"

namespace gw {

struct Celsius {
    double value = 0;
    friend auto operator<=>(const Celsius&, const Celsius&) = default;
};

inline constexpr double kelvinOffset = 273.15;

/// "18C", "18 °C", "65F", "-3.5 c". Errors: BadInput for no unit, no number, or outside -90 to 300 C.
Result<Celsius> parseTemperature(std::string_view text);

/// The figure on the person's scale, and back.
double degreesShown(Celsius temperature, UnitSystem system);
Celsius celsiusOf(double degrees, UnitSystem system);

/// "18 °C" or "64 °F"; one decimal only when it is not zero.
std::string formatTemperature(Celsius temperature, UnitSystem system = UnitSystem::Metric);

} // namespace gw
