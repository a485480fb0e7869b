#include "ageing/watched.h"

#include <algorithm>
#include <utility>

namespace gw {

namespace {

constexpr double followMargin = 2; // C: assumption, no source
constexpr std::chrono::hours day { 24 };

Range<Celsius> joined(const Range<Celsius>& a, const std::optional<Range<Celsius>>& b)
{
    return b ? Range<Celsius> { std::min(a.low, b->low), std::max(a.high, b->high) } : a;
}

std::optional<Range<Celsius>> widened(const std::optional<Range<Celsius>>& range, double margin)
{
    if (!range)
        return range;
    return Range<Celsius> { { range->low.value - margin }, { range->high.value + margin } };
}

} // namespace

Range<Celsius> WatchedClimate::Step::taken(const Range<Celsius>& there) const
{
    return { { there.low.value + warmer - margin }, { there.high.value + warmer + margin } };
}

/// The day's mean is that of the 24 hours up to the reading: what comes after is not known then.
Celsius WatchedClimate::Step::taken(const WatchedTrace& there, const Reading& reading) const
{
    const double here = reading.temperature.value;
    const auto mean = swing < 1 ? there.mean(reading.at - day, reading.at) : std::nullopt;
    return { (mean ? mean->value + swing * (here - mean->value) : here) + warmer };
}

WatchedClimate::WatchedClimate(std::map<PlaceId, WatchedPlace> places, const std::vector<Rate>& rates)
    : m_tables(std::make_shared<ClockTables>(rates))
{
    for (auto& [id, place] : places) {
        const auto added = m_places.emplace(
            id, Place { WatchedTrace(std::move(place.readings)), place.assumed, place.follows });
        added.first->second.own.expect(m_tables);
        if (const auto all = added.first->second.own.extremes(Moment::min(), Moment::max()))
            m_tables->cover(*all);
    }
}

const WatchedClimate::Place* WatchedClimate::find(const PlaceId& id) const
{
    const auto found = m_places.find(id);
    return found == m_places.end() ? nullptr : &found->second;
}

std::optional<WatchedClimate> WatchedClimate::asOf(Moment moment) const
{
    const bool goesOn = std::any_of(m_places.begin(), m_places.end(), [&](const auto& place) {
        const Trace& trace = place.second.own.trace();
        return !trace.empty() && trace.at(trace.size() - 1) > moment;
    });
    if (!goesOn)
        return std::nullopt;
    std::map<PlaceId, WatchedPlace> places;
    for (const auto& [id, place] : m_places) {
        const Trace& trace = place.own.trace();
        const std::size_t count = trace.countUpTo(moment);
        Trace known;
        known.reserve(count);
        for (std::size_t i = 0; i < count; ++i)
            known.append(trace.reading(i));
        places.emplace(id, WatchedPlace { std::move(known), place.assumed, place.follows });
    }
    return WatchedClimate(std::move(places), m_tables->rates());
}

const WatchedTrace* WatchedClimate::readings(const PlaceId& place) const
{
    const Place* found = find(place);
    return found ? &found->own : nullptr;
}

const WatchedClimate::Followed& WatchedClimate::followedBy(const Place& place) const
{
    if (place.followed)
        return *place.followed;
    Followed& followed = place.followed.emplace();
    Step step { &place, 0, 1, 0 };
    while (step.place->follows) {
        const Follow& next = *step.place->follows;
        const Place* there = find(next.place);
        const bool seen = there == &place
            || std::any_of(followed.steps.begin(), followed.steps.end(),
                [&](const Step& s) { return s.place == there; });
        if (!there || seen)
            break;
        step = { there, step.warmer + next.warmer, step.swing * (1 - std::clamp(next.damped, 0.0, 1.0)),
            step.margin + followMargin };
        followed.steps.push_back(step);
        if (!followed.source && !there->own.empty())
            followed.source = step;
    }
    if (followed.source) {
        const WatchedTrace& there = followed.source->place->own;
        Trace trace;
        trace.reserve(there.trace().size());
        for (std::size_t i = 0; i < there.trace().size(); ++i) {
            const Reading reading = there.trace().reading(i);
            trace.append({ reading.at, followed.source->taken(there, reading), {} });
        }
        followed.trace = WatchedTrace(std::move(trace));
        followed.trace.expect(m_tables);
    }
    return followed;
}

std::optional<Range<Celsius>> WatchedClimate::assumed(const Place& place, std::size_t quarter) const
{
    if (const auto range = place.assumed.of(quarter))
        return range;
    if (const auto range = place.own.quarter(quarter))
        return range;
    const Followed& followed = followedBy(place);
    if (followed.source) {
        if (const auto range = followed.trace.quarter(quarter))
            return widened(range, followed.source->margin);
    }
    for (const Step& step : followed.steps) {
        if (const auto range = step.place->assumed.of(quarter))
            return step.taken(*range);
    }
    return std::nullopt;
}

const std::optional<Range<Celsius>>& WatchedClimate::anywhere() const
{
    if (m_anywhere)
        return *m_anywhere;
    std::optional<Range<Celsius>> all;
    const auto see = [&all](const std::optional<Range<Celsius>>& range) {
        if (range)
            all = joined(*range, all);
    };
    for (const auto& [id, place] : m_places) {
        for (std::size_t quarter = 0; quarter < place.assumed.quarters.size(); ++quarter)
            see(assumed(place, quarter));
        const Followed& followed = followedBy(place);
        see(place.own.extremes(Moment::min(), Moment::max()));
        if (followed.source)
            see(widened(followed.trace.extremes(Moment::min(), Moment::max()), followed.source->margin));
    }
    return m_anywhere.emplace(all);
}

/// Sums up what a span did, stretch by stretch, from what is known best to what is known least.
class WatchedClimate::Filling {
public:
    Filling(const WatchedClimate& climate, const Rate& rate)
        : m_climate(climate)
        , m_rate(rate)
    {
    }

