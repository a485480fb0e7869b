#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "ageing/climate.h"
#include "ageing/trace.h"
#include "shop/shop.h"

namespace gw {

/// The place of a name, as people type it. Errors: NotFound, naming the places there are.
Result<PlaceRecord> findPlace(const Shop& shop, const std::string& name);

/// One step of a picture of a place's temperature: lowest and highest between this step and the next.
struct TraceStep {
    Moment from;
    std::optional<Range<Celsius>> air; ///< none: nobody watched and nothing is assumed
    bool watched = false; ///< somebody watched half of the step or more; else a range is assumed, or none
};

/// A container that stands in a place, with what its label or class asks of the place.
struct StandsHere {
    ContainerId container;
    std::string label, materialName;
    std::optional<Range<Celsius>> keepBetween;
    Frost frost = Frost::Never;
    std::optional<Celsius> freezesAt; ///< for what frost harms
};

/// What frost there was in the air of a place, by its own readings. Frozen is -1 C or below, thawed 1 C or
/// above, as ReadingsQuestion has it.
struct AirFrost {
    int freezes = 0, thaws = 0;
    Days below { 0 }; ///< watched time below -1 C
    std::optional<Moment> last; ///< when the last freezing began
};

/// One place as it was from a moment to another.
struct PlaceClimate {
    PlaceRecord place;
    std::string followsName; ///< empty: goes with none
    Moment from, to;
    std::int64_t readings = 0; ///< of its own, from `from` to `to`
    std::optional<Moment> first, last; ///< of these
    std::optional<Reading> newest; ///< the newest reading of all up to `to`
    std::optional<Celsius> low, high; ///< of its own readings
    std::optional<Celsius> mean, kinetic; ///< of the watched time; mean kinetic temperature
    Days unwatched { 0 }; ///< of the time from `first` to `last`
    AirFrost frost;
    std::vector<TraceStep> trace; ///< even steps from `from` to `to`, at most 400
    std::vector<StandsHere> stands; ///< by material and label
};

/// A place up to a moment: from its first reading at the earliest, or `from`. With none at all, the year up
/// to then. Errors: NotFound.
Result<PlaceClimate> climateShown(
    const Shop& shop, const std::string& place, Moment asOf, std::optional<Moment> from = {});

/// Whether a place may be taken to be so, among the places there are. Errors: NotFound for the place it goes
/// with; BadInput for low above high, outside -60 to 80 C, more than 40 degrees warmer or colder, damped
/// outside 0 to 1, a place that would come to follow itself.
Result<void> placeMayBe(const std::vector<PlaceRecord>& places, const PlaceRecord& place);
/// Says what a place is taken to be where nobody watched, and which place it goes with. Errors: NotFound, and
/// those of placeMayBe().
Result<PlaceRecord> savePlaceClimate(
    Shop& shop, const std::string& place, const AssumedRanges& assumed, const std::optional<Follow>& follows);

} // namespace gw
