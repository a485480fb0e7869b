#include "ageing/clocks.h"

#include <algorithm>

#include "ageing/stays.h"

namespace gw {

namespace {

constexpr double tradeSpread
    = 5.0; // C around the reference temperature, before arrival: assumption, no source
constexpr Days yearBefore { 365.2425 }; // found undated: every season may have passed over it

void widen(Exposure& sum, const Exposure& part)
{
    if (part.hottest)
        sum.hottest = sum.hottest ? std::max(*sum.hottest, *part.hottest) : *part.hottest;
    if (part.coldest)
        sum.coldest = sum.coldest ? std::min(*sum.coldest, *part.coldest) : *part.coldest;
    sum.known = sum.known && part.known;
}

} // namespace

Before beforeArrival(const AgeCase& item, Moment here)
{
    const LifeFigures& figures = item.figures;
    const History& history = item.history;
    Before before;
    Range<Days> span {};
    if (history.made) {
        const Days known = daysBetween(std::min(startOf(*history.made), here), here);
        span = { known, known };
    } else {
        span = figures.timeInTrade;
        before.ageKnown = figures.timeInTrade.high.count() > 0 && !history.foundUndated;
        // It was made before the date printed on it.
        if (history.printed && endOf(*history.printed) < here) {
            const Days since = daysBetween(endOf(*history.printed), here);
            span = { std::max(span.low, since), std::max(span.high, since) };
        }
    }
    before.span = span.high;
    const double reference = figures.rate.reference.value;
    before.equivalent = { span.low * speedAt(Celsius { reference - tradeSpread }, figures.rate),
        span.high * speedAt(Celsius { reference + tradeSpread }, figures.rate) };
    if (history.foundUndated) {
        const Exposure there
            = item.climate.exposure(firstPlace(item), later(here, -span.high), here, figures.rate);
        const Days low = span.high.count() > 0 ? there.equivalent.low * (span.low / span.high) : Days { 0 };
        before.equivalent = { std::min(before.equivalent.low, low),
            std::max(before.equivalent.high, there.equivalent.high) };
        before.placeKnown = there.known;
    }
    return before;
}

PlaceId firstPlace(const AgeCase& item)
{
    const auto& stays = item.history.stays;
    return stays.empty() || stays.front().from > item.asOf ? PlaceId {} : stays.front().place;
}

AgeCase::AgeCase(
    const History& lived, const LifeFigures& known, const Climate& around, Moment at, Wording words)
    : history(lived)
    , figures(known)
    , climate(around)
    , asOf(at)
    , wording(words)
{
}

std::optional<Moment> AgeCase::opened() const
{
    std::optional<Moment> since = history.opened;
    if (history.foundOpen && (!since || history.arrived < *since))
        since = history.arrived;
    return since && *since <= asOf ? since : std::nullopt;
}

Moment AgeCase::hereSince() const
{
    Moment since = std::min(history.arrived, asOf);
    if (!history.stays.empty())
        since = std::min(since, history.stays.front().from);
    if (const auto open = opened())
        since = std::min(since, *open);
    return since;
}

PlaceId AgeCase::placeNow() const
{
    PlaceId place;
    for (const Stay& stay : history.stays) {
        if (stay.from <= asOf)
            place = stay.place;
    }
    return place;
}

bool AgeCase::labelSpeaks() const { return history.printed && asOf <= endOf(*history.printed); }

const BenchTest* AgeCase::lastPassed() const
{
    const BenchTest* last = nullptr;
    for (const BenchTest& test : history.tests) {
        if (test.at <= asOf && test.passed && !test.grainyAfterFrost)
            last = &test;
    }
    return last;
}

const Stood& AgeCase::stood(Moment from, Moment to) const
{
    for (const auto& kept : m_kept) {
        if (kept && kept->from == from && kept->to == to)
            return kept->stood;
    }
    auto& kept = m_kept[m_next];
    m_next = (m_next + 1) % m_kept.size();
    Stood& answer = kept.emplace(Kept { from, to, {} }).stood;
    eachStay(*this, from, to, [&](const PlaceId& place, Moment begin, Moment end) {
        const Exposure part = climate.exposure(place, begin, end, figures.rate);
        Exposure& sum = answer.sum;
        sum.equivalent
            = { sum.equivalent.low + part.equivalent.low, sum.equivalent.high + part.equivalent.high };
        sum.unwatched += part.unwatched;
        widen(sum, part);
        if (!part.known && !answer.unknownSince)
            answer.unknownSince = begin;
    });
    return answer;
}

Heat seenAbove(const AgeCase& item, Moment from, Moment to, Celsius limit)
{
    Heat sum;
    eachStay(item, from, to, [&](const PlaceId& place, Moment begin, Moment end) {
        const Heat part = item.climate.heat(place, begin, end, limit);
        sum.above += part.above;
        if (!sum.first)
            sum.first = part.first;
        if (part.hottest)
            sum.hottest = sum.hottest ? std::max(*sum.hottest, *part.hottest) : *part.hottest;
    });
    return sum;
}

ClockUse Clock::use() const
{
    ClockUse use;
    use.applies = running;
    use.known = known();
    if (use.known) {
        use.used = { age.low / life.span.high, age.high / life.span.low };
        use.unwatched = unwatched;
    }
    return use;
}

Verdict Clock::byAge() const
{
    if (!running || !lifeKnown())
        return Verdict::Good;
    if (age.high > life.span.high)
        return Verdict::DoNotUse;
    return age.high > life.span.low ? Verdict::TestFirst : Verdict::Good;
}

Life usableLife(const Life& life)
{
    const bool none
        = life.kind == Life::Kind::Ages && !(life.span.low.count() > 0 && life.span.high >= life.span.low);
    return none ? Life {} : life;
}

namespace {

Clock clockOf(const Life& life)
{
    Clock clock;
    clock.life = usableLife(life);
    clock.running = clock.life.kind != Life::Kind::DoesNotAge;
    return clock;
}

void run(Clock& clock, const AgeCase& item, Moment from)
{
    const Stood& here = item.stood(from, item.asOf);
    clock.age = here.sum.equivalent;
    clock.unwatched = here.sum.unwatched;
    if (agesByTemperature(item.figures.rate))
        clock.placeUnknownSince = here.unknownSince;
}

} // namespace

Clock sealedClock(const AgeCase& item)
{
    Clock clock = clockOf(item.figures.sealed);
    if (!clock.running || !clock.lifeKnown())
        return clock;
    const Moment here = item.hereSince();
    run(clock, item, here);
    const Before before = beforeArrival(item, here);
    clock.age = { clock.age.low + before.equivalent.low, clock.age.high + before.equivalent.high };
    clock.unwatched += before.span;
    clock.sinceKnown = before.ageKnown;
    if (!item.history.made)
        clock.assumedBefore = before.span;
    if (!before.placeKnown && agesByTemperature(item.figures.rate))
        clock.placeUnknownSince = later(here, -before.span);
    return clock;
}

Clock openedClock(const AgeCase& item)
{
    Clock clock = clockOf(item.figures.opened);
    const auto opened = item.opened();
    clock.running = clock.running && opened;
    if (!clock.running || !clock.lifeKnown())
        return clock;
    run(clock, item, *opened);
    clock.sinceKnown = !item.history.foundOpen;
    return clock;
}

std::optional<LabelClock> labelClock(const AgeCase& item)
{
    if (!item.history.printed)
        return std::nullopt;
    const Moment here = item.hereSince();
    const Stood& since = item.stood(here, item.asOf);
    LabelClock clock;
    clock.left = daysBetween(here, endOf(*item.history.printed)) - since.sum.equivalent.high;
    if (agesByTemperature(item.figures.rate))
        clock.placeUnknownSince = since.unknownSince;
    return clock;
}

Moment weatherSince(const AgeCase& item)
{
    const BenchTest* settled = item.lastPassed();
    return settled ? later(settled->at, testedDay) : item.hereSince();
}

std::optional<Weather> weatherOf(const AgeCase& item)
{
    const Moment since = weatherSince(item);
    if (item.lastPassed() && since >= item.asOf)
        return std::nullopt;
    Weather weather { since, item.stood(since, item.asOf).sum };
    if (item.history.foundUndated && !item.lastPassed()) {
        const Moment begun = foundBegun(item);
        widen(weather.exposure, item.climate.exposure(firstPlace(item), begun, since, item.figures.rate));
    }
    return weather;
}

Moment foundBegun(const AgeCase& item)
{
    const auto& made = item.history.made;
    const Moment here = item.hereSince();
    return made ? std::min(startOf(*made), here) : later(here, -yearBefore);
}

} // namespace gw
