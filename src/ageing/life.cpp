#include "ageing/life.h"

#include <algorithm>
#include <cmath>

#include <boost/math/special_functions/expint.hpp>

namespace gw {

namespace {

constexpr double gasConstant = 8.314462618e-3; // kJ/(mol K), CODATA 2018

/// exp(theta/Tref - theta/T), written so that near the reference no digits are lost.
double arrhenius(double kelvin, double theta, double reference)
{
    return std::exp(theta * (kelvin - reference) / (kelvin * reference));
}

/// 1 - x e^x E1(x) for x > 0, E1 being the exponential integral.
double tailShare(double x)
{
    // From 40 on the asymptotic series 1/x - 2!/x^2 + 3!/x^3 ... is exact to the last digit and loses none.
    constexpr double asymptotic = 40;
    if (x < asymptotic)
        return 1 - x * std::exp(x) * boost::math::expint(1, x);
    double sum = 0;
    double term = 1 / x;
    for (int n = 2; n < asymptotic && std::abs(term) > 1e-17 * sum; ++n) {
        sum += term;
        term *= -n / x;
    }
    return sum;
}

/// Integral of exp(-(Ea/R)(1/T - 1/Tref)) dT up to T: with theta = Ea/R it is
/// T exp(theta/Tref - theta/T) (1 - x e^x E1(x)), x = theta/T.
double arrheniusIntegral(double kelvin, double theta, double reference)
{
    return kelvin * arrhenius(kelvin, theta, reference) * tailShare(theta / kelvin);
}

double meanArrhenius(Celsius a, Celsius b, const Rate& rate)
{
    const double theta = *rate.activationEnergy / gasConstant;
    const double reference = rate.reference.value + kelvinOffset;
    const double middle = (a.value + b.value) / 2 + kelvinOffset;
    const double half = (b.value - a.value) / 2;
    // Over a small piece the difference of two integrals would lose its digits; there the Taylor series about
    // the middle is exact: its first term left out is below 1e-16 for pieces this small.
    constexpr double small = 5e-3;
    const double c = theta / (middle * middle);
    const double x = half * c;
    if (std::abs(x) < small && std::abs(half) < small * middle) {
        const double u = half / middle;
        const double second = x * x - 2 * x * u;
        const double fourth = x * x * (x * x - 12 * x * u + 36 * u * u) - 24 * x * u * u * u;
        return arrhenius(middle, theta, reference) * (1 + second / 6 + fourth / 120);
    }
    return (arrheniusIntegral(middle + half, theta, reference)
               - arrheniusIntegral(middle - half, theta, reference))
        / (2 * half);
}

double meanQ10(Celsius a, Celsius b, const Rate& rate)
{
    const double middle = rawSpeedAt(Celsius { (a.value + b.value) / 2 }, rate);
    const double x = std::log(rate.q10) / 10 * (b.value - a.value) / 2;
    return x == 0 ? middle : middle * std::sinh(x) / x;
}

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
        return arrhenius(kelvin, *rate.activationEnergy / gasConstant, reference);
    }
    return std::pow(rate.q10, (temperature.value - rate.reference.value) / 10);
}

double meanRawSpeed(Celsius a, Celsius b, const Rate& rate)
{
    if (!agesByTemperature(rate))
        return 1;
    return rate.activationEnergy ? meanArrhenius(a, b, rate) : meanQ10(a, b, rate);
}

double meanSpeed(Celsius a, Celsius b, const Rate& rate)
{
    if (rate.coldCredit || !agesByTemperature(rate))
        return meanRawSpeed(a, b, rate);
    const Celsius low = std::min(a, b);
    const Celsius high = std::max(a, b);
    if (low >= rate.reference)
        return meanRawSpeed(low, high, rate);
    if (high <= rate.reference)
        return 1;
    const double above = (high.value - rate.reference.value) / (high.value - low.value);
    return 1 + above * (meanRawSpeed(rate.reference, high, rate) - 1);
}

double speedAt(Celsius temperature, const Rate& rate)
{
    const double raw = rawSpeedAt(temperature, rate);
    return rate.coldCredit ? raw : std::max(raw, 1.0);
}

} // namespace gw
