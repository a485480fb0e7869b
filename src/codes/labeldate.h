#pragma once

#include <string_view>

#include <tl/expected.hpp>

#include "measure/moment.h"

namespace gw {

/// How day 00 of a label date is read: not at all, as the month's first day, or as its last.
enum class DayZero { Refused, FirstOfMonth, LastOfMonth };

/// The full year of a two-digit one, in the window from 49 years back to 50 ahead of the current year
/// (GS1 General Specifications 7.12).
int fullYear(int twoDigits, int currentYear);

/// The date of six digits yymmdd. Error: the part that cannot be, "month" or "day" (or "non-digit",
/// "length").
tl::expected<Date, std::string_view> labelDate(std::string_view yymmdd, DayZero dayZero, int currentYear);

} // namespace gw
