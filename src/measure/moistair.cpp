#include "measure/moistair.h"

#include <cmath>

namespace gw {

namespace {

// Alduchov and Eskridge, Improved Magnus form approximation of saturation vapor pressure, J. Appl. Meteor. 35
// (1996).
constexpr double magnusPascal = 610.94;
constexpr double magnusSlope = 17.625;
constexpr double magnusOffset = 243.04;

/// NaN fails both comparisons, so it is never within.
bool within(double value, double low, double high) { return value >= low && value <= high; }

tl::unexpected<Error> badHumidity()
{
    return fail(
        ErrorCode::BadInput, "The humidity of the air must be from 0 to 100 %: read the instrument again.");
}

} // namespace

Result<WoodMoisture> equilibriumMoisture(Celsius air, RelativeHumidity humidity)
{
    if (!within(air.value, -40, 132.5))
        return fail(ErrorCode::BadInput,
            "Wood moisture can be estimated for air from -40 to 132 C only: read the thermometer again.");
    if (!within(humidity.percent, 0, 100))
        return badHumidity();

    const double t = air.value;
    const double w = 349 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * humidity.percent / 100;
    const double once = k1 * kh;
    const double twice = k1 * k2 * kh * kh;
    return WoodMoisture { 1800 / w * (kh / (1 - kh) + (once + 2 * twice) / (1 + once + twice)) };
}

bool inHandbookTable(Celsius air, RelativeHumidity humidity)
{
    return within(air.value, -1.2, 132.3) && within(humidity.percent, 5, 95);
}

Result<Celsius> dewPoint(Celsius air, RelativeHumidity humidity)
{
    if (!within(air.value, -40, 60))
        return fail(ErrorCode::BadInput,
            "The dew point can be told for air from -40 to 60 C only: read the thermometer again.");
    if (!within(humidity.percent, 0, 100))
        return badHumidity();
    if (humidity.percent == 0)
        return fail(
            ErrorCode::BadInput, "Air with no moisture at all has no dew point: read the hygrometer again.");

    const double t = air.value;
    const double g = std::log(humidity.percent / 100) + magnusSlope * t / (magnusOffset + t);
    return Celsius { magnusOffset * g / (magnusSlope - g) };
}

double saturationPressurePascal(Celsius air)
{
    return magnusPascal * std::exp(magnusSlope * air.value / (magnusOffset + air.value));
}

} // namespace gw
