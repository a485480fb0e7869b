#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

#include "measure/error.h"

namespace gw {

/// A moment in UTC, to the millisecond: what the ledger stores.
using Moment = std::chrono::sys_time<std::chrono::milliseconds>;

/// A calendar day, as printed on labels. Always valid once it has passed parseDate().
using Date = std::chrono::year_month_day;

/// A span of time in days, fractions allowed. Lives and clocks are in these.
using Days = std::chrono::duration<double, std::ratio<86400>>;

/// The mean month of the civil calendar, 365.2425 / 12 days; reference lives are given in months.
inline constexpr Days meanMonth { 30.436875 };

inline Days daysBetween(Moment from, Moment to) { return to - from; }
inline Moment later(Moment from, Days by) { return from + std::chrono::round<std::chrono::milliseconds>(by); }

inline std::int64_t toMilliseconds(Moment moment) { return moment.time_since_epoch().count(); }
inline Moment fromMilliseconds(std::int64_t ms) { return Moment { std::chrono::milliseconds { ms } }; }

/// The first instant of a day in UTC.
Moment startOf(Date date);
/// The last millisecond of a day in UTC: a label good until a day is good all that day.
Moment endOf(Date date);
/// The UTC day a moment falls in.
Date dateOf(Moment moment);

/// "2026-05-25". A date must exist and lie in 1900 to 2199. Errors: BadInput, with the reason (no such day,
/// year far off).
Result<Date> parseDate(std::string_view text);
/// ISO 8601: a date ("2026-05-25": its start), or date and time with optional seconds, fractions, and Z or an
/// offset; a time without offset is UTC. Errors: BadInput.
Result<Moment> parseMoment(std::string_view text);

std::string formatDate(Date date); ///< "2026-05-25"
std::string formatMoment(Moment moment); ///< "2026-05-25T14:03:00Z", milliseconds only when not zero
std::string spokenDate(Date date); ///< "25 May 2026", for sentences

/// The same day of month so many months on, or that month's last day when it has no such day.
Date addMonths(Date date, int months);

} // namespace gw
