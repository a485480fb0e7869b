#include "shop/stock.h"

#include <algorithm>

#include "codes/ownlabel.h"

namespace gw {

namespace {

std::optional<Moment> decantedAt(const ContainerRecord& child, std::span<const Entry> entries)
{
    for (const Entry& entry : entries) {
        if (entry.kind == EntryKind::Decanted && entry.deltaMilli > 0 && entry.container == child.id)
            return entry.at;
    }
    return std::nullopt;
}

} // namespace

namespace {

/// How full it is from now on, where that differs from what was before.
void addFilling(const ContainerRecord& container, Amount left, Moment at, std::vector<Filling>& fillings)
{
    if (left.milli <= 0)
        return;
    const Filling now { at, levelOf(left, container.capacity), container.capacity,
        vesselOfWord(container.vessel) };
    const Filling* last = fillings.empty() ? nullptr : &fillings.back();
    if (!last || last->level != now.level || last->capacity != now.capacity || last->vessel != now.vessel)
        fillings.push_back(now);
}

} // namespace

bool makesContainer(const Entry& entry)
{
    const bool fills = entry.kind == EntryKind::Decanted || entry.kind == EntryKind::Mixed;
    return entry.kind == EntryKind::Arrived || (fills && entry.deltaMilli > 0);
}

std::unordered_set<EntryId> reversedAmong(std::span<const Entry> entries)
{
    std::unordered_set<EntryId> reversed;
    for (const Entry& entry : entries) {
        if (entry.reverses)
            reversed.insert(*entry.reverses);
    }
    return reversed;
}

LotHolds holdsAmong(std::span<const Entry> entries, const std::unordered_set<EntryId>& reversed)
{
    std::vector<const Entry*> ofLots;
    for (const Entry& entry : entries) {
        if ((entry.kind == EntryKind::Held || entry.kind == EntryKind::Released) && entry.lotMaterial
            && !reversed.contains(entry.id))
            ofLots.push_back(&entry);
    }
    std::stable_sort(ofLots.begin(), ofLots.end(), [](const Entry* a, const Entry* b) {
        return std::pair(a->at, a->recorded) < std::pair(b->at, b->recorded);
    });

    LotHolds holds;
    for (const Entry* entry : ofLots) {
        const auto lot = std::pair(*entry->lotMaterial, entry->lot);
        if (entry->kind == EntryKind::Held)
            holds.insert_or_assign(lot, Hold { entry->at, entry->note });
        else
            holds.erase(lot);
    }
    return holds;
}

StockState foldEntries(const ContainerRecord& container, std::span<const Entry> entries,
    const std::unordered_set<EntryId>& reversed, const LotHolds& holds, const StockState* parent)
{
    StockState state;
    state.left = Amount { 0, container.capacity.dimension };
    History& history = state.history;
    if (parent) {
        history = parent->history;
        history.hold.reset();
        history.retired.reset();
    }
    history.made = container.made;
    history.printed = container.printed;
    history.printedIsUseBy = container.printedIsUseBy;
    history.foundUndated = container.foundUndated;

    std::vector<const Entry*> ordered;
    ordered.reserve(entries.size());
    for (const Entry& entry : entries)
        ordered.push_back(&entry);
    std::stable_sort(ordered.begin(), ordered.end(), [](const Entry* a, const Entry* b) {
        return std::tuple(a->at, !makesContainer(*a), a->recorded)
            < std::tuple(b->at, !makesContainer(*b), b->recorded);
    });

    const ActId* arrivedIn = nullptr;
    // Of entries with one moment, what makes the container comes first.
    for (const Entry* entry : ordered) {
        if (entry->container != container.id)
            continue;
        state.left.milli += entry->deltaMilli;
        if (entry->deltaMilli != 0)
            addFilling(container, state.left, entry->at, history.fillings);
        if (reversed.contains(entry->id))
            continue;
        switch (entry->kind) {
        case EntryKind::Arrived:
            state.arrived = entry->at;
            history.arrived = entry->at;
            arrivedIn = &entry->act;
            break;
        case EntryKind::Decanted:
        case EntryKind::Mixed:
            // What is filled here, by pouring over or by mixing, is open from then on at the latest.
            if (entry->deltaMilli > 0) {
                state.arrived = entry->at;
                if (!history.opened)
                    history.opened = entry->at;
                if (!parent)
                    history.arrived = entry->at;
            }
            break;
        case EntryKind::Opened:
            if (!history.opened || entry->at < *history.opened)
                history.opened = entry->at;
            // Opened in the act and the moment that booked it in: it was met open, since when nobody knows.
            history.foundOpen = history.foundOpen
                || (arrivedIn && entry->act == *arrivedIn && entry->at == history.arrived);
            break;
        case EntryKind::Tested:
            history.tests.push_back(
                { entry->at, entry->passed.value_or(false), entry->woodFailurePercent, entry->grainy });
            break;
        case EntryKind::Retired:
            history.retired = entry->at;
            break;
        case EntryKind::Used:
        case EntryKind::Counted:
        case EntryKind::Moved:
        case EntryKind::Held:
        case EntryKind::Released:
        case EntryKind::Reversed:
            break;
        }
        if (entry->place) {
            state.place = *entry->place;
            history.stays.push_back({ *entry->place, entry->at });
        }
    }

    if (!container.lot.empty()) {
        const auto hold = holds.find(std::pair(container.material, container.lot));
        if (hold != holds.end())
            history.hold = hold->second;
    }
    return state;
}

Result<StockState> stateOf(const Shop& shop, const ContainerRecord& container, Moment asOf)
{
    auto entries = shop.store().entriesOf(container.id, asOf);
    if (!entries)
        return tl::unexpected(entries.error());
    const auto reversed = reversedAmong(*entries);
    const auto holds = holdsAmong(*entries, reversed);
    if (container.parent) {
        auto parent = shop.store().container(*container.parent);
        if (!parent)
            return tl::unexpected(parent.error());
        const auto when = decantedAt(container, *entries);
        if (*parent && when) {
            auto parentState = stateOf(shop, **parent, *when);
            if (!parentState)
                return parentState;
            return foldEntries(container, *entries, reversed, holds, &*parentState);
        }
    }
    return foldEntries(container, *entries, reversed, holds, nullptr);
}

Result<std::vector<Standing>> standingsAsOf(const Shop& shop, Moment asOf)
{
    auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    auto entries = shop.store().entriesUpTo(asOf);
    if (!entries)
        return tl::unexpected(entries.error());

    const auto reversed = reversedAmong(*entries);
    const auto holds = holdsAmong(*entries, reversed);

    // The store gives them by container: each container's entries are one run.
    std::unordered_map<ContainerId, std::span<const Entry>> runs;
    runs.reserve(containers->size());
    const std::span<const Entry> all(*entries);
    for (std::size_t i = 0; i < all.size();) {
        std::size_t end = i + 1;
        while (end < all.size() && all[end].container == all[i].container)
            ++end;
        if (all[i].container)
            runs.emplace(*all[i].container, all.subspan(i, end - i));
        i = end;
    }

    std::vector<Standing> standings;
    standings.reserve(containers->size());
    for (auto& container : *containers) {
        const auto run = runs.find(container.id);
        if (run == runs.end())
            continue;
        Result<StockState> state = container.parent
            ? stateOf(shop, container, asOf)
            : Result<StockState>(foldEntries(container, run->second, reversed, holds, nullptr));
        if (!state)
            return tl::unexpected(state.error());
        if (state->arrived)
            standings.push_back({ std::move(container), std::move(*state) });
    }
    return standings;
}

Result<ContainerRecord> findContainer(const Shop& shop, const std::string& idOrLabel)
{
    const auto label = parseOwnLabel(idOrLabel);
    auto found
        = label ? shop.store().containerByLabel(*label) : shop.store().container(ContainerId { idOrLabel });
    if (!found)
        return tl::unexpected(found.error());
    if (*found)
        return std::move(**found);
    if (!label) {
        found = shop.store().containerByLabel(idOrLabel);
        if (!found)
            return tl::unexpected(found.error());
        if (*found)
            return std::move(**found);
    }
    return fail(ErrorCode::NotFound,
        "There is no container \"" + idOrLabel
            + "\" in this shop; look for it on the shelf or scan its label.");
}

Result<Standing> standingOf(const Shop& shop, const std::string& idOrLabel, Moment asOf)
{
    auto container = findContainer(shop, idOrLabel);
    if (!container)
        return tl::unexpected(container.error());
    auto state = stateOf(shop, *container, asOf);
    if (!state)
        return tl::unexpected(state.error());
    if (!state->arrived)
        return fail(ErrorCode::NotFound,
            container->label + " was not on the shelf on " + spokenDate(dateOf(asOf))
                + ", or its booking-in was undone.");
    return Standing { std::move(*container), std::move(*state) };
}

} // namespace gw
