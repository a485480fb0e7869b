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

Chill ChillMemo::chill(const Air& air, Moment from, Moment to, const Contents& contents, const Warmth& start)
{
    const Response kind = kindOf(responseOf(contents));
    Cold& cold = this->cold(air, kind.freezesAt);
    auto known
        = std::find_if(cold.kinds.begin(), cold.kinds.end(), [&](const auto& k) { return k.first == kind; });
    if (known == cold.kinds.end())
        known = cold.kinds.insert(known, { kind, ChillTimeline(kind) });
    known->second.grow(air, cold.times);

    Chill chill = known->second.chill(air, from, std::max(from, to), start);
    const ColdTimes::Unsure unsure = cold.times.unsure(air, from, to);
    chill.unwatchedRisk = unsure.time;
    chill.riskSince = unsure.since;
    chill.known = unsure.known;
    return chill;
}

} // namespace gw
