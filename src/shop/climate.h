#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ageing/tonight.h"
#include "exchange/readingsfile.h"
#include "shop/shop.h"

namespace gw {

/// The place of a name, as people type it. Errors: NotFound, naming the places there are.
Result<PlaceRecord> findPlace(const Shop& shop, const std::string& name);

/// What was made of a logger's file.
struct ReadingsImport {
    PlaceRecord place;
    std::int64_t rows = 0; ///< of the file, below its header
    std::int64_t added = 0;
    std::int64_t alreadyThere = 0; ///< the same reading stood there already
    std::int64_t different = 0; ///< another reading stands at that second: the first stays
    std::int64_t setAside = 0;
    std::vector<SetAside> listed; ///< the first 200 set aside, with line and reason
    std::int64_t outOfOrder = 0, humidityDropped = 0;
    std::optional<Moment> from, to; ///< earliest and latest reading of the file
    std::string layout; ///< how the file was read, in words
    std::vector<Doubt> doubts; ///< what the file left open and how it was taken
    bool cancelled = false; ///< nothing was kept
    std::string said; ///< what was kept and what was not, for the screen
};

/// How a logger's file is written, with the shop's own zone where it names none; to ask before importing.
Result<ReadingsLook> lookAtReadingsFor(
    const Shop& shop, const std::string& path, const ReadingsChoices& choices, Moment now);

/// Takes a logger's file into a place. All of it is one transaction: an import that is cut off or cancelled
/// leaves nothing. Errors: NotFound; those of lookAtReadings and readReadings; BadInput for a doubt that must
/// be answered first, naming the option that settles it.
Result<ReadingsImport> importReadings(Shop& shop, const std::string& place, const std::string& path,
    const ReadingsChoices& choices, Moment now, const ReadingsProgress& progress = {});

/// The low and high of one day, read off a min/max thermometer: two readings, at the usual hours of the day's
/// extremes in the shop's zone (05:00 and 15:00; common practice, no source), or now where that is still to
/// come today. Errors: NotFound, BadInput (a day to come, before 1990, low above high, outside -60 to 80 C),
/// Conflict when others were typed for that day.
struct LowHighTyped {
    PlaceRecord place;
    ReadingsAdded readings;
    std::string said;
};
Result<LowHighTyped> typeLowHigh(
    Shop& shop, const std::string& place, Date day, Celsius low, Celsius high, Moment now);

/// The shop's time zone, an IANA id: the setting "shop_zone", else the machine's own; "UTC" for lack of one.
std::string shopZone(const Shop& shop);

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

/// A container that a cold night would harm.
struct ColdContainer {
    ContainerId container;
    std::string label, materialName;
    Amount left;
    TonightRisk risk;
    std::string text; ///< what would become of it, when, and what to do
};
struct ColdPlace {
    PlaceId place; ///< empty: where it stands is not known
    std::string name;
    std::vector<ColdContainer> containers; ///< the most urgent first
};
struct Tonight {
    Moment asOf;
    Celsius low;
    std::vector<ColdPlace> places; ///< the one with the most urgent first; none: nothing to bring in
    std::string said; ///< the whole in one sentence
};
/// What must come in before a night of so low a temperature: in one place, or everywhere with an empty name.
/// What is retired or used up is not looked at. Errors: NotFound; BadInput outside -60 to 40 C.
Result<Tonight> tonight(const Shop& shop, const std::string& place, Celsius low, Moment asOf);
/// The same for several places, each with its own low, from one look at the shelf: an answer for each, in
/// their order.
Result<std::vector<Tonight>> tonight(
    const Shop& shop, const std::vector<std::pair<PlaceId, Celsius>>& lows, Moment asOf);
/// All of some nights' containers with the names of their places, the most urgent first.
std::vector<std::pair<std::string, ColdContainer>> mostUrgentFirst(const std::vector<Tonight>& nights);

/// Keeps tonight's low for a place, so that Today says what to bring in, until 24 h later; none takes it
/// back. Errors: as tonight().
Result<void> expectLow(Shop& shop, const std::string& place, std::optional<Celsius> low, Moment now);
/// The low still expected at a moment in a place; none: nobody said.
Result<std::optional<Celsius>> expectedLow(const Shop& shop, const PlaceId& place, Moment asOf);

/// Whether a place may be taken to be so, among the places there are. Errors: NotFound for the place it goes
/// with; BadInput for low above high, outside -60 to 80 C, more than 40 degrees warmer or colder, damped
/// outside 0 to 1, a place that would come to follow itself.
Result<void> placeMayBe(const std::vector<PlaceRecord>& places, const PlaceRecord& place);
/// Says what a place is taken to be where nobody watched, and which place it goes with. Errors: NotFound, and
/// those of placeMayBe().
Result<PlaceRecord> savePlaceClimate(
    Shop& shop, const std::string& place, const AssumedRanges& assumed, const std::optional<Follow>& follows);

} // namespace gw
