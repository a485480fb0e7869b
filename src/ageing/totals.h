#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <vector>

#include "ageing/life.h"
#include "ageing/trace.h"
#include "measure/range.h"

namespace gw {

/// Something that goes on at a speed set by the temperature.
struct Speed {
    std::function<double(Celsius)> at;
    std::function<double(Celsius, Celsius)> mean; ///< over an even change of temperature; exact
};
/// A clock's, were every temperature so many degrees warmer.
Speed clockSpeed(const Rate& rate, double warmer = 0);
/// 1 above the limit and 0 else: its total is time above the limit.
Speed timeAbove(Celsius limit);
/// The temperature itself: its total over time is what a mean is made of.
Speed temperatureItself();

/// How the pieces between up to 33 readings one after the other weigh, whatever the speed: a piece from a
/// to b that takes t seconds counts t (F(b) - F(a))/(b - a), F being the speed's integral over temperature,
/// and t times the speed where a = b. So the sum over them is one of products, reading by reading.
class PieceWeights {
public:
    static constexpr std::size_t most = 32;
    /// Of the pieces from one reading to another; no more than `most`. Longer steps than longestWatched weigh
    /// nothing.
    PieceWeights(const Trace& trace, std::size_t from, std::size_t to, std::int64_t longestWatched);

    struct Weight {
        double integral;
        double speed;
    };
    const std::int16_t* hundredths() const { return m_hundredths; }
    std::size_t readings() const { return m_readings; }
    const Weight& operator[](std::size_t i) const { return m_weights[i]; }

private:
    const std::int16_t* m_hundredths;
    std::size_t m_readings;
    std::array<Weight, most + 1> m_weights;
};

/// A speed and its integral over temperature at every hundredth of a degree, so that no exponential is taken
/// for a reading.
class SpeedTable {
public:
    SpeedTable(Speed speed, std::int16_t low, std::int16_t high); ///< hundredths; low <= high

    void cover(std::int16_t hundredths);
    double at(std::int16_t hundredths) const { return m_points[index(hundredths)].speed; }
    /// Integral over temperature from one hundredth to any temperature within the table, in hundredths.
    double integral(std::int16_t from, double to) const;
    /// Seconds times speed.
    double sum(const PieceWeights& pieces) const;

private:
    struct Point {
        double integral = 0; ///< from the table's low end, per hundredth
        double speed = 0;
    };
    std::size_t index(std::int16_t hundredths) const { return static_cast<std::size_t>(hundredths - m_low); }
    void fill(std::int16_t high);

    Speed m_speed;
    std::int16_t m_low;
    std::vector<Point> m_points;
};

/// Running totals of a speed over a trace: from its first reading up to any moment is one look-up and a walk
/// over at most 32 readings. Steps longer than longestWatched count nothing. The trace is handed in with each
/// call and must be the same, grown at most.
class Totals {
public:
    Totals(Speed speed, const Trace& trace, std::int64_t longestWatched); ///< trace not empty
    /// Of several speeds in one pass: what the pieces weigh is worked out once for all.
    static std::vector<Totals> together(
        std::vector<Speed> speeds, const Trace& trace, std::int64_t longestWatched);

    /// Takes in the readings appended since; longestWatched must not have changed.
    void grow(const Trace& trace);
    /// Days times speed from the first reading up to so many seconds past reading `index`. Past the last
    /// reading nothing is added.
    double upTo(const Trace& trace, std::size_t index, double secondsPast) const;

private:
    Totals(Speed speed, Range<std::int16_t> covered, std::int64_t longestWatched);

    SpeedTable m_table;
    std::int64_t m_longest;
    std::vector<double> m_totals { 0 }; ///< seconds times speed before each 32nd reading
    std::size_t m_size = 0;
};

} // namespace gw
