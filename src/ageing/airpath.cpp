#include "ageing/airpath.h"

#include <algorithm>

#include "ageing/frost.h"

namespace gw {

AirPath::Cursor::Cursor(const Trace* of)
    : trace(of)
    , longestWatched(of->longestWatched())
{
}

void AirPath::Cursor::to(Moment at)
{
    if (!begun)
        later = trace->countUpTo(at);
    begun = true;
    while (later < trace->size() && trace->at(later) <= at)
        ++later;
}

Celsius AirPath::Cursor::between(Moment at) const
{
    const Moment from = trace->at(later - 1);
    const double begin = trace->temperature(later - 1).value;
    if (at == from)
        return Celsius { begin };
    const double share = Hours(at - from) / Hours(trace->at(later) - from);
    return Celsius { begin + (trace->temperature(later).value - begin) * share };
}

AirPath::AirPath(const Air& air, Celsius limit)
    : m_assumed(air.assumed)
    , m_byQuarter(std::any_of(air.assumed.quarters.begin(), air.assumed.quarters.end(),
          [](const auto& q) { return q.has_value(); }))
    , m_limit(limit)
    , m_margin(air.margin)
    , m_readings(air.readings)
{
    if (air.followed && air.followed->size() > 1)
        m_followed.emplace(air.followed);
}

AirPath::Piece AirPath::range(
    Moment until, const std::optional<Range<Celsius>>& assumed, const std::optional<Celsius>& colderEnd) const
{
    if (!assumed)
        return { Piece::Kind::Unsure, until, {}, {}, false };
    const Celsius low = colderEnd ? std::min(assumed->low, *colderEnd) : assumed->low;
    if (low < m_limit)
        return { Piece::Kind::Unsure, until, {}, {}, true };
    return { Piece::Kind::Assumed, until, low, Celsius { (low.value + assumed->high.value) / 2 }, true };
}

/// The readings of the place followed, at their coldest; a step of which any part may be below the limit is
/// unsure as a whole.
AirPath::Piece AirPath::followed(Moment at, Moment until)
{
    const Celsius from { m_followed->between(at).value - m_margin };
    const Celsius to { m_followed->between(until).value - m_margin };
    if (std::min(from, to) < m_limit)
        return { Piece::Kind::Unsure, until, {}, {}, true };
    return { Piece::Kind::Watched, until, from, to, true };
}

AirPath::Piece AirPath::unwatched(Moment at, Moment until, const std::optional<Celsius>& colderEnd)
{
    if (m_followed) {
        m_followed->to(at);
        if (m_followed->inside()) {
            const Moment next = std::min(until, m_followed->trace->at(m_followed->later));
            if (!m_followed->inGap())
                return followed(at, next);
            until = next;
        } else if (m_followed->later == 0) {
            until = std::min(until, m_followed->trace->at(0));
        }
    }
    if (m_byQuarter)
        until = std::min(until, AssumedRanges::nextQuarter(at));
    return range(until, m_assumed.at(at), colderEnd);
}

AirPath::Piece AirPath::next(Moment at, Moment until)
{
    const Trace& trace = *m_readings.trace;
    if (trace.empty())
        return unwatched(at, until, std::nullopt);
    m_readings.to(at);
    if (m_readings.later == 0) {
        const Moment first = trace.at(0);
        if (at < first - endHold)
            return unwatched(at, std::min(until, Moment(first - endHold)), std::nullopt);
        return { Piece::Kind::Watched, std::min(until, first), trace.temperature(0), trace.temperature(0) };
    }
    if (m_readings.later == trace.size()) {
        const Moment held = trace.at(trace.size() - 1) + endHold;
        if (at >= held)
            return unwatched(at, until, std::nullopt);
        const Celsius last = trace.temperature(trace.size() - 1);
        return { Piece::Kind::Watched, std::min(until, held), last, last };
    }
    const Moment end = std::min(until, trace.at(m_readings.later));
    if (m_readings.inGap()) {
        const Celsius before = trace.temperature(m_readings.later - 1);
        return unwatched(at, end, std::min(before, trace.temperature(m_readings.later)));
    }
    return { Piece::Kind::Watched, end, m_readings.between(at), m_readings.between(end) };
}

} // namespace gw
