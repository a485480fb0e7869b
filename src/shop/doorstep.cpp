#include "shop/doorstep.h"

#include "ageing/watched.h"
#include "shop/climate.h"

namespace gw {

namespace {

constexpr std::string_view setting = "doorstep_place";
constexpr int yearsLookedBack = 3;
constexpr Days week { 7 };
constexpr Days year { 365.2425 };

std::optional<Celsius> usualLow(const WatchedClimate& climate, const PlaceId& place, Moment from, Moment now)
{
    std::optional<Celsius> low;
    for (int back = 1; back <= yearsLookedBack; ++back) {
        const Moment then = later(from, -year * back);
        if (later(then, week) > now)
            continue;
        const auto seen = climate.summary(place, then, later(then, week));
        // A week watched for less than half says little of its coldest night.
        if (seen && seen->unwatched < week / 2 && (!low || seen->low.value < low->value))
            low = seen->low;
    }
    if (low)
        return low;
    const auto usual = climate.usual(place, later(from, week / 2));
    return usual ? std::optional(usual->low) : std::nullopt;
}

} // namespace

Result<std::string> doorstepName(const Shop& shop)
{
    const auto id = shop.store().setting(std::string(setting));
    if (!id)
        return tl::unexpected(id.error());
    const auto places = shop.store().places();
    if (!places)
        return tl::unexpected(places.error());
    for (const PlaceRecord& place : *places) {
        if (*id && place.id.text == **id)
            return place.name;
    }
    return std::string();
}

Result<void> setDoorstep(Shop& shop, const std::string& place)
{
    if (place.empty())
        return shop.store().setSetting(std::string(setting), std::string());
    const auto found = findPlace(shop, place);
    if (!found)
        return tl::unexpected(found.error());
    return shop.store().setSetting(std::string(setting), found->id.text);
}

Result<Doorstep> doorstepOf(
    const Shop& shop, const Catalogue& catalogue, const std::string& place, Moment now)
{
    const auto found = findPlace(shop, place);
    if (!found)
        return tl::unexpected(found.error());
    const auto climate = shop.climate(catalogue);
    if (!climate)
        return tl::unexpected(climate.error());
    Doorstep doorstep;
    doorstep.name = found->name;
    const auto thisYear = dateOf(now).year();
    for (std::size_t i = 0; i < doorstep.lows.size(); ++i) {
        Moment from = later(startOf(Date { thisYear, std::chrono::January, std::chrono::day { 1 } }),
            week * static_cast<double>(i));
        if (later(from, week) < now)
            from = later(from, year);
        doorstep.lows[i] = usualLow(**climate, found->id, from, now);
    }
    return doorstep;
}

} // namespace gw
