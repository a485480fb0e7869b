#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "ageing/life.h"
#include "ageing/trace.h"
#include "measure/error.h"
#include "measure/moment.h"
#include "measure/temperature.h"

namespace gw {

/// A day's lowest and highest temperature, as a min/max thermometer or a weather record gives them.
struct DayReading {
    Date day;
    Celsius low;
    Celsius high; ///< low <= high
};

/// What is asked of a row of readings besides their plain figures.
struct ReadingsQuestion {
    std::optional<Rate> rate; ///< taken as the bare formula: cold is credited, coldCredit is not looked at
    std::optional<Days> life; ///< more than 0; with a rate, how much of it is used
    Celsius freeze { -1 }; ///< frozen at or below. Assumption: emulsions freeze a little under 0 C
    Celsius thaw { 1 }; ///< thawed at or above; not below freeze
};

/// One freezing or thawing of the readings themselves, not of any contents.
struct FrostMark {
    Moment at; ///< of the reading; of a day's low or high: the day's start
    Celsius temperature;
    bool frozen = false; ///< false: thawed
};

/// What a row of readings says by itself, without any place or container.
struct ReadingsFigures {
    std::size_t count = 0; ///< readings, or days with low and high
    Moment from; ///< the first reading; of days: the first day's start
    Moment to; ///< the last reading; of days: the last day's end
    Celsius mean; ///< weighted by time, as the mean kinetic temperature is
    /// Mean kinetic temperature, 83.144 kJ/mol with R = 8.3144e-3 kJ/(mol K): as USP <1160> gives it.
    Celsius kinetic;
    Celsius low;
    Celsius high;
    std::optional<Days> equivalent; ///< days at the rate's reference temperature, of the watched time
    std::optional<double> lifeUsed; ///< 1 is all of it
    std::vector<FrostMark> marks; ///< freezings and thawings by turns, a freezing first
    Days below { 0 }; ///< watched time colder than the freezing limit
    Days unwatched { 0 }; ///< gaps between readings, or days left out: in none of the times above

    std::size_t freezes() const { return (marks.size() + 1) / 2; }
    std::size_t thaws() const { return marks.size() / 2; }
};

/// Readings at moments, in any order, temperature linear between them; of two at one moment the first counts.
/// Steps longer than the larger of 6 h and three usual intervals are gaps. For the means each reading weighs
/// half of each step beside it; at an end or a gap the other step counts for both, so that an even series has
/// the plain mean. Errors: BadInput for no readings at all, a life that is not positive, or thaw below
/// freeze.
Result<ReadingsFigures> figuresOf(std::vector<Reading> readings, const ReadingsQuestion& question);

/// Days, in any order; of two rows for one day the first counts. Each day is half at its low and half at its
/// high, the low first. Errors as above.
Result<ReadingsFigures> figuresOf(std::vector<DayReading> days, const ReadingsQuestion& question);

/// The mean kinetic temperature as a sum that grows: weights in any unit, at least one above 0.
class KineticMean {
public:
    void add(Celsius temperature, double weight);
    Celsius mean() const; ///< arithmetic
    Celsius kinetic() const;

private:
    double m_weight = 0;
    double m_sum = 0;
    double m_speeds = 0;
};

} // namespace gw
