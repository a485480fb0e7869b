#include "shop/climatecache.h"

#include <algorithm>

namespace gw {

namespace {

struct Read {
    std::vector<ReadingsMonth> months;
    Trace readings;
};

Result<Read> readPlace(const Store& store, const PlaceId& place, std::optional<Moment> since)
{
    Read read;
    const auto done = store.readTogether([&]() -> Result<void> {
        auto months = store.readingsMonths(place);
        if (!months)
            return tl::unexpected(months.error());
        auto readings = store.readings(place, since);
        if (!readings)
            return tl::unexpected(readings.error());
        read = { std::move(*months), std::move(*readings) };
        return {};
    });
    if (!done)
        return tl::unexpected(done.error());
    return read;
}

/// Whether the newer months are the older ones, with readings added at their end at most.
bool mayHaveGrown(const std::vector<ReadingsMonth>& older, const std::vector<ReadingsMonth>& newer)
{
    return !older.empty() && newer.size() >= older.size()
        && std::equal(older.begin(), older.end() - 1, newer.begin())
        && newer[older.size() - 1].first == older.back().first;
}

/// Whether the readings begin with the last `count` of what is in hand; what comes after is new.
bool beginsWithEnd(const Trace& readings, const Trace& inHand, std::size_t count)
{
    if (count > readings.size() || count > inHand.size())
        return false;
    const std::size_t from = inHand.size() - count;
    const auto fresh = readings.hundredths().first(count);
    if (!std::ranges::equal(fresh, inHand.hundredths().last(count)))
        return false;
    std::vector<std::int64_t> times(2 * count);
    readings.times().copy(0, count, times.data());
    inHand.times().copy(from, inHand.size(), times.data() + count);
    const auto middle = times.begin() + static_cast<std::ptrdiff_t>(count);
    return std::equal(times.begin(), middle, middle);
}

} // namespace

bool ClimateCache::samePlaces(const std::map<PlaceId, PlaceRecord>& places) const
{
    return m_climate && places.size() == m_known.size()
        && std::equal(places.begin(), places.end(), m_known.begin(), [](const auto& now, const auto& known) {
               return now.first == known.first && now.second.assumed == known.second.assumed
                   && now.second.follows == known.second.follows;
           });
}

Result<bool> ClimateCache::grow(const Store& store, const PlaceRecord& place)
{
    Known& known = m_known.at(place.id);
    if (known.months.empty())
        return false;
    auto read = readPlace(store, place.id, known.months.back().to);
    if (!read)
        return tl::unexpected(read.error());
    const auto inLastMonth = static_cast<std::size_t>(known.months.back().readings);
    if (!mayHaveGrown(known.months, read->months)
        || !beginsWithEnd(read->readings, m_climate->readings(place.id)->trace(), inLastMonth))
        return false;
    for (std::size_t i = inLastMonth; i < read->readings.size(); ++i)
        m_climate->append(place.id, read->readings.reading(i));
    known.months = std::move(read->months);
    known.mark = place.readingsMark;
    return true;
}

Result<void> ClimateCache::rebuild(
    const Store& store, const std::map<PlaceId, PlaceRecord>& places, const std::vector<Rate>& rates)
{
    std::map<PlaceId, Known> known;
    std::map<PlaceId, WatchedPlace> watched;
    for (const auto& [id, place] : places) {
        Known& now = known[id];
        now = { place.assumed, place.follows, place.readingsMark, {} };
        WatchedPlace& filled = watched[id];
        filled.assumed = place.assumed;
        filled.follows = place.follows;
        const auto before = m_known.find(id);
        if (m_climate && before != m_known.end() && before->second.mark == place.readingsMark) {
            now.months = before->second.months;
            filled.readings = m_climate->readings(id)->trace();
        } else if (place.readingsMark != 0) {
            auto read = readPlace(store, id, {});
            if (!read)
                return tl::unexpected(read.error());
            now.months = std::move(read->months);
            filled.readings = std::move(read->readings);
        }
    }
    m_climate = std::make_unique<WatchedClimate>(std::move(watched), rates);
    m_known = std::move(known);
    return {};
}

Result<const WatchedClimate*> ClimateCache::of(const Store& store,
    const std::map<PlaceId, PlaceRecord>& places, const std::function<std::vector<Rate>()>& rates)
{
    bool stands = samePlaces(places);
    for (const auto& [id, place] : places) {
        if (!stands)
            break;
        if (m_known.at(id).mark == place.readingsMark)
            continue;
        auto grown = grow(store, place);
        if (!grown)
            return tl::unexpected(grown.error());
        stands = *grown;
    }
    if (!stands) {
        if (auto rebuilt = rebuild(store, places, rates()); !rebuilt)
            return tl::unexpected(rebuilt.error());
    }
    return m_climate.get();
}

} // namespace gw
