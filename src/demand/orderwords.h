#pragma once

#include <string>
#include <vector>

#include "demand/orderdraft.h"

namespace gw {

/// Why a line asks for what it asks for: use, need, stock and the choice of packs, with the figures.
std::string whyOrdered(const OrderDraft& draft, const PlanRequest& request);

/// Up to three significant figures, plain digits: "180", "1.23", "0.05".
std::string figure(double value);

} // namespace gw
