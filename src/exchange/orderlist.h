#pragma once

#include <string>

#include "demand/orderplan.h"
#include "measure/error.h"

class QString;

namespace gw {

/// An order plan as a table (RFC 4180), to send or to open in a spreadsheet. One line for each pack, grouped
/// as in the plan: supplier, material, pack, count, unit_price, line_price, currency, need, usable, ordered,
/// latest_use, why. Something needed that no pack is on offer for has a line with an empty pack and a count
/// of 0, so that it is not lost. A price that is not known is empty. Amounts carry their unit.
std::string orderCsv(const OrderPlan& plan);

/// The same into a file, whole or not at all. Errors: FileUnwritable, StoreFull.
Result<void> writeOrderCsv(const OrderPlan& plan, const QString& path);

} // namespace gw
