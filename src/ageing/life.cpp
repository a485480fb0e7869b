#include "ageing/life.h"

#include <algorithm>
#include <cmath>

namespace gw {

namespace {

constexpr double gasConstant = 8.314462618e-3; // kJ/(mol K), CODATA 2018

} // namespace

bool agesByTemperature(const Rate& rate)
{
    return rate.activationEnergy ? *rate.activationEnergy > 0 : rate.q10 > 1;
}

double rawSpeedAt(Celsius temperature, const Rate& rate)
{
    if (!agesByTemperature(rate))
        return 1;
    if (rate.activationEnergy) {
        const double kelvin = temperature.value + kelvinOffset;
        const double reference = rate.reference.value + kelvinOffset;
        return std::exp(-*rate.activationEnergy / gasConstant * (1 / kelvin - 1 / reference));
    }
    return std::pow(rate.q10, (temperature.value - rate.reference.value) / 10);
}

double speedAt(Celsius temperature, const Rate& rate)
{
    const double raw = rawSpeedAt(temperature, rate);
    return rate.coldCredit ? raw : std::max(raw, 1.0);
}

} // namespace gw
