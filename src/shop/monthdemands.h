#pragma once

#include <string>
#include <vector>

#include "demand/orderplan.h"
#include "shop/shop.h"

namespace gw {

/// What would be if things came otherwise.
struct WhatIf {
    JobTypeId moreOf {}; ///< so many more of this a month; empty: of none
    double morePerMonth = 0;
    std::string lateSupplier {}; ///< what is from there takes so many days longer; empty: none
    double lateDays = 0;
};

/// What is known of every material's use, stock and packs, as a plan for the month that begins on a day takes
/// it: kinds of work with what the shop expects and what came, jobs planned, other use by month, what passes
/// today and what is on order. Errors: those of the store.
Result<std::vector<MaterialDemand>> monthDemands(
    const Shop& shop, const Catalogue& catalogue, Date monthStart, Moment now, const WhatIf& whatIf = {});

} // namespace gw
