#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <vector>

#include "ageing/life.h"
#include "ageing/trace.h"

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

/// A speed and its integral over temperature at every hundredth of a degree, so that the mean over the piece
/// between two readings takes a subtraction and a division, and no exponential.
class SpeedTable {
public:
    SpeedTable(Speed speed, std::int16_t low, std::int16_t high); ///< hundredths; low <= high

    bool covers(std::int16_t hundredths) const;
    double at(std::int16_t hundredths) const { return m_points[index(hundredths)].speed; }
    /// Mean speed from one to another hundredth.
    double mean(std::int16_t from, std::int16_t to) const;
    /// Integral over temperature from one hundredth to any temperature within the table, in hundredths.
    double integral(std::int16_t from, double to) const;
    void cover(std::int16_t hundredths);

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
/// over at most 64 readings. Steps longer than longestWatched count nothing. The trace is handed in with each
/// call and must be the same, grown at most.
class Totals {
public:
    Totals(Speed speed, const Trace& trace, std::int64_t longestWatched); ///< trace not empty
    /// Takes in the readings appended since; longestWatched must not have changed.
    void grow(const Trace& trace);
    /// Days times speed from the first reading up to so many seconds past reading `index`. Past the last
    /// reading nothing is added.
    double upTo(const Trace& trace, std::size_t index, double secondsPast) const;

private:
    double block(const Trace& trace, std::size_t from, std::size_t end) const;

    SpeedTable m_table;
    std::int64_t m_longest;
    std::vector<double> m_totals; ///< seconds times speed before each 64th reading
    std::size_t m_size = 0;
};

} // namespace gw
