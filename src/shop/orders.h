#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "shop/acts.h"
#include "shop/work.h"
#include "store/orderrecords.h"

namespace gw {

enum class OrderState {
    Made, ///< on the list, not ordered yet
    TakenOff, ///< none of it is wanted any more
    Ordered,
    PartArrived,
    Arrived,
    Late, ///< the supplier's time is over and not all has come
    Closed, ///< what had not come will not
};
std::string_view word(OrderState state); ///< "made", "taken_off", "ordered", "part_arrived" ...
std::string_view spoken(OrderState state); ///< "on the list", "part arrived" ...

struct KeptOrderLine {
    OrderLineRecord record;
    std::string materialName;
    int wanted = 0; ///< pieces
    int arrived = 0; ///< booked in since it was ordered
    OrderState state = OrderState::Made;
    std::optional<Moment> orderedAt;
    std::optional<Date> due; ///< by the supplier's usual time
    int lateDays = 0;
};

struct KeptOrderList {
    OrderListId id;
    Date month;
    Moment made;
    double servicePercent = 95;
    std::vector<KeptOrderLine> lines;
};

/// Keeps a list as it was made, with the packs to buy. Errors: Refused when it has none.
Result<OrderListId> keepOrderList(Shop& shop, const OrderPlan& plan, const OrderAsked& asked, Moment now);

/// The lists there are, newest first, as of a moment. What is booked in of a pack counts for the line ordered
/// first that still wants some, from the day it was ordered on; an arrival that is undone counts no more.
Result<std::vector<KeptOrderList>> keptOrderLists(const Shop& shop, Moment asOf);

/// Says what became of lines: counted needs a number (0 takes it off). All or nothing. Errors: NotFound;
/// Refused for what does not follow (counting what is ordered, recalling what is not ...); BadInput.
Result<void> changeOrder(Shop& shop, const std::vector<OrderLineId>& lines, OrderEventKind kind,
    std::optional<int> pieces, ActTime time);

/// The lines of a list (by id, or by a month: the newest of it) and a supplier; an empty supplier: of all.
/// Errors: NotFound.
Result<std::vector<KeptOrderLine>> orderLinesOf(
    const Shop& shop, const std::string& list, const std::string& supplier, Moment asOf);

/// What is ordered and has not come.
struct OnOrder {
    Amount amount; ///< in the material's own unit
    Date due;
    bool late = false;
};
Result<std::multimap<MaterialId, OnOrder>> onOrder(const Shop& shop, Moment asOf);

/// A list against what happened in its month.
struct OrderHappened {
    MaterialId material;
    std::string materialName;
    Amount need; ///< what was asked for to be as sure as asked
    Amount used; ///< in the month itself, so far
    int wanted = 0, arrived = 0; ///< packs
    std::string text; ///< all of it in a sentence
};
Result<std::vector<OrderHappened>> whatHappened(const Shop& shop, const KeptOrderList& list, Moment asOf);

} // namespace gw
