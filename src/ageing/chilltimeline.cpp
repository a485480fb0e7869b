#include "ageing/chilltimeline.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "ageing/airwalk.h"

namespace gw {

namespace {

constexpr double timeConstantsToSettle = 10; // e^-10 of 20 C is less than any logger shows
constexpr int piecesBetweenMarks = 64;

bool alike(const Warmth& a, const Warmth& b)
{
    constexpr double sameTemperature = 0.005; // C, half of what a reading is kept to
    constexpr double sameShare = 1e-4;
    return a.temperature.has_value() == b.temperature.has_value()
        && a.frozenSince.has_value() == b.frozenSince.has_value()
        && std::abs(a.frozenShare - b.frozenShare) < sameShare
        && (!a.temperature || std::abs(a.temperature->value - b.temperature->value) < sameTemperature);
}

} // namespace

ChillTimeline::ChillTimeline(const Response& response)
    : m_response(response)
    , m_settle(std::chrono::ceil<std::chrono::milliseconds>(
          timeConstantsToSettle * std::max(response.thawed, response.frozen)))
{
}

/// Back to where the readings there were then still tell the whole truth.
void ChillTimeline::forgetAfter(Moment moment)
{
    while (!m_marks.empty() && m_marks.back().at > moment)
        m_marks.pop_back();
    while (!m_windows.empty() && (m_marks.empty() || m_windows.back().from > m_marks.back().at))
        m_windows.pop_back();
    if (!m_windows.empty())
        m_windows.back().to = m_marks.back().at;
    const Moment kept = m_windows.empty() ? Moment::min() : m_windows.back().to;
    while (!m_events.empty() && m_events.back().at > kept)
        m_events.pop_back();
}

/// Contents that have stood here since ever, while no cold spell is near.
Warmth ChillTimeline::settled(const Air& air, Moment at) const
{
    FrostWalk contents(m_response, at - m_settle, {});
    AirPath path(air, m_response.freezesAt);
    walk(path, contents, at);
    return contents.warmth();
}

/// Takes the last window further: to a moment, and on while anything is frozen, up to the last moment any
/// reading speaks for.
void ChillTimeline::goOn(const Air& air, Moment to, Moment last)
{
    FrostWalk contents(m_response, m_marks.back().at, m_marks.back().warmth);
    AirPath path(air, m_response.freezesAt);
    std::size_t seen = 0;
    int pieces = 0;
    while (contents.at() < to || (contents.frozen() && contents.at() < last)) {
        const Moment begin = contents.at();
        walkPiece(path.next(begin, begin < to ? to : last), contents);
        for (; seen < contents.events().size(); ++seen) {
            const FrostEvent& event = contents.events()[seen];
            m_events.push_back({ event.thawed.value_or(contents.at()), event });
        }
        if (++pieces % piecesBetweenMarks == 0)
            m_marks.push_back({ contents.at(), contents.warmth() });
    }
    if (m_marks.back().at < contents.at())
        m_marks.push_back({ contents.at(), contents.warmth() });
    m_windows.back().to = contents.at();
}

void ChillTimeline::grow(const Air& air, ColdTimes& cold, Moment from)
{
    const Trace& trace = *air.readings;
    if (from < m_begin) {
        m_windows.clear();
        m_marks.clear();
        m_events.clear();
        m_readings = 0;
        // Half as far again, so that older and older containers do not begin it anew each time.
        m_begin = from;
        if (!trace.empty() && from < trace.at(trace.size() - 1))
            m_begin -= (trace.at(trace.size() - 1) - from) / 2;
    }
    if (trace.size() == m_readings)
        return;
    if (m_readings > 0)
        forgetAfter(trace.at(m_readings - 1));
    m_readings = trace.size();
    if (trace.empty())
        return;
    const Moment last = trace.at(trace.size() - 1) + endHold;
    if (!m_windows.empty())
        goOn(air, m_windows.back().to, last);
    const auto& spells = cold.spells(air, m_begin);
    const auto done = [&](const ColdTimes::Spell& s) {
        return s.to <= m_begin || (!m_windows.empty() && s.to <= m_windows.back().to);
    };
    for (auto spell = std::partition_point(spells.begin(), spells.end(), done); spell != spells.end();
        ++spell) {
        if (done(*spell))
            continue;
        const Moment begin = spell->from - m_settle;
        if (m_windows.empty() || begin - m_settle > m_windows.back().to) {
            m_windows.push_back({ begin, begin });
            m_marks.push_back({ begin, settled(air, begin) });
        }
        goOn(air, spell->to, last);
    }
}

const ChillTimeline::Window* ChillTimeline::windowAt(Moment moment) const
{
    const auto found = std::partition_point(
        m_windows.begin(), m_windows.end(), [&](const Window& w) { return w.to <= moment; });
    return found == m_windows.end() ? nullptr : &*found;
}

const ChillTimeline::Mark* ChillTimeline::markUpTo(Moment moment) const
{
    const auto next
        = std::partition_point(m_marks.begin(), m_marks.end(), [&](const Mark& m) { return m.at <= moment; });
    return next == m_marks.begin() ? nullptr : &*std::prev(next);
}

/// Goes with a container from its own beginning until it is where any other of its kind would be. Answers
/// from when on the windows speak for it; none when it came to the end before.
std::optional<Moment> ChillTimeline::join(AirPath& path, FrostWalk& own, Moment to) const
{
    const Moment settled = own.at() + m_settle;
    while (own.at() < to) {
        const Window* window = windowAt(own.at());
        if (window && window->from <= own.at()) {
            const auto mark = std::partition_point(
                m_marks.begin(), m_marks.end(), [&](const Mark& m) { return m.at < own.at(); });
            if (mark->at == own.at() && alike(mark->warmth, own.warmth()))
                return own.at();
            const auto next = mark->at == own.at() ? std::next(mark) : mark;
            walk(path, own, std::min(to, next->at));
            continue;
        }
        if (own.frozen()) {
            walkPiece(path.next(own.at(), window ? std::min(to, window->from) : to), own);
            continue;
        }
        if (!window || window->from >= to || window->from >= own.at() + m_settle || own.at() >= settled)
            return window ? std::min(to, window->from) : to;
        walk(path, own, std::min({ to, settled, window->from }));
    }
    return std::nullopt;
}

bool ChillTimeline::startMatters(Moment from, Moment to) const
{
    const Window* window = windowAt(from);
    return window && window->from < to && window->from < from + m_settle;
}

Chill ChillTimeline::chill(const Air& air, Moment from, Moment to, const Warmth& start, ChillEnd end) const
{
    FrostWalk own(m_response, from, start);
    AirPath path(air, m_response.freezesAt);
    const auto joined = join(path, own, to);
    Chill chill;
    chill.events = own.events();
    if (!joined) {
        chill.end = own.warmth();
        return chill;
    }

    // The last stretch up to the end is gone through again, from the nearest moment the contents are known.
    Moment since = own.at();
    Warmth warmth = own.warmth();
    const auto running = warmth.frozenSince;
    bool farFromCold = false;
    const Mark* mark = markUpTo(to);
    if (mark && mark->at >= *joined && mark->at > since) {
        since = mark->at;
        warmth = mark->warmth;
    }
    if (const Moment settles = to - m_settle; settles > since && warmth.frozenShare <= 0) {
        const Window* window = windowAt(settles);
        if (!window || window->from >= to) {
            since = settles;
            warmth = {};
            farFromCold = true;
        }
    }

    auto event = std::partition_point(
        m_events.begin(), m_events.end(), [&](const Ended& e) { return e.at <= *joined; });
    for (; event != m_events.end() && event->at <= since; ++event)
        chill.events.push_back(event->event);
    if (!farFromCold || end == ChillEnd::Warm) {
        FrostWalk last(m_response, since, warmth);
        AirPath rest(air, m_response.freezesAt);
        walk(rest, last, to);
        chill.events.insert(chill.events.end(), last.events().begin(), last.events().end());
        chill.end = last.warmth();
    }

    // An event it was in when it joined began when it did for this container.
    if (running) {
        const auto first = chill.events.begin() + static_cast<std::ptrdiff_t>(own.events().size());
        if (first != chill.events.end())
            first->from = *running;
        else
            chill.end.frozenSince = running;
    }
    return chill;
}

} // namespace gw
