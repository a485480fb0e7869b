#include "store/rows.h"

namespace gw {

namespace {

constexpr std::string_view upsertPlace = R"(
    INSERT INTO place (id, name, assumed_low, assumed_high, note) VALUES (?, ?, ?, ?, ?)
    ON CONFLICT (id) DO UPDATE SET name = excluded.name, assumed_low = excluded.assumed_low,
        assumed_high = excluded.assumed_high, note = excluded.note)";

PlaceRecord readPlace(Row& row)
{
    PlaceRecord record;
    record.id = row.id<PlaceId>();
    record.name = row.text();
    const auto low = row.realOrNone(), high = row.realOrNone();
    if (low && high)
        record.assumed.year = Range<Celsius> { Celsius { *low }, Celsius { *high } };
    record.note = row.text();
    record.readingsMark = row.integer();
    return record;
}

struct QuarterRange {
    PlaceId place;
    std::size_t quarter = 0;
    Range<Celsius> range;
};

QuarterRange readQuarter(Row& row)
{
    QuarterRange read;
    read.place = row.id<PlaceId>();
    read.quarter = static_cast<std::size_t>(row.integer()) % 4;
    read.range.low.value = row.realOrNone().value_or(0);
    read.range.high.value = row.realOrNone().value_or(0);
    return read;
}

std::pair<PlaceId, Follow> readFollow(Row& row)
{
    auto place = row.id<PlaceId>();
    Follow follow;
    follow.place = row.id<PlaceId>();
    follow.warmer = row.realOrNone().value_or(0);
    follow.damped = row.realOrNone().value_or(0);
    return { std::move(place), std::move(follow) };
}

PlaceRecord* find(std::vector<PlaceRecord>& places, const PlaceId& id)
{
    const auto found = std::ranges::find(places, id, &PlaceRecord::id);
    return found == places.end() ? nullptr : &*found;
}

} // namespace

Result<void> Store::savePlace(const PlaceRecord& place)
{
    return m_database->write([&]() -> Result<void> {
        const auto& year = place.assumed.year;
        auto done = m_database->run(upsertPlace, place.id, place.name,
            year ? std::optional(year->low.value) : std::nullopt,
            year ? std::optional(year->high.value) : std::nullopt, place.note);
        if (done)
            done = m_database->run("DELETE FROM place_range WHERE place_id = ?", place.id);
        for (std::size_t i = 0; done && i < place.assumed.quarters.size(); ++i) {
            if (const auto& range = place.assumed.quarters[i])
                done = m_database->run("INSERT INTO place_range VALUES (?, ?, ?, ?)", place.id,
                    static_cast<std::int64_t>(i), range->low.value, range->high.value);
        }
        if (done)
            done = m_database->run("DELETE FROM place_follow WHERE place_id = ?", place.id);
        if (done && place.follows)
            done = m_database->run("INSERT INTO place_follow VALUES (?, ?, ?, ?)", place.id,
                place.follows->place, place.follows->warmer, place.follows->damped);
        return done ? Result<void> {} : tl::unexpected(done.error());
    });
}

Result<std::vector<PlaceRecord>> Store::places() const
{
    std::vector<PlaceRecord> out;
    const auto read = readTogether([&]() -> Result<void> {
        auto places = m_database->list(
            "SELECT id, name, assumed_low, assumed_high, note, readings_mark FROM place", readPlace);
        if (!places)
            return tl::unexpected(places.error());
        const auto quarters
            = m_database->list("SELECT place_id, quarter, low, high FROM place_range", readQuarter);
        if (!quarters)
            return tl::unexpected(quarters.error());
        auto follows
            = m_database->list("SELECT place_id, follows_id, warmer, damped FROM place_follow", readFollow);
        if (!follows)
            return tl::unexpected(follows.error());
        for (const QuarterRange& quarter : *quarters) {
            if (PlaceRecord* place = find(*places, quarter.place))
                place->assumed.quarters[quarter.quarter] = quarter.range;
        }
        for (auto& [id, follow] : *follows) {
            if (PlaceRecord* place = find(*places, id))
                place->follows = std::move(follow);
        }
        out = std::move(*places);
        return {};
    });
    if (!read)
        return tl::unexpected(read.error());
    sortByName(out);
    return out;
}

} // namespace gw
