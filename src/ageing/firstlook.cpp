#include "ageing/firstlook.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>

#include "ageing/reasons.h"
#include "ageing/stays.h"

namespace gw {

namespace {

constexpr std::chrono::milliseconds moment { 1 };
constexpr double surely = 1e-6; // days: totals that went another way differ by far less
constexpr double never = std::numeric_limits<double>::infinity();

/// The worst the weather can make of it.
Verdict worstWeather(const LifeFigures& figures)
{
    if (figures.frost == Frost::Harms && !figures.crystallisesBetween)
        return Verdict::NotKnown;
    return figures.frost != Frost::Never || figures.keepBetween ? Verdict::TestFirst : Verdict::Good;
}

/// Whether an age in bounds is past a limit; none when it may be or not. Takes down how far away it is.
std::optional<bool> past(const Range<double>& age, double limit, double& daysLeft)
{
    if (!(age.low > limit + surely || age.high < limit - surely))
        return std::nullopt;
    daysLeft = std::min({ daysLeft, std::abs(age.low - limit), std::abs(age.high - limit) });
    return age.low > limit;
}

std::optional<Verdict> byAge(const Range<double>& age, const Life& life, double& daysLeft)
{
    const auto low = past(age, life.span.low.count(), daysLeft);
    const auto high = past(age, life.span.high.count(), daysLeft);
    if (!low || !high)
        return std::nullopt;
    return *high ? Verdict::DoNotUse : *low ? Verdict::TestFirst : Verdict::Good;
}

/// What nothing lifts, whatever its age.
bool condemned(const AgeCase& item)
{
    const History& history = item.history;
    if ((history.retired && *history.retired <= item.asOf)
        || (history.hold && history.hold->since <= item.asOf))
        return true;
    return std::any_of(history.tests.begin(), history.tests.end(), [&](const BenchTest& test) {
        return test.at <= item.asOf && (!test.passed || test.grainyAfterFrost);
    });
}

} // namespace

/// The last few characters of an id tell it from others as well as all of them.
std::size_t FirstLook::ByEnd::operator()(const PlaceId& id) const
{
    std::uint64_t end = 0;
    const std::size_t count = std::min(sizeof end, id.text.size());
    std::memcpy(&end, id.text.data() + (id.text.size() - count), count);
    return static_cast<std::size_t>((end * 0x9e3779b97f4a7c15U) >> 32U);
}

FirstLook::FirstLook(const WatchedClimate& climate, Moment since, Moment asOf)
    : m_climate(climate)
    , m_since(since)
    , m_asOf(asOf)
{
}

FirstLook::Place* FirstLook::placeOf(const PlaceId& id)
{
    auto known = m_places.find(id);
    if (known == m_places.end()) {
        Place place;
        place.id = id;
        place.readings = m_climate.readings(id);
        place.settled = m_climate.settled(id).upTo;
        if (place.readings && m_since < m_asOf)
            cutPieces(place);
        known = m_places.emplace(id, std::move(place)).first;
    }
    return known->second.readings ? &known->second : nullptr;
}

void FirstLook::cutPieces(Place& place)
{
    const bool follows = m_climate.followsReadings(place.id);
    for (const auto& stretch : place.readings->unwatched(m_since, m_asOf)) {
        for (Moment from = stretch.from; from < stretch.to;) {
            Piece piece;
            piece.from = from;
            piece.to = std::min(stretch.to, AssumedRanges::nextQuarter(from));
            // Readings at its very ends are none of its own.
            const bool inside = !follows && piece.to - piece.from > 2 * moment;
            const Exposure exposure = m_climate.exposure(
                place.id, inside ? from + moment : from, inside ? piece.to - moment : piece.to, Rate {});
            piece.known = exposure.known && exposure.hottest.has_value();
            piece.hottest = exposure.hottest.value_or(Celsius {});
            piece.even = inside;
            from = piece.to;
            place.pieces.push_back(std::move(piece));
        }
    }
}

std::size_t FirstLook::rateOf(const Rate& rate)
{
    const auto known = std::find(m_rates.begin(), m_rates.end(), rate);
    const auto number = static_cast<std::size_t>(known - m_rates.begin());
    if (known == m_rates.end())
        m_rates.push_back(rate);
    return number;
}

std::size_t FirstLook::limitOf(Celsius limit)
{
    const auto known = std::find(m_limits.begin(), m_limits.end(), limit);
    const auto number = static_cast<std::size_t>(known - m_limits.begin());
    if (known == m_limits.end())
        m_limits.push_back(limit);
    return number;
}

double FirstLook::daysOf(const Place& place, Piece& piece, std::size_t rate)
{
    if (piece.days.size() <= rate)
        piece.days.resize(m_rates.size(), -1);
    double& days = piece.days[rate];
    if (days < 0)
        days = m_climate.exposure(place.id, piece.from, piece.to, m_rates[rate]).equivalent.high.count();
    return days;
}

bool FirstLook::isUnsure(const Part& part, std::size_t limit)
{
    if (!part.whole())
        return m_climate.unsure(part.place->id, part.from, part.to, m_limits[limit]);
    auto& unsure = part.piece->unsure;
    if (unsure.size() <= limit)
        unsure.resize(m_limits.size());
    if (!unsure[limit])
        unsure[limit] = m_climate.unsure(part.place->id, part.from, part.to, m_limits[limit]);
    return *unsure[limit];
}

bool FirstLook::addStay(const PlaceId& id, Moment from, Moment to, std::size_t rate, bool open)
{
    Place* place = placeOf(id);
    if (!place || from < m_since || from >= to)
        return false;
    const bool ages = agesByTemperature(m_rates[rate]);
    const bool read = !place->readings->empty();
    m_stays.push_back({ place, from, to,
        read ? place->readings->glance(from, to, {}) : WatchedTrace::Glance {}, {}, open });

    Range<double> days {};

    auto piece = std::partition_point(
        place->pieces.begin(), place->pieces.end(), [&](const Piece& p) { return p.to <= from; });
    for (; piece != place->pieces.end() && piece->from < to; ++piece) {
        if (!piece->known)
            return false;
        const Part part { place, &*piece, std::max(from, piece->from), std::min(to, piece->to) };
        m_unwatched.push_back(part);
        if (!ages)
            continue;
        double more = daysOf(*place, *piece, rate);
        if (piece->even)
            more *= daysBetween(part.from, part.to) / daysBetween(piece->from, piece->to);
        days.low += piece->even || part.whole() ? more : 0;
        days.high += more;
    }
    if (!ages)
        days = { daysBetween(from, to).count(), daysBetween(from, to).count() };
    add(days, open);
    return true;
}

void FirstLook::add(const Range<double>& days, bool open)
{
    m_bounds.here = { m_bounds.here.low + days.low, m_bounds.here.high + days.high };
    if (open)
        m_bounds.open = { m_bounds.open.low + days.low, m_bounds.open.high + days.high };
}

/// The watched days of all stays in one go: their totals lie far apart in memory, and none waits for another.
void FirstLook::addWatched(std::size_t rate)
{
    if (!agesByTemperature(m_rates[rate]))
        return;
    for (const Stood& stay : m_stays) {
        const WatchedTrace& readings = *stay.place->readings;
        if (readings.empty())
            continue;
        if (stay.place->columns.size() <= rate)
            stay.place->columns.resize(m_rates.size());
        auto& column = stay.place->columns[rate];
        if (!column)
            column = readings.column(m_rates[rate]);
        const auto before = column->totals->around(readings.trace(), stay.glance.begin, column->which);
        const auto after = column->totals->around(readings.trace(), stay.glance.end, column->which);
        add({ std::max(0.0, (after.low - before.high).count()),
                std::max(0.0, (after.high - before.low).count()) },
            stay.open);
    }
}

bool FirstLook::addStays(const AgeCase& item, Moment here)
{
    m_bounds = {};
    m_stays.clear();
    m_unwatched.clear();
    const std::size_t rate = rateOf(item.figures.rate);
    const Moment opened = item.opened().value_or(Moment::max());
    bool known = true;
    eachStay(item, here, item.asOf, [&](const PlaceId& place, Moment from, Moment to) {
        const bool cut = from < opened && opened < to;
        known = known && addStay(place, from, cut ? opened : to, rate, from >= opened)
            && (!cut || addStay(place, opened, to, rate, true));
    });
    if (known)
        addWatched(rate);
    return known;
}

/// Printed date and both clocks, as ageReasons() has them of places that are known.
bool FirstLook::addAge(const AgeCase& item, Moment here, Seen& seen) const
{
    const History& history = item.history;
    const auto add = [&](std::optional<Verdict> verdict) {
        if (verdict)
            seen.verdict = worst(seen.verdict, *verdict);
        return verdict.has_value();
    };
    if (history.printed) {
        bool usedUp = false;
        if (item.labelSpeaks()) {
            const auto gone
                = past(m_bounds.here, daysBetween(here, endOf(*history.printed)).count(), seen.daysLeft);
            if (!gone)
                return false;
            usedUp = *gone;
        }
        add(labelVerdict(item, Days { usedUp ? -1.0 : 1.0 }));
    }
    const Life opened = usableLife(item.figures.opened);
    if (item.opened() && opened.kind != Life::Kind::DoesNotAge) {
        if (opened.kind == Life::Kind::NotKnown || history.foundOpen)
            add(Verdict::NotKnown);
        if (opened.kind == Life::Kind::Ages && !add(byAge(m_bounds.open, opened, seen.daysLeft)))
            return false;
    }
    const Life sealed = usableLife(item.figures.sealed);
    if (sealed.kind == Life::Kind::NotKnown && !history.printed)
        add(Verdict::NotKnown);
    if (sealed.kind != Life::Kind::Ages || item.labelSpeaks())
        return true;
    const Before before = beforeArrival(item, here);
    const double more = before.equivalent.high.count();
    if (!before.ageKnown && !history.printed)
        add(Verdict::NotKnown);
    return add(byAge({ m_bounds.here.low + more, m_bounds.here.high + more }, sealed, seen.daysLeft));
}

std::optional<FirstLook::Answer> FirstLook::tooHot(Celsius limit) const
{
    Answer answer;
    bool maybe = false;
    for (const Part& part : m_unwatched) {
        if (part.piece->hottest <= limit)
            continue;
        const bool certain = part.piece->even || part.whole();
        answer.yes = answer.yes || certain;
        answer.settled = answer.settled || (certain && part.to <= part.place->settled);
        maybe = maybe || !certain;
    }
    for (const Stood& stay : m_stays) {
        if (answer.settled)
            break;
        if (stay.hottest <= limit)
            continue;
        // Nobody's guess: what was read stays as it is.
        const auto read = stay.place->readings->extremes(stay.from, stay.to);
        if (read && read->high > limit)
            answer = { true, true };
    }
    if (!answer.yes && maybe)
        return std::nullopt;
    return answer;
}

FirstLook::Answer FirstLook::unsure(Celsius limit)
{
    const std::size_t number = limitOf(limit);
    Answer answer;
    for (const Part& part : m_unwatched) {
        if (!isUnsure(part, number))
            continue;
        answer.yes = true;
        if (part.to <= part.place->settled)
            return { true, true };
    }
    return answer;
}

bool FirstLook::addFrost(const LifeFigures& figures, Seen& seen)
{
    const bool crystallises = figures.crystallisesBetween.has_value();
    const Celsius limit = crystallises ? lookBelow(figures) : figures.freezesAt;
    const Answer risk = unsure(limit);
    if (risk.yes) {
        seen.verdict = worst(seen.verdict, worstWeather(figures));
        seen.weatherMatters = !risk.settled;
        return true;
    }
    // What froze for certain is to be tested first, at the worst.
    if (seen.verdict >= Verdict::TestFirst) {
        seen.freezingMatters = false;
        return true;
    }
    return m_coldest >= limit;
}

void FirstLook::seeReadings()
{
    m_coldest = { never };
    for (Stood& stay : m_stays) {
        stay.hottest = { -never };
        if (stay.place->readings->empty())
            continue;
        const auto extremes = stay.place->readings->extremes(stay.glance);
        stay.hottest = extremes.high;
        m_coldest = std::min(m_coldest, extremes.low);
    }
}

bool FirstLook::addWeather(const LifeFigures& figures, Seen& seen)
{
    const Verdict bad = worstWeather(figures);
    if (seen.verdict >= bad) {
        seen.weatherMatters = false;
        return true;
    }
    seeReadings();
    if (figures.keepBetween && seen.verdict < Verdict::TestFirst) {
        const auto hot = tooHot({ figures.keepBetween->high.value + heatLeftToClock });
        if (!hot)
            return false;
        if (hot->yes) {
            seen.verdict = Verdict::TestFirst;
            seen.weatherMatters = bad > Verdict::TestFirst || !hot->settled;
            if (bad == Verdict::TestFirst)
                return true;
        }
    }
    return figures.frost == Frost::Never || addFrost(figures, seen);
}

std::optional<FirstLook::Seen> FirstLook::look(const AgeCase& item)
{
    const History& history = item.history;
    const bool gone = history.printed && history.printedIsUseBy && !item.labelSpeaks();
    if (condemned(item))
        return Seen { Verdict::DoNotUse, never, false, false };
    if (item.asOf != m_asOf || history.foundUndated || item.lastPassed())
        return std::nullopt;
    if (gone)
        return Seen { Verdict::DoNotUse, never, false, false };
    const Moment here = item.hereSince();
    Seen seen { Verdict::Good, never, true, true };
    if (!addStays(item, here) || !addAge(item, here, seen) || !addWeather(item.figures, seen))
        return std::nullopt;
    return seen;
}

} // namespace gw
