#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "exchange/readingsfile.h"
#include "shop/shop.h"

namespace gw {

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

} // namespace gw
