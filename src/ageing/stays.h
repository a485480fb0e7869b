#pragma once

#include <algorithm>

#include "ageing/clocks.h"

namespace gw {

/// Calls visit(place, begin, end) for every stay of a span, and for what was before the first.
template <class Visit> void eachStay(const AgeCase& item, Moment from, Moment to, Visit visit)
{
    const auto& stays = item.history.stays;
    const Moment first = stays.empty() ? to : std::clamp(stays.front().from, from, to);
    if (from < first || stays.empty() || stays.front().from > to)
        visit(PlaceId {}, from, first);
    for (std::size_t i = 0; i < stays.size(); ++i) {
        const bool last = i + 1 == stays.size() || stays[i + 1].from > to;
        const Moment begin = std::max(stays[i].from, from);
        const Moment end = last ? to : std::min(stays[i + 1].from, to);
        // An empty stay is a slip put right at once, except the last: there it stands now.
        if (begin < end || (last && begin == end))
            visit(stays[i].place, begin, end);
        if (last)
            break;
    }
}

} // namespace gw
