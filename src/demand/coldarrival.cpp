#include "demand/coldarrival.h"

#include <algorithm>
#include <cmath>

namespace gw {

namespace {

constexpr int marginDays = 7;
constexpr int longestLook = 366;

Date plus(Date day, int days) { return Date { std::chrono::sys_days { day } + std::chrono::days { days } }; }

/// The coldest of a day and a week either side; none when one of them is not known.
std::optional<Celsius> coldestAbout(const Doorstep& doorstep, Date day)
{
    std::optional<Celsius> coldest;
    for (const int days : { -marginDays, 0, marginDays }) {
        const auto low = doorstep.low(plus(day, days));
        if (!low)
            return std::nullopt;
        if (!coldest || low->value < coldest->value)
            coldest = low;
    }
    return coldest;
}

bool isWarm(const Doorstep& doorstep, Celsius limit, Date day)
{
    const auto coldest = coldestAbout(doorstep, day);
    return coldest && coldest->value >= limit.value;
}

} // namespace

std::optional<Celsius> Doorstep::low(Date day) const
{
    const Date newYear { day.year(), std::chrono::January, std::chrono::day { 1 } };
    const auto days = std::chrono::sys_days { day } - std::chrono::sys_days { newYear };
    return lows[static_cast<std::size_t>(days.count() / 7)];
}

std::optional<ColdArrival> coldArrival(
    const Doorstep& doorstep, Celsius limit, Date ordered, Days lead, Date today)
{
    const int days = static_cast<int>(std::ceil(std::max(0.0, lead.count())));
    const Date arrives = plus(ordered, days);
    const auto coldest = coldestAbout(doorstep, arrives);
    if (!coldest || coldest->value >= limit.value)
        return std::nullopt;
    ColdArrival cold { arrives, *coldest, std::nullopt, std::nullopt };
    for (int back = 1; back <= longestLook; ++back) {
        const Date earlier = plus(ordered, -back);
        if (std::chrono::sys_days { earlier } < std::chrono::sys_days { today })
            break;
        if (isWarm(doorstep, limit, plus(earlier, days))) {
            cold.orderBy = earlier;
            break;
        }
    }
    for (int on = 1; on <= longestLook && !cold.warmFrom; ++on) {
        if (isWarm(doorstep, limit, plus(arrives, on)))
            cold.warmFrom = plus(arrives, on);
    }
    return cold;
}

} // namespace gw
