#pragma once

#include <optional>
#include <string>
#include <vector>

#include "demand/orderplan.h"
#include "demand/packchoice.h"
#include "demand/runoff.h"
#include "demand/usage.h"

namespace gw {

/// A material on its way to an order line: what was found out so far.
struct OrderDraft {
    const MaterialDemand* demand = nullptr;
    std::vector<const PackOffer*> offers; ///< that can be compared and come in time
    Days lead {}; ///< the longest of them
    UseForecast use;
    UseDistribution ahead; ///< use over delivery and review
    double usePerMonth = 0; ///< at least what goes with the partner's use
    Amount need;
    ShelfLimits limits;
    Runoff runoff;

    std::string leaderName; ///< of the partner whose needs set this one's, if any did
    double perLeaderUnit = 0;
    std::optional<Amount>
        matched; ///< what must be there to go with all of the partner, when that is over the need

    Amount gap; ///< need, or what matches the partner, less what is usable; not below zero
    Amount target; ///< of the gap, what would be used before it goes off
    std::optional<PackChoice> choice;

    Days untilUsedUp {}; ///< from arrival until the stock is used, first-to-expire
    double riskWithout() const { return 1 - ahead.cumulative(runoff.usable.value()); }
};

} // namespace gw
