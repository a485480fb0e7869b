#pragma once

#include <string>
#include <vector>

#include "demand/orderdraft.h"

namespace gw {

/// Why a line asks for what it asks for: use, need, stock and the choice of packs, with the figures.
std::string whyOrdered(const OrderDraft& draft, const PlanRequest& request);

/// What to do about a delivery that would stand in the cold; begins with a blank.
std::string coldText(const ColdArrival& cold, const std::string& doorstep);

/// Up to three significant figures, plain digits: "180", "1.23", "0.05".
std::string figure(double value);

} // namespace gw
