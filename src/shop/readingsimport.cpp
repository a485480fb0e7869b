#include "shop/readingsimport.h"

#include <algorithm>

#include <QString>
#include <QTimeZone>

#include "exchange/readingszone.h"
#include "measure/number.h"
#include "measure/quoted.h"
#include "shop/climate.h"
#include "shop/lowandhigh.h"

namespace gw {

namespace {

/// Usual hours of a day's coldest and warmest air; common practice, no source.
constexpr std::chrono::hours lowAt { 5 };
constexpr std::chrono::hours highAt { 15 };
constexpr Date earliestDay { std::chrono::January / 1 / 1990 };

std::string columnName(const ReadingsLayout& layout, std::size_t column)
{
    return column < layout.columns.size() ? inQuotes(layout.columns[column])
                                          : "column " + std::to_string(column + 1);
}

std::string orderWords(DateOrder order)
{
    switch (order) {
    case DateOrder::YearFirst:
        return "the year first";
    case DateOrder::DayFirst:
        return "the day first";
    case DateOrder::MonthFirst:
        return "the month first";
    }
    return {};
}

std::string separatorWords(char delimiter)
{
    switch (delimiter) {
    case ',':
        return "commas";
    case ';':
        return "semicolons";
    case '\t':
        return "tabs";
    default:
        return inQuotes(std::string_view(&delimiter, 1));
    }
}

std::string stampWords(const ReadingsLayout& layout)
{
    const std::string column = columnName(layout, layout.timeColumn);
    switch (layout.stamp) {
    case StampForm::UnixSeconds:
        return "Times are seconds since 1970 in " + column;
    case StampForm::UnixMilliseconds:
        return "Times are milliseconds since 1970 in " + column;
    case StampForm::SpreadsheetDays:
        return "Times are a spreadsheet's days in " + column + ", by the clock of " + layout.zone;
    case StampForm::Calendar:
        break;
    }
    return (layout.daily ? "Days are in " : "Times are in ") + column + ", " + orderWords(layout.dateOrder)
        + ", by the clock of " + layout.zone;
}

std::string layoutWords(const ReadingsLayout& layout)
{
    const std::string unit = layout.unit == DegreeUnit::Celsius ? "°C" : "°F";
    std::string temperatures;
    if (layout.lowColumn && layout.highColumn)
        temperatures = "the day's low in " + columnName(layout, *layout.lowColumn) + " and high in "
            + columnName(layout, *layout.highColumn) + ", in " + unit;
    else if (layout.temperatureColumn)
        temperatures = "temperatures in " + columnName(layout, *layout.temperatureColumn) + ", in " + unit;
    std::string words = stampWords(layout) + "; " + temperatures;
    if (layout.humidityColumn)
        words += "; humidity in " + columnName(layout, *layout.humidityColumn);
    words += "; cells apart by " + separatorWords(layout.delimiter);
    if (layout.decimalSign == ',')
        words += ", decimals by commas";
    return words + ".";
}

std::string countWords(std::int64_t count, const char* one, const char* many)
{
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string saidOf(const ReadingsImport& import)
{
    if (import.cancelled)
        return "Stopped; nothing of the file was kept.";
    std::string said = countWords(import.added, "reading", "readings") + " added to " + import.place.name;
    if (import.from)
        said += ", from " + spokenDate(dateOf(*import.from)) + " to " + spokenDate(dateOf(*import.to));
    said += ".";
    if (import.alreadyThere > 0)
        said += " " + countWords(import.alreadyThere, "was", "were") + " there already.";
    if (import.different > 0)
        said += " " + countWords(import.different, "was", "were")
            + " left out, as another reading stands at that second.";
    if (import.setAside > 0)
        said += " " + countWords(import.setAside, "row was", "rows were") + " set aside.";
    return said;
}

Result<ReadingsImport> takeIn(Store& store, const PlaceRecord& place, const ReadingsLook& look,
    const QString& path, Moment now, const ReadingsProgress& progress)
{
    ReadingsImport import;
    import.place = place;
    import.layout = layoutWords(look.layout);
    import.doubts = look.doubts;
    const auto done = store.transact([&]() -> Result<void> {
        auto read = readReadings(
            path, look.layout, now,
            [&](std::span<const Reading> readings) -> Result<void> {
                auto added = store.addReadings(place.id, readings);
                if (!added)
                    return tl::unexpected(added.error());
                import.added += added->added;
                import.alreadyThere += added->alreadyThere;
                import.different += added->different;
                return {};
            },
            progress);
        if (!read)
            return tl::unexpected(read.error());
        import.rows = read->rows;
        import.setAside = read->setAside;
        import.listed = std::move(read->listed);
        import.outOfOrder = read->outOfOrder;
        import.humidityDropped = read->humidityDropped;
        import.from = read->from;
        import.to = read->to;
        import.cancelled = read->cancelled;
        // An error undoes what was taken; whoever stopped the import knows that nothing is left of it.
        return read->cancelled ? fail(ErrorCode::Refused, "The import was stopped.") : Result<void> {};
    });
    if (import.cancelled)
        import.added = import.alreadyThere = import.different = 0;
    else if (!done)
        return tl::unexpected(done.error());
    import.said = saidOf(import);
    return import;
}

/// The moment a clock on the shop's wall shows a time of a day; where it leaps over it, an hour later.
Moment onTheWall(const WallClock& clock, Date day, std::chrono::hours hour)
{
    const Moment wall = startOf(day) + hour;
    auto shown = clock.whenShowing(wall);
    if (shown.count == 0)
        shown = clock.whenShowing(wall + std::chrono::hours { 1 });
    return shown.count == 0 ? wall : shown.at[0];
}

} // namespace

std::array<Reading, 2> lowAndHigh(const WallClock& clock, Date day, Celsius low, Celsius high)
{
    return { Reading { onTheWall(clock, day, lowAt), low, {} },
        Reading { onTheWall(clock, day, highAt), high, {} } };
}

std::string shopZone(const Shop& shop)
{
    const auto kept = shop.store().setting("shop_zone");
    if (kept && *kept) {
        if (auto zone = zoneNamed(**kept))
            return *zone;
    }
    const auto own = zoneNamed(QTimeZone::systemTimeZoneId().toStdString());
    return own.value_or("UTC");
}

Result<ReadingsLook> lookAtReadingsFor(
    const Shop& shop, const std::string& path, const ReadingsChoices& choices, Moment now)
{
    ReadingsChoices here = choices;
    here.shopZone = shopZone(shop);
    return lookAtReadings(QString::fromStdString(path), now, here);
}

Result<ReadingsImport> importReadings(Shop& shop, const std::string& placeName, const std::string& path,
    const ReadingsChoices& choices, Moment now, const ReadingsProgress& progress)
{
    auto place = findPlace(shop, placeName);
    if (!place)
        return tl::unexpected(place.error());
    auto look = lookAtReadingsFor(shop, path, choices, now);
    if (!look)
        return tl::unexpected(look.error());
    if (auto open = unanswered(look->doubts, look->name))
        return tl::unexpected(std::move(*open));
    return takeIn(shop.store(), *place, *look, QString::fromStdString(path), now, progress);
}

Result<LowHighTyped> typeLowHigh(
    Shop& shop, const std::string& placeName, Date day, Celsius low, Celsius high, Moment now)
{
    auto place = findPlace(shop, placeName);
    if (!place)
        return tl::unexpected(place.error());
    if (low > high)
        return fail(ErrorCode::BadInput, "The low lies above the high; swap the two.");
    if (!(low >= possibleAir.low && high <= possibleAir.high))
        return fail(ErrorCode::BadInput,
            "A low and high must lie between -60 and 80 °C; look at the thermometer again.");
    const WallClock clock(shopZone(shop), now + std::chrono::days { 366 });
    if (day < earliestDay || onTheWall(clock, day, std::chrono::hours { 0 }) > now)
        return fail(ErrorCode::BadInput,
            "The day " + formatDate(day) + " is to come or long gone; give the day that was read off.");

    // Of a day that is not over, an extreme still to come at its usual hour was seen by now.
    auto readings = lowAndHigh(clock, day, low, high);
    readings[1].at = std::min(readings[1].at, now);
    readings[0].at = std::min(readings[0].at, readings[1].at - std::chrono::minutes { 1 });
    LowHighTyped typed;
    typed.place = *place;
    const auto done = shop.store().transact([&]() -> Result<void> {
        auto added = shop.store().addReadings(place->id, readings);
        if (!added)
            return tl::unexpected(added.error());
        if (added->different > 0)
            return fail(ErrorCode::Conflict,
                "Another low or high was typed for " + place->name + " on " + spokenDate(day)
                    + ", and it stays.");
        typed.readings = *added;
        return {};
    });
    if (!done)
        return tl::unexpected(done.error());
    typed.said = place->name + ", " + spokenDate(day) + ": low " + formatTemperature(low, shop.units())
        + ", high " + formatTemperature(high, shop.units())
        + (typed.readings.added > 0 ? "." : ", as it stood there already.");
    return typed;
}

} // namespace gw
