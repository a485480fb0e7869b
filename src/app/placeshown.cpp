#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "app/chartscale.h"
#include "app/placecontroller.h"
#include "app/words.h"

namespace gw {

namespace {

struct Page {
    Q_DECLARE_TR_FUNCTIONS(gw::PlaceController)
};

QString rangeText(const Range<Celsius>& range, UnitSystem units)
{
    return Page::tr("%1 to %2").arg(temperatureText(range.low, units), temperatureText(range.high, units));
}

/// "12 days", "7 hours": in what people count by.
QString spanText(Days span)
{
    const double hours = span.count() * 24;
    if (hours < 1)
        return Page::tr("none");
    if (hours < 48)
        return Page::tr("%n hour(s)", nullptr, static_cast<int>(std::lround(hours)));
    return Page::tr("%n day(s)", nullptr, static_cast<int>(std::lround(span.count())));
}

QString assumedText(const PlaceClimate& climate, UnitSystem units)
{
    QStringList said;
    if (!climate.followsName.empty())
        said.append(Page::tr("It follows %1.").arg(q(climate.followsName)));
    std::optional<Range<Celsius>> all;
    for (std::size_t quarter = 0; quarter < 4; ++quarter) {
        if (const auto range = climate.place.assumed.of(quarter))
            all = all ? Range<Celsius> { std::min(all->low, range->low), std::max(all->high, range->high) }
                      : *range;
    }
    said.append(all
            ? Page::tr("Where nobody watched it is taken to be %1 over a year.").arg(rangeText(*all, units))
            : Page::tr("Nothing is assumed of it where nobody watched."));
    return said.join(u' ');
}

std::vector<ShownRow> figureRowsOf(const PlaceClimate& climate, UnitSystem units, QDate today)
{
    std::vector<ShownRow> rows;
    const auto add = [&](const char* key, const QString& label, const QString& value, const QString& note) {
        rows.push_back({ QString::fromLatin1(key), { label, value, note } });
    };
    if (climate.newest)
        add("newest", Page::tr("Newest reading"), temperatureText(climate.newest->temperature, units),
            momentText(climate.newest->at, today));
    if (climate.low)
        add("low", Page::tr("Lowest"), temperatureText(*climate.low, units), {});
    if (climate.high)
        add("high", Page::tr("Highest"), temperatureText(*climate.high, units), {});
    if (climate.mean)
        add("mean", Page::tr("Mean"), temperatureText({ std::round(climate.mean->value * 10) / 10 }, units),
            {});
    if (climate.kinetic)
        add("kinetic", Page::tr("Mean kinetic temperature"),
            temperatureText({ std::round(climate.kinetic->value * 10) / 10 }, units),
            Page::tr("The steady temperature that would age things as much."));
    add("unwatched", Page::tr("Unwatched"),
        climate.readings > 0 ? spanText(climate.unwatched) : Page::tr("all of it"),
        climate.first && climate.last
            ? Page::tr("between %1 and %2").arg(dayText(*climate.first), dayText(*climate.last))
            : QString());
    if (climate.readings > 0)
        add("frost", Page::tr("Frost in the air"), Page::tr("%n time(s)", nullptr, climate.frost.freezes),
            climate.frost.last ? Page::tr("last on %1").arg(dayText(*climate.frost.last)) : QString());
    return rows;
}

QString askedText(const StandsHere& here, UnitSystem units)
{
    QStringList asks;
    if (here.keepBetween)
        asks.append(Page::tr("keep between %1").arg(rangeText(*here.keepBetween, units)));
    if (here.freezesAt && here.frost == Frost::Harms)
        asks.append(Page::tr("frost spoils it (%1)").arg(temperatureText(*here.freezesAt, units)));
    else if (here.frost == Frost::Recoverable)
        asks.append(Page::tr("comes back from the cold by warming"));
    return asks.isEmpty() ? Page::tr("asks for no temperature") : asks.join(Page::tr("; "));
}

/// Whether the place was outside what it asks for, by readings; assumptions are no fault of the place.
bool outside(const StandsHere& here, const PlaceClimate& climate)
{
    return here.keepBetween
        && ((climate.low && *climate.low < here.keepBetween->low)
            || (climate.high && *climate.high > here.keepBetween->high));
}

/// What everything that stands here asks for at once; none when nothing does or they do not agree.
std::optional<Range<Celsius>> wantedOfAll(const std::vector<StandsHere>& stands)
{
    std::optional<Range<Celsius>> all;
    for (const StandsHere& here : stands) {
        if (!here.keepBetween)
            continue;
        all = all ? Range<Celsius> { std::max(all->low, here.keepBetween->low),
            std::min(all->high, here.keepBetween->high) }
                  : *here.keepBetween;
    }
    return all && all->low < all->high ? all : std::nullopt;
}

} // namespace

PlaceShown placeShown(const PlaceClimate& climate, Moment asOf, UnitSystem units, QDate today)
{
    PlaceShown shown;
    shown.name = q(climate.place.name);
    shown.note = q(climate.place.note);
    shown.watched = climate.readings > 0;
    shown.assumed = assumedText(climate, units);
    shown.figures = figureRowsOf(climate, units, today);
    for (const StandsHere& here : climate.stands)
        shown.stands.push_back({ q(here.container.text),
            { q(here.materialName), q(here.label),
                outside(here, climate)
                    ? Page::tr("%1; the place has been outside that").arg(askedText(here, units))
                    : askedText(here, units),
                outside(here, climate) } });

    shown.trace.span = std::max(chartDays(climate.from, climate.to), 1e-3);
    shown.trace.now = asOf <= climate.to ? chartDays(climate.from, asOf) : -1;
    shown.trace.times = timeTicks(climate.from, climate.to);
    std::vector<BandStep> band;
    for (std::size_t i = 0; i < climate.trace.size(); ++i) {
        const Moment to = i + 1 < climate.trace.size() ? climate.trace[i + 1].from : climate.to;
        band.push_back({ climate.trace[i].from, to, climate.trace[i].air, climate.trace[i].watched });
    }
    drawAir(shown.trace, band, wantedOfAll(climate.stands), units);
    shown.trace.spoken = climate.low && climate.high
        ? Page::tr("%1 was read between %2 and %3, from %4 to %5.")
              .arg(shown.name, temperatureText(*climate.low, units), temperatureText(*climate.high, units),
                  dayText(climate.from), dayText(climate.to))
        : Page::tr("Nobody has watched %1 yet. %2").arg(shown.name, shown.assumed);
    return shown;
}

} // namespace gw
