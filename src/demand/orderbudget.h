#pragma once

#include <string>
#include <vector>

#include "demand/orderdraft.h"
#include "demand/partners.h"

namespace gw {

/// Which drafts a budget leaves for the next list. They are taken in order of what their money keeps from
/// being short, partners together, each as long as it fits. Lines without a price, and those in another
/// currency than the budget's, cannot be weighed: they stay, with a note. None is left without a budget.
std::vector<bool> leftByBudget(const std::vector<OrderDraft>& drafts, const std::vector<PartnerLink>& links,
    const PlanRequest& request, std::vector<std::string>& notes);

} // namespace gw
