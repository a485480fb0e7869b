#include "demand/runoff.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

namespace gw {

namespace {

constexpr double noLimit = std::numeric_limits<double>::infinity();

/// Days from now until a lot is past.
double limitOf(const UsableLot& lot, Moment now)
{
    return lot.usableUntil ? daysBetween(now, *lot.usableUntil).count() : noLimit;
}

Amount roundedDown(double value, Dimension dimension)
{
    return { static_cast<std::int64_t>(std::floor(std::max(0.0, value) * 1000 + 1e-3)), dimension };
}

} // namespace

Runoff runOff(std::vector<UsableLot> stock, Dimension dimension, const ServingTime& time, double usePerDay,
    std::optional<Days> openedLife)
{
    std::sort(stock.begin(), stock.end(), [](const UsableLot& a, const UsableLot& b) {
        const Moment never = Moment::max();
        // An opened one before an unopened one of the same day; the rest only settles the order.
        return std::tuple(a.usableUntil.value_or(never), !a.opened, a.left.milli)
            < std::tuple(b.usableUntil.value_or(never), !b.opened, b.left.milli);
    });

    const double wait = std::max(0.0, time.wait.count());
    const double end = wait + std::max(0.0, time.span.count());
    const bool openedLifeCounts = openedLife && openedLife->count() < end;
    double usable = 0;
    double past = 0;
    double usedUntil = 0; // the day up to which the lots so far have covered the use
    Runoff runoff;
    for (const UsableLot& lot : stock) {
        const double whole = std::max(0.0, lot.left.value());
        double left = whole;
        if (openedLifeCounts && !lot.opened)
            left = std::min(left, usePerDay * openedLife->count());
        const double limit = limitOf(lot, time.now);

        const double from = usedUntil;
        const double until = usePerDay > 0 ? std::min({ from + left / usePerDay, limit, end }) : from;
        double used = 0;
        double usedInWait = 0;
        if (until > from) {
            used = (until - from) * usePerDay;
            usedInWait = std::max(0.0, std::min(until, wait) - from) * usePerDay;
            usedUntil = until;
        }
        const bool lasting = limit >= end;
        usable += (lasting ? left : used) - usedInWait;
        const double lost = whole - (lasting ? left : used);
        if (lost > 1e-6) {
            past += lost;
            if (!lasting && !runoff.firstPast)
                runoff.firstPast = lot.usableUntil;
        }
    }
    runoff.usable = roundedDown(usable, dimension);
    runoff.past = roundedDown(past, dimension);
    return runoff;
}

} // namespace gw
