#pragma once

#include <optional>
#include <vector>

#include "demand/orderplan.h"

namespace gw {

/// Over what time stock must serve.
struct ServingTime {
    Moment now;
    Days wait {}; ///< until the list is for: use goes on meanwhile
    Days span {}; ///< from then until the next list's goods are in
};

/// What stock gives when it is used at an even rate, first to expire first.
struct Runoff {
    Amount usable; ///< still passing when it is needed within the span
    Amount past; ///< will be past before it is needed
    std::optional<Moment> firstPast; ///< when the first of that is past
};

/// A lot that outlasts the span counts whole; one that will be past within it counts for what is used of it
/// before, and use in the wait counts for nothing. An unopened container gives at most what is used in the
/// life it has once opened, when that life is shorter than wait and span. Lots of another dimension must have
/// been left out. More stock never gives less.
Runoff runOff(std::vector<UsableLot> stock, Dimension dimension, const ServingTime& time, double usePerDay,
    std::optional<Days> openedLife);

} // namespace gw