    void place(const Place& place, Moment from, Moment to)
    {
        if (const auto range = place.own.extremes(from, to)) {
            const Days days = place.own.equivalent(from, to, m_rate);
            add({ days, days }, *range);
        }
        for (const auto& stretch : place.own.unwatched(from, to)) {
            answer.unwatched += daysBetween(stretch.from, stretch.to);
            followed(place, stretch);
        }
    }

    /// Nothing is known: as a bound, the worst of the places there are, and at the least plain time.
    void unknown(Days span, const std::optional<Range<Celsius>>& ends)
    {
        answer.known = false;
        const auto& anywhere = m_climate.anywhere();
        if (!anywhere && !ends) {
            answer.equivalent = { answer.equivalent.low + span, answer.equivalent.high + span };
            return;
        }
        const Range<Celsius> range = joined(anywhere ? *anywhere : *ends, ends);
        add({ span * std::min(1.0, speedAt(range.low, m_rate)),
                span * std::max(1.0, speedAt(range.high, m_rate)) },
            range);
    }

    Exposure answer;

private:
    void add(const Range<Days>& days, const Range<Celsius>& range)
    {
        answer.equivalent = { answer.equivalent.low + days.low, answer.equivalent.high + days.high };
        answer.hottest = answer.hottest ? std::max(*answer.hottest, range.high) : range.high;
        answer.coldest = answer.coldest ? std::min(*answer.coldest, range.low) : range.low;
    }

    void followed(const Place& place, const WatchedTrace::Unwatched& stretch)
    {
        const Followed& followed = m_climate.followedBy(place);
        if (!followed.source) {
            assumed(place, stretch);
            return;
        }
        const double margin = followed.source->margin;
        const WatchedTrace& trace = followed.trace;
        if (const auto range = widened(trace.extremes(stretch.from, stretch.to), margin)) {
            add({ trace.equivalent(stretch.from, stretch.to, m_rate, -margin),
                    trace.equivalent(stretch.from, stretch.to, m_rate, margin) },
                *range);
        }
        for (auto rest : trace.unwatched(stretch.from, stretch.to)) {
            const auto ends = widened(rest.ends, margin);
            rest.ends = ends ? joined(*ends, stretch.ends) : stretch.ends;
            assumed(place, rest);
        }
    }

    void assumed(const Place& place, const WatchedTrace::Unwatched& stretch)
    {
        Moment from = stretch.from;
        do {
            const Moment to = std::min(stretch.to, AssumedRanges::nextQuarter(from));
            const Days span = daysBetween(from, to);
            if (const auto usual = m_climate.assumed(place, AssumedRanges::quarterOf(from))) {
                const Range<Celsius> range = joined(*usual, stretch.ends);
                add({ span * speedAt(range.low, m_rate), span * speedAt(range.high, m_rate) }, range);
            } else {
                unknown(span, stretch.ends);
            }
            from = to;
        } while (from < stretch.to);
    }

