#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "ageing/history.h"
#include "ageing/verdict.h"
#include "ageing/watched.h"

namespace gw {

class AgeCase;
class FirstLook;

/// The verdicts of a whole shelf, kept from one asking to the next. They are those judge() gives, always; but
/// only containers are judged again whose verdict time gone by or a new reading can have changed. With each
/// stands what would: the next date in its history, the days its clocks may go on for, and what the weather
/// of its place would have to do. Told from place to place, so that asking again is a comparison or two for
/// a container. Use on one thread at a time.
class StandingVerdicts {
public:
    /// Adds a container, or puts one's history and figures in the place of what they were. Containers are
    /// told by numbers from 0 on, without holes.
    void put(std::size_t container, History history, std::shared_ptr<const LifeFigures> figures);
    std::size_t size() const { return m_containers.size(); }

    /// By number. The climate may have been appended to since, or be another one: of that, and of a moment
    /// before the last one asked for, nothing is taken from before.
    const std::vector<Verdict>& asOf(const WatchedClimate& climate, Moment asOf);
    /// How many were judged at the last asking.
    std::size_t judgedLast() const { return m_judged; }

private:
    /// What changes a verdict.
    struct Watch {
        Moment next = Moment::min(); ///< a date in its history; long past: judge it at any rate
        double clockDue = 0; ///< what its place's days at its rate may come to
        std::uint32_t place = 0;
        std::uint32_t rate = 0; ///< of the place's
        bool placeMatters = false; ///< false: not even whether anything is known of its place
        bool weatherMatters = false;
        bool freezingMatters = true; ///< of the weather
        bool unsettled = false; ///< any change of its place may change it
        double heatLimit = 0;
        std::int32_t cold = -1; ///< of the place's limits; none: cold does nothing to it
        Moment since; ///< the weather of its place counts from then on
        std::uint64_t otherPlaces = 0; ///< those it stood in while nobody watched: as bits, by number
    };
    struct Container {
        History history;
        std::shared_ptr<const LifeFigures> figures;
    };
    /// What happened at a place in a span.
    struct Span {
        std::vector<double> days; ///< at each rate, pessimistic
        std::vector<bool> unsure; ///< for each limit of cold
        std::optional<Celsius> hottest;
        bool known = true;
    };
    struct Place {
        PlaceId id;
        std::vector<Rate> rates;
        std::vector<Celsius> limits;
        std::vector<double> clocks; ///< days gone by at each rate; only ever more
        WatchedClimate::Settled settled;
        Moment from; ///< later readings can change nothing before it
        Span tail; ///< what was taken for the time since then
        std::array<std::optional<Range<Celsius>>, 4> usual {};
        // Of the step since the last asking:
        bool changed = false;
        bool knownChanged = false;
        Celsius cooler {}; ///< limits of heat from here ...
        Celsius hotter {}; ///< ... up to below here were, or were not, passed
        std::optional<Celsius> coldest; ///< of the readings
        std::vector<bool> unsureChanged;
    };

    std::uint32_t placeOf(const PlaceId& id, const WatchedClimate& climate);
    std::uint32_t rateOf(Place& place, const Rate& rate);
    std::int32_t limitOf(Place& place, Celsius limit);
    Span span(const WatchedClimate& climate, const Place& place, Moment from, Moment to) const;
    bool sameUsual(const WatchedClimate& climate) const;
    void settle(const WatchedClimate& climate, Place& place, Moment asOf);
    bool step(const WatchedClimate& climate, Place& place, Moment asOf);
    bool isDue(const Watch& watch, Moment asOf, std::uint64_t changed) const;
    Moment earliest(Moment asOf) const;
    void judgeOne(std::size_t container, const WatchedClimate& climate, Moment asOf, FirstLook* firstLook);
    /// What a verdict rests on, as far as it tells what will change it.
    struct Grounds {
        Verdict verdict;
        double daysLeft;
        bool weatherMatters;
        bool freezingMatters;
        bool unsettled; ///< frost that is not over, or not known to be
    };
    Grounds judged(const AgeCase& item) const;
    void watch(std::size_t container, const AgeCase& item, const Grounds& grounds);

    std::vector<Container> m_containers;
    std::vector<std::size_t> m_due;
    std::vector<Watch> m_watches;
    std::vector<Verdict> m_verdicts;
    std::vector<Place> m_places;
    std::shared_ptr<const void> m_climate;
    std::size_t m_upheavals = 0;
    std::optional<Range<Celsius>> m_anywhere;
    Moment m_asOf = Moment::min();
    std::size_t m_judged = 0;
};

} // namespace gw
