#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/amount.h"
#include "measure/id.h"
#include "measure/moment.h"
#include "measure/money.h"

/// What the store keeps of orders and of work to come, as plain values.
namespace gw {

using OrderListId = Id<struct OrderListTag>;
using OrderLineId = Id<struct OrderLineTag>;
using OrderEventId = Id<struct OrderEventTag>;
using PlannedJobId = Id<struct PlannedJobTag>;

/// One kind of pack on an order list, as the list was made.
struct OrderLineRecord {
    OrderLineId id;
    MaterialId material;
    PackId pack;
    std::string packName; ///< "500 g", as shown then
    std::string supplier;
    int pieces = 1;
    Amount amount; ///< of one pack, in the material's own unit
    Amount need, usable; ///< of the material, as the list had them
    std::optional<Money> price; ///< of one
    double leadDays = 0;
    std::string why;
};

/// A list as it was made; never changed.
struct OrderListRecord {
    OrderListId id;
    Date month; ///< its first day
    Moment made;
    double servicePercent = 95;
    std::vector<OrderLineRecord> lines;
};

enum class OrderEventKind {
    Counted, ///< another number is wanted before it is ordered
    Ordered,
    Recalled, ///< it was not ordered after all
    Closed, ///< what has not come will not come any more
};
std::string_view word(OrderEventKind kind);

/// What became of a line; never changed, never removed.
struct OrderEventRecord {
    OrderEventId id; ///< made by the device
    OrderLineId line;
    OrderEventKind kind = OrderEventKind::Ordered;
    std::optional<int> pieces; ///< counted
    Moment at, recorded;
    std::string device;
};

enum class PlannedState { Open, Done, Dropped };
std::string_view word(PlannedState state);

/// Work that is planned with a date.
struct PlannedJobRecord {
    PlannedJobId id;
    JobTypeId type;
    Date day;
    int pieces = 1; ///< so many of the job type, 1 to 1000
    std::string piece; ///< the client's piece, if it was said
    PlannedState state = PlannedState::Open;
};

} // namespace gw
