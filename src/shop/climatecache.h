#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "ageing/watched.h"
#include "store/store.h"

namespace gw {

/// The climate of a shop, kept in memory between questions. Readings are read when a place's mark in the
/// store says that they changed; where they only grew at the end, just the new ones, so that what was worked
/// out before stands.
class ClimateCache {
public:
    /// The climate of these places, as the catalogue has them now. It stands until the next call. Errors:
    /// those of Store::readings(). rates: those that will be asked for, best worked out in one pass; called
    /// only when the climate is made anew.
    Result<const WatchedClimate*> of(const Store& store, const std::map<PlaceId, PlaceRecord>& places,
        const std::function<std::vector<Rate>()>& rates);

private:
    /// What one place was when its readings were last read.
    struct Known {
        AssumedRanges assumed;
        std::optional<Follow> follows;
        std::int64_t mark = 0;
        std::vector<ReadingsMonth> months;
    };

    bool samePlaces(const std::map<PlaceId, PlaceRecord>& places) const;
    Result<bool> grow(const Store& store, const PlaceRecord& place);
    Result<void> rebuild(
        const Store& store, const std::map<PlaceId, PlaceRecord>& places, const std::vector<Rate>& rates);

    std::map<PlaceId, Known> m_known;
    std::unique_ptr<WatchedClimate> m_climate;
};

} // namespace gw
