#pragma once

#include <vector>

#include "exchange/calendar.h"
#include "shop/shop.h"

namespace gw {

/// The days of a shop: until when each container is good, by when to order what runs down, when deliveries
/// are due, and work planned. Ids are made of what they are about, so the same thing always has the same.
/// Ordered by day.
Result<std::vector<CalendarDay>> shopCalendar(const Shop& shop, Moment asOf);

} // namespace gw
