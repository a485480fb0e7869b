#include "shop/acts.h"

#include <algorithm>

#include "shop/actbuilder.h"
#include "shop/entrylines.h"
#include "shop/undobatch.h"

namespace gw {

namespace {

/// The act an entry or a note belongs to, which may be undone by its kind.
Result<ActId> actOf(const Shop& shop, const EntryId& id)
{
    const auto entry = shop.store().entry(id);
    if (!entry)
        return tl::unexpected(entry.error());
    const auto note = shop.store().batchNote(id);
    if (!note)
        return tl::unexpected(note.error());
    if (!*entry && !*note)
        return fail(ErrorCode::NotFound, "There is no entry \"" + id.text + "\" in the ledger.");
    if (*entry ? (*entry)->kind == EntryKind::Reversed : (*note)->kind == BatchNoteKind::Reversed)
        return fail(ErrorCode::Refused, "That entry is itself an undoing; do the act again instead.");
    return *entry ? (*entry)->act : (*note)->act;
}

Result<Dimension> dimensionOf(const Shop& shop, const Entry& entry)
{
    if (!entry.container)
        return Dimension::Mass;
    auto container = shop.store().container(*entry.container);
    if (!container)
        return tl::unexpected(container.error());
    return *container ? (*container)->capacity.dimension : Dimension::Mass;
}

/// Why an act's entry on one container may not be taken back yet; empty when it may.
Result<std::string> standsInTheWay(
    const Shop& shop, const Entry& entry, const ActId& act, Dimension dimension, const Catalogue& catalogue)
{
    if (!entry.container)
        return std::string();
    auto story = shop.store().entriesOf(*entry.container, Moment::max());
    if (!story)
        return tl::unexpected(story.error());
    const auto reversed = reversedAmong(*story);

    const bool makes
        = entry.kind == EntryKind::Arrived || (entry.kind == EntryKind::Decanted && entry.deltaMilli > 0);
    std::int64_t left = 0;
    for (const Entry& other : *story) {
        if (other.container == entry.container)
            left += other.deltaMilli;
        if (other.act == act || other.kind == EntryKind::Reversed || reversed.contains(other.id)
            || other.container != entry.container)
            continue;
        // What was made cannot vanish under what was done with it; what was poured out proves it was open.
        const bool poursOut = other.kind == EntryKind::Decanted || other.kind == EntryKind::Mixed;
        const bool needsOpen = other.kind == EntryKind::Used || (poursOut && other.deltaMilli < 0);
        if (makes || (entry.kind == EntryKind::Opened && needsOpen && other.at >= entry.at))
            return "Undo what was done with it afterwards first: \""
                + entryText(other, dimension, catalogue, shop.units()) + "\" of "
                + spokenDate(dateOf(other.at)) + ".";
    }
    if (left - entry.deltaMilli < 0)
        return std::string(
            "Undoing this would leave less than nothing in the container; undo the later uses first.");
    return std::string();
}

/// What was kept of a glue-up says that its uses were taken back.
Result<void> markGlueUp(ActBuilder& act, const ActId& undone)
{
    Store& store = act.shop().store();
    const auto glueUp = store.glueUpOfAct(undone);
    if (!glueUp)
        return tl::unexpected(glueUp.error());
    return *glueUp ? store.undoGlueUp(**glueUp, act.id(), act.time().now, act.shop().device())
                   : Result<void> {};
}

} // namespace

Result<ActDone> undo(Shop& shop, const EntryId& entryId, Moment now)
{
    return ActBuilder::run(shop, { now, now }, [&](ActBuilder& act) -> Result<std::string> {
        auto actId = actOf(shop, entryId);
        if (!actId)
            return tl::unexpected(actId.error());
        auto ofAct = shop.store().entriesOfAct(*actId);
        if (!ofAct)
            return tl::unexpected(ofAct.error());
        // The notes first: a batch that was used since says so, rather than its containers.
        auto undoneNote = undoNotes(act, *actId, entryId);
        if (!undoneNote)
            return undoneNote;
        std::string said = std::move(*undoneNote);
        for (const Entry& original : *ofAct) {
            if (original.container) {
                if (auto locked = shop.store().lockContainer(*original.container); !locked)
                    return tl::unexpected(locked.error());
            }
            auto later = original.container ? shop.store().entriesOf(*original.container, Moment::max())
                                            : shop.store().entriesUpTo(Moment::max());
            if (!later)
                return tl::unexpected(later.error());
            if (reversedAmong(*later).contains(original.id))
                return fail(ErrorCode::Refused, "That was undone before.");
            auto dimension = dimensionOf(shop, original);
            if (!dimension)
                return tl::unexpected(dimension.error());
            auto obstacle = standsInTheWay(shop, original, original.act, *dimension, act.catalogue());
            if (!obstacle)
                return tl::unexpected(obstacle.error());
            if (!obstacle->empty())
                return fail(ErrorCode::Refused, *obstacle);

            Entry& reversal = act.add(EntryKind::Reversed, original.container);
            reversal.deltaMilli = -original.deltaMilli;
            reversal.reverses = original.id;
            reversal.lotMaterial = original.lotMaterial;
            reversal.lot = original.lot;
            // An entry may be written for an earlier time than now, never the other way round.
            if (reversal.at < original.at)
                reversal.at = original.at;
            if (said.empty() || original.id == entryId)
                said = "Undone: " + entryText(original, *dimension, act.catalogue(), shop.units()) + ".";
        }
        if (auto marked = markGlueUp(act, *actId); !marked)
            return tl::unexpected(marked.error());
        return said;
    });
}

} // namespace gw