    const WatchedClimate& m_climate;
    const Rate& m_rate;
};

Exposure WatchedClimate::exposure(const PlaceId& id, Moment from, Moment to, const Rate& rate) const
{
    const Moment end = std::max(from, to);
    Filling filling(*this, rate);
    if (const Place* place = find(id)) {
        filling.place(*place, from, end);
    } else {
        filling.answer.unwatched = daysBetween(from, end);
        filling.unknown(daysBetween(from, end), std::nullopt);
    }
    return filling.answer;
}

std::optional<Range<Celsius>> WatchedClimate::usual(const PlaceId& id, Moment at) const
{
    const Place* place = find(id);
    return place ? assumed(*place, AssumedRanges::quarterOf(at)) : std::nullopt;
}

Heat WatchedClimate::heat(const PlaceId& id, Moment from, Moment to, Celsius limit) const
{
    Heat heat;
    const Place* place = find(id);
    if (!place)
        return heat;
    const auto range = place->own.extremes(from, to);
    if (!range)
        return heat;
    heat.hottest = range->high;
    if (range->high > limit) {
        heat.above = place->own.above(from, to, limit);
        heat.first = place->own.firstAbove(from, to, limit);
    }
    return heat;
}

/// The air of a place as frost sees it: its readings, then those of the place it follows, then what is
/// assumed.
const Air& WatchedClimate::airOf(const Place& place) const
{
    if (place.air)
        return *place.air;
    Air& air = place.air.emplace(Air { &place.own.trace() });
    for (std::size_t quarter = 0; quarter < air.assumed.quarters.size(); ++quarter)
        air.assumed.quarters[quarter] = assumed(place, quarter);
    const Followed& followed = followedBy(place);
    if (followed.source) {
        air.followed = &followed.trace.trace();
        air.margin = followed.source->margin;
    }
    return air;
}

Chill WatchedClimate::chill(const PlaceId& id, Moment from, Moment to, const Contents& contents,
    const Warmth& start, ChillEnd end) const
{
    const Place* place = find(id);
    return place ? place->chills.chill(airOf(*place), from, to, contents, start, end)
                 : Climate::chill(id, from, to, contents, start, end);
}

bool WatchedClimate::startMatters(const PlaceId& id, Moment from, Moment to, const Contents& contents) const
{
    const Place* place = find(id);
    return place && place->chills.startMatters(airOf(*place), from, to, contents);
}

Below WatchedClimate::below(const PlaceId& id, Moment from, Moment to, Celsius limit) const
{
    const Place* place = find(id);
    if (!place)
        return Climate::below(id, from, to, limit);
    // Readings are whole hundredths: half of one less is colder than the limit, and no reading is it.
    const Celsius colder { limit.value - 0.005 };
    const ColdTimes::Unsure unsure = place->chills.unsure(airOf(*place), from, to, limit);
    return { place->own.watched(from, to) - place->own.above(from, to, colder), unsure.time, unsure.since };
}

bool WatchedClimate::followsReadings(const PlaceId& id) const
{
    const Place* place = find(id);
    return place && followedBy(*place).source;
}

WatchedClimate::Settled WatchedClimate::settled(const PlaceId& id) const
{
    Settled settled;
    const Place* place = find(id);
    if (!place)
        return settled;
    const auto see = [&settled](const Trace& trace) {
        if (trace.empty())
            return;
        settled.upTo = std::min(settled.upTo, trace.at(trace.size() - 1));
        settled.readings += trace.size();
    };
    see(place->own.trace());
    see(followedBy(*place).trace.trace());
    return settled;
}

bool WatchedClimate::unsure(const PlaceId& id, Moment from, Moment to, Celsius limit) const
{
    const Place* place = find(id);
    return !place || place->chills.unsure(airOf(*place), from, to, limit).since.has_value();
}

bool WatchedClimate::append(const PlaceId& id, const Reading& reading)
{
    const auto found = m_places.find(id);
    if (found == m_places.end())
        return false;
    WatchedTrace& own = found->second.own;
    const bool first = own.empty();
    const auto longest = own.trace().longestWatched();
    if (!own.append(reading))
        return false;
    m_anywhere.reset();
    const bool changed = first || own.trace().longestWatched() != longest;
    if (changed)
        ++m_upheavals;
    const Reading kept = own.trace().reading(own.trace().size() - 1);
    for (auto& [other, place] : m_places) {
        place.air.reset();
        if (!place.followed)
            continue;
        if (changed)
            place.followed.reset();
        else if (place.followed->source && place.followed->source->place == &found->second)
            place.followed->trace.append({ kept.at, place.followed->source->taken(own, kept), {} });
    }
    return true;
}

std::optional<ReadingsFigures> WatchedClimate::summary(const PlaceId& id, Moment from, Moment to) const
{
    const Place* place = find(id);
    if (!place)
        return std::nullopt;
    const Trace& trace = place->own.trace();
    std::vector<Reading> readings;
    for (std::size_t i = 0; i < trace.size(); ++i) {
        if (trace.at(i) >= from && trace.at(i) <= to)
            readings.push_back(trace.reading(i));
    }
    auto figures = figuresOf(std::move(readings), {});
    if (!figures)
        return std::nullopt;
    figures->unwatched = daysBetween(from, to) - place->own.watched(from, to);
    return std::move(*figures);
}

} // namespace gw
