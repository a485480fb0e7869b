#pragma once

#include <string>
#include <vector>

#include "shop/shop.h"
#include "store/orderrecords.h"

namespace gw {

/// Work with a date, as a list shows it.
struct PlannedJob {
    PlannedJobRecord record;
    std::string jobType; ///< its name
    bool overdue = false; ///< its day is over and nobody said it is done
};

/// What a person says of work to come.
struct PlannedDraft {
    std::string jobType; ///< key or name
    Date day;
    int pieces = 1; ///< 1 to 1000
    std::string piece {}; ///< the client's piece
};

/// The open ones, the next first. With all: those done or dropped too.
Result<std::vector<PlannedJob>> plannedWork(const Shop& shop, Moment now, bool all = false);
/// Errors: NotFound for the job type, naming those there are; BadInput for a number or a day that cannot be.
Result<PlannedJob> planJob(Shop& shop, const PlannedDraft& draft, Moment now);
/// Says one is done, dropped, or open again; its id or the beginning of it. Errors: NotFound; Conflict when
/// several begin so.
Result<PlannedJob> setPlanned(Shop& shop, const std::string& id, PlannedState state, Moment now);

} // namespace gw
