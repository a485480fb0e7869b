#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>

#include "ageing/climate.h"
#include "ageing/history.h"
#include "ageing/life.h"
#include "ageing/verdict.h"

namespace gw {

/// What a container's places did over a span.
struct Stood {
    Exposure sum;
    std::optional<Moment> unknownSince; ///< the first moment at a place nothing is known of
};

/// One container as of one moment: what happened later is not seen. Holds references, for the length of a
/// call only.
class AgeCase {
public:
    AgeCase(const History& history, const LifeFigures& figures, const Climate& climate, Moment asOf,
        Wording wording = Wording::Full);

    const History& history;
    const LifeFigures& figures;
    const Climate& climate;
    const Moment asOf;
    const Wording wording;

    /// What a reason says: the text that make() makes, or none where no words are wanted.
    template <class Make> std::string said(Make make) const
    {
        return wording == Wording::Full ? std::string(make()) : std::string();
    }

    std::optional<Moment> opened() const; ///< since when it is known to be open, at the least
    Moment hereSince() const; ///< arrival, or what is on record earlier
    PlaceId placeNow() const; ///< empty when not known
    bool labelSpeaks() const; ///< a printed date is there and has not gone by
    const BenchTest* lastPassed() const;
    /// What its places did from one moment to another. Clocks, label and weather ask for the same few spans:
    /// those are kept. The reference is good until the next call but two.
    const Stood& stood(Moment from, Moment to) const;

private:
    struct Kept {
        Moment from;
        Moment to;
        Stood stood;
    };
    mutable std::array<std::optional<Kept>, 3> m_kept {};
    mutable std::size_t m_next = 0;
};

/// What readings saw above a limit of the places it stood in.
Heat seenAbove(const AgeCase& item, Moment from, Moment to, Celsius limit);

/// One life clock. Its age is a bound when its beginning or a place is not known: good enough to condemn,
/// never to pass.
struct Clock {
    Life life;
    bool running = false; ///< false: time does not use it up, or it has not begun
    bool sinceKnown = true;
    std::optional<Moment> placeUnknownSince; ///< only when temperature matters
    Range<Days> age {};
    Days unwatched { 0 };
    Days assumedBefore { 0 }; ///< sealed clock without a made date: the most that is counted before arrival

    bool lifeKnown() const { return life.kind == Life::Kind::Ages; }
    bool known() const { return running && lifeKnown() && sinceKnown && !placeUnknownSince; }
    ClockUse use() const;
    /// What the pessimistic age alone says. Good when the life is not known.
    Verdict byAge() const;
};

/// A life as a clock may use it: one without a length is no knowledge.
Life usableLife(const Life& life);

/// The span before a container came here, as the sealed clock sees it.
struct Before {
    Range<Days> equivalent {};
    Days span { 0 };
    bool ageKnown = true;
    bool placeKnown = true;
};
/// `here` is its hereSince().
Before beforeArrival(const AgeCase& item, Moment here);

/// Since the made date. Time before arrival counts at the reference temperature, 5 C more or less
/// (assumption, no source); found undated, it may as well have stood all that time where it was found.
Clock sealedClock(const AgeCase& item);
/// Since first opening.
Clock openedClock(const AgeCase& item);

/// A printed date against what its places did since it came: the label's own life clock. It needs no made
/// date.
struct LabelClock {
    Days left {
        0
    }; ///< at the reference temperature, pessimistic; below 0: gone, or used up by warmth before its day
    std::optional<Moment> placeUnknownSince; ///< only when temperature matters
};
/// None without a printed date.
std::optional<LabelClock> labelClock(const AgeCase& item);

/// Half a litre takes about seven hours to freeze through at -10 C (own estimate), and tested stock is at the
/// bench: the test answers for its own day.
inline constexpr Days testedDay { 1 };

/// Heat and frost that no bench test has settled yet. None just after a passed test: it answers for what came
/// before it, and for the day it was made on.
struct Weather {
    Moment since;
    Exposure exposure;
};
std::optional<Weather> weatherOf(const AgeCase& item);
/// From when on what was found undated may have stood where it was found: its made date, or a year, since
/// every season may have passed over it.
Moment foundBegun(const AgeCase& item);
/// Where it stood first; empty when not known.
PlaceId firstPlace(const AgeCase& item);
/// From when on heat and frost count again, at the earliest.
Moment weatherSince(const AgeCase& item);

} // namespace gw
