#include <algorithm>
#include <cmath>

#include <QRandomGenerator>

#include "measure/quoted.h"
#include "store/database.h"
#include "store/readingspack.h"

namespace gw {

namespace {

constexpr Moment earliest { std::chrono::sys_days { Date { std::chrono::January / 1 / 1970 } } };
constexpr Moment pastLatest { std::chrono::sys_days { Date { std::chrono::January / 1 / 2200 } } };
constexpr std::size_t readingsOfAMonth = std::size_t { 31 } * 24 * 6; // of a logger, every ten minutes

/// A reading as it is kept.
struct Kept {
    std::int64_t second = 0;
    std::int16_t hundredths = 0;
    std::uint8_t halfPercents = noHumidityKept;
    friend bool operator==(const Kept&, const Kept&) = default;
};

Result<Kept> keptOf(const Reading& reading)
{
    const double degrees = reading.temperature.value;
    if (!(degrees >= -90 && degrees <= 300))
        return fail(ErrorCode::BadInput, "A reading lies outside -90 to 300 °C; leave it out.");
    if (reading.humidity && !(*reading.humidity >= 0 && *reading.humidity <= 100))
        return fail(ErrorCode::BadInput, "A humidity lies outside 0 to 100 %; leave it out.");
    if (reading.at < earliest || reading.at >= pastLatest)
        return fail(ErrorCode::BadInput, "A reading has a time outside 1970 to 2199; leave it out.");
    Kept kept;
    kept.second = std::chrono::floor<std::chrono::seconds>(reading.at).time_since_epoch().count();
    kept.hundredths = static_cast<std::int16_t>(std::lround(degrees * 100));
    if (reading.humidity)
        kept.halfPercents = static_cast<std::uint8_t>(std::lround(*reading.humidity * 2));
    return kept;
}

using Batch = std::vector<Kept>;

Result<Batch> batchOf(std::span<const Reading> readings)
{
    Batch batch;
    batch.reserve(readings.size());
    for (const Reading& reading : readings) {
        const auto kept = keptOf(reading);
        if (!kept)
            return tl::unexpected(kept.error());
        batch.push_back(*kept);
    }
    std::ranges::stable_sort(batch, {}, &Kept::second);
    return batch;
}

std::chrono::year_month monthOf(std::int64_t second)
{
    const Date day { std::chrono::floor<std::chrono::days>(
        std::chrono::sys_seconds { std::chrono::seconds { second } }) };
    return { day.year(), day.month() };
}

std::int64_t endOfMonth(std::chrono::year_month month)
{
    const std::chrono::sys_days next { (month + std::chrono::months { 1 }) / std::chrono::day { 1 } };
    return std::chrono::sys_seconds { next }.time_since_epoch().count();
}

Kept keptAt(const ReadingColumns& columns, std::size_t i)
{
    return { columns.seconds[i], columns.hundredths[i],
        columns.halfPercents.empty() ? noHumidityKept : columns.halfPercents[i] };
}

void put(ReadingColumns& columns, const Kept& reading)
{
    columns.seconds.push_back(reading.second);
    columns.hundredths.push_back(reading.hundredths);
    if (reading.halfPercents != noHumidityKept || !columns.halfPercents.empty()) {
        columns.halfPercents.resize(columns.seconds.size(), noHumidityKept);
        columns.halfPercents.back() = reading.halfPercents;
    }
}

/// What stands there and what is new, in time order; at one second the first stays.
ReadingColumns merged(const ReadingColumns& there, std::span<const Kept> fresh, ReadingsAdded& counts)
{
    ReadingColumns all;
    all.seconds.reserve(there.size() + fresh.size());
    all.hundredths.reserve(there.size() + fresh.size());
    std::size_t next = 0;
    const auto standUpTo = [&](std::int64_t second) {
        for (; next < there.size() && there.seconds[next] <= second; ++next)
            put(all, keptAt(there, next));
    };
    for (const Kept& reading : fresh) {
        standUpTo(reading.second);
        if (all.size() == 0 || all.seconds.back() < reading.second) {
            put(all, reading);
            ++counts.added;
        } else if (keptAt(all, all.size() - 1) == reading) {
            ++counts.alreadyThere;
        } else {
            ++counts.different;
        }
    }
    standUpTo(INT64_MAX);
    return all;
}

constexpr std::string_view upsertMonth = R"(
    INSERT INTO reading_month (place_id, month, readings, first_s, last_s, checksum, packed)
    VALUES (?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (place_id, month) DO UPDATE SET readings = excluded.readings, first_s = excluded.first_s,
        last_s = excluded.last_s, checksum = excluded.checksum, packed = excluded.packed)";

/// Adds the readings of one month to those of a place.
Result<void> addMonth(
    Database& database, const PlaceId& place, std::span<const Kept> fresh, ReadingsAdded& counts)
{
    const std::string key = readingsMonthOf(fresh.front().second);
    const auto row = database.first(
        "SELECT packed FROM reading_month WHERE place_id = ? AND month = ?",
        [](Row& found) { return found.any().toByteArray(); }, place, key);
    if (!row)
        return tl::unexpected(row.error());
    ReadingColumns there;
    if (*row && !unpack(**row, there))
        return tl::unexpected(damagedReadings(database, place, key));
    const std::int64_t before = counts.added;
    const ReadingColumns all = merged(there, fresh, counts);
    if (counts.added == before)
        return {};
    const QByteArray bytes = packed(all);
    const auto done = database.run(upsertMonth, place, key, static_cast<std::int64_t>(all.size()),
        all.seconds.front(), all.seconds.back(), checksumOf(bytes), QVariant(bytes));
    return done ? Result<void> {} : tl::unexpected(done.error());
}

/// Takes the place's readings for this act, so that two tablets do not write one month over each other.
Result<void> holdReadings(Database& database, const PlaceId& place)
{
    const auto held = database.run("UPDATE place SET readings_mark = readings_mark WHERE id = ?", place);
    if (!held)
        return tl::unexpected(held.error());
    if (*held == 0)
        return fail(ErrorCode::NotFound, "There is no such place any more; choose another.");
    return {};
}

} // namespace

std::string readingsMonthOf(std::int64_t second)
{
    return formatDate(Date { monthOf(second) / std::chrono::day { 1 } }).substr(0, 7);
}

Error damagedReadings(Database& database, const PlaceId& place, const std::string& month)
{
    const auto name
        = database.first("SELECT name FROM place WHERE id = ?", [](Row& row) { return row.text(); }, place);
    return { ErrorCode::StoreDamaged,
        "The readings of " + (name && *name ? inQuotes(**name) : std::string("a place")) + " for " + month
            + " are damaged; restore a backup from before, or import them again into another place." };
}

Result<ReadingsAdded> Store::addReadings(const PlaceId& place, std::span<const Reading> readings)
{
    const auto batch = batchOf(readings);
    if (!batch)
        return tl::unexpected(batch.error());
    ReadingsAdded counts;
    const auto done = m_database->write([&]() -> Result<void> {
        counts = {};
        if (auto held = holdReadings(*m_database, place); !held)
            return held;
        for (auto begin = batch->begin(); begin != batch->end();) {
            const auto end = std::ranges::lower_bound(
                begin, batch->end(), endOfMonth(monthOf(begin->second)), {}, &Kept::second);
            if (auto added = addMonth(*m_database, place, { begin, end }, counts); !added)
                return added;
            begin = end;
        }
        if (counts.added == 0)
            return {};
        const auto mark = static_cast<std::int64_t>(QRandomGenerator::global()->generate64() >> 1U);
        const auto marked
            = m_database->run("UPDATE place SET readings_mark = ? WHERE id = ?", mark | 1, place);
        return marked ? Result<void> {} : tl::unexpected(marked.error());
    });
    if (!done)
        return tl::unexpected(done.error());
    return counts;
}

Result<Trace> Store::readings(const PlaceId& place, std::optional<Moment> since) const
{
    const std::string from = since && *since > earliest
        ? readingsMonthOf(std::chrono::floor<std::chrono::seconds>(*since).time_since_epoch().count())
        : std::string();
    Trace trace;
    const auto read = readTogether([&]() -> Result<void> {
        trace = {};
        const auto count = m_database->number(
            "SELECT SUM(readings) FROM reading_month WHERE place_id = ? AND month >= ?", place, from);
        if (!count)
            return tl::unexpected(count.error());
        // And a month of those to come, so that the next reading does not move them all.
        trace.reserve(static_cast<std::size_t>(*count) + readingsOfAMonth);
        return m_database->visit(
            "SELECT month, packed FROM reading_month WHERE place_id = ? AND month >= ? ORDER BY month",
            [&](Row& row) -> Result<void> {
                const std::string month = row.text();
                if (!unpack(row.any().toByteArray(), trace))
                    return tl::unexpected(damagedReadings(*m_database, place, month));
                return {};
            },
            place, from);
    });
    if (!read)
        return tl::unexpected(read.error());
    return trace;
}

Result<std::vector<ReadingsMonth>> Store::readingsMonths(const PlaceId& place) const
{
    return m_database->list(
        "SELECT month, readings, first_s, last_s, checksum FROM reading_month WHERE place_id = ? ORDER BY "
        "month",
        [](Row& row) {
            ReadingsMonth month;
            month.first = parseDate(row.text() + "-01").value_or(Date {});
            month.readings = row.integer();
            month.from = Moment { std::chrono::seconds { row.integer() } };
            month.to = Moment { std::chrono::seconds { row.integer() } };
            month.checksum = row.integer();
            return month;
        },
        place);
}

} // namespace gw
