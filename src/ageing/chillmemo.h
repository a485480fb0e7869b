#pragma once

#include <map>
#include <vector>

#include "ageing/airpath.h"
#include "ageing/chill.h"
#include "ageing/chilltimeline.h"
#include "ageing/coldtimes.h"

namespace gw {

/// Remembers what the air of one place did to contents of each kind, so that a shelf of them need not go
/// through the readings again. Use on one thread at a time. The air handed in must be that of one place, its
/// readings only ever growing at the end; else forget().
class ChillMemo {
public:
    /// As chillOf(), for contents rounded to the next kind that answers quicker to the air: sooner frozen,
    /// never later.
    Chill chill(const Air& air, Moment from, Moment to, const Contents& contents, const Warmth& start,
        ChillEnd end = ChillEnd::Warm);
    /// As Climate::startMatters().
    bool startMatters(const Air& air, Moment from, Moment to, const Contents& contents);
    /// Unwatched time in which it may have been colder than a limit.
    ColdTimes::Unsure unsure(const Air& air, Moment from, Moment to, Celsius limit);
    void forget();

    /// The kind contents are counted among: time constants a quarter of a doubling apart.
    static Response kindOf(const Response& response);

private:
    struct Cold {
        ColdTimes times;
        std::vector<std::pair<Response, ChillTimeline>> kinds;
    };
    Cold& cold(const Air& air, Celsius limit);
    const Response& knownKind(const Contents& contents);
    const ChillTimeline& timeline(const Air& air, const Response& kind, Cold& cold, Moment from);

    /// What the answers rest on besides the readings themselves.
    struct Basis {
        AssumedRanges assumed;
        std::chrono::seconds longestWatched {};
        std::chrono::seconds longestFollowed {};
        double margin = 0;
        friend bool operator==(const Basis&, const Basis&) = default;
    };
    Basis m_basis;
    std::vector<std::pair<Contents, Response>> m_contents; ///< a few whose kind was asked for last
    std::map<Celsius, Cold> m_cold; ///< by freezing point
};

} // namespace gw
