#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shop/shelf.h"

namespace gw {

/// What was used of a life up to a moment, low to high; 1 is all of it.
struct LifePoint {
    Moment at;
    Range<double> used;
};

/// One life clock against time, to be drawn as a band.
struct LifeTrack {
    bool sinceOpening = false; ///< the opened clock; else the sealed one
    std::vector<LifePoint> points; ///< in time order, where it is known; past asOf: where it stands now
    std::string missing; ///< why there are none, or why they end too soon; empty: neither
};

/// The air around a container between this step and the next.
struct AirStep {
    Moment from;
    PlaceId place; ///< empty when not known
    std::optional<Range<Celsius>> air; ///< lowest to highest; none: not known
    bool watched = false; ///< somebody watched half of the step or more; else a range is assumed
};

/// Something that happened to a container, or is printed on it.
struct LifeMark {
    enum class Kind { Arrived, Opened, Moved, Froze, TooHot, Passed, Failed, Retired, LabelDate, GoodUntil };
    Kind kind = Kind::Arrived;
    Moment at;
    std::optional<Moment> until; ///< of what went on for a while
    std::string text; ///< "Moved to Lean-to"
};

/// How much of a container's life is used, against time, with what its places did and what happened to it.
struct LifeStory {
    Moment from, to; ///< of the picture: what is past asOf is what comes if it stays where it is
    Moment asOf;
    std::vector<LifeTrack> tracks; ///< the one that decides first; none: time does not use it up
    std::vector<AirStep> air;
    std::optional<Range<Celsius>> keepBetween;
    std::vector<LifeMark> marks; ///< in time order
    PlaceId place; ///< where it stands now; empty when not known
    std::string placeName;
    Days watched { 0 }; ///< of the time it stood here up to asOf
    Days stood { 0 };
};

/// Errors: those of containerPage().
Result<LifeStory> lifeStory(const Shop& shop, const std::string& idOrLabel, Moment asOf);

} // namespace gw
