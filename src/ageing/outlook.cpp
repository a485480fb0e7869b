#include "ageing/outlook.h"

#include <algorithm>
#include <utility>

#include "ageing/reasons.h"

namespace gw {

namespace {

constexpr int monthsOfAge = 1200;
constexpr int monthsOfWeather = 12;

Moment nextMonth(Moment at)
{
    const Date day = dateOf(at);
    return startOf(Date { (day.year() / day.month() + std::chrono::months { 1 }) / 1 });
}

std::optional<Moment> reached(const AgeCase& item, Days left)
{
    const Rate& rate = item.figures.rate;
    if (!agesByTemperature(rate))
        return later(item.asOf, left);
    const PlaceId place = item.placeNow();
    Moment from = item.asOf;
    for (int month = 0; month < monthsOfAge; ++month) {
        const auto usual = item.climate.usual(place, from);
        if (!usual)
            return std::nullopt;
        const double speed = speedAt(usual->high, rate);
        const Moment to = nextMonth(from);
        if (left <= speed * daysBetween(from, to))
            return later(from, left / speed);
        left -= speed * daysBetween(from, to);
        from = to;
    }
    return std::nullopt;
}

std::optional<Limit> clockLimit(const AgeCase& item, const Clock& clock, const char* code)
{
    if (!clock.running || !clock.lifeKnown())
        return std::nullopt;
    if (const auto at = reached(item, std::max(Days { 0 }, clock.life.span.low - clock.age.high)))
        return Limit { *at, code };
    return std::nullopt;
}

} // namespace

std::optional<Limit> earlier(std::optional<Limit> a, std::optional<Limit> b)
{
    if (!a || (b && b->at < a->at))
        return b;
    return a;
}

std::optional<Limit> ageLimit(const AgeCase& item, const Clock& sealed, const Clock& opened)
{
    const auto label = labelClock(item);
    if (!label || !item.labelSpeaks())
        return earlier(clockLimit(item, opened, "opened_life"), clockLimit(item, sealed, "sealed_life"));
    Moment end = endOf(*item.history.printed);
    if (const auto usedUp = reached(item, std::max(Days { 0 }, label->left)))
        end = std::min(end, *usedUp);
    return earlier(Limit { end, "printed_date" }, clockLimit(item, opened, "opened_life"));
}

std::optional<Limit> weatherLimit(const AgeCase& item)
{
    const LifeFigures& figures = item.figures;
    if (figures.frost == Frost::Never && !figures.keepBetween)
        return std::nullopt;
    const PlaceId place = item.placeNow();
    // The running month is told by what has been, unless a bench test still answers for it.
    const Moment settled = weatherSince(item);
    Moment from = settled > item.asOf ? settled : nextMonth(item.asOf);
    for (int month = 0; month <= monthsOfWeather; ++month, from = nextMonth(from)) {
        const auto usual = item.climate.usual(place, from);
        if (figures.frost != Frost::Never && figures.crystallisesBetween) {
            if (!usual || usual->low < lookBelow(figures))
                return Limit { from, "may_have_crystallised" };
        } else if (figures.frost != Frost::Never && (!usual || usual->low < figures.freezesAt)) {
            return Limit { from, "frost_not_known" };
        }
        // Where nothing usual is known, the worst place there is will speak.
        const auto warmest = usual ? std::optional(usual->high)
                                   : item.climate.exposure(place, from, from, figures.rate).hottest;
        if (figures.keepBetween && warmest
            && warmest->value > figures.keepBetween->high.value + heatLeftToClock)
            return Limit { from, "too_hot" };
    }
    return std::nullopt;
}

} // namespace gw
