#include "ageing/climate.h"

#include <algorithm>
#include <utility>

#include "ageing/trace.h"

namespace gw {

std::size_t AssumedRanges::quarterOf(Moment at) { return static_cast<unsigned>(dateOf(at).month()) % 12 / 3; }

std::optional<Range<Celsius>> AssumedRanges::of(std::size_t quarter) const
{
    return quarters[quarter] ? quarters[quarter] : year;
}

Heat Climate::heat(const PlaceId&, Moment, Moment, Celsius) const { return {}; }

Chill Climate::chill(const PlaceId&, Moment from, Moment to, const Contents&, const Warmth&) const
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

AssumedClimate::AssumedClimate(std::map<PlaceId, Range<Celsius>> assumed)
    : m_assumed(std::move(assumed))
{
}

Exposure AssumedClimate::exposure(const PlaceId& place, Moment from, Moment to, const Rate& rate) const
{
    const Days span = daysBetween(from, std::max(from, to));
    Exposure answer;
    answer.unwatched = span;
    if (const auto range = usual(place, from)) {
        answer.equivalent = { span * speedAt(range->low, rate), span * speedAt(range->high, rate) };
        answer.hottest = range->high;
        answer.coldest = range->low;
        return answer;
    }

    // It stood somewhere: as a bound, in the worst of the places there are.
    answer.known = false;
    Range<double> speed { 1, 1 };
    for (const auto& [id, range] : m_assumed) {
        speed = { std::min(speed.low, speedAt(range.low, rate)),
            std::max(speed.high, speedAt(range.high, rate)) };
        answer.hottest = answer.hottest ? std::max(*answer.hottest, range.high) : range.high;
        answer.coldest = answer.coldest ? std::min(*answer.coldest, range.low) : range.low;
    }
    answer.equivalent = { span * speed.low, span * speed.high };
    return answer;
}

std::optional<Range<Celsius>> AssumedClimate::usual(const PlaceId& place, Moment) const
{
    const auto found = m_assumed.find(place);
    if (found == m_assumed.end())
        return std::nullopt;
    return found->second;
}

Chill AssumedClimate::chill(
    const PlaceId& place, Moment from, Moment to, const Contents& contents, const Warmth& start) const
{
    return chillOf({}, { usual(place, from), {} }, from, to, contents, start);
}

Below AssumedClimate::below(const PlaceId& place, Moment from, Moment to, Celsius limit) const
{
    return belowOf({}, { usual(place, from), {} }, from, to, limit);
}

} // namespace gw
