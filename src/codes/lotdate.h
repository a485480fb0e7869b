#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/moment.h"
#include "measure/range.h"

namespace gw {

/// A date that a maker may have printed in a lot code. What is certain is only what a person chooses.
struct LotDate {
    std::string key; ///< how it was read and where in the code, to read the next lot in the same way
    std::string read; ///< the characters it was read from: "26145"
    Range<Date> days; ///< one day, or the week or month the code names; a life counts from the first
    std::string words; ///< "day 145 of 2026: 25 May 2026"
    std::string manner; ///< "year and day of the year", for "read as ..., as last time"
    double plausibility = 0; ///< 0 to 1, to sort by; no probability
    bool asLastTime = false; ///< read as the key says that was given
};

/// What the plausibility of a made date is judged by.
struct LotDateContext {
    Date today;
    std::optional<Date> notAfter; ///< a date printed on the same label: nothing was made after it
    std::optional<Days> timeInTrade; ///< the longest the class usually stands in the trade
    std::optional<Days> life; ///< the longest the class usually keeps, sealed
    std::string key; ///< LotDate::key chosen for this material last time; empty: none
};

/// The days a lot code could mean as the day something was made, at most six, most plausible first; the one
/// read as last time goes before all. Read are year and day of the year (26145, 6145, 14526, 2026145), year,
/// month and day in any usual order, year and week (ISO 8601), month and year, and a letter for the month
/// (A to L, or A to M without I), with other letters around them and single marks between them. A made date
/// later than today or older than fifteen years is none. Empty when nothing fits.
/// The shapes and their order are common practice among makers, without a source: none is a standard.
std::vector<LotDate> lotDates(std::string_view lot, const LotDateContext& context);

/// The words of a key's manner, for what was chosen last time; empty for a key that is none.
std::string lotDateManner(std::string_view key);

} // namespace gw
