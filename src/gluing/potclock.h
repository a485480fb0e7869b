#pragma once

#include <algorithm>
#include <chrono>
#include <cmath>

#include "gluing/pot.h"

/// What the running batches share; nobody outside the room needs it.
namespace gw {

inline Moment minutesLater(Moment from, double minutes)
{
    return from
        + std::chrono::round<std::chrono::milliseconds>(
            std::chrono::duration<double, std::ratio<60>>(minutes));
}

inline Range<Moment> minutesLater(Moment from, const Range<double>& minutes)
{
    return { minutesLater(from, minutes.low), minutesLater(from, minutes.high) };
}

inline double hoursBetween(Moment from, Moment to) { return daysBetween(from, to).count() * 24; }

inline void sortDue(std::vector<PotDue>& due)
{
    std::ranges::stable_sort(due, {}, [](const PotDue& one) { return one.when.low; });
}

/// Errors: BadInput when it was mixed after now.
Result<void> mixedBefore(Moment mixed, Moment now);

} // namespace gw
