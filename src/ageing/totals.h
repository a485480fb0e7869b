#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <limits>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include "ageing/life.h"
#include "ageing/trace.h"
#include "measure/range.h"

namespace gw {

/// Something that goes on at a speed set by the temperature.
struct Speed {
    std::function<double(Celsius)> at;
    std::function<double(Celsius, Celsius)> mean; ///< over an even change of temperature; exact
    Celsius flatUpTo { -std::numeric_limits<double>::infinity() }; ///< up to here it is 1
};
/// A clock's, were every temperature so many degrees warmer.
Speed clockSpeed(const Rate& rate, double warmer = 0);
/// 1 above the limit and 0 else: its total is time above the limit.
Speed timeAbove(Celsius limit);
/// The temperature itself: its total over time is what a mean is made of.
Speed temperatureItself();

/// Speeds and their integrals over temperature at every hundredth of a degree, so that no exponential is
/// taken for a reading. Those of one hundredth lie side by side: a reading looks up all of them at once.
class SpeedTable {
public:
    struct Point {
        double integral = 0; ///< from the table's low end, per hundredth
        double speed = 0;
    };

    /// From and to some hundredths, and some room beyond.
    SpeedTable(std::vector<Speed> speeds, Range<std::int16_t> reach);

    std::size_t speeds() const { return m_speeds.size(); }
    /// How many of the speeds, from the first on, are not known to be 1 up to some hundredths: all of them
    /// where the speeds were not handed in by flatUpTo.
    std::size_t uneven(std::int16_t hundredths) const;
    bool covers(std::int16_t hundredths) const { return hundredths >= m_low && hundredths <= m_high; }
    /// The same speeds, reaching further.
    SpeedTable reaching(Range<std::int16_t> reach) const;
    /// One point for each speed.
    const Point* row(std::int16_t hundredths) const
    {
        return m_points.data() + static_cast<std::size_t>(hundredths - m_low) * m_speeds.size();
    }
    /// Integral over temperature from one hundredth to any temperature within the table, in hundredths.
    double integral(std::size_t which, std::int16_t from, double to) const;

private:
    std::vector<Speed> m_speeds;
    std::vector<double> m_flatUpTo; ///< hundredths, rising
    std::int16_t m_low;
    std::int16_t m_high;
    std::vector<Point> m_points;
};

/// The tables of some clocks, shared by all places that ask for them.
class ClockTables {
public:
    /// Those that age by no temperature are left out; those that are 1 the furthest up come last.
    explicit ClockTables(const std::vector<Rate>& rates);

    const std::vector<Rate>& rates() const { return m_rates; }
    bool has(const Rate& rate) const;
    /// What tables made later reach over at the least.
    void cover(const Range<Celsius>& range);
    /// Were every temperature so many degrees warmer. Not for no rates.
    std::shared_ptr<const SpeedTable> table(double warmer, Range<std::int16_t> reach);

private:
    std::vector<Rate> m_rates;
    Range<std::int16_t> m_reach { INT16_MAX, INT16_MIN };
    std::vector<std::pair<double, std::shared_ptr<const SpeedTable>>> m_tables;
};

/// Running totals of speeds over a trace: from its first reading up to any moment is one look-up and a walk
/// over at most 16 readings. A piece from a to b that takes t seconds counts t (F(b) - F(a))/(b - a), F being
/// the speed's integral over temperature, and t times the speed where a = b. Steps longer than longestWatched
/// count nothing. The trace is handed in with each call and must be the same, grown at most.
class Totals {
public:
    Totals(std::shared_ptr<const SpeedTable> table, const Trace& trace, std::int64_t longestWatched);

    /// Takes in the readings appended since; longestWatched must not have changed.
    void grow(const Trace& trace);

    /// A moment: so many seconds past a reading, with the step to the next, 0 at the last.
    struct At {
        std::size_t index = 0;
        std::int64_t step = 0;
        double past = 0;
    };
    /// Days times a speed from the first reading up to a moment. Past the last reading nothing is added.
    double upTo(const Trace& trace, const At& at, std::size_t which) const;
    /// The same for all moments from one reading on to the next, in bounds, without a walk but at the end.
    Range<Days> around(const Trace& trace, std::size_t index, std::size_t which) const;

private:
    void addBlocks(const Trace& trace);
    double pieces(const Trace& trace, std::size_t from, std::size_t to, std::size_t which) const;

    std::shared_ptr<const SpeedTable> m_table;
    std::int64_t m_longest;
    std::vector<double> m_totals; ///< seconds times each speed before each 32nd reading
    std::size_t m_blocks = 0;
};

} // namespace gw
