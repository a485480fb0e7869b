#include "ageing/watchedtrace.h"

#include <algorithm>

#include "ageing/climate.h"

namespace gw {

namespace {

constexpr Days seasonWatched { 45 };
constexpr double secondsPerDay = 86400;

Celsius degrees(std::int16_t hundredths) { return Celsius { hundredths / 100.0 }; }

} // namespace

WatchedTrace::WatchedTrace(Trace trace)
    : m_trace(std::move(trace))
    , m_extremes(m_trace.hundredths())
{
    index();
}

void WatchedTrace::index()
{
    m_longest = m_trace.longestWatched().count();
    m_gaps.clear();
    m_trace.times().eachStep(0, [this](std::size_t i, std::int64_t step, std::size_t steps) {
        for (const std::size_t end = i + steps; step > m_longest && i < end; ++i)
            addGap(i);
    });
}

void WatchedTrace::addGap(std::size_t i)
{
    const double before = m_gaps.empty() ? 0 : m_gaps.back().watched;
    const Moment since = m_gaps.empty() ? first() : m_gaps.back().to;
    const Moment from = m_trace.at(i);
    m_gaps.push_back(
        { i, from, m_trace.at(i + 1), before + std::chrono::duration<double>(from - since).count() });
}

bool WatchedTrace::append(const Reading& reading)
{
    if (!m_trace.append(reading))
        return false;
    m_extremes.grow(m_trace.hundredths());
    m_quarters = {};
    m_found = {};
    if (m_trace.longestWatched().count() != m_longest) {
        index();
        m_clocks.clear();
        m_above.clear();
        m_temperature.reset();
        return true;
    }
    if (m_trace.size() > 1 && isGap(m_trace.size() - 2))
        addGap(m_trace.size() - 2);
    for (ClockTotals& clock : m_clocks)
        clock.totals->grow(m_trace);
    for (auto& [limit, totals] : m_above)
        totals.grow(m_trace);
    if (m_temperature)
        m_temperature->grow(m_trace);
    return true;
}

WatchedTrace::Position WatchedTrace::position(Moment moment) const
{
    const Moment at = std::clamp(moment, first(), last());
    for (const Found& known : m_found) {
        if (known.valid && known.at == at)
            return known.position;
    }
    const Times::Spot spot
        = m_trace.times().spotUpTo(std::chrono::floor<std::chrono::seconds>(at).time_since_epoch().count());
    const Moment begin { std::chrono::seconds { spot.second } };
    const Position found { spot.index, std::chrono::duration<double>(at - begin).count(), spot.step };
    m_found[m_lastFound] = { at, found, true };
    m_lastFound = (m_lastFound + 1) % m_found.size();
    return found;
}

bool WatchedTrace::isGap(std::size_t i) const
{
    return m_trace.times()[i + 1] - m_trace.times()[i] > m_longest;
}

double WatchedTrace::watchedUpTo(Moment moment) const
{
    const Moment at = std::clamp(moment, first(), last());
    const auto next
        = std::partition_point(m_gaps.begin(), m_gaps.end(), [&](const Gap& gap) { return gap.from < at; });
    if (next == m_gaps.begin())
        return std::chrono::duration<double>(at - first()).count();
    const Gap& gap = *std::prev(next);
    return gap.watched + (at > gap.to ? std::chrono::duration<double>(at - gap.to).count() : 0);
}

Days WatchedTrace::watched(Moment from, Moment to) const
{
    if (empty())
        return Days { 0 };
    return Days { (watchedUpTo(to) - watchedUpTo(from)) / secondsPerDay };
}

std::optional<Celsius> WatchedTrace::temperatureAt(const Position& at) const
{
    const Celsius a = m_trace.temperature(at.index);
    if (!(at.past > 0))
        return a;
    if (at.index + 1 == m_trace.size() || at.step > m_longest)
        return std::nullopt;
    const Celsius b = m_trace.temperature(at.index + 1);
    return Celsius { a.value + (b.value - a.value) * at.past / static_cast<double>(at.step) };
}

std::optional<Range<Celsius>> WatchedTrace::extremes(Moment from, Moment to) const
{
    if (empty() || to < first() || from > last())
        return std::nullopt;
    const Position begin = position(from);
    const Position end = position(to);
    std::optional<Range<Celsius>> range;
    const auto see = [&range](Celsius low, Celsius high) {
        range = range ? Range<Celsius> { std::min(range->low, low), std::max(range->high, high) }
                      : Range<Celsius> { low, high };
    };
    for (const Position& at : { begin, end }) {
        if (const auto temperature = temperatureAt(at))
            see(*temperature, *temperature);
    }
    const std::size_t firstInside = begin.past > 0 ? begin.index + 1 : begin.index;
    if (firstInside <= end.index) {
        const auto inside = m_extremes.between(m_trace.hundredths(), firstInside, end.index + 1);
        see(degrees(inside.low), degrees(inside.high));
    }
    return range;
}

double WatchedTrace::between(const Column& column, Moment from, Moment to) const
{
    const auto upTo = [&](Moment moment) {
        const Position at = position(moment);
        return column.totals->upTo(m_trace, { at.index, at.step, at.past }, column.which);
    };
    return upTo(to) - upTo(from);
}

void WatchedTrace::expect(std::shared_ptr<ClockTables> tables) { m_expected = std::move(tables); }

WatchedTrace::Column WatchedTrace::keptTotals(const Rate& rate, double warmer) const
{
    for (const ClockTotals& kept : m_clocks) {
        if (kept.warmer != warmer)
            continue;
        for (std::size_t i = 0; i < kept.rates.size(); ++i) {
            if (kept.rates[i] == rate)
                return { kept.totals.get(), i };
        }
    }
    return {};
}

WatchedTrace::Column WatchedTrace::clockTotals(const Rate& rate, double warmer) const
{
    if (const Column kept = keptTotals(rate, warmer); kept.totals)
        return kept;
    const bool expected = m_expected && m_expected->has(rate);
    std::shared_ptr<ClockTables> own;
    if (!expected)
        own = std::make_shared<ClockTables>(std::vector { rate });
    ClockTables& tables = expected ? *m_expected : *own;
    const auto all = m_extremes.between(m_trace.hundredths(), 0, m_trace.size());
    m_clocks.push_back(
        { tables.rates(), warmer, std::make_unique<Totals>(tables.table(warmer, all), m_trace, m_longest) });
    return keptTotals(rate, warmer);
}

const Totals& WatchedTrace::aboveTotals(Celsius limit) const
{
    for (const auto& [known, totals] : m_above) {
        if (known == limit)
            return totals;
    }
    const auto all = m_extremes.between(m_trace.hundredths(), 0, m_trace.size());
    auto table = std::make_shared<SpeedTable>(std::vector { timeAbove(limit) }, all);
    return m_above.emplace_back(limit, Totals(std::move(table), m_trace, m_longest)).second;
}

Days WatchedTrace::equivalent(Moment from, Moment to, const Rate& rate, double warmer) const
{
    if (empty() || !agesByTemperature(rate))
        return watched(from, to);
    return Days { between(clockTotals(rate, warmer), from, to) };
}

WatchedTrace::Glance WatchedTrace::glance(Moment from, Moment to, const Column& column) const
{
    const auto spotOf = [&](Moment moment) {
        return m_trace.times().spotUpTo(
            std::chrono::floor<std::chrono::seconds>(std::clamp(moment, first(), last()))
                .time_since_epoch()
                .count());
    };
    Glance glance { {}, spotOf(from).index, spotOf(to).index };
    if (column.totals) {
        const auto before = column.totals->around(m_trace, glance.begin, column.which);
        const auto after = column.totals->around(m_trace, glance.end, column.which);
        glance.equivalent = { std::max(Days { 0 }, after.low - before.high),
            std::max(Days { 0 }, after.high - before.low) };
    }
    return glance;
}

Range<Celsius> WatchedTrace::extremes(const Glance& glance) const
{
    const auto around
        = m_extremes.around(m_trace.hundredths(), glance.begin, std::min(glance.end + 2, m_trace.size()));
    return { degrees(around.low), degrees(around.high) };
}

Days WatchedTrace::above(Moment from, Moment to, Celsius limit) const
{
    return empty() ? Days { 0 } : Days { between({ &aboveTotals(limit), 0 }, from, to) };
}

std::optional<Moment> WatchedTrace::firstAbove(Moment from, Moment to, Celsius limit) const
{
    if (empty() || to <= std::max(from, first()) || from > last())
        return std::nullopt;
    const Position begin = position(from);
    if (const auto now = temperatureAt(begin); now && *now > limit)
        return std::max(from, first());
    // The reading after the span's end too: the limit may be crossed before it.
    const std::size_t end = std::min(position(to).index + 2, m_trace.size());
    const auto found = m_extremes.firstAbove(m_trace.hundredths(), begin.index + 1, end, limit.value * 100);
    if (!found)
        return std::nullopt;
    Moment at = m_trace.at(*found);
    if (!isGap(*found - 1)) {
        const double low = m_trace.temperature(*found - 1).value;
        const double high = m_trace.temperature(*found).value;
        const Days step = at - m_trace.at(*found - 1);
        at = later(m_trace.at(*found - 1), step * ((limit.value - low) / (high - low)));
    }
    at = std::max(at, from);
    return at < to ? std::optional(at) : std::nullopt;
}

std::optional<Celsius> WatchedTrace::mean(Moment from, Moment to) const
{
    const Days length = watched(from, to);
    if (!(length > Days { 0 }))
        return std::nullopt;
    if (!m_temperature) {
        const auto all = m_extremes.between(m_trace.hundredths(), 0, m_trace.size());
        m_temperature.emplace(
            std::make_shared<SpeedTable>(std::vector { temperatureItself() }, all), m_trace, m_longest);
    }
    return Celsius { between({ &*m_temperature, 0 }, from, to) / length.count() };
}

WatchedTrace::Unwatched WatchedTrace::unwatchedIn(const Gap& gap) const
{
    const Celsius a = m_trace.temperature(gap.before);
    const Celsius b = m_trace.temperature(gap.before + 1);
    return { gap.from, gap.to, Range<Celsius> { std::min(a, b), std::max(a, b) } };
}

std::vector<WatchedTrace::Unwatched> WatchedTrace::unwatched(Moment from, Moment to) const
{
    std::vector<Unwatched> stretches;
    const auto add = [&](const Unwatched& all) {
        const Moment begin = std::max(from, all.from);
        const Moment end = std::min(to, all.to);
        if (begin < end || (from == to && all.from < from && from < all.to))
            stretches.push_back({ begin, end, all.ends });
    };
    if (empty()) {
        add({ Moment::min(), Moment::max(), std::nullopt });
        return stretches;
    }
    add({ Moment::min(), first(), std::nullopt });
    auto next
        = std::partition_point(m_gaps.begin(), m_gaps.end(), [&](const Gap& gap) { return gap.to <= from; });
    for (; next != m_gaps.end() && next->from <= to; ++next)
        add(unwatchedIn(*next));
    add({ last(), Moment::max(), std::nullopt });
    return stretches;
}

std::optional<Range<Celsius>> WatchedTrace::quarter(std::size_t quarter) const
{
    if (empty())
        return std::nullopt;
    auto& known = m_quarters[quarter];
    if (known)
        return *known;
    Days seen { 0 };
    std::optional<Range<Celsius>> range;
    const Date begun = dateOf(first());
    // Quarters begin with December, March, June and September.
    for (std::chrono::year_month month { begun.year() - std::chrono::years { 1 }, std::chrono::month { 12 } };
        startOf(month / 1) <= last(); month += std::chrono::months { 3 }) {
        const Moment from = startOf(month / 1);
        const Moment to = startOf((month + std::chrono::months { 3 }) / 1);
        if (AssumedRanges::quarterOf(from) != quarter || to <= first())
            continue;
        seen += watched(from, to);
        if (const auto part = extremes(from, to)) {
            range = range
                ? Range<Celsius> { std::min(range->low, part->low), std::max(range->high, part->high) }
                : *part;
        }
    }
    known = seen >= seasonWatched ? range : std::nullopt;
    return *known;
}

} // namespace gw
