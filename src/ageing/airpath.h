#pragma once

#include <chrono>
#include <cstddef>
#include <optional>

#include "ageing/climate.h"
#include "ageing/trace.h"

namespace gw {

/// The air of one place: its readings, and what is taken of it where nobody watched. Refers to the traces.
struct Air {
    const Trace* readings; ///< never null
    AssumedRanges assumed {};
    const Trace* followed = nullptr; ///< readings of another place as this one takes them; null: none
    double margin = 0; ///< so many degrees colder it may be than those followed
};

/// How long a reading at either end of the readings speaks for the time beyond it, no longer than two
/// readings speak for the time between them: else nothing could be said of any cold place now.
inline constexpr std::chrono::hours endHold { 6 };

/// The air of a place piece by piece, as far as a limit cares: asked forward in time.
class AirPath {
public:
    AirPath(const Air& air, Celsius limit);

    struct Piece {
        enum class Kind {
            Watched, ///< linear between two readings
            Assumed, ///< unwatched, and not colder than the limit: a range
            Unsure ///< unwatched, and perhaps colder than the limit
        };
        Kind kind = Kind::Unsure;
        Moment until;
        Celsius from; ///< Watched: at the beginning; Assumed: the low end
        Celsius to; ///< Watched: at the end; Assumed: the middle
        bool known = true; ///< false: nothing is assumed of the place
    };
    /// The piece beginning at a moment, no longer than up to another.
    Piece next(Moment at, Moment until);

private:
    /// One trace, gone through forward.
    struct Cursor {
        const Trace* trace;
        std::chrono::seconds longestWatched {};
        std::size_t later = 0; ///< the first reading later than where it is
        bool begun = false;

        explicit Cursor(const Trace* of);
        void to(Moment at);
        bool inside() const { return later > 0 && later < trace->size(); }
        bool inGap() const { return trace->at(later) - trace->at(later - 1) > longestWatched; }
        Celsius between(Moment at) const;
    };

    Piece unwatched(Moment at, Moment until, const std::optional<Celsius>& colderEnd);
    Piece followed(Moment at, Moment until);
    Piece range(Moment until, const std::optional<Range<Celsius>>& assumed,
        const std::optional<Celsius>& colderEnd) const;

    AssumedRanges m_assumed;
    bool m_byQuarter = false;
    Celsius m_limit;
    double m_margin = 0;
    Cursor m_readings;
    std::optional<Cursor> m_followed;
};

} // namespace gw
