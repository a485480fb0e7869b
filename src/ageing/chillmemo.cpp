#include "ageing/chillmemo.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "ageing/airwalk.h"

namespace gw {

Response ChillMemo::kindOf(const Response& response)
{
    constexpr double stepsADoubling = 4;
    constexpr double nearly = 1e-6; // a kind is of its own kind
    const double step = std::floor(std::log2(response.thawed.count()) * stepsADoubling + nearly);
    const double thawed = std::exp2(step / stepsADoubling);
    const double less = thawed / response.thawed.count();
    // Rounded, so that one kind is always told by the same figures.
    const auto rounded = [](double value) { return std::round(value * 1e9) / 1e9; };
    return { Hours { rounded(thawed) }, Hours { rounded(response.frozen.count() * less) },
        rounded(response.latent * less), response.freezesAt };
}

void ChillMemo::forget() { m_cold.clear(); }

ChillMemo::Cold& ChillMemo::cold(const Air& air, Celsius limit)
{
    const Basis basis { air.assumed, air.readings->longestWatched(),
        air.followed ? air.followed->longestWatched() : std::chrono::seconds {}, air.margin };
    if (!(basis == m_basis)) {
        forget();
        m_basis = basis;
    }
    Cold& cold = m_cold.try_emplace(limit, Cold { ColdTimes(limit), {} }).first->second;
    cold.times.grow(air);
    return cold;
}

ColdTimes::Unsure ChillMemo::unsure(const Air& air, Moment from, Moment to, Celsius limit)
{
    return cold(air, limit).times.unsure(air, from, to);
}

const Response& ChillMemo::knownKind(const Contents& contents)
{
    constexpr std::size_t few = 32;
    const auto known = std::find_if(
        m_contents.begin(), m_contents.end(), [&](const auto& c) { return c.first == contents; });
    if (known != m_contents.end())
        return known->second;
    if (m_contents.size() == few)
        m_contents.clear();
    return m_contents.emplace_back(contents, kindOf(responseOf(contents))).second;
}

const ChillTimeline& ChillMemo::timeline(const Air& air, const Response& kind, Cold& cold, Moment from)
{
    auto known
        = std::find_if(cold.kinds.begin(), cold.kinds.end(), [&](const auto& k) { return k.first == kind; });
    if (known == cold.kinds.end())
        known = cold.kinds.insert(known, { kind, ChillTimeline(kind) });
    known->second.grow(air, cold.times, from);
    return known->second;
}

bool ChillMemo::startMatters(const Air& air, Moment from, Moment to, const Contents& contents)
{
    const Response kind = knownKind(contents);
    return timeline(air, kind, cold(air, kind.freezesAt), from).startMatters(from, to);
}

Chill ChillMemo::chill(
    const Air& air, Moment from, Moment to, const Contents& contents, const Warmth& start, ChillEnd end)
{
    const Response kind = knownKind(contents);
    Cold& cold = this->cold(air, kind.freezesAt);
    Chill chill = timeline(air, kind, cold, from).chill(air, from, std::max(from, to), start, end);
    const ColdTimes::Unsure unsure = cold.times.unsure(air, from, to);
    chill.unwatchedRisk = unsure.time;
    chill.riskSince = unsure.since;
    chill.known = unsure.known;
    return chill;
}

} // namespace gw
