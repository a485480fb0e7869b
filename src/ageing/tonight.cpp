#include "ageing/tonight.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

namespace gw {

namespace {

ColdHarm harmOf(const TonightRisk& risk, const LifeFigures& figures, int frostsSoFar)
{
    if (risk.hoursToEvent && figures.frost == Frost::Harms)
        return frostsSoFar < figures.freezeTolerance.value_or(0) ? ColdHarm::ComesBack : ColdHarm::Spoils;
    if (risk.hoursToEvent && figures.frost == Frost::Recoverable)
        return ColdHarm::ComesBack;
    return risk.belowLimit ? ColdHarm::BelowLimit : ColdHarm::None;
}

} // namespace

TonightRisk tonightRisk(
    const Contents& contents, const Warmth& now, Celsius low, const LifeFigures& figures, int frostsSoFar)
{
    const Response response = responseOf(contents);
    const double freezes = response.freezesAt.value;
    const double degreesBelow = freezes - low.value;
    TonightRisk risk;
    risk.belowLimit = figures.keepBetween && low < figures.keepBetween->low;
    if (figures.frost != Frost::Never && !figures.crystallisesBetween) {
        const double above = now.temperature ? std::max(0.0, now.temperature->value - freezes) : 0;
        const bool frozenNow = now.frozenShare > countedShare || now.frozenSince;
        if (above <= 0 && (degreesBelow > 0 || now.frozenShare > 0))
            risk.hoursToFreezing = 0;
        else if (degreesBelow > 0)
            risk.hoursToFreezing = response.thawed.count() * std::log1p(above / degreesBelow);
        if (frozenNow)
            risk.hoursToEvent = 0;
        else if (degreesBelow > 0)
            risk.hoursToEvent = *risk.hoursToFreezing
                + std::max(0.0, countedShare - now.frozenShare) * response.latent / degreesBelow;
    }
    risk.harm = harmOf(risk, figures, frostsSoFar);
    return risk;
}

bool moreUrgent(const TonightRisk& a, const TonightRisk& b)
{
    constexpr double never = std::numeric_limits<double>::infinity();
    return std::tuple(a.harm, a.hoursToEvent.value_or(never), a.hoursToFreezing.value_or(never))
        < std::tuple(b.harm, b.hoursToEvent.value_or(never), b.hoursToFreezing.value_or(never));
}

} // namespace gw
