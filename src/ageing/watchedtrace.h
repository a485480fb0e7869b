#pragma once

#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "ageing/totals.h"
#include "ageing/trace.h"
#include "ageing/traceextremes.h"
#include "measure/moment.h"
#include "measure/range.h"

namespace gw {

/// The readings of one place ready to answer for any span of time: what of it was watched, how warm and cold
/// it was, and any clock's days, each in a few look-ups however long the span. Watched is the time between
/// two readings no further apart than Trace::longestWatched(); the rest is gaps, and what lies before the
/// first reading and after the last. Totals are made when first asked for and kept: use on one thread at a
/// time.
class WatchedTrace {
public:
    explicit WatchedTrace(Trace trace = {});

    const Trace& trace() const { return m_trace; }
    bool empty() const { return m_trace.empty(); }
    /// As Trace::append(). What was asked before need not be built again, unless the reading changes what
    /// counts as a gap.
    bool append(const Reading& reading);

    /// The rates that will be asked for, so far as is known: their totals are made together, in one pass.
    void expect(std::shared_ptr<ClockTables> tables);

    /// Watched time between two moments (from <= to).
    Days watched(Moment from, Moment to) const;
    /// Temperatures of the watched time, both ends included; none when nothing was watched.
    std::optional<Range<Celsius>> extremes(Moment from, Moment to) const;
    /// The clock's days over the watched time, were every temperature so many degrees warmer.
    Days equivalent(Moment from, Moment to, const Rate& rate, double warmer = 0) const;
    /// Watched time above a limit.
    Days above(Moment from, Moment to, Celsius limit) const;
    /// The first watched moment above a limit (at which it is crossed), before `to`.
    std::optional<Moment> firstAbove(Moment from, Moment to, Celsius limit) const;
    /// Time-weighted over the watched time; none when that has no length.
    std::optional<Celsius> mean(Moment from, Moment to) const;

    /// The totals of several speeds, and which of them is meant.
    struct Column {
        const Totals* totals = nullptr;
        std::size_t which = 0;
    };
    /// A clock's, for glances; stands until the next reading. Not without readings, nor for a rate that ages
    /// by no temperature: those have none.
    Column column(const Rate& rate) const { return clockTotals(rate, 0); }
    /// A span in bounds, by the readings nearest to its ends: a few look-ups, no walk. Not without readings.
    struct Glance {
        Range<Days> equivalent; ///< the clock's days over the watched time lie between; none without a column
        std::size_t begin; ///< the readings at its ends
        std::size_t end;
    };
    Glance glance(Moment from, Moment to, const Column& column) const;
    /// No reading of the span is colder or warmer, nor are those next to it.
    Range<Celsius> extremes(const Glance& glance) const;

    /// A stretch without readings. `ends` are the temperatures at both ends of a gap; none before the first
    /// reading and after the last.
    struct Unwatched {
        Moment from;
        Moment to;
        std::optional<Range<Celsius>> ends;
    };
    /// The stretches of a span nobody watched, in time order. An empty span at an unwatched moment is one
    /// empty stretch.
    std::vector<Unwatched> unwatched(Moment from, Moment to) const;

    /// Lowest to highest reading ever taken in a quarter of the year (AssumedRanges::quarterOf), when at
    /// least 45 days of it were watched, in one year or several: fewer say too little of a season
    /// (assumption, no source).
    std::optional<Range<Celsius>> quarter(std::size_t quarter) const;

private:
    /// A moment from the first reading on, seen from the last reading not later than it.
    struct Position {
        std::size_t index = 0;
        double past = 0; ///< seconds
        std::int64_t step = 0; ///< seconds to the next reading; 0: there is none
    };
    struct Found {
        Moment at {};
        Position position {};
        bool valid = false;
    };
    struct Gap {
        std::size_t before; ///< index of the reading before it
        Moment from; ///< of that reading
        Moment to; ///< of the next
        double watched; ///< seconds watched from the first reading to this gap
    };

    void index();
    void addGap(std::size_t i);
    Moment first() const { return Moment { std::chrono::seconds { m_trace.times().front() } }; }
    Moment last() const { return Moment { std::chrono::seconds { m_trace.times().back() } }; }
    Position position(Moment moment) const; ///< moment clamped to first() and last()
    bool isGap(std::size_t i) const; ///< between reading i and the next
    double watchedUpTo(Moment moment) const;
    std::optional<Celsius> temperatureAt(const Position& at) const;
    Unwatched unwatchedIn(const Gap& gap) const;
    double between(const Column& column, Moment from, Moment to) const;
    Column keptTotals(const Rate& rate, double warmer) const; ///< null: none yet
    Column clockTotals(const Rate& rate, double warmer) const;
    const Totals& aboveTotals(Celsius limit) const;

    struct ClockTotals {
        std::vector<Rate> rates;
        double warmer;
        std::unique_ptr<Totals> totals;
    };
    Trace m_trace;
    std::int64_t m_longest = 0;
    std::vector<Gap> m_gaps;
    TraceExtremes m_extremes;
    mutable std::array<Found, 2> m_found; ///< the last positions: they are asked for again at once
    mutable std::size_t m_lastFound = 0;
    std::shared_ptr<ClockTables> m_expected;
    mutable std::vector<ClockTotals> m_clocks;
    mutable std::vector<std::pair<Celsius, Totals>> m_above;
    mutable std::optional<Totals> m_temperature;
    mutable std::array<std::optional<std::optional<Range<Celsius>>>, 4> m_quarters;
};

} // namespace gw
