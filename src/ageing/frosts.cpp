#include "ageing/frosts.h"

#include <algorithm>
#include <utility>

#include "ageing/stays.h"

namespace gw {

namespace {

/// The filling in force at a moment; what was before the first is taken to be the first. None: nothing known.
std::vector<Filling>::const_iterator fillingAt(const History& history, Moment at)
{
    const auto next = std::partition_point(history.fillings.begin(), history.fillings.end(),
        [&](const Filling& filling) { return filling.from <= at; });
    return next == history.fillings.begin() ? next : std::prev(next);
}

class Gathering {
public:
    Gathering(const AgeCase& item, ChillEnd now)
        : m_item(item)
        , m_tested(item.lastPassed() != nullptr)
        , m_settled(weatherSince(item))
        , m_settlesAll(m_tested && m_settled >= item.asOf)
        , m_end(now)
    {
        frosts.counted = true;
    }

    /// Part by part, as full as it was.
    void stay(const PlaceId& place, Moment begin, Moment end)
    {
        Moment at = begin;
        do {
            Moment until = end;
            const auto& fillings = m_item.history.fillings;
            const auto filling = fillingAt(m_item.history, at);
            if (filling != fillings.end() && std::next(filling) != fillings.end()
                && std::next(filling)->from > at)
                until = std::min(until, std::next(filling)->from);
            if (at < m_settled)
                until = std::min(until, m_settled);
            m_parts.push_back({ place, at, until, contentsAt(m_item.history, m_item.figures, at) });
            at = until;
        } while (at < end);
    }

    Frosts frosts;

    void finish()
    {
        for (std::size_t i = 0; i < m_parts.size(); ++i)
            part(m_parts[i], i + 1 == m_parts.size() ? m_end : endOf(m_parts[i + 1]));
        const auto unsettled = [&](const FrostEvent& event) {
            return !m_tested || event.from >= m_settled || (event.thawed && *event.thawed > m_settled);
        };
        if (!m_settlesAll)
            frosts.unsettled
                = static_cast<int>(std::count_if(frosts.events.begin(), frosts.events.end(), unsettled));
        if (const auto& since = frosts.now.frozenSince) {
            frosts.frozenNow = true;
            frosts.events.push_back({ *since, std::nullopt });
            ++frosts.unsettled;
        }
    }

private:
    struct Part {
        PlaceId place;
        Moment from;
        Moment to;
        Contents contents;
    };

    /// What is wanted of the end of a part before another.
    ChillEnd endOf(const Part& next) const
    {
        return m_item.climate.startMatters(next.place, next.from, next.to, next.contents)
            ? ChillEnd::Warm
            : ChillEnd::FrozenOnly;
    }

    void part(const Part& part, ChillEnd end)
    {
        const Chill chill
            = m_item.climate.chill(part.place, part.from, part.to, part.contents, frosts.now, end);
        frosts.events.insert(frosts.events.end(), chill.events.begin(), chill.events.end());
        frosts.now = chill.end;
        if (!chill.riskSince)
            return;
        frosts.everUnsure = true;
        if (m_settlesAll || (m_tested && part.from < m_settled))
            return;
        if (!frosts.riskSince)
            frosts.riskSince = chill.riskSince;
        frosts.placeKnown = frosts.placeKnown && chill.known;
    }

    const AgeCase& m_item;
    const bool m_tested;
    const Moment m_settled;
    const bool m_settlesAll;
    const ChillEnd m_end;
    std::vector<Part> m_parts;
};

} // namespace

std::optional<int> Frosts::count() const
{
    if (!counted || everUnsure)
        return std::nullopt;
    return static_cast<int>(events.size());
}

Contents contentsAt(const History& history, const LifeFigures& figures, Moment at)
{
    const auto filling = fillingAt(history, at);
    return contentsOf(figures, filling == history.fillings.end() ? Filling {} : *filling);
}

Frosts frostsOf(const AgeCase& item, ChillEnd now)
{
    if (item.figures.frost == Frost::Never || item.figures.crystallisesBetween)
        return {};
    Gathering gathering(item, now);
    const Moment here = item.hereSince();
    if (item.history.foundUndated)
        gathering.stay(firstPlace(item), foundBegun(item), here);
    eachStay(item, here, item.asOf,
        [&](const PlaceId& place, Moment begin, Moment end) { gathering.stay(place, begin, end); });
    gathering.finish();
    return std::move(gathering.frosts);
}

Below stoodBelow(const AgeCase& item, Celsius limit)
{
    Below sum;
    const Moment since = weatherSince(item);
    if (item.lastPassed() && since >= item.asOf)
        return sum;
    const auto add = [&](const PlaceId& place, Moment begin, Moment end) {
        const Below part = item.climate.below(place, begin, end, limit);
        sum.watched += part.watched;
        sum.unwatchedRisk += part.unwatchedRisk;
        if (!sum.riskSince)
            sum.riskSince = part.riskSince;
    };
    if (item.history.foundUndated && !item.lastPassed())
        add(firstPlace(item), foundBegun(item), since);
    eachStay(item, since, item.asOf, add);
    return sum;
}

} // namespace gw
