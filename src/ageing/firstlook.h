#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

#include "ageing/clocks.h"
#include "ageing/verdict.h"
#include "ageing/watched.h"

namespace gw {

/// Verdicts from bounds, for the most of a shelf: what is far from every limit needs no exact age, and no
/// frost walked through. The bounds are the clocks' totals at the readings nearest to each stay, the coldest
/// and warmest around it, and the stretches nobody watched, worked out once for each place. What they do not
/// settle is not answered: an answer is always judge()'s. Refers to the climate, which must not change while
/// it is used; on one thread at a time.
class FirstLook {
public:
    /// For containers as of one moment that came no earlier than `since`: of others nothing is answered.
    FirstLook(const WatchedClimate& climate, Moment since, Moment asOf);

    struct Seen {
        Verdict verdict = Verdict::NotKnown;
        /// What the clocks may go on for, or turn out to have gone on less, before one says something else.
        double daysLeft = 0;
        bool weatherMatters = true; ///< false: nothing the weather does now or later changes it
        bool freezingMatters = true; ///< false: of the weather, what freezes for certain changes nothing
    };
    /// None where the bounds do not settle it, nor for what a bench test or a find without dates makes a
    /// matter of more than bounds.
    std::optional<Seen> look(const AgeCase& item);

private:
    /// A stretch nobody watched, within one season.
    struct Piece {
        Moment from;
        Moment to;
        bool even = false; ///< one range is assumed all along
        bool known = false;
        Celsius hottest {};
        std::vector<double> days {}; ///< at each rate, pessimistic; below 0: not asked for yet
        std::vector<std::optional<bool>> unsure {}; ///< for each limit, whether it may have been colder
    };
    struct Place {
        PlaceId id;
        const WatchedTrace* readings = nullptr; ///< null: not a place of the climate
        Moment settled; ///< later readings can change nothing before it
        std::vector<Piece> pieces; ///< in time order
        std::vector<std::optional<WatchedTrace::Column>> columns; ///< for each rate, once asked for
    };
    struct ByEnd {
        std::size_t operator()(const PlaceId& id) const;
    };
    struct Stood {
        Place* place;
        Moment from;
        Moment to;
        WatchedTrace::Glance glance;
        Celsius hottest; ///< no reading is hotter
        bool open; ///< it was opened before
    };
    struct Part {
        Place* place;
        Piece* piece;
        Moment from;
        Moment to;
        bool whole() const { return from == piece->from && to == piece->to; }
    };
    /// What a container's stays are known to come to, without walking.
    struct Bounds {
        Range<double> here {}; ///< days at its rate since it came, pessimistic
        Range<double> open {}; ///< and since it was opened
    };
    /// Yes or no to something said of a container, and whether readings to come can change it.
    struct Answer {
        bool yes = false;
        bool settled = false;
    };

    Place* placeOf(const PlaceId& id);
    void cutPieces(Place& place);
    std::size_t rateOf(const Rate& rate);
    std::size_t limitOf(Celsius limit);
    double daysOf(const Place& place, Piece& piece, std::size_t rate);
    bool isUnsure(const Part& part, std::size_t limit);
    bool addStay(const PlaceId& id, Moment from, Moment to, std::size_t rate, bool open);
    void add(const Range<double>& days, bool open);
    void addWatched(std::size_t rate);
    bool addStays(const AgeCase& item, Moment here);
    bool addAge(const AgeCase& item, Moment here, Seen& seen) const;
    void seeReadings();
    bool addWeather(const LifeFigures& figures, Seen& seen);
    bool addFrost(const LifeFigures& figures, Seen& seen);
    std::optional<Answer> tooHot(Celsius limit) const;
    Answer unsure(Celsius limit);

    const WatchedClimate& m_climate;
    Moment m_since;
    Moment m_asOf;
    std::vector<Rate> m_rates;
    std::vector<Celsius> m_limits;
    std::unordered_map<PlaceId, Place, ByEnd> m_places;
    // Of the container looked at:
    Bounds m_bounds;
    std::vector<Stood> m_stays;
    Celsius m_coldest; ///< no reading is colder
    std::vector<Part> m_unwatched;
};

} // namespace gw
