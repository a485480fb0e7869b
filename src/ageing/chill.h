#pragma once

#include <optional>
#include <vector>

#include "ageing/contents.h"
#include "ageing/frost.h"
#include "measure/moment.h"

namespace gw {

struct AssumedRanges;
class Trace;

/// How much of the contents' state at the end of a span is wanted: all, or whether they are frozen, and of
/// those that are not no temperature, which is some work to tell.
enum class ChillEnd { Warm, FrozenOnly };

/// What a span of time in one place did to contents.
struct Chill {
    std::vector<FrostEvent> events; ///< that ended in the span, in time order; the running one is in end
    Warmth end; ///< how the contents stand at the end: the start of the next span
    Days unwatchedRisk { 0 }; ///< time nobody watched in which they may have frozen
    std::optional<Moment> riskSince; ///< the first such moment; there for an empty span too
    bool known = true; ///< false when neither readings nor an assumed range say anything about the place

    bool stillFrozen() const { return end.frozenSince.has_value(); }
    /// What followed this span at once: events and risk add up, the end is the later one's.
    void add(const Chill& later);
};

/// How long a place was colder than a limit: the air, not any contents.
struct Below {
    Days watched { 0 }; ///< colder, by its readings
    Days unwatchedRisk { 0 }; ///< perhaps colder, and nobody watched
    std::optional<Moment> riskSince; ///< as for Chill
};

/// Contents that stood in a place from one moment to another (from <= to). Between readings the air is
/// linear. In time nobody watched the place's assumed range counts: where its low end is not below the
/// freezing point the contents go towards that low end, frozen ones thaw in its middle; else, or where
/// nothing is assumed, whether they froze is not known, nor how they stand after it. Contents not known at
/// the start begin as cold as the air, though not frozen. Splitting a span changes nothing.
Chill chillOf(const Trace& trace, const AssumedRanges& assumed, Moment from, Moment to,
    const Contents& contents, const Warmth& start);

Below belowOf(const Trace& trace, const AssumedRanges& assumed, Moment from, Moment to, Celsius limit);

} // namespace gw
