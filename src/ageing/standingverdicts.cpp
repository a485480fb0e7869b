#include "ageing/standingverdicts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "ageing/clocks.h"
#include "ageing/firstlook.h"
#include "ageing/frosts.h"
#include "ageing/judging.h"
#include "ageing/reasons.h"

namespace gw {

namespace {

constexpr std::chrono::milliseconds moment { 1 };
constexpr std::size_t enoughToLook = 32; // containers: for fewer a first look is not worth its preparation
constexpr double surely = 1e-6; // days: totals that went another way differ by far less
constexpr std::array quarterMonths { std::chrono::January, std::chrono::April, std::chrono::July,
    std::chrono::October };

Moment inQuarter(std::size_t quarter)
{
    return startOf(Date { std::chrono::year { 2000 } / quarterMonths[quarter] / 1 });
}

std::uint64_t bitOf(std::uint32_t place) { return std::uint64_t { 1 } << (place % 64); }

/// Days a clock may go on, or may turn out to have gone on less, before its age says something else.
double daysLeft(const Clock& clock)
{
    if (!clock.running || !clock.lifeKnown())
        return std::numeric_limits<double>::infinity();
    return std::min(std::abs(clock.age.high.count() - clock.life.span.low.count()),
        std::abs(clock.age.high.count() - clock.life.span.high.count()));
}

/// The first moment later than another at which its history says something new.
Moment nextDate(const AgeCase& item)
{
    const History& history = item.history;
    Moment next = Moment::max();
    // A moment that is the last of something ends it just after.
    const auto see = [&](std::optional<Moment> at) {
        if (at && *at >= item.asOf)
            next = std::min(next, *at > item.asOf ? *at : *at + moment);
    };
    see(history.arrived);
    see(history.opened);
    see(history.retired);
    if (history.made)
        see(startOf(*history.made));
    if (history.printed)
        see(endOf(*history.printed));
    if (history.hold)
        see(history.hold->since);
    for (const Stay& stay : history.stays)
        see(stay.from);
    for (const Filling& filling : history.fillings)
        see(filling.from);
    for (const BenchTest& test : history.tests) {
        see(test.at);
        see(later(test.at, testedDay));
        see(later(test.at, grantLength(item.figures)));
    }
    return next;
}

} // namespace

void StandingVerdicts::put(std::size_t container, History history, std::shared_ptr<const LifeFigures> figures)
{
    if (container >= m_containers.size()) {
        m_containers.resize(container + 1);
        m_watches.resize(container + 1);
        m_verdicts.resize(container + 1, Verdict::NotKnown);
    }
    m_containers[container] = { std::move(history), std::move(figures) };
    m_watches[container] = {};
}

std::uint32_t StandingVerdicts::placeOf(const PlaceId& id, const WatchedClimate& climate)
{
    const auto known
        = std::find_if(m_places.begin(), m_places.end(), [&](const Place& place) { return place.id == id; });
    if (known != m_places.end())
        return static_cast<std::uint32_t>(known - m_places.begin());
    Place& place = m_places.emplace_back();
    place.id = id;
    place.settled = climate.settled(id);
    return static_cast<std::uint32_t>(m_places.size() - 1);
}

std::uint32_t StandingVerdicts::rateOf(Place& place, const Rate& rate)
{
    const auto known = std::find(place.rates.begin(), place.rates.end(), rate);
    const auto number = static_cast<std::uint32_t>(known - place.rates.begin());
    if (known == place.rates.end()) {
        place.rates.push_back(rate);
        place.clocks.push_back(0);
    }
    return number;
}

std::int32_t StandingVerdicts::limitOf(Place& place, Celsius limit)
{
    const auto known = std::find(place.limits.begin(), place.limits.end(), limit);
    const auto number = static_cast<std::int32_t>(known - place.limits.begin());
    if (known == place.limits.end())
        place.limits.push_back(limit);
    return number;
}

StandingVerdicts::Span StandingVerdicts::span(
    const WatchedClimate& climate, const Place& place, Moment from, Moment to) const
{
    Span span;
    for (const Rate& rate : place.rates) {
        const Exposure exposure = climate.exposure(place.id, from, to, rate);
        span.days.push_back(exposure.equivalent.high.count());
        span.hottest = exposure.hottest;
        span.known = exposure.known;
    }
    for (const Celsius limit : place.limits)
        span.unsure.push_back(climate.unsure(place.id, from, to, limit));
    return span;
}

/// Takes down what the place is taken for since its last reading.
void StandingVerdicts::settle(const WatchedClimate& climate, Place& place, Moment asOf)
{
    place.settled = climate.settled(place.id);
    place.from = std::min(place.settled.upTo, asOf - moment);
    place.tail = span(climate, place, place.from, asOf);
    for (std::size_t quarter = 0; quarter < place.usual.size(); ++quarter)
        place.usual[quarter] = climate.usual(place.id, inQuarter(quarter));
}

bool StandingVerdicts::sameUsual(const WatchedClimate& climate) const
{
    if (climate.anywhere() != m_anywhere)
        return false;
    for (const Place& place : m_places) {
        for (std::size_t quarter = 0; quarter < place.usual.size(); ++quarter) {
            if (climate.usual(place.id, inQuarter(quarter)) != place.usual[quarter])
                return false;
        }
    }
    return true;
}

/// What happened at a place since the last asking. Without new readings that is the time since, and the last
/// moment before, from which it goes on. With them it is all since the last one there was then: what came
/// after it was taken for something else. Answers whether there are any.
bool StandingVerdicts::step(const WatchedClimate& climate, Place& place, Moment asOf)
{
    const auto settled = climate.settled(place.id);
    place.changed = settled.readings != place.settled.readings;
    place.settled = settled;
    if (!place.changed)
        place.from = m_asOf - moment;
    const Span before = place.changed ? std::move(place.tail) : span(climate, place, place.from, m_asOf);
    const Span now = span(climate, place, place.from, asOf);
    for (std::size_t rate = 0; rate < place.rates.size(); ++rate)
        place.clocks[rate] += std::max(before.days[rate], now.days[rate]);
    place.knownChanged = before.known != now.known;
    const Celsius cold { -std::numeric_limits<double>::infinity() };
    const Celsius wasHottest = before.hottest.value_or(cold);
    const Celsius isHottest = now.hottest.value_or(cold);
    place.cooler = std::min(wasHottest, isHottest);
    place.hotter = std::max(wasHottest, isHottest);
    const WatchedTrace* readings = climate.readings(place.id);
    const auto read = readings ? readings->extremes(place.from, asOf) : std::nullopt;
    place.coldest = read ? std::optional(read->low) : std::nullopt;
    // A last reading speaks on for a while.
    if (readings && !readings->empty()) {
        const Celsius last = readings->trace().temperature(readings->trace().size() - 1);
        place.coldest = place.coldest ? std::min(*place.coldest, last) : last;
    }
    place.unsureChanged.clear();
    for (std::size_t limit = 0; limit < place.limits.size(); ++limit)
        place.unsureChanged.push_back(before.unsure[limit] != now.unsure[limit]);
    return place.changed;
}

bool StandingVerdicts::isDue(const Watch& watch, Moment asOf, std::uint64_t changed) const
{
    if (asOf >= watch.next || (changed & watch.otherPlaces) != 0)
        return true;
    const Place& place = m_places[watch.place];
    if (place.clocks[watch.rate] >= watch.clockDue || (watch.placeMatters && place.knownChanged))
        return true;
    if (!watch.weatherMatters)
        return false;
    if (watch.unsettled || watch.since > place.from)
        return true;
    if (watch.heatLimit >= place.cooler.value && watch.heatLimit < place.hotter.value)
        return true;
    if (watch.cold < 0)
        return false;
    const auto limit = static_cast<std::size_t>(watch.cold);
    return place.unsureChanged[limit]
        || (watch.freezingMatters && place.coldest && *place.coldest < place.limits[limit]);
}

/// When the first of them came, of those whose places are known.
Moment StandingVerdicts::earliest(Moment asOf) const
{
    Moment earliest = asOf;
    for (const Container& container : m_containers) {
        if (!container.history.stays.empty())
            earliest = std::min(earliest, container.history.stays.front().from);
    }
    return earliest;
}

void StandingVerdicts::judgeOne(
    std::size_t container, const WatchedClimate& climate, Moment asOf, FirstLook* firstLook)
{
    const Container& judgedNow = m_containers[container];
    const AgeCase item(judgedNow.history, *judgedNow.figures, climate, asOf, Wording::None);
    const auto seen = firstLook ? firstLook->look(item) : std::nullopt;
    const Grounds grounds = seen
        ? Grounds { seen->verdict, seen->daysLeft, seen->weatherMatters, seen->freezingMatters, false }
        : judged(item);
    m_verdicts[container] = grounds.verdict;
    watch(container, item, grounds);
    ++m_judged;
}

StandingVerdicts::Grounds StandingVerdicts::judged(const AgeCase& item) const
{
    const Judgement judgement = judge(item);
    // Nothing weather does is worse than this, and what made it so is told by dates and clocks alone.
    const bool weatherMatters = judgement.verdict != Verdict::DoNotUse;
    Grounds grounds { judgement.verdict, std::min(daysLeft(sealedClock(item)), daysLeft(openedClock(item))),
        weatherMatters, weatherMatters, false };
    if (const auto label = labelClock(item))
        grounds.daysLeft = std::min(grounds.daysLeft, std::abs(label->left.count()));
    if (judgement.frosts.empty())
        return grounds;
    const auto& climate = static_cast<const WatchedClimate&>(item.climate);
    const PlaceId place = item.placeNow();
    const Moment settled = std::min(climate.settled(place).upTo, item.asOf);
    const auto& thawed = judgement.frosts.back().thawed;
    grounds.unsettled = judgement.frozenNow || (thawed && *thawed > settled)
        || (!thawed && climate.unsure(place, settled, item.asOf, item.figures.freezesAt));
    return grounds;
}

/// What will change the verdict it has now.
void StandingVerdicts::watch(std::size_t container, const AgeCase& item, const Grounds& grounds)
{
    const History& history = item.history;
    const LifeFigures& figures = item.figures;
    const auto& climate = static_cast<const WatchedClimate&>(item.climate);
    Watch watch;
    watch.next = nextDate(item);
    watch.place = placeOf(item.placeNow(), climate);
    Place& place = m_places[watch.place];
    watch.rate = rateOf(place, figures.rate);
    watch.clockDue = place.clocks[watch.rate] + grounds.daysLeft - surely;
    watch.placeMatters = grounds.verdict != Verdict::DoNotUse;
    watch.weatherMatters = grounds.weatherMatters;
    watch.freezingMatters = grounds.freezingMatters;
    watch.unsettled = grounds.unsettled;
    const double none = std::numeric_limits<double>::infinity();
    watch.heatLimit = figures.keepBetween ? figures.keepBetween->high.value + heatLeftToClock : none;
    const bool crystallises = figures.crystallisesBetween.has_value();
    if (figures.frost != Frost::Never)
        watch.cold = limitOf(place, crystallises ? lookBelow(figures) : figures.freezesAt);
    watch.since = std::max(item.hereSince(), weatherSince(item));
    for (const Stay& stay : history.stays) {
        if (stay.from <= item.asOf)
            watch.since = std::max(watch.since, stay.from);
    }
    for (const Filling& filling : history.fillings) {
        if (filling.from <= item.asOf)
            watch.since = std::max(watch.since, filling.from);
    }

    const Moment settled = std::min(place.settled.upTo, item.asOf);
    // A test's extension rests on the age it had at its end.
    for (const BenchTest& test : history.tests) {
        const Moment until = later(test.at, grantLength(figures));
        if (test.passed && until > settled && until <= item.asOf)
            watch.next = item.asOf;
    }
    // Where it stood before, time nobody watched may be told of by readings to come.
    const auto leave = [&](const PlaceId& id, Moment end) {
        const std::uint32_t left = placeOf(id, climate);
        if (m_places[left].settled.upTo < std::min(end, item.asOf))
            watch.otherPlaces |= bitOf(left);
    };
    for (std::size_t i = 0; i + 1 < history.stays.size(); ++i)
        leave(history.stays[i].place, history.stays[i + 1].from);
    if (history.foundUndated)
        leave(firstPlace(item), item.hereSince());
    m_watches[container] = watch;
}

const std::vector<Verdict>& StandingVerdicts::asOf(const WatchedClimate& climate, Moment asOf)
{
    m_judged = 0;
    const bool goesOn = climate.identity() == m_climate && climate.upheavals() == m_upheavals
        && asOf >= m_asOf && sameUsual(climate);
    std::uint64_t changed = 0;
    for (std::size_t i = 0; i < m_places.size(); ++i) {
        if (!goesOn)
            m_places[i].settled = climate.settled(m_places[i].id);
        else if (step(climate, m_places[i], asOf))
            changed |= bitOf(static_cast<std::uint32_t>(i));
    }
    m_due.clear();
    for (std::size_t i = 0; i < m_containers.size(); ++i) {
        if (!goesOn || isDue(m_watches[i], asOf, changed))
            m_due.push_back(i);
    }
    std::optional<FirstLook> firstLook;
    if (m_due.size() >= enoughToLook)
        firstLook.emplace(climate, earliest(asOf), asOf);
    for (const std::size_t container : m_due)
        judgeOne(container, climate, asOf, firstLook ? &*firstLook : nullptr);
    for (Place& place : m_places)
        settle(climate, place, asOf);
    m_climate = climate.identity();
    m_upheavals = climate.upheavals();
    m_anywhere = climate.anywhere();
    m_asOf = asOf;
    return m_verdicts;
}

} // namespace gw
