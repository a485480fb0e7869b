#include "app/chartscale.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

#include "app/words.h"

namespace gw {

namespace {

struct Scale {
    Q_DECLARE_TR_FUNCTIONS(gw::TimeChart)
};

constexpr int mostTimes = 7;

/// A step of a time axis: so many hours, days or months.
struct TimeStep {
    int hours = 0, days = 0, months = 0;
    double length() const { return hours / 24.0 + days + months * meanMonth.count(); }
};
constexpr std::array timeSteps { TimeStep { 3, 0, 0 }, TimeStep { 6, 0, 0 }, TimeStep { 12, 0, 0 },
    TimeStep { 0, 1, 0 }, TimeStep { 0, 2, 0 }, TimeStep { 0, 7, 0 }, TimeStep { 0, 14, 0 },
    TimeStep { 0, 0, 1 }, TimeStep { 0, 0, 2 }, TimeStep { 0, 0, 3 }, TimeStep { 0, 0, 6 },
    TimeStep { 0, 0, 12 }, TimeStep { 0, 0, 24 }, TimeStep { 0, 0, 60 }, TimeStep { 0, 0, 120 },
    TimeStep { 0, 0, 240 } };

QDateTime localTime(Moment moment) { return QDateTime::fromMSecsSinceEpoch(toMilliseconds(moment)); }

/// The last of a step's times at or before a moment: every time it takes is even from there.
QDateTime firstTime(const QDateTime& at, const TimeStep& step)
{
    const QDate day = at.date();
    if (step.months >= 12) {
        const int years = step.months / 12;
        return QDate(day.year() / years * years, 1, 1).startOfDay();
    }
    if (step.months > 0)
        return QDate(day.year(), (day.month() - 1) / step.months * step.months + 1, 1).startOfDay();
    return day.startOfDay();
}

QDateTime nextTime(const QDateTime& at, const TimeStep& step)
{
    if (step.months > 0)
        return at.date().addMonths(step.months).startOfDay();
    if (step.days > 0)
        return at.date().addDays(step.days).startOfDay();
    return at.addSecs(qint64 { step.hours } * 3600);
}

//: How moments stand under a chart; see QLocale::toString for the letters.
QString timeText(const QDateTime& at, const TimeStep& step)
{
    if (step.hours > 0)
        return at.time().hour() == 0 ? QLocale().toString(at.date(), Scale::tr("d MMM"))
                                     : QLocale().toString(at.time(), QLocale::ShortFormat);
    if (step.days > 0)
        return QLocale().toString(at.date(), Scale::tr("d MMM"));
    if (step.months < 12)
        return QLocale().toString(at.date(), Scale::tr("MMM yyyy"));
    return QString::number(at.date().year());
}

/// A band that stands still at a step's edges and is nothing where there is nothing to show.
void addStretch(QList<double>& band, double from, double to, const std::optional<Range<double>>& values)
{
    const double rest = band.isEmpty() ? 0.0 : (band.at(band.size() - 1) + band.at(band.size() - 2)) / 2;
    const Range<double> shown = values.value_or(Range<double> { rest, rest });
    band.append({ from, shown.low, shown.high, to, shown.low, shown.high });
}

} // namespace

double chartDays(Moment from, Moment at) { return daysBetween(from, at).count(); }

AxisTicks timeTicks(Moment from, Moment to)
{
    const double span = chartDays(from, to);
    TimeStep step = timeSteps.back();
    for (const TimeStep& tried : timeSteps) {
        if (span / tried.length() <= mostTimes) {
            step = tried;
            break;
        }
    }
    AxisTicks ticks;
    for (QDateTime at = firstTime(localTime(from), step);; at = nextTime(at, step)) {
        const Moment moment = fromMilliseconds(at.toMSecsSinceEpoch());
        if (moment > to)
            return ticks;
        if (moment < from)
            continue;
        ticks.at.append(chartDays(from, moment));
        ticks.texts.append(timeText(at, step));
    }
}

LevelScale levelScale(Range<double> values, int most, const QString& unit)
{
    const double span = std::max(values.high - values.low, 1.0);
    double step = std::pow(10.0, std::floor(std::log10(span)) - 1);
    for (int i = 0; span / step > most; ++i)
        step *= i % 3 == 1 ? 2.5 : 2;
    LevelScale scale;
    const int first = static_cast<int>(std::floor(values.low / step));
    const int last = std::max(first + 1, static_cast<int>(std::ceil(values.high / step)));
    scale.values = { first * step, last * step };
    for (int i = first; i <= last; ++i) {
        scale.ticks.at.append(i * step);
        QString text = numberText(std::abs(i * step), step < 1 ? 1 : 0) + u' ' + unit;
        if (i < 0)
            text.prepend(QChar(0x2212));
        scale.ticks.texts.append(text);
    }
    return scale;
}

double leastBand(const Range<double>& values) { return (values.high - values.low) * 0.006; }

void drawAir(ChartDrawn& chart, const std::vector<BandStep>& steps,
    const std::optional<Range<Celsius>>& keepBetween, UnitSystem units)
{
    const auto shown = [units](const Range<Celsius>& range) {
        return Range<double> { degreesShown(range.low, units), degreesShown(range.high, units) };
    };
    std::optional<Range<double>> all;
    const auto cover = [&all](const Range<double>& range) {
        all = all ? Range<double> { std::min(all->low, range.low), std::max(all->high, range.high) } : range;
    };
    for (const BandStep& step : steps) {
        if (step.air)
            cover(shown(*step.air));
    }
    if (!all)
        return;
    if (keepBetween) {
        const auto zone = shown(*keepBetween);
        cover(zone);
        chart.zone = { zone.low, zone.high };
    }
    auto scale = levelScale(*all, 5, degreeUnit(units));
    chart.values = scale.values;
    chart.levels = std::move(scale.ticks);
    const double least = leastBand(chart.values);
    const Moment begin = steps.front().from;
    for (const BandStep& step : steps) {
        std::optional<Range<double>> air;
        if (step.air) {
            air = shown(*step.air);
            air = Range<double> { air->low - least, air->high + least };
        }
        const double from = chartDays(begin, step.from);
        const double to = chartDays(begin, step.to);
        addStretch(chart.solid, from, to, step.watched ? air : std::nullopt);
        addStretch(chart.pale, from, to, step.watched ? std::nullopt : air);
    }
}

} // namespace gw
