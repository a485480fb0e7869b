#include "shop/actbuilder.h"
#include "shop/demodata.h"
#include "shop/lowandhigh.h"
#include "shop/readingsimport.h"

namespace gw {

namespace {

/// Which place goes with which: those followed must be there before.
Result<void> saveFollows(
    Shop& shop, const std::vector<DemoRow>& rows, std::vector<PlaceRecord> places, const DemoCatalogue& demo)
{
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto followed = demo.places.find(rows[i].text("follows"));
        if (followed == demo.places.end())
            continue;
        places[i].follows = Follow { followed->second, rows[i].number("warmer_c").value_or(0),
            rows[i].number("damped").value_or(0) };
        if (auto saved = shop.store().savePlace(places[i]); !saved)
            return saved;
    }
    return {};
}

Result<void> savePlaces(Shop& shop, const std::vector<CsvTable>& tables, DemoCatalogue& demo)
{
    auto rows = demoRows(tables, "places");
    if (!rows)
        return tl::unexpected(rows.error());
    std::vector<PlaceRecord> saved;
    for (const DemoRow& row : *rows) {
        PlaceRecord place;
        place.id = PlaceId { newUuid() };
        place.name = row.text("name");
        const auto low = row.number("assumed_low_c"), high = row.number("assumed_high_c");
        if (low && high)
            place.assumed.year = Range<Celsius> { Celsius { *low }, Celsius { *high } };
        place.note = row.text("note");
        demo.places.emplace(row.text("place"), place.id);
        if (auto done = shop.store().savePlace(place); !done)
            return done;
        saved.push_back(std::move(place));
    }
    return saveFollows(shop, *rows, std::move(saved), demo);
}

/// A day's low and high, as typed in from a min/max thermometer, of each place.
Result<void> saveReadings(
    Shop& shop, const std::vector<CsvTable>& tables, Moment now, const DemoCatalogue& demo)
{
    auto rows = demoRows(tables, "readings");
    if (!rows)
        return tl::unexpected(rows.error());
    const WallClock clock(shopZone(shop), now);
    const auto today = std::chrono::floor<std::chrono::days>(now);
    std::map<PlaceId, std::vector<Reading>> readings;
    for (const DemoRow& row : *rows) {
        const auto days = row.number("days"), low = row.number("low_c"), high = row.number("high_c");
        const auto place = demo.places.find(row.text("place"));
        if (!days || !low || !high || place == demo.places.end())
            return fail(
                ErrorCode::BadInput, "The demonstration data has a reading without place or figures.");
        const Date day { today + std::chrono::days { static_cast<int>(*days) } };
        for (const Reading& reading : lowAndHigh(clock, day, Celsius { *low }, Celsius { *high })) {
            if (reading.at <= now)
                readings[place->second].push_back(reading);
        }
    }
    for (const auto& [place, taken] : readings) {
        if (auto added = shop.store().addReadings(place, taken); !added)
            return tl::unexpected(added.error());
    }
    return {};
}

} // namespace

Result<void> saveDemoPlaces(Shop& shop, const std::vector<CsvTable>& tables, Moment now, DemoCatalogue& demo)
{
    if (auto saved = savePlaces(shop, tables, demo); !saved)
        return saved;
    return saveReadings(shop, tables, now, demo);
}

} // namespace gw
