#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "ageing/readingsfigures.h"
#include "ageing/trace.h"
#include "exchange/readingslook.h"
#include "measure/error.h"
#include "measure/moment.h"

class QString;

namespace gw {

/// A row that was not taken.
struct SetAside {
    int line = 0; ///< the line of the file that it starts on
    std::string text; ///< the row as written, cut when long
    std::string why; ///< ends with a full stop
};

struct ReadingsRead {
    std::int64_t rows = 0; ///< below the header, empty ones left out
    std::int64_t taken = 0; ///< of them, given to the caller
    std::int64_t setAside = 0;
    std::vector<SetAside> listed; ///< the first 200 set aside, in the order of their lines
    std::int64_t outOfOrder = 0; ///< rows that run against the file's own order
    std::int64_t repeated = 0; ///< rows with the time of the row before
    std::int64_t humidityDropped = 0; ///< humidity that was no number or outside 0 to 100 %
    std::optional<Moment> from, to; ///< earliest and latest taken
    bool daily = false;
    bool cancelled = false; ///< progress said stop: what was taken so far is there
};

using TakeReadings = std::function<Result<void>(std::span<const Reading>)>; ///< an error ends the reading
using TakeDays = std::function<Result<void>(std::span<const DayReading>)>;
using ReadingsProgress = std::function<bool(std::int64_t bytesDone, std::int64_t bytesTotal)>;

/// Reads a file once through, in memory that does not grow with it, and gives its readings in batches, in the
/// file's order. Of daily rows `take` gets two readings, the low at 05:00 and the high at 15:00 local time
/// (usual hours of the day's extremes; common practice, no source), and `takeDays`, where given, the days.
/// Set aside: below -60 or above 80 C, a spike (more than 15 C off both neighbours, which are within an hour
/// of it and agree within 3 C; common practice, no source), what cannot be read, times more than a day after
/// `now`, before 1990, or that the zone's clocks never show, and a last line that was cut. A local hour that
/// comes twice is told apart by the order of the rows. Errors: FileUnreadable, what `take` returned, BadInput
/// when no row or less than half of them can be read, or a date contradicts the layout's order of dates.
/// After an error the caller undoes what it was given.
Result<ReadingsRead> readReadings(const QString& path, const ReadingsLayout& layout, Moment now,
    const TakeReadings& take, const ReadingsProgress& progress = {}, const TakeDays& takeDays = {});

} // namespace gw
