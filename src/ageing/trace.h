#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "measure/moment.h"
#include "measure/range.h"
#include "measure/temperature.h"

namespace gw {

/// What the air where things stand can be at all; wider than any logger's own range. Common practice, no
/// source.
inline constexpr Range<Celsius> possibleAir { Celsius { -60 }, Celsius { 80 } };

/// One reading, of a logger or of a person.
struct Reading {
    Moment at;
    Celsius temperature;
    std::optional<double> humidity; ///< % RH, 0 to 100
};

/// Of the steps between readings, those longer than this are unwatched: the larger of 6 h and three usual
/// intervals, usual being the median.
std::chrono::milliseconds longestWatchedStep(std::vector<std::chrono::milliseconds> steps);

/// The readings of one place in time order, kept small: whole seconds, hundredths of a degree (up to 327 C
/// either way), half percents of humidity, all finer than any logger is true. Between two readings the
/// temperature is taken as linear.
class Trace {
public:
    Trace() = default;
    /// In any order; of two within one second the first counts.
    explicit Trace(std::vector<Reading> readings);

    void reserve(std::size_t count);
    /// Adds a reading later than all that are there; false, and nothing added, when it is not.
    bool append(const Reading& reading);

    std::size_t size() const { return m_seconds.size(); }
    bool empty() const { return m_seconds.empty(); }
    Moment at(std::size_t i) const { return Moment { std::chrono::seconds { m_seconds[i] } }; }
    Celsius temperature(std::size_t i) const { return Celsius { m_hundredths[i] / 100.0 }; }
    std::optional<double> humidity(std::size_t i) const;
    Reading reading(std::size_t i) const { return { at(i), temperature(i), humidity(i) }; }

    /// How many readings are not later than a moment: the index of the first later one.
    std::size_t countUpTo(Moment moment) const;
    /// The same, when it is known to lie from `low` to `high` (at(low) <= moment < at(high)).
    std::size_t countUpTo(Moment moment, std::size_t low, std::size_t high) const;
    /// The usual step between readings: the median; none for fewer than two.
    std::optional<std::chrono::seconds> usualInterval() const;
    /// A longer step between two readings is unwatched: the larger of 6 h and three usual intervals.
    std::chrono::seconds longestWatched() const;

    /// The columns themselves, for passes over all of them: seconds since 1970 and hundredths of a degree.
    std::span<const std::int64_t> seconds() const { return m_seconds; }
    std::span<const std::int16_t> hundredths() const { return m_hundredths; }

private:
    std::vector<std::int64_t> m_seconds;
    std::vector<std::int16_t> m_hundredths;
    std::size_t m_shortSteps = 0; ///< steps so short that three of them are no gap
    std::vector<std::uint8_t> m_halfPercents; ///< empty when no reading has humidity; 255: none
};

} // namespace gw
