#include "shop/acts.h"

#include <set>

#include "shop/actbuilder.h"

namespace gw {

namespace {

/// Held and released alike: an entry for each material of the lot whose hold changes.
Result<ActDone> changeHold(
    Shop& shop, EntryKind kind, const std::string& lot, const std::string& why, ActTime time)
{
    if (lot.empty())
        return fail(ErrorCode::BadInput, "Say which lot: the batch number printed on the label.");
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto containers = shop.store().containers();
        if (!containers)
            return tl::unexpected(containers.error());
        auto entries = shop.store().entriesUpTo(time.now);
        if (!entries)
            return tl::unexpected(entries.error());
        const auto holds = holdsAmong(*entries, reversedAmong(*entries));

        std::set<MaterialId> ofLot;
        for (const ContainerRecord& container : *containers) {
            if (container.lot == lot)
                ofLot.insert(container.material);
        }
        if (ofLot.empty())
            return fail(ErrorCode::NotFound,
                "No container here has the lot \"" + lot + "\"; look at the label again.");

        const bool hold = kind == EntryKind::Held;
        std::string names;
        for (const MaterialId& material : ofLot) {
            if (holds.contains(std::pair(material, lot)) == hold)
                continue;
            Entry& entry = act.add(kind, std::nullopt);
            entry.lotMaterial = material;
            entry.lot = lot;
            entry.note = why;
            const auto* record = act.catalogue().material(material);
            names += (names.empty() ? "" : ", ") + (record ? record->name : lot);
        }
        if (names.empty())
            return fail(
                ErrorCode::Refused, "Lot " + lot + (hold ? " is on hold already." : " is not on hold."));
        return (hold ? "Lot " + lot + " is on hold: " : "Lot " + lot + " is released: ") + names + ".";
    });
}

} // namespace

Result<ActDone> holdLot(Shop& shop, const std::string& lot, const std::string& why, ActTime time)
{
    return changeHold(shop, EntryKind::Held, lot, why, time);
}

Result<ActDone> releaseLot(Shop& shop, const std::string& lot, ActTime time)
{
    return changeHold(shop, EntryKind::Released, lot, {}, time);
}

} // namespace gw
