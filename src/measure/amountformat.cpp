#include "measure/amount.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>

#include "measure/number.h"

namespace gw {

namespace {

// The same exact definitions as in amount.cpp: NIST SP 811, appendix B.8.
constexpr double gramsPerPound = 453.59237;
constexpr double millilitresPerGallon = 3785.411784;
constexpr double metresPerFoot = 0.3048;

/// Whole from a hundred on, one decimal from ten, two from one, three below: what a shop scale can show.
std::int64_t roundedForShow(std::int64_t milli)
{
    const std::int64_t step = milli < 1000 ? 1 : milli < 10'000 ? 10 : milli < 100'000 ? 100 : 1000;
    return (milli + step / 2) / step * step;
}

std::string metricText(std::int64_t milli, Dimension dimension)
{
    const std::int64_t shown = roundedForShow(milli);
    const double value = static_cast<double>(shown) / 1000.0;
    switch (dimension) {
    case Dimension::Mass:
        return shown >= 1'000'000 ? numberWords(value / 1000, 3) + " kg" : numberWords(value, 3) + " g";
    case Dimension::Volume:
        return shown >= 1'000'000 ? numberWords(value / 1000, 3) + " l" : numberWords(value, 3) + " ml";
    case Dimension::Length:
        return numberWords(value, 3) + " m";
    case Dimension::Count:
        break;
    }
    return numberWords(value, 3) + (shown == 1000 ? " piece" : " pieces");
}

/// One decimal from one unit on, as US labels print it; below that as many as the first two figures need.
std::string usNumber(double value)
{
    if (value == 0 || value >= 0.95)
        return numberWords(value, 1, 1);
    const int leadingZeros = static_cast<int>(-std::floor(std::log10(value))) - 1;
    return numberWords(value, std::clamp(leadingZeros + 2, 2, 12), 1);
}

std::string usText(std::int64_t milli, Dimension dimension)
{
    const double value = static_cast<double>(milli) / 1000.0;
    switch (dimension) {
    case Dimension::Mass: {
        const double pounds = value / gramsPerPound;
        return pounds < 0.997 ? usNumber(pounds * 16) + " oz" : usNumber(pounds) + " lb";
    }
    case Dimension::Volume: {
        const double gallons = value / millilitresPerGallon;
        if (gallons < 0.2496)
            return usNumber(gallons * 128) + " fl oz";
        return gallons < 0.987 ? usNumber(gallons * 4) + " qt" : usNumber(gallons) + " gal";
    }
    case Dimension::Length: {
        const double feet = value / metresPerFoot;
        return feet < 0.996 ? usNumber(feet * 12) + " in" : usNumber(feet) + " ft";
    }
    case Dimension::Count:
        break;
    }
    return metricText(milli, dimension);
}

} // namespace

std::string formatAmount(Amount amount, UnitSystem system)
{
    const std::int64_t size = std::abs(amount.milli);
    const std::string sign = amount.milli < 0 ? "-" : "";
    return sign
        + (system == UnitSystem::Us ? usText(size, amount.dimension) : metricText(size, amount.dimension));
}

} // namespace gw
