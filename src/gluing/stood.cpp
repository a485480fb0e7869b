#include "gluing/stood.h"

#include <algorithm>
#include <cmath>

#include "gluing/sentences.h"
#include "measure/moistair.h"
#include "measure/number.h"

namespace gw {

namespace {

constexpr Days looked { 42 };
constexpr Days fresh { 3 };
constexpr Days longestSpoken { 0.25 };
constexpr Days thin { 4 }, thick { 21 };
constexpr double leastShare = 0.5;
constexpr double species = 1; // percent of moisture either way

/// A mean in which each moment counts by how long it is past, over a time constant.
struct FadingMean {
    double constantDays;
    double sum = 0, weight = 0;
    void add(double value, double fromDaysAgo, double toDaysAgo)
    {
        const double w = std::exp(-toDaysAgo / constantDays) - std::exp(-fromDaysAgo / constantDays);
        sum += value * w;
        weight += w;
    }
    double mean() const { return sum / weight; }
};

} // namespace

StoodMoisture moistureWhereItStood(const std::vector<AirReading>& readings, Moment now)
{
    FadingMean quick { thin.count() }, slow { thick.count() };
    double watched = 0;
    double lastDaysAgo = looked.count();
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const AirReading& reading = readings[i];
        const double from = daysBetween(reading.at, now).count();
        if (!reading.humidity || from < 0 || from > looked.count())
            continue;
        // It speaks until the next reading, six hours at most, and never beyond now.
        double until = std::max(0.0, from - longestSpoken.count());
        if (i + 1 < readings.size())
            until = std::max(until, daysBetween(readings[i + 1].at, now).count());
        until = std::max(until, 0.0);
        if (until >= from)
            continue;
        const auto moisture = equilibriumMoisture(reading.temperature, { *reading.humidity });
        if (!moisture)
            continue;
        quick.add(moisture->percent, from, until);
        slow.add(moisture->percent, from, until);
        watched += from - until;
        lastDaysAgo = std::min(lastDaysAgo, until);
    }
    StoodMoisture stood;
    stood.watchedShare = watched / looked.count();
    if (stood.watchedShare < leastShare || lastDaysAgo > fresh.count()) {
        stood.why = watched == 0 ? "Nobody watched the humidity there in the last six weeks."
                                 : "The humidity there was watched for " + numberWords(watched, 0)
                + " of the last 42 days" + (lastDaysAgo > fresh.count() ? ", and not in the last three" : "")
                + ": too little to tell.";
        return stood;
    }
    const auto [low, high] = std::minmax({ quick.mean(), slow.mean() }); // by list: by value
    stood.percent = Range<double> { std::max(0.0, low - species), high + species };
    stood.why = "By the air there it holds about " + numberWords(stood.percent->low, 0) + " to "
        + percentWords(std::round(stood.percent->high)) + ", if it stood there for weeks.";
    return stood;
}

} // namespace gw
