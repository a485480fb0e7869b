#include "shop/tonight.h"

#include <algorithm>
#include <map>

#include "ageing/frosts.h"
#include "ageing/wording.h"
#include "measure/number.h"
#include "shop/climate.h"
#include "shop/climateasof.h"
#include "shop/stock.h"

namespace gw {

namespace {

constexpr Range<Celsius> possible { Celsius { -60 }, Celsius { 40 } };
/// How long an expected low stands.
constexpr std::chrono::hours expectedFor { 24 };

std::string settingOf(const PlaceId& place) { return "expected_low:" + place.text; }

Result<void> mayBe(Celsius low)
{
    if (low >= possible.low && low <= possible.high)
        return {};
    return fail(ErrorCode::BadInput, "A night's low lies between -60 and 40 °C; type it again.");
}

std::string hoursText(double hours)
{
    if (hours < 1)
        return "within the hour";
    return "after about " + hoursWords(std::chrono::duration<double, std::ratio<3600>> { hours });
}

std::string saidOf(const TonightRisk& risk, const LifeFigures& figures, Celsius low, UnitSystem units)
{
    const std::string at = " at " + formatTemperature(low, units);
    const bool already = risk.hoursToEvent && *risk.hoursToEvent <= 0;
    switch (risk.harm) {
    case ColdHarm::Spoils:
        return already ? "It is frozen already; bring it in, and test it once it has thawed."
                       : "It freezes " + hoursText(risk.hoursToEvent.value_or(0)) + at
                + ", and freezing spoils it: bring it in.";
    case ColdHarm::ComesBack:
        return already ? "It is frozen already; bring it in, it comes back by warming."
                       : "It freezes " + hoursText(risk.hoursToEvent.value_or(0)) + at
                + ", and comes back by warming: bring it in if there is room.";
    case ColdHarm::BelowLimit:
        return "It does not freeze" + at + ", but that is colder than it should stand"
            + (figures.keepBetween
                    ? ", which is " + formatTemperature(figures.keepBetween->low, units) + " at the least"
                    : std::string())
            + ": bring it in if there is room.";
    case ColdHarm::None:
        break;
    }
    return {};
}

std::string saidOfAll(const Tonight& tonight, UnitSystem units)
{
    std::size_t count = 0;
    std::string names;
    for (const ColdPlace& place : tonight.places) {
        count += place.containers.size();
        names += (names.empty() ? "" : ", ") + (place.name.empty() ? "a place not known" : place.name);
    }
    const std::string at = formatTemperature(tonight.low, units);
    if (count == 0)
        return "Nothing has to come in before a night of " + at + ".";
    return "Before a night of " + at
        + (count == 1 ? " 1 container has" : " " + std::to_string(count) + " containers have")
        + " to come in from: " + names + ".";
}

/// What stands in the shop at a moment, as cold would find it.
struct ColdShelf {
    const Shop& shop;
    Moment asOf;
    Catalogue catalogue;
    std::vector<Standing> standings;
    ClimateAsOf climate;

