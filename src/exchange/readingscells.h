#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "exchange/readingslook.h"
#include "measure/moment.h"
#include "measure/temperature.h"

namespace gw {

/// trimmed(), at once for a text that has nothing to trim.
std::string_view bare(std::string_view text);

/// A date as it stands, before anybody says which part is the day.
struct WrittenDate {
    std::array<int, 3> parts {}; ///< a month's name counts as its number
    std::array<int, 3> digits {};
    char mark = 0; ///< what stands between the parts
    int nameAt = -1; ///< the part that is a month's name

    /// Whether it can be read in one way only: year first in four digits, a month's name, or dots, which
    /// stand between day, month and year (common practice, no source).
    bool plain() const;
};

/// A time as a cell writes it.
struct WrittenTime {
    std::optional<WrittenDate> date;
    std::optional<std::chrono::milliseconds> clock; ///< since midnight; 24 h is the next midnight
    std::optional<std::chrono::minutes> offset; ///< from UTC, where the cell gives one
};

/// "2026-05-25T14:03:00+02:00", "25/05/2026 2:03 PM", "25.5.26", "25 May 2026", "14:03" and their like.
/// None for anything else, or with anything behind it.
std::optional<WrittenTime> parseWrittenTime(std::string_view text);

/// The day meant; none when there is no such day in that order. A year of two digits is of this century
/// unless that would lie beyond `thisYear`.
std::optional<Date> dayOf(const WrittenDate& date, DateOrder order, int thisYear);

/// A number in a cell and the unit behind it.
struct WrittenNumber {
    double value = 0;
    std::optional<DegreeUnit> unit;
    int decimals = 0;
};

/// None unless the whole cell is a number with that decimal sign, and at most a unit of temperature or a
/// percent sign behind it. Fifteen digits at the most.
std::optional<WrittenNumber> parseWrittenNumber(std::string_view text, char decimalSign);

/// The moment, or for SpreadsheetDays the local time counted as if it were UTC, that a bare number means;
/// none when it is not one of the years 1990 to 2199. Spreadsheets count days from 30 December 1899 and
/// carry binary fractions: rounded to the second.
std::optional<Moment> stampOf(double number, StampForm form);

/// "+02:00", "-5", "+0530": nothing else may stand in the text.
std::optional<std::chrono::minutes> parseOffset(std::string_view text);

Celsius toCelsius(double value, DegreeUnit unit);

} // namespace gw
