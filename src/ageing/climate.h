#pragma once

#include <array>
#include <optional>

#include "ageing/chill.h"
#include "ageing/life.h"
#include "measure/id.h"
#include "measure/moment.h"
#include "measure/range.h"

namespace gw {

/// What is taken of a place where nobody watched: a range for each three months, December to February first,
/// or one for the year where those give none. Months rather than seasons, for there is a south too.
struct AssumedRanges {
    std::optional<Range<Celsius>> year {};
    std::array<std::optional<Range<Celsius>>, 4> quarters {};

    static std::size_t quarterOf(Moment at);
    static Moment nextQuarter(Moment at); ///< when the next begins
    std::optional<Range<Celsius>> of(std::size_t quarter) const;
    std::optional<Range<Celsius>> at(Moment moment) const { return of(quarterOf(moment)); }
    friend bool operator==(const AssumedRanges&, const AssumedRanges&) = default;
};

/// A place without readings of its own that goes with another: a lean-to beside a logged yard.
struct Follow {
    PlaceId place;
    double warmer = 0; ///< degrees above the place followed
    double damped = 0; ///< share of the swing about the day's mean that does not come through, 0 to 1
    friend bool operator==(const Follow&, const Follow&) = default;
};

/// What a span of time in one place did to a clock. Where the place is not known, the figures are those of
/// the places that are known, taken together, and at the least plain time: a bound for a verdict, never an
/// answer to show.
struct Exposure {
    Range<Days> equivalent {}; ///< days at the rate's reference temperature, low to high
    Days unwatched { 0 }; ///< how much of the span no reading covers
    std::optional<Celsius> hottest; ///< highest temperature known or assumed; none when nothing is known
    std::optional<Celsius> coldest;
    bool known = true; ///< false when neither readings nor an assumed range say anything about the place
};

/// What readings show of a place above a limit. Nobody knows it of unwatched time.
struct Heat {
    Days above { 0 }; ///< watched time above the limit
    std::optional<Moment> first; ///< when it was first seen above
    std::optional<Celsius> hottest; ///< of the watched time, above the limit or not; none: nothing watched
};

/// The temperature of places over time, as far as the clocks care. Asked for spans, never for samples,
/// so that a place with five years of readings can answer from running totals.
class Climate {
public:
    virtual ~Climate() = default;
    /// What the place did between two moments (from <= to). A place it does not know answers known = false.
    /// Splitting a span changes nothing: the parts' days add up, and their extremes are the span's.
    /// An empty span has no days, yet still the extremes of the place at that moment: what has just come
    /// stands there.
    virtual Exposure exposure(const PlaceId& place, Moment from, Moment to, const Rate& rate) const = 0;
    /// The usual range of the place around a moment to come; none when nothing is known of it.
    virtual std::optional<Range<Celsius>> usual(const PlaceId& place, Moment at) const = 0;
    /// What was seen above a limit between two moments. A climate without readings has seen nothing.
    virtual Heat heat(const PlaceId& place, Moment from, Moment to, Celsius limit) const;
    /// What the place did to contents that stood in it, see chillOf(). A climate that cannot tell knows
    /// nothing.
    virtual Chill chill(const PlaceId& place, Moment from, Moment to, const Contents& contents,
        const Warmth& start, ChillEnd end = ChillEnd::Warm) const;
    /// Whether it matters to what chill() answers of a span how warm contents that are not frozen come to it.
    virtual bool startMatters(const PlaceId& place, Moment from, Moment to, const Contents& contents) const;
    /// How long the place was, or may have been, colder than a limit.
    virtual Below below(const PlaceId& place, Moment from, Moment to, Celsius limit) const;
};

} // namespace gw