    Tonight before(Celsius low, const std::optional<PlaceId>& only) const;
    std::optional<ColdContainer> risked(const Standing& standing, Celsius low) const;
};

Result<ColdShelf> coldShelf(const Shop& shop, Moment asOf)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto climate = ClimateAsOf::of(shop, *catalogue, asOf);
    if (!climate)
        return tl::unexpected(climate.error());
    auto standings = standingsAsOf(shop, asOf);
    if (!standings)
        return tl::unexpected(standings.error());
    return ColdShelf { shop, asOf, std::move(*catalogue), std::move(*standings), *climate };
}

std::optional<ColdContainer> ColdShelf::risked(const Standing& standing, Celsius low) const
{
    const auto* material = catalogue.material(standing.container.material);
    const auto* cls = catalogue.classOf(standing.container.material);
    if (!material || !cls)
        return std::nullopt;
    const LifeFigures figures = lifeFiguresOf(*cls, *material);
    const History& history = standing.state.history;
    const Frosts frosts = frostsOf(AgeCase(history, figures, *climate, asOf));
    // Where it is not known how often it froze, the next time is once too often.
    const int soFar = frosts.count().value_or(figures.freezeTolerance.value_or(0));
    const TonightRisk risk = tonightRisk(contentsAt(history, figures, asOf), frosts.now, low, figures, soFar);
    if (risk.harm == ColdHarm::None)
        return std::nullopt;
    return ColdContainer { standing.container.id, standing.container.label, material->name,
        standing.state.left, risk, saidOf(risk, figures, low, shop.units()) };
}

Tonight ColdShelf::before(Celsius low, const std::optional<PlaceId>& only) const
{
    std::map<PlaceId, ColdPlace> cold;
    for (const Standing& standing : standings) {
        const StockState& state = standing.state;
        if (state.history.retired || state.left.milli <= 0 || (only && state.place != *only))
            continue;
        auto container = risked(standing, low);
        if (!container)
            continue;
        ColdPlace& here = cold[state.place];
        here.place = state.place;
        here.name = catalogue.placeName(state.place);
        here.containers.push_back(std::move(*container));
    }

    Tonight answer { asOf, low, {}, {} };
    for (auto& [id, place] : cold) {
        std::ranges::stable_sort(place.containers,
            [](const ColdContainer& a, const ColdContainer& b) { return moreUrgent(a.risk, b.risk); });
        answer.places.push_back(std::move(place));
    }
    std::ranges::stable_sort(answer.places, [](const ColdPlace& a, const ColdPlace& b) {
        return moreUrgent(a.containers.front().risk, b.containers.front().risk);
    });
    answer.said = saidOfAll(answer, shop.units());
    return answer;
}

} // namespace

Result<Tonight> tonight(const Shop& shop, const std::string& placeName, Celsius low, Moment asOf)
{
    if (auto may = mayBe(low); !may)
        return tl::unexpected(may.error());
    std::optional<PlaceId> only;
    if (!placeName.empty()) {
        auto place = findPlace(shop, placeName);
        if (!place)
            return tl::unexpected(place.error());
        only = place->id;
    }
    const auto shelf = coldShelf(shop, asOf);
    if (!shelf)
        return tl::unexpected(shelf.error());
    return shelf->before(low, only);
}

Result<std::vector<Tonight>> tonight(
    const Shop& shop, const std::vector<std::pair<PlaceId, Celsius>>& lows, Moment asOf)
{
    std::vector<Tonight> nights;
    if (lows.empty())
        return nights;
    for (const auto& [place, low] : lows) {
        if (auto may = mayBe(low); !may)
            return tl::unexpected(may.error());
    }
    const auto shelf = coldShelf(shop, asOf);
    if (!shelf)
        return tl::unexpected(shelf.error());
    for (const auto& [place, low] : lows)
        nights.push_back(shelf->before(low, place));
    return nights;
}

std::vector<std::pair<std::string, ColdContainer>> mostUrgentFirst(const std::vector<Tonight>& nights)
{
    std::vector<std::pair<std::string, ColdContainer>> all;
    for (const Tonight& night : nights) {
        for (const ColdPlace& place : night.places) {
            for (const ColdContainer& container : place.containers)
                all.emplace_back(place.name, container);
        }
    }
    std::ranges::stable_sort(
        all, [](const auto& a, const auto& b) { return moreUrgent(a.second.risk, b.second.risk); });
    return all;
}

Result<void> expectLow(Shop& shop, const std::string& placeName, std::optional<Celsius> low, Moment now)
{
    auto place = findPlace(shop, placeName);
    if (!place)
        return tl::unexpected(place.error());
    if (low) {
        if (auto may = mayBe(*low); !may)
            return may;
    }
    const std::string value = low ? formatMoment(now) + " " + numberWords(low->value, 2) : std::string();
    return shop.store().setSetting(settingOf(place->id), value);
}

Result<std::optional<Celsius>> expectedLow(const Shop& shop, const PlaceId& place, Moment asOf)
{
    auto kept = shop.store().setting(settingOf(place));
    if (!kept)
        return tl::unexpected(kept.error());
    const std::string text = kept->value_or("");
    const auto blank = text.find(' ');
    if (blank == std::string::npos)
        return std::nullopt;
    const auto typed = parseMoment(text.substr(0, blank));
    const auto low = leadingNumber(std::string_view(text).substr(blank + 1));
    if (!typed || !low || asOf < *typed || asOf > *typed + expectedFor)
        return std::nullopt;
    return Celsius { low->value };
}

} // namespace gw
