#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "ageing/airpath.h"
#include "ageing/chill.h"
#include "ageing/coldtimes.h"

namespace gw {

/// What the cold spells of one place did to contents of one kind that stood in it all along: gone through
/// once, so that every container of that kind shares it. Only spells are gone through, from so long before
/// that the contents have forgotten how warm they were, until they are thawed through.
class ChillTimeline {
public:
    explicit ChillTimeline(const Response& response);

    /// Brings it up to date with the air, for spans from a moment on.
    void grow(const Air& air, ColdTimes& cold, Moment from);
    /// As chillOf() but for the risk of unwatched time.
    Chill chill(const Air& air, Moment from, Moment to, const Warmth& start, ChillEnd end) const;
    /// Whether a spell is so near that it matters how warm contents come to a span.
    bool startMatters(Moment from, Moment to) const;

private:
    /// A stretch gone through, from its first mark to its last.
    struct Window {
        Moment from;
        Moment to;
    };
    /// The contents at some moments of the windows, both ends among them.
    struct Mark {
        Moment at;
        Warmth warmth;
    };
    struct Ended {
        Moment at;
        FrostEvent event;
    };

    Warmth settled(const Air& air, Moment at) const;
    void forgetAfter(Moment moment);
    void goOn(const Air& air, Moment to, Moment last);
    const Window* windowAt(Moment moment) const; ///< the one it lies in, or the next; null: none to come
    const Mark* markUpTo(Moment moment) const; ///< the last one not later; null: none
    std::optional<Moment> join(AirPath& path, FrostWalk& own, Moment to) const;

    Response m_response;
    std::chrono::milliseconds m_settle;
    Moment m_begin = Moment::max(); ///< spells that ended before are left out
    std::size_t m_readings = 0;
    std::vector<Window> m_windows;
    std::vector<Mark> m_marks;
    std::vector<Ended> m_events;
};

} // namespace gw
