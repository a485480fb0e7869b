#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "app/chartscale.h"
#include "app/lifepicturecontroller.h"
#include "app/words.h"

namespace gw {

namespace {

struct Picture {
    Q_DECLARE_TR_FUNCTIONS(gw::LifePictureController)
};

/// Life used past this share of it is drawn no farther: what matters is that it is over.
constexpr double mostPercent = 200;
constexpr double leastPercent = 110; ///< so that the limit stands inside

QString iconOf(LifeMark::Kind kind)
{
    using Kind = LifeMark::Kind;
    switch (kind) {
    case Kind::Arrived:
        return QStringLiteral("arrivals");
    case Kind::Opened:
        return QStringLiteral("open");
    case Kind::Moved:
        return QStringLiteral("move");
    case Kind::Froze:
        return QStringLiteral("frost");
    case Kind::TooHot:
        return QStringLiteral("thermometer");
    case Kind::Passed:
    case Kind::Failed:
        return QStringLiteral("bench-test");
    case Kind::Retired:
        return QStringLiteral("retire");
    case Kind::LabelDate:
        return QStringLiteral("label");
    case Kind::GoodUntil:
        break;
    }
    return QStringLiteral("calendar");
}

/// Only for its colour; the words beside say it.
QString verdictOf(LifeMark::Kind kind)
{
    using Kind = LifeMark::Kind;
    if (kind == Kind::Froze || kind == Kind::TooHot || kind == Kind::Failed)
        return QStringLiteral("do_not_use");
    if (kind == Kind::Passed)
        return QStringLiteral("good");
    return {};
}

QString whenText(const LifeMark& mark)
{
    if (!mark.until || dayText(*mark.until) == dayText(mark.at))
        return dayText(mark.at);
    return Picture::tr("%1 to %2").arg(dayText(mark.at), dayText(*mark.until));
}

QString percentText(const Range<double>& used)
{
    const int low = static_cast<int>(std::floor(used.low * 100 + 1e-6));
    const int high = std::max(low, static_cast<int>(std::ceil(used.high * 100 - 1e-6)));
    return low == high ? Picture::tr("%1 %").arg(low) : Picture::tr("%1 to %2 %").arg(low).arg(high);
}

ChartDrawn lifeChart(const LifeTrack& track, const LifeStory& story)
{
    ChartDrawn chart;
    double most = leastPercent;
    for (const LifePoint& point : track.points)
        most = std::max(most, std::min(point.used.high * 100, mostPercent));
    auto scale = levelScale({ 0, most }, 5, QStringLiteral("%"));
    chart.values = scale.values;
    chart.levels = std::move(scale.ticks);
    const double least = leastBand(chart.values);
    for (const LifePoint& point : track.points) {
        const double at = chartDays(story.from, point.at);
        const double low = std::min(point.used.low * 100, 2 * mostPercent) - least;
        const double high = std::min(point.used.high * 100, 2 * mostPercent) + least;
        if (point.at <= story.asOf)
            chart.solid.append({ at, low, high });
        if (point.at >= story.asOf)
            chart.pale.append({ at, low, high });
    }
    chart.limit = 100;
    const auto last = std::find_if(track.points.rbegin(), track.points.rend(),
        [&](const LifePoint& point) { return point.at <= story.asOf; });
    if (last == track.points.rend()) {
        chart.spoken = q(track.missing);
        return chart;
    }
    chart.spoken = track.sinceOpening ? Picture::tr("Of its life since opening, %1 is used on %2.")
                                            .arg(percentText(last->used), dayText(last->at))
                                      : Picture::tr("Of its life unopened, %1 is used on %2.")
                                            .arg(percentText(last->used), dayText(last->at));
    return chart;
}

std::vector<BandStep> bandOf(const LifeStory& story)
{
    std::vector<BandStep> band;
    for (std::size_t i = 0; i < story.air.size(); ++i) {
        const AirStep& step = story.air[i];
        const Moment to = i + 1 < story.air.size() ? story.air[i + 1].from : story.to;
        band.push_back({ step.from, to, step.air, step.watched });
    }
    return band;
}

QString airNote(const LifeStory& story)
{
    const int stood = static_cast<int>(std::lround(story.stood.count()));
    const int watched = static_cast<int>(std::lround(story.watched.count()));
    if (stood <= 0)
        return Picture::tr("Where it stood is not known.");
    if (watched <= 0)
        return Picture::tr("Nobody watched the temperature: the range assumed of the place is shown.");
    return Picture::tr(
        "Somebody watched for %1 of %n day(s); else the range assumed of the place is shown.", nullptr, stood)
        .arg(watched);
}

QString airSpoken(const LifeStory& story, UnitSystem units)
{
    std::optional<Range<Celsius>> all;
    for (const AirStep& step : story.air) {
        if (step.air && step.from < story.asOf)
            all = all
                ? Range<Celsius> { std::min(all->low, step.air->low), std::max(all->high, step.air->high) }
                : *step.air;
    }
    if (!all)
        return Picture::tr("The temperature where it stood is not known.");
    return Picture::tr("The air around it was between %1 and %2.")
               .arg(temperatureText(all->low, units), temperatureText(all->high, units))
        + u' ' + airNote(story);
}

} // namespace

LifePictureShown lifePictureShown(const LifeStory& story, UnitSystem units)
{
    LifePictureShown shown;
    ChartDrawn frame;
    frame.span = chartDays(story.from, story.to);
    frame.now = chartDays(story.from, story.asOf);
    frame.times = timeTicks(story.from, story.to);
    for (const LifeTrack& track : story.tracks) {
        ChartDrawn chart = lifeChart(track, story);
        chart.span = frame.span;
        chart.now = frame.now;
        chart.times = frame.times;
        shown.lives.push_back(std::move(chart));
        shown.clocks.append(track.sinceOpening ? Picture::tr("Since opening") : Picture::tr("Unopened"));
        shown.missing.append(q(track.missing));
    }
    shown.air = frame;
    drawAir(shown.air, bandOf(story), story.keepBetween, units);
    shown.air.spoken = airSpoken(story, units);
    shown.airNote = airNote(story);
    shown.anyWatched
        = std::any_of(story.air.begin(), story.air.end(), [](const AirStep& step) { return step.watched; });
    shown.place = q(story.place.text);
    shown.placeName = q(story.placeName);
    for (std::size_t i = 0; i < story.marks.size(); ++i) {
        const LifeMark& mark = story.marks[i];
        shown.marks.push_back({ QString::number(toMilliseconds(mark.at)) + u'/' + q(mark.text),
            { chartDays(story.from, mark.at), chartDays(story.from, mark.until.value_or(mark.at)),
                iconOf(mark.kind), q(mark.text), whenText(mark), verdictOf(mark.kind) } });
    }
    return shown;
}

} // namespace gw
