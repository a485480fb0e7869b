#include "ageing/climate.h"

#include <algorithm>

#include "ageing/trace.h"

namespace gw {

std::size_t AssumedRanges::quarterOf(Moment at) { return static_cast<unsigned>(dateOf(at).month()) % 12 / 3; }

Moment AssumedRanges::nextQuarter(Moment at)
{
    const Date day = dateOf(at);
    const auto months = 3 - static_cast<int>(static_cast<unsigned>(day.month()) % 3);
    return startOf((day.year() / day.month() + std::chrono::months { months }) / 1);
}

std::optional<Range<Celsius>> AssumedRanges::of(std::size_t quarter) const
{
    return quarters[quarter] ? quarters[quarter] : year;
}

Heat Climate::heat(const PlaceId&, Moment, Moment, Celsius) const { return {}; }

bool Climate::startMatters(const PlaceId&, Moment, Moment, const Contents&) const { return false; }

Chill Climate::chill(const PlaceId&, Moment from, Moment to, const Contents&, const Warmth&, ChillEnd) const
{
    Chill chill;
    chill.unwatchedRisk = daysBetween(from, std::max(from, to));
    chill.riskSince = from;
    chill.known = false;
    return chill;
}

Below Climate::below(const PlaceId&, Moment from, Moment to, Celsius) const
{
    return { Days { 0 }, daysBetween(from, std::max(from, to)), from };
}

} // namespace gw
