#include "measure/moment.h"

#include <array>
#include <cstddef>
#include <string>

#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

using namespace std::chrono;

constexpr int firstYear = 1900;
constexpr int lastYear = 2199;
constexpr std::array monthNames { "January", "February", "March", "April", "May", "June", "July", "August",
    "September", "October", "November", "December" };

/// Takes exactly so many digits off the front, or nothing.
std::optional<int> takeDigits(std::string_view& text, std::size_t count)
{
    if (text.size() < count)
        return std::nullopt;
    int value = 0;
    for (const char c : text.substr(0, count)) {
        if (c < '0' || c > '9')
            return std::nullopt;
        value = value * 10 + (c - '0');
    }
    text.remove_prefix(count);
    return value;
}

bool take(std::string_view& text, std::string_view anyOf)
{
    if (text.empty() || anyOf.find(text.front()) == std::string_view::npos)
        return false;
    text.remove_prefix(1);
    return true;
}

std::string padded(int value, std::size_t width)
{
    std::string digits = std::to_string(value);
    if (digits.size() < width)
        digits.insert(0, width - digits.size(), '0');
    return digits;
}

/// A year, month and day with the marks of ISO 8601, taken off the front; whether the day exists is not yet
/// known.
std::optional<Date> takeDate(std::string_view& text)
{
    std::string_view left = text;
    const auto y = takeDigits(left, 4);
    const bool firstMark = y && take(left, "-");
    const auto m = firstMark ? takeDigits(left, 2) : std::nullopt;
    const bool secondMark = m && take(left, "-");
    const auto d = secondMark ? takeDigits(left, 2) : std::nullopt;
    if (!d)
        return std::nullopt;
    text = left;
    return Date { year { *y }, month { static_cast<unsigned>(*m) }, day { static_cast<unsigned>(*d) } };
}

std::string monthName(month m) { return monthNames[static_cast<unsigned>(m) - 1]; }

Result<Date> checked(Date date, std::string_view text)
{
    if (const int y = static_cast<int>(date.year()); y < firstYear || y > lastYear)
        return fail(
            ErrorCode::BadInput, inQuotes(text) + " lies too far off: the year must be from 1900 to 2199.");
    if (!date.month().ok())
        return fail(ErrorCode::BadInput,
            inQuotes(text) + " has no such month: type the date as year-month-day, such as 2026-05-25.");
    if (!date.ok())
        return fail(ErrorCode::BadInput,
            inQuotes(text) + " is no day of the calendar: " + monthName(date.month()) + ' '
                + std::to_string(static_cast<int>(date.year())) + " has "
                + std::to_string(static_cast<unsigned>((date.year() / date.month() / last).day()))
                + " days.");
    return date;
}

/// Hours, minutes, perhaps seconds and a fraction (cut to the millisecond).
std::optional<milliseconds> takeTimeOfDay(std::string_view& text)
{
    const auto h = takeDigits(text, 2);
    const auto m = h && take(text, ":") ? takeDigits(text, 2) : std::nullopt;
    if (!m || *h > 23 || *m > 59)
        return std::nullopt;
    milliseconds time = hours { *h } + minutes { *m };
    if (!take(text, ":"))
        return time;
    const auto s = takeDigits(text, 2);
    if (!s || *s > 59)
        return std::nullopt;
    time += seconds { *s };
    if (!take(text, ".,"))
        return time;
    int scale = 100;
    bool any = false;
    for (auto digit = takeDigits(text, 1); digit; digit = takeDigits(text, 1)) {
        time += milliseconds { *digit * scale };
        scale /= 10;
        any = true;
    }
    return any ? std::optional(time) : std::nullopt;
}

/// "Z", "+02:00", "+0200", "+02", or nothing (UTC). Offsets run to 14 hours (Line Islands).
std::optional<minutes> takeOffset(std::string_view& text)
{
    if (text.empty() || take(text, "Zz"))
        return minutes { 0 };
    const bool west = text.front() == '-';
    if (!take(text, "+-"))
        return std::nullopt;
    const auto h = takeDigits(text, 2);
    const bool wholeHours = h && text.empty();
    take(text, ":");
    const auto m = wholeHours ? std::optional(0) : takeDigits(text, 2);
    if (!h || !m || *m > 59 || *h * 60 + *m > 14 * 60)
        return std::nullopt;
    const minutes offset = hours { *h } + minutes { *m };
    return west ? -offset : offset;
}

} // namespace

Moment startOf(Date date) { return sys_days { date }; }

Moment endOf(Date date) { return sys_days { date } + days { 1 } - milliseconds { 1 }; }

Date dateOf(Moment moment) { return floor<days>(moment); }

Result<Date> parseDate(std::string_view text)
{
    text = trimmed(text);
    std::string_view left = text;
    const auto date = takeDate(left);
    if (!date || !left.empty())
        return fail(ErrorCode::BadInput,
            inQuotes(text) + " is not a date: type it as year-month-day, such as 2026-05-25.");
    return checked(*date, text);
}

Result<Moment> parseMoment(std::string_view text)
{
    text = trimmed(text);
    const auto refused = [&] {
        return fail(ErrorCode::BadInput,
            inQuotes(text)
                + " is not a time: type it such as 2026-05-25, 2026-05-25T14:03 or "
                  "2026-05-25T14:03:00+02:00.");
    };
    std::string_view left = text;
    const auto date = takeDate(left);
    if (!date)
        return refused();
    const auto day = checked(*date, text);
    if (!day)
        return tl::unexpected(day.error());
    if (left.empty())
        return startOf(*day);
    if (!take(left, "Tt "))
        return refused();
    const auto time = takeTimeOfDay(left);
    const auto offset = time ? takeOffset(left) : std::nullopt;
    if (!offset || !left.empty())
        return refused();
    return startOf(*day) + *time - *offset;
}

std::string formatDate(Date date)
{
    return padded(static_cast<int>(date.year()), 4) + '-'
        + padded(static_cast<int>(static_cast<unsigned>(date.month())), 2) + '-'
        + padded(static_cast<int>(static_cast<unsigned>(date.day())), 2);
}

std::string formatMoment(Moment moment)
{
    const auto day = floor<days>(moment);
    const hh_mm_ss time { moment - day };
    const auto two = [](auto count) { return padded(static_cast<int>(count.count()), 2); };
    std::string text = formatDate(Date { day }) + 'T' + two(time.hours()) + ':' + two(time.minutes()) + ':'
        + two(time.seconds());
    if (const auto ms = time.subseconds().count(); ms != 0)
        text += '.' + padded(static_cast<int>(ms), 3);
    return text + 'Z';
}

std::string spokenDate(Date date)
{
    return std::to_string(static_cast<unsigned>(date.day())) + ' ' + monthName(date.month()) + ' '
        + std::to_string(static_cast<int>(date.year()));
}

Date addMonths(Date date, int count)
{
    const auto target = year_month { date.year(), date.month() } + months { count };
    const Date sameDay = target / date.day();
    return sameDay.ok() ? sameDay : Date { target / last };
}

} // namespace gw
