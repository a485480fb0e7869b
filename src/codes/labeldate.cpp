#include "codes/labeldate.h"

#include <algorithm>

namespace gw {

int fullYear(int twoDigits, int currentYear)
{
    const int century = currentYear - currentYear % 100;
    const int ahead = twoDigits - currentYear % 100;
    if (ahead >= 51)
        return century - 100 + twoDigits;
    if (ahead <= -50)
        return century + 100 + twoDigits;
    return century + twoDigits;
}

tl::expected<Date, std::string_view> labelDate(std::string_view yymmdd, DayZero dayZero, int currentYear)
{
    using namespace std::chrono;
    if (yymmdd.size() != 6)
        return tl::unexpected(std::string_view("length"));
    if (!std::all_of(yymmdd.begin(), yymmdd.end(), [](char c) { return c >= '0' && c <= '9'; }))
        return tl::unexpected(std::string_view("non-digit"));
    const auto two = [&](std::size_t at) { return (yymmdd[at] - '0') * 10 + (yymmdd[at + 1] - '0'); };

    const year_month inMonth { year { fullYear(two(0), currentYear) },
        month { static_cast<unsigned>(two(2)) } };
    if (!inMonth.ok())
        return tl::unexpected(std::string_view("month"));
    if (const int dayNumber = two(4); dayNumber != 0 || dayZero == DayZero::Refused) {
        const Date date = inMonth / day { static_cast<unsigned>(dayNumber) };
        return date.ok() ? tl::expected<Date, std::string_view>(date)
                         : tl::unexpected(std::string_view("day"));
    }
    return dayZero == DayZero::FirstOfMonth ? inMonth / day { 1 } : Date { inMonth / last };
}

} // namespace gw
