#include "ageing/coldtimes.h"

#include <algorithm>
#include <cmath>

namespace gw {

ColdTimes::ColdTimes(Celsius limit)
    : m_limit(limit)
{
}

/// From a reading on, which is not in a spell that was added before.
void ColdTimes::addSpells(const Air& air, std::size_t first)
{
    const Trace& trace = *air.readings;
    const auto values = trace.hundredths();
    const auto limit
        = static_cast<std::int16_t>(std::clamp(std::ceil(m_limit.value * 100), -32768.0, 32767.0));
    const auto cold = [&](std::int16_t value) { return value < limit; };
    const std::size_t count = trace.size();
    for (std::size_t i = first; i < count;) {
        const auto begin = std::find_if(values.begin() + static_cast<std::ptrdiff_t>(i), values.end(), cold);
        if (begin == values.end())
            return;
        const auto end = std::find_if_not(begin, values.end(), cold);
        const auto a = static_cast<std::size_t>(begin - values.begin());
        const auto b = static_cast<std::size_t>(end - values.begin());
        m_spells.push_back({ a > 0 ? trace.at(a - 1) : trace.at(a) - endHold,
            b < count ? trace.at(b) : trace.at(count - 1) + endHold });
        i = b;
    }
}

const std::vector<ColdTimes::Spell>& ColdTimes::spells(const Air& air, Moment since)
{
    const Trace& trace = *air.readings;
    const auto values = trace.hundredths();
    if (since < m_spellsSince) {
        m_spells.clear();
        m_spellsSince = since;
        std::size_t first = std::max<std::size_t>(trace.countUpTo(since), 1) - 1;
        while (first > 0 && values[first] < m_limit.value * 100)
            --first;
        addSpells(air, first);
    } else if (trace.size() != m_spelled) {
        std::size_t first = m_spelled > 0 ? m_spelled - 1 : 0;
        while (!m_spells.empty() && first < trace.size() && m_spells.back().to > trace.at(first)) {
            first = trace.countUpTo(m_spells.back().from);
            m_spells.pop_back();
        }
        addSpells(air, first);
    }
    m_spelled = trace.size();
    return m_spells;
}

void ColdTimes::addUnsure(const Air& air, Moment from, Moment to)
{
    AirPath path(air, m_limit);
    for (Moment at = from; at < to;) {
        const AirPath::Piece piece = path.next(at, to);
        if (piece.kind == AirPath::Piece::Kind::Unsure) {
            if (!m_stretches.empty() && m_stretches.back().to == at
                && m_stretches.back().known == piece.known) {
                m_stretches.back().to = piece.until;
            } else {
                const Days before = m_stretches.empty()
                    ? Days { 0 }
                    : m_stretches.back().before + daysBetween(m_stretches.back().from, m_stretches.back().to);
                m_stretches.push_back({ at, piece.until, piece.known, before });
            }
        }
        at = piece.until;
    }
}

void ColdTimes::grow(const Air& air)
{
    const Trace& trace = *air.readings;
    const std::size_t followed = air.followed ? air.followed->size() : 0;
    if (trace.size() == m_readings && followed == m_followed)
        return;
    // What the last reading said of the time after it no longer holds.
    const Moment changed = followed == 0 && m_readings > 0 ? trace.at(m_readings - 1) : Moment::min();
    while (!m_stretches.empty() && m_stretches.back().to > changed)
        m_stretches.pop_back();

    m_from = Moment::max();
    m_to = Moment::min();
    const auto see = [&](const Trace& of, std::chrono::hours hold) {
        m_from = std::min(m_from, Moment(of.at(0) - hold));
        m_to = std::max(m_to, Moment(of.at(of.size() - 1) + hold));
    };
    if (!trace.empty())
        see(trace, endHold);
    if (followed > 0)
        see(*air.followed, std::chrono::hours { 0 });
    Moment at = std::max(m_from, m_stretches.empty() ? changed : std::max(changed, m_stretches.back().to));
    const auto longest = trace.longestWatched().count();
    if (!trace.empty()) {
        addUnsure(air, at, std::max(at, Moment(trace.at(0) - endHold)));
        const std::size_t later = trace.countUpTo(at);
        trace.times().eachStep(
            later > 0 ? later - 1 : 0, [&](std::size_t i, std::int64_t step, std::size_t steps) {
                for (const std::size_t end = i + steps; step > longest && i < end; ++i)
                    addUnsure(air, std::max(at, trace.at(i)), trace.at(i + 1));
            });
        at = std::max(at, Moment(trace.at(trace.size() - 1) + endHold));
    }
    addUnsure(air, at, m_to);
    m_readings = trace.size();
    m_followed = followed;
}

ColdTimes::Unsure ColdTimes::unsure(const Air& air, Moment from, Moment to) const
{
    Unsure sum;
    const auto add = [&](Moment begin, Moment end, Days time, bool known) {
        sum.time += time;
        sum.known = sum.known && known;
        if (!sum.since && begin <= end)
            sum.since = begin;
    };
    const auto ask = [&](Moment begin, Moment end) {
        AirPath path(air, m_limit);
        do {
            const AirPath::Piece piece = path.next(begin, end);
            if (piece.kind == AirPath::Piece::Kind::Unsure)
                add(begin, piece.until, daysBetween(begin, piece.until), piece.known);
            begin = piece.until;
        } while (begin < end);
    };
    if (m_readings + m_followed == 0 || from >= to || from >= m_to || to <= m_from) {
        ask(from, std::max(from, to));
        return sum;
    }
    if (from < m_from)
        ask(from, m_from);
    const auto first = std::partition_point(
        m_stretches.begin(), m_stretches.end(), [&](const Stretch& s) { return s.to <= from; });
    const auto end
        = std::partition_point(first, m_stretches.end(), [&](const Stretch& s) { return s.from < to; });
    if (first != end) {
        const Stretch& last = *std::prev(end);
        const Days uncut = last.before - first->before + daysBetween(last.from, last.to);
        const Days cut = daysBetween(first->from, std::max(first->from, from))
            + daysBetween(std::min(to, last.to), last.to);
        add(std::max(first->from, from), last.to, uncut - cut,
            std::all_of(first, end, [](const Stretch& s) { return s.known; }));
    }
    if (to > m_to)
        ask(m_to, to);
    return sum;
}

} // namespace gw
