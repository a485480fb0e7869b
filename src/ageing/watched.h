#pragma once

#include <map>
#include <memory>
#include <optional>
#include <unordered_map>
#include <vector>

#include "ageing/chillmemo.h"
#include "ageing/climate.h"
#include "ageing/readingsfigures.h"
#include "ageing/watchedtrace.h"

namespace gw {

/// All that is known of one place's temperature.
struct WatchedPlace {
    Trace readings {};
    AssumedRanges assumed {};
    std::optional<Follow> follows {};
};

/// The climate of a shop: readings where there are any, and where nobody watched a range.
/// - Watched time goes by the readings, exactly, in a few look-ups however long.
/// - Else a place that follows another takes that one's watched temperatures, as much warmer and damped, 2 C
///   more or less (assumption, no source). It still counts as unwatched: nobody watched there.
/// - Else the range assumed for the quarter or the year; else lowest to highest of the place's own readings
/// in
///   that quarter (WatchedTrace::quarter), of the place it follows, and what is assumed of that. In a gap
///   between readings this is joined with the temperatures at both ends; nothing bridges it.
/// - Else the time is not known, and bounded by the warmest and coldest there is anywhere.
/// Of a chain of places that follow each other the first with readings speaks, every step adding its degrees
/// and its 2 C; the step that would close a circle does not count.
/// Totals are made when first asked for and kept inside: use on one thread at a time.
class WatchedClimate final : public Climate {
public:
    /// `rates` are those that will be asked for, as far as is known: together they cost little more than one.
    explicit WatchedClimate(std::map<PlaceId, WatchedPlace> places = {}, const std::vector<Rate>& rates = {});
    // Followers point at the places they follow, which stay where they are when moved.
    WatchedClimate(WatchedClimate&&) = default;
    WatchedClimate& operator=(WatchedClimate&&) = default;

    Exposure exposure(const PlaceId& place, Moment from, Moment to, const Rate& rate) const override;
    std::optional<Range<Celsius>> usual(const PlaceId& place, Moment at) const override;
    Heat heat(const PlaceId& place, Moment from, Moment to, Celsius limit) const override;
    Chill chill(const PlaceId& place, Moment from, Moment to, const Contents& contents, const Warmth& start,
        ChillEnd end = ChillEnd::Warm) const override;
    bool startMatters(const PlaceId& place, Moment from, Moment to, const Contents& contents) const override;
    Below below(const PlaceId& place, Moment from, Moment to, Celsius limit) const override;

    /// Adds a reading later than all of the place's; false for another, and for a place that is not there.
    bool append(const PlaceId& place, const Reading& reading);
    /// As it was known at a moment, without the readings after it; none when there are none after it.
    std::optional<WatchedClimate> asOf(Moment moment) const;
    /// None for a place that is not there.
    const WatchedTrace* readings(const PlaceId& place) const;
    /// What the readings from one moment to another say by themselves; unwatched is of that whole span. None
    /// without readings in it.
    std::optional<ReadingsFigures> summary(const PlaceId& place, Moment from, Moment to) const;

    /// Whether readings of another place speak where nobody watched.
    bool followsReadings(const PlaceId& place) const;

    /// How far what is known of a place's temperature stays as it is, whatever later readings are added: up
    /// to its last one, or that of the place it follows where that is earlier; and how many of both there
    /// are.
    struct Settled {
        Moment upTo = Moment::max();
        std::size_t readings = 0;
    };
    Settled settled(const PlaceId& place) const;
    /// Whether somewhere in a span it may have been colder than a limit with nobody watching.
    bool unsure(const PlaceId& place, Moment from, Moment to, Celsius limit) const;
    /// Coldest and warmest of all places, read or assumed: what bounds a place nothing is known of.
    const std::optional<Range<Celsius>>& anywhere() const;
    /// How often a reading changed more than what came after the one before it: the first of a place, or one
    /// that changed what counts as a gap.
    std::size_t upheavals() const { return m_upheavals; }
    /// The same for the same climate only, however long it is kept.
    std::shared_ptr<const void> identity() const { return m_tables; }

private:
    struct Place;
    /// A place that is followed, as the follower takes it.
    struct Step {
        const Place* place;
        double warmer;
        double swing; ///< share of the swing about the day's mean that comes through
        double margin;
        Range<Celsius> taken(const Range<Celsius>& there) const;
        Celsius taken(const WatchedTrace& there, const Reading& reading) const;
    };
    /// What a place takes from those it follows.
    struct Followed {
        std::vector<Step> steps;
        std::optional<Step> source; ///< the first with readings
        WatchedTrace trace; ///< the source's readings as taken here, margin apart
    };
    struct Place {
        WatchedTrace own;
        AssumedRanges assumed;
        std::optional<Follow> follows;
        mutable std::optional<Followed> followed {}; ///< once asked for
        mutable ChillMemo chills {};
        mutable std::optional<Air> air {}; ///< once asked for; until the next reading
    };
    class Filling;

    const Place* find(const PlaceId& id) const;
    const Followed& followedBy(const Place& place) const;
    const Air& airOf(const Place& place) const;
    std::optional<Range<Celsius>> assumed(const Place& place, std::size_t quarter) const;

    std::unordered_map<PlaceId, Place> m_places;
    std::shared_ptr<ClockTables> m_tables;
    std::size_t m_upheavals = 0;
    mutable std::optional<std::optional<Range<Celsius>>> m_anywhere;
};

} // namespace gw
