#pragma once

#include <optional>
#include <vector>

#include "ageing/clocks.h"
#include "ageing/frost.h"

namespace gw {

/// The frost one container has been through, its parents' included.
struct Frosts {
    bool counted = false; ///< false for what frost does nothing to, and for resin, which crystallises instead
    std::vector<FrostEvent> events; ///< in time order, the running one last
    bool frozenNow = false;
    Warmth now;
    int unsettled = 0; ///< of the events: no passed bench test has answered for them since
    /// From when on it may have frozen with nobody watching, and no passed bench test has answered for it.
    std::optional<Moment> riskSince;
    bool placeKnown = true; ///< false when at some such moment nothing is known of the place
    bool everUnsure = false; ///< there was such time at all, whatever a test said since

    /// How often it froze; none when that is not known, or not counted.
    std::optional<int> count() const;
};
/// Without its warmth now, where it is not frozen, at a fraction of the time.
Frosts frostsOf(const AgeCase& item, ChillEnd now = ChillEnd::Warm);

/// What stands in the container at a moment.
Contents contentsAt(const History& history, const LifeFigures& figures, Moment at);

/// How long it stood, or may have stood, colder than a limit since heat and frost count again.
Below stoodBelow(const AgeCase& item, Celsius limit);

} // namespace gw
