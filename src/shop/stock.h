#pragma once

#include <map>
#include <span>
#include <unordered_map>
#include <unordered_set>
#include <utility>
#include <vector>

#include "ageing/history.h"
#include "shop/shop.h"

namespace gw {

/// What the ledger says of one container up to some moment.
struct StockState {
    Amount left;
    PlaceId place;
    std::optional<Moment> arrived;
    History history;
};

/// True for the entry a container begins with: its arrival, or its filling by decanting or mixing.
bool makesContainer(const Entry& entry);

/// The entry ids that later entries took back.
std::unordered_set<EntryId> reversedAmong(std::span<const Entry> entries);

/// The holds in force, by material and lot.
using LotHolds = std::map<std::pair<MaterialId, std::string>, Hold>;
LotHolds holdsAmong(std::span<const Entry> entries, const std::unordered_set<EntryId>& reversed);

/// Folds one container's entries (in time order) into its state. parent is the state of what it was decanted
/// from, as of the decanting; null when it was not.
StockState foldEntries(const ContainerRecord& container, std::span<const Entry> entries,
    const std::unordered_set<EntryId>& reversed, const LotHolds& holds, const StockState* parent);

/// The state of one container, its parents read as needed.
Result<StockState> stateOf(const Shop& shop, const ContainerRecord& container, Moment asOf);

/// The states of all containers that had arrived by a moment, in one pass over the ledger.
struct Standing {
    ContainerRecord container;
    StockState state;
};
Result<std::vector<Standing>> standingsAsOf(const Shop& shop, Moment asOf);
/// One of them by its id or label code. Errors: NotFound, also when it was not on the shelf then.
Result<Standing> standingOf(const Shop& shop, const std::string& idOrLabel, Moment asOf);

/// The container with an id or one of our label codes, however it was typed. Errors: NotFound.
Result<ContainerRecord> findContainer(const Shop& shop, const std::string& idOrLabel);

} // namespace gw
