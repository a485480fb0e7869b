#include "ageing/wording.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace gw {

namespace {

std::string counted(long long count, const char* unit)
{
    return std::to_string(count) + ' ' + unit + (count == 1 ? "" : "s");
}

/// At most one decimal, none when it is zero.
std::string decimal(double value)
{
    const long long tenths = std::llround(value * 10);
    std::string text = std::to_string(tenths / 10);
    if (tenths % 10 != 0)
        text += '.' + std::to_string(std::llabs(tenths % 10));
    return text;
}

bool wholeYears(Days span)
{
    const double years = span / (12 * meanMonth);
    return years > 1.99 && std::abs(years - std::round(years)) < 0.01;
}

} // namespace

std::string onDay(Moment moment) { return spokenDate(dateOf(moment)); }

std::string spanWords(Days span)
{
    constexpr double nearly = 1e-6; // a whole number of days is not to read as one less
    const double days = span.count() + nearly;
    const double months = span / meanMonth + nearly;
    if (months >= 36)
        return counted(static_cast<long long>(months / 12), "year");
    if (months >= 2)
        return counted(static_cast<long long>(months), "month");
    if (days >= 1)
        return counted(static_cast<long long>(days), "day");
    return "less than a day";
}

std::string hoursWords(Days span)
{
    constexpr double nearly = 1e-6;
    const double hours = span.count() * 24 + nearly;
    if (hours >= 48)
        return spanWords(span);
    return hours >= 1 ? counted(static_cast<long long>(hours), "hour") : "less than an hour";
}

std::string lifeWords(const Range<Days>& life)
{
    Days unit { 1 };
    const char* name = "day";
    if (wholeYears(life.low) && wholeYears(life.high)) {
        unit = 12 * meanMonth;
        name = "year";
    } else if (life.low / meanMonth > 0.99) {
        unit = meanMonth;
        name = "month";
    }
    const std::string low = decimal(life.low / unit);
    const std::string high = decimal(life.high / unit);
    return (low == high ? low : low + " to " + high) + ' ' + name + (high == "1" ? "" : "s");
}

std::string shareWords(const Range<double>& used)
{
    constexpr double nearly = 1e-6; // what is all but a whole percent is that
    constexpr double most = 999;
    const double low = std::floor(used.low * 100 + nearly);
    const double high = std::ceil(used.high * 100 - nearly);
    if (low > most)
        return "more than 999 %";
    const std::string from = std::to_string(std::llround(low));
    if (high > most)
        return from + " to more than 999 %";
    const std::string to = std::to_string(std::llround(std::max(low, high)));
    return (from == to ? from : from + " to " + to) + " %";
}

std::string rangeWords(const Range<Celsius>& range)
{
    const std::string high = formatTemperature(range.high);
    std::string low = formatTemperature(range.low);
    low.resize(low.rfind(' ') == std::string::npos ? low.size() : low.rfind(' '));
    return "between " + low + " and " + high;
}

std::string uncapitalised(std::string sentence)
{
    if (!sentence.empty() && sentence.front() >= 'A' && sentence.front() <= 'Z')
        sentence.front() = static_cast<char>(sentence.front() - 'A' + 'a');
    return sentence;
}

} // namespace gw
