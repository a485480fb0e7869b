#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "gluing/glueup.h"

/// One part of a candidate sorted by what may be done with it; nobody outside the room needs it.
namespace gw {

/// How a part's containers stand to the amount wanted.
enum class PartState {
    Covered, ///< the good ones hold enough
    CoveredOnceTested, ///< enough with those to be tested first
    CoveredPerhaps, ///< enough only with those of which nothing is known
    Short, ///< not enough even with all of these
    Spent, ///< there is some, none of it may be used
    None, ///< nothing there
};

struct PartStock {
    const StockPart* part = nullptr;
    std::int64_t wanted = 0; ///< thousandths of the part's own unit
    std::vector<const StockItem*> good, toTest, unknown, spent; ///< each in the order to use them
    std::int64_t goodLeft = 0, toTestLeft = 0, unknownLeft = 0; ///< thousandths

    PartState state() const;
    std::int64_t shortfall() const { return goodLeft >= wanted ? 0 : wanted - goodLeft; } ///< of good stock
};

/// Sorts a part's containers; empty ones do not count. A container counted in another unit is not known,
/// whatever its verdict, and so is one called good past the moment it was good until.
PartStock sortPart(const StockPart& part, Amount need, Moment now);

/// Which containers give the amount wanted, in order: the first to go off first, of two that go off on one
/// day the opened. When the good ones hold too little, all that they hold.
std::vector<Take> takesOf(const PartStock& stock);

/// Labels of the containers that, beside the good ones, make up the amount: "A and B".
std::string labelsToReach(const PartStock& stock, const std::vector<const StockItem*>& items);

} // namespace gw
