#pragma once

#include <optional>

#include "ageing/contents.h"
#include "ageing/frost.h"
#include "ageing/life.h"

namespace gw {

/// What a cold night would do to a container, worst first.
enum class ColdHarm {
    Spoils, ///< freezes, more often than the label vouches for
    ComesBack, ///< freezes, and comes back by warming, or the label vouches for it
    BelowLimit, ///< does not freeze, but stands below its storage limit
    None
};

struct TonightRisk {
    ColdHarm harm = ColdHarm::None;
    /// Until the contents reach their freezing point, 0 when they are there; none: not at that temperature.
    std::optional<double> hoursToFreezing;
    /// Until they would count as frozen, 0 when they do; none: not at that temperature.
    std::optional<double> hoursToEvent;
    bool belowLimit = false; ///< the coming low is below the storage limit
};

/// The contents as they are now in air that is at the coming low from now on and stays there: sooner than any
/// real night, which has to cool down first. A warmth not known counts as the freezing point. frostsSoFar:
/// what it has been through already.
TonightRisk tonightRisk(const Contents& contents, const Warmth& now, Celsius low, const LifeFigures& figures,
    int frostsSoFar = 0);

/// The order to bring things in: what is spoiled first, and of those what freezes soonest.
bool moreUrgent(const TonightRisk& a, const TonightRisk& b);

} // namespace gw
