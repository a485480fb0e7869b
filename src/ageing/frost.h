#pragma once

#include <optional>
#include <vector>

#include "ageing/contents.h"
#include "measure/moment.h"
#include "measure/temperature.h"

namespace gw {

/// How warm and how frozen contents are at one moment; enough to go on from there as though nothing had been
/// cut.
struct Warmth {
    std::optional<Celsius> temperature; ///< none: nobody knows
    double frozenShare = 0; ///< of the water, 0 to 1; above 0 and below 1 only at the freezing point
    std::optional<Moment> frozenSince; ///< the frost event it is in: it ends when nothing is frozen any more
    friend bool operator==(const Warmth&, const Warmth&) = default;
};

/// The contents, not the air, froze: more than countedShare of the water. It ends when they are thawed
/// through.
struct FrostEvent {
    Moment from;
    std::optional<Moment> thawed; ///< none: not yet, or unwatched
    friend bool operator==(const FrostEvent&, const FrostEvent&) = default;
};

/// The share of the water that has to freeze for an event: own assumption, no source. Half a litre half water
/// in a night of -5 C comes to it after some four hours, which is the shop's rule of thumb; ice on the wall
/// of a bottle after a short dip does not.
inline constexpr double countedShare = 0.2;

/// Contents followed through their air. Each piece of air, linear in time, is passed through in closed form:
/// exponential above and below freezing, and at the freezing point as much is frozen as heat has flowed. How
/// the time is cut into pieces changes nothing.
class FrostWalk {
public:
    FrostWalk(const Response& response, Moment at, const Warmth& start);

    /// Air going linearly from one temperature to another, from the moment reached up to another.
    void pass(Celsius from, Celsius to, Moment until);
    /// Contents nobody knows anything of any more, up to a moment: an event they were in has no known end.
    void lose(Moment until);
    /// Where nothing is known of them: as cold as the air, but not frozen by a frost nobody saw.
    void begin(Celsius air);
    /// Air of one temperature until they are thawed through, but no longer than up to a moment.
    void thaw(Celsius air, Moment until);

    Moment at() const { return m_at; }
    Warmth warmth() const;
    bool known() const { return m_known; }
    bool frozen() const { return m_share > 0; }
    /// The events that have ended, in time order; the running one is in warmth().
    const std::vector<FrostEvent>& events() const { return m_events; }

private:
    double passThrough(double air, double slope, double hours, bool untilThawed);
    double still(double air, double slope, double hours, bool frozenThrough);
    double plateau(double air, double slope, double hours);
    void count(double after);
    void ended(double after);
    Moment moment(double after) const;

    Response m_response;
    Moment m_at;
    bool m_known = false;
    double m_temperature = 0;
    double m_share = 0;
    std::optional<Moment> m_since;
    double m_passed = 0; ///< hours into the piece being passed
    std::vector<FrostEvent> m_events;
    double m_cachedHours = -1; ///< readings come at one interval: its decay is kept
    double m_decayThawed = 1;
    double m_decayFrozen = 1;
};

} // namespace gw
