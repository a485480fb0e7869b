#pragma once

#include <optional>

#include "app/timechart.h"
#include "measure/amount.h"
#include "measure/temperature.h"

/// Axes and bands of charts, in the person's language, time zone and units. Any thread.
namespace gw {

/// Days from a chart's beginning.
double chartDays(Moment from, Moment at);
/// At most seven even times that people count by: midnights, first days of months, of years.
AxisTicks timeTicks(Moment from, Moment to);
/// Values at even steps of 1, 2 or 5 that cover a range, and the range they cover.
struct LevelScale {
    Range<double> values;
    AxisTicks ticks;
};
LevelScale levelScale(Range<double> values, int most, const QString& unit);

/// Added to either side of a band: what is known exactly would be a band of no height.
double leastBand(const Range<double>& values);

/// A stretch of a stepped band.
struct BandStep {
    Moment from, to;
    std::optional<Range<Celsius>> air;
    bool watched = false;
};
/// Puts temperatures and their axis into a chart; a stretch with nothing known leaves it empty.
void drawAir(ChartDrawn& chart, const std::vector<BandStep>& steps,
    const std::optional<Range<Celsius>>& keepBetween, UnitSystem units);

} // namespace gw
