#include <algorithm>
#include <map>

#include "ageing/verdict.h"
#include "ageing/wording.h"
#include "measure/number.h"
#include "shop/climate.h"
#include "shop/stock.h"

namespace gw {

namespace {

constexpr Range<Celsius> possible { Celsius { -60 }, Celsius { 40 } };
/// So long before, whatever contents were then, the air since has made them what they are.
constexpr std::chrono::days forgotten { 10 };
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

/// How warm the contents are now, by way of what their place did since they came there.
Warmth warmthOf(const StockState& state, const Contents& contents, const WatchedClimate& climate, Moment asOf)
{
    Moment since = asOf - forgotten;
    if (!state.history.stays.empty())
        since = std::min(asOf, std::max(since, state.history.stays.back().from));
    return climate.chill(state.place, since, asOf, contents, {}).end;
}

/// How often it froze. Where that is not known, no more often than it stands: the next time is once too
/// often.
int frostsOf(const StockState& state, const LifeFigures& figures, const Climate& climate, Moment asOf)
{
    return judge(state.history, figures, climate, asOf)
        .frostEvents.value_or(figures.freezeTolerance.value_or(0));
}

Filling fillingOf(const Standing& standing, Moment asOf)
{
    return { asOf, levelOf(standing.state.left, standing.container.capacity), standing.container.capacity,
        vesselOfWord(standing.container.vessel) };
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

} // namespace

Result<Tonight> tonight(const Shop& shop, const std::string& placeName, Celsius low, Moment asOf)
{
    if (auto may = mayBe(low); !may)
        return tl::unexpected(may.error());
    std::optional<PlaceRecord> only;
    if (!placeName.empty()) {
        auto place = findPlace(shop, placeName);
        if (!place)
            return tl::unexpected(place.error());
        only = std::move(*place);
    }
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto climate = shop.climate(*catalogue);
    if (!climate)
        return tl::unexpected(climate.error());
    auto standings = standingsAsOf(shop, asOf);
    if (!standings)
        return tl::unexpected(standings.error());

    std::map<PlaceId, ColdPlace> cold;
    for (const Standing& standing : *standings) {
        const StockState& state = standing.state;
        if (state.history.retired || state.left.milli <= 0 || (only && state.place != only->id))
            continue;
        const auto* material = catalogue->material(standing.container.material);
        const auto* cls = catalogue->classOf(standing.container.material);
        if (!material || !cls)
            continue;
        const LifeFigures figures = lifeFiguresOf(*cls, *material);
        const Contents contents = contentsOf(figures, fillingOf(standing, asOf));
        const TonightRisk risk = tonightRisk(contents, warmthOf(state, contents, **climate, asOf), low,
            figures, frostsOf(state, figures, **climate, asOf));
        if (risk.harm == ColdHarm::None)
            continue;
        ColdPlace& here = cold[state.place];
        here.place = state.place;
        here.name = catalogue->placeName(state.place);
        here.containers.push_back({ standing.container.id, standing.container.label, material->name,
            state.left, risk, saidOf(risk, figures, low, shop.units()) });
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
