#pragma once

#include <optional>
#include <string>

#include "demand/coldarrival.h"
#include "shop/shop.h"

namespace gw {

/// The place deliveries wait in, as the shop said; empty when it did not.
Result<std::string> doorstepName(const Shop& shop);
/// Says it; an empty name takes it back. Errors: NotFound.
Result<void> setDoorstep(Shop& shop, const std::string& place);

/// How cold it usually gets in a place in each week of the year after a moment: the coldest of that week in
/// the last three years as far as it was read there, else the usual low of that quarter. Errors: NotFound.
Result<Doorstep> doorstepOf(
    const Shop& shop, const Catalogue& catalogue, const std::string& place, Moment now);

} // namespace gw
