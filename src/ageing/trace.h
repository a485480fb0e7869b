#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "ageing/times.h"
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
    /// Whole columns of readings, as a store keeps them: seconds since 1970, hundredths of a degree, and half
    /// percents of humidity (255: none) or nothing of it. False, and nothing added, when they are not equally
    /// long, or the times not each later than the one before and all later than those that are there.
    bool append(std::span<const std::int64_t> seconds, std::span<const std::int16_t> hundredths,
        std::span<const std::uint8_t> halfPercents);
    /// The same, for times that are a step (above 0) apart.
    bool append(std::int64_t first, std::int64_t step, std::span<const std::int16_t> hundredths,
        std::span<const std::uint8_t> halfPercents);

    std::size_t size() const { return m_hundredths.size(); }
    bool empty() const { return m_hundredths.empty(); }
    Moment at(std::size_t i) const { return Moment { std::chrono::seconds { m_times[i] } }; }
    Celsius temperature(std::size_t i) const { return Celsius { m_hundredths[i] / 100.0 }; }
    std::optional<double> humidity(std::size_t i) const;
    Reading reading(std::size_t i) const { return { at(i), temperature(i), humidity(i) }; }

    /// How many readings are not later than a moment: the index of the first later one.
    std::size_t countUpTo(Moment moment) const;
    /// The usual step between readings: the median; none for fewer than two.
    std::optional<std::chrono::seconds> usualInterval() const;
    /// A longer step between two readings is unwatched: the larger of 6 h and three usual intervals.
    std::chrono::seconds longestWatched() const;

    /// For passes over all of them: the times in seconds since 1970 (written out, or as they are kept) and
    /// the hundredths of a degree themselves.
    std::vector<std::int64_t> seconds() const;
    const Times& times() const { return m_times; }
    std::span<const std::int16_t> hundredths() const { return m_hundredths; }

private:
    void putHumidities(std::span<const std::uint8_t> halfPercents);

    Times m_times;
    std::vector<std::int16_t> m_hundredths;
    std::size_t m_shortSteps = 0; ///< steps so short that three of them are no gap
    std::vector<std::uint8_t> m_halfPercents; ///< empty when no reading has humidity; 255: none
};

} // namespace gw
