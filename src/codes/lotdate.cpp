#include "codes/lotdate.h"

#include <algorithm>
#include <array>

#include "codes/labeldate.h"

namespace gw {

namespace {

using namespace std::chrono;

/// AI 10 holds twenty characters; what is longer was typed in another field.
constexpr std::size_t longestLot = 40;
constexpr std::size_t mostOffered = 6;
/// A part of a longer number that is so much less plausible than the best would only be in the way.
constexpr double leastShareOfBest = 0.2;
/// Nothing older is still on a shelf by a lot code alone: a guess, no source.
constexpr int oldestYears = 15;

/// A way of building a date into a code. Y year, J day of the year, M month, D day of the month, W week,
/// L month letter, K month letter of an alphabet without I. weight: how usual it is, by common practice.
struct Shape {
    std::string_view pattern;
    double weight;
    std::string_view manner;
};

constexpr std::array shapes {
    Shape { "YYJJJ", 1.0, "year and day of the year" },
    Shape { "YYYYJJJ", 0.95, "year and day of the year" },
    Shape { "YJJJ", 0.8, "last digit of the year and day of the year" },
    Shape { "JJJYY", 0.6, "day of the year and year" },
    Shape { "JJJY", 0.4, "day of the year and last digit of the year" },
    Shape { "YYYYMMDD", 1.0, "year, month and day" },
    Shape { "DDMMYYYY", 0.9, "day, month and year" },
    Shape { "MMDDYYYY", 0.6, "month, day and year" },
    Shape { "YYMMDD", 0.9, "year, month and day" },
    Shape { "DDMMYY", 0.7, "day, month and year" },
    Shape { "MMDDYY", 0.5, "month, day and year" },
    Shape { "YYWW", 0.5, "year and week" },
    Shape { "WWYY", 0.25, "week and year" },
    Shape { "MMYY", 0.3, "month and year" },
    Shape { "YYMM", 0.28, "year and month" },
    Shape { "YYLDD", 0.6, "year, month letter and day" },
    Shape { "DDLYY", 0.5, "day, month letter and year" },
    Shape { "LDDYY", 0.4, "month letter, day and year" },
    Shape { "YLDD", 0.4, "last digit of the year, month letter and day" },
    Shape { "YYL", 0.35, "year and month letter" },
    Shape { "LYY", 0.3, "month letter and year" },
    Shape { "YYKDD", 0.55, "year, month letter without I and day" },
    Shape { "DDKYY", 0.45, "day, month letter without I and year" },
    Shape { "KDDYY", 0.36, "month letter without I, day and year" },
    Shape { "YKDD", 0.36, "last digit of the year, month letter without I and day" },
    Shape { "YYK", 0.32, "year and month letter without I" },
    Shape { "KYY", 0.27, "month letter without I and year" },
};

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isLetter(char c) { return c >= 'A' && c <= 'Z'; }
bool isMark(char c) { return c == '-' || c == '/' || c == '.' || c == ' '; }

/// The numbers that one shape reads at one place of the code; -1 for what it does not hold.
struct Fields {
    int year = -1, yearDigits = 0, dayOfYear = -1, month = -1, day = -1, week = -1;
    char letter = 0;
    std::size_t end = 0; ///< behind the last character read
};

int monthOfLetter(char letter, bool withoutI)
{
    if (!withoutI)
        return letter <= 'L' ? letter - 'A' + 1 : -1;
    // Up to H both alphabets agree: one reading is enough.
    if (letter <= 'I' || letter > 'M')
        return -1;
    return letter - 'A';
}

std::optional<Fields> readAt(std::string_view code, std::size_t at, std::string_view pattern)
{
    Fields fields;
    for (std::size_t p = 0; p < pattern.size();) {
        const char field = pattern[p];
        if (p > 0 && at < code.size() && isMark(code[at]))
            ++at;
        int value = 0;
        const std::size_t begin = p;
        for (; p < pattern.size() && pattern[p] == field; ++p, ++at) {
            const bool letter = field == 'L' || field == 'K';
            if (at >= code.size() || !(letter ? isLetter(code[at]) : isDigit(code[at])))
                return std::nullopt;
            value = letter ? monthOfLetter(code[at], field == 'K') : value * 10 + (code[at] - '0');
        }
        switch (field) {
        case 'Y':
            fields.year = value;
            fields.yearDigits = static_cast<int>(p - begin);
            break;
        case 'J':
            fields.dayOfYear = value;
            break;
        case 'D':
            fields.day = value;
            break;
        case 'W':
            fields.week = value;
            break;
        default:
            if (value < 0)
                return std::nullopt;
            fields.month = value;
            if (field != 'M')
                fields.letter = code[at - 1];
        }
    }
    fields.end = at;
    return fields;
}

/// How well a shape sits in the code: alone between letters and marks, with digits behind it, or before it.
double fitOf(std::string_view code, std::size_t begin, std::size_t end)
{
    const auto joins = [&](std::size_t inside, std::size_t outside) {
        return outside < code.size()
            && ((isDigit(code[inside]) && isDigit(code[outside]))
                || (isLetter(code[inside]) && isLetter(code[outside])));
    };
    const bool before = begin > 0 && joins(begin, begin - 1);
    const bool behind = joins(end - 1, end);
    const std::size_t length = end - begin;
    if (!before && !behind)
        return 1;
    // A short number within a longer one could be anything.
    if (length < 4 || (before && behind))
        return 0;
    if (before)
        return length < 5 ? 0 : 0.25;
    return length < 5 ? 0.3 : 0.5;
}

/// The days of ISO 8601 week so many; none when that year has no such week.
std::optional<Range<Date>> weekOf(int fullYear, int week)
{
    // The first week of ISO 8601 is the one with 4 January in it.
    const sys_days fourth { year { fullYear } / January / 4 };
    const sys_days first = fourth - days { weekday { fourth }.iso_encoding() - 1 };
    const sys_days monday = first + weeks { week - 1 };
    const Date thursday { monday + days { 3 } };
    if (week < 1 || thursday.year() != year { fullYear })
        return std::nullopt;
    return Range<Date> { Date { monday }, Date { monday + days { 6 } } };
}

std::optional<Range<Date>> daysOf(const Fields& fields, int fullYear)
{
    const year inYear { fullYear };
    if (fields.dayOfYear >= 0) {
        const Date date { sys_days { inYear / January / 1 } + days { fields.dayOfYear - 1 } };
        if (fields.dayOfYear < 1 || date.year() != inYear)
            return std::nullopt;
        return Range<Date> { date, date };
    }
    if (fields.week >= 0)
        return weekOf(fullYear, fields.week);
    const year_month inMonth { inYear, month { static_cast<unsigned>(fields.month) } };
    if (!inMonth.ok())
        return std::nullopt;
    if (fields.day < 0)
        return Range<Date> { inMonth / 1, Date { inMonth / last } };
    const Date date = inMonth / day { static_cast<unsigned>(fields.day) };
    return date.ok() ? std::optional(Range<Date> { date, date }) : std::nullopt;
}

std::string monthWords(const Date& date)
{
    const std::string spoken = spokenDate(date.year() / date.month() / 1);
    return spoken.substr(spoken.find(' ') + 1);
}

std::string wordsOf(const Fields& fields, std::string_view manner, const Range<Date>& days)
{
    const std::string inYear = " of " + std::to_string(static_cast<int>(days.low.year()));
    if (fields.dayOfYear >= 0)
        return "day " + std::to_string(fields.dayOfYear) + inYear + ": " + spokenDate(days.low);
    if (fields.week >= 0)
        return "week " + std::to_string(fields.week) + ": " + spokenDate(days.low) + " to "
            + spokenDate(days.high);
    const std::string when = fields.day < 0 ? monthWords(days.low) : spokenDate(days.low);
    if (fields.letter)
        return std::string("month ") + fields.letter + ": " + when;
    return std::string(manner) + ": " + when;
}

/// 1 for what usually stands in the trade, less the older it is; 0 for what cannot be.
double agePlausibility(Date made, const LotDateContext& context)
{
    const Date latest = std::min(context.notAfter.value_or(context.today), context.today);
    if (made > latest || made < context.today - years { oldestYears })
        return 0;
    const Days age { sys_days { context.today } - sys_days { made } };
    const Days trade = std::max(context.timeInTrade.value_or(24 * meanMonth), Days { 1 });
    const Days kept = trade + context.life.value_or(36 * meanMonth);
    if (age <= trade)
        return 1;
    if (age <= kept)
        return 0.7 - 0.4 * ((age - trade) / (kept - trade));
    return 0.15;
}

/// The years that so many last digits may stand for, latest first: one digit comes again every ten.
std::array<int, 2> yearsOf(const Fields& fields, Date today)
{
    const int now = static_cast<int>(today.year());
    if (fields.yearDigits == 4)
        return { fields.year, 0 };
    if (fields.yearDigits == 2)
        return { fullYear(fields.year, now), 0 };
    const int latest = now - (now - fields.year) % 10;
    return { latest, latest - 10 };
}

/// "YYJJJ@1": the shape and where it begins.
std::string keyOf(std::string_view pattern, std::size_t at)
{
    return std::string(pattern) + '@' + std::to_string(at);
}

bool standsAlone(std::string_view code, const LotDate& date)
{
    std::size_t at = 0;
    for (const char digit : std::string_view(date.key).substr(date.key.find('@') + 1))
        at = at * 10 + static_cast<std::size_t>(digit - '0');
    return fitOf(code, at, at + date.read.size()) >= 1;
}

std::string_view patternOf(std::string_view key) { return key.substr(0, key.find('@')); }

std::string upperCase(std::string_view text)
{
    std::string upper(text.substr(0, longestLot));
    std::ranges::transform(upper, upper.begin(),
        [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
    return upper;
}

/// Marks the best of those read as last time, at the same place in the code before any other.
void markLastTime(std::vector<LotDate>& dates, std::string_view key)
{
    if (key.empty())
        return;
    auto found = std::ranges::find(dates, key, &LotDate::key);
    if (found == dates.end())
        found = std::ranges::find(dates, patternOf(key), [](const LotDate& d) { return patternOf(d.key); });
    if (found == dates.end())
        return;
    found->asLastTime = true;
    std::rotate(dates.begin(), found, found + 1);
}

} // namespace

std::vector<LotDate> lotDates(std::string_view lot, const LotDateContext& context)
{
    const std::string code = upperCase(lot);
    std::vector<LotDate> all;
    for (std::size_t at = 0; at < code.size(); ++at) {
        for (const Shape& shape : shapes) {
            const auto fields = readAt(code, at, shape.pattern);
            const double fit = fields ? fitOf(code, at, fields->end) : 0;
            if (fit <= 0)
                continue;
            for (const int year : yearsOf(*fields, context.today)) {
                const auto days = year > 0 ? daysOf(*fields, year) : std::nullopt;
                const double age = days ? agePlausibility(days->low, context) : 0;
                if (age <= 0)
                    continue;
                all.push_back({ keyOf(shape.pattern, at), code.substr(at, fields->end - at), *days,
                    wordsOf(*fields, shape.manner, *days), std::string(shape.manner),
                    shape.weight * fit * age, false });
            }
        }
    }
    std::ranges::stable_sort(all, std::greater {}, &LotDate::plausibility);
    const double least = all.empty() ? 0 : leastShareOfBest * all.front().plausibility;
    markLastTime(all, context.key);
    std::erase_if(all, [&](const LotDate& date) {
        return !date.asLastTime && date.plausibility < least && !standsAlone(code, date);
    });

    std::vector<LotDate> offers;
    for (LotDate& date : all) {
        // One day read in two ways is one answer: the better one stands first.
        if (offers.size() < mostOffered
            && std::ranges::find(offers, date.days, &LotDate::days) == offers.end())
            offers.push_back(std::move(date));
    }
    return offers;
}

std::string lotDateManner(std::string_view key)
{
    const auto shape = std::ranges::find(shapes, patternOf(key), &Shape::pattern);
    return shape == shapes.end() ? std::string() : std::string(shape->manner);
}

} // namespace gw
