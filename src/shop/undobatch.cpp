#include "shop/undobatch.h"

#include <algorithm>

#include "gluing/sentences.h"
#include "shop/batch.h"
#include "shop/batchpot.h"

namespace gw {

namespace {

/// Why a note may not be taken back yet; empty when it may.
std::string standsInTheWay(
    const BatchNote& note, const BatchRecord& batch, const std::vector<BatchNote>& story, UnitSystem units)
{
    const auto standing = standingNotes(story);
    if (std::ranges::find(standing, note.id, &BatchNote::id) == standing.end())
        return "That was undone before.";
    const auto later = std::ranges::find_if(standing,
        [&](const BatchNote& other) { return other.act != note.act && other.kind != BatchNoteKind::Mixed; });
    if (note.kind == BatchNoteKind::Mixed && later != standing.end())
        return "Undo what was noted of " + batch.label + " afterwards first: \""
            + noteText(*later, batch.amount.dimension, units) + "\" of " + spokenDate(dateOf(later->at))
            + ".";
    if (leftOf(batch, story).milli - note.deltaMilli < 0)
        return "Undoing this would leave less than nothing in " + batch.label
            + "; undo the later uses first.";
    return {};
}

} // namespace

Result<std::string> undoNotes(ActBuilder& act, const ActId& undone, const EntryId& named)
{
    const auto notes = act.shop().store().batchNotesOfAct(undone);
    if (!notes)
        return tl::unexpected(notes.error());
    std::string said;
    for (const BatchNote& note : *notes) {
        const auto batch = act.takeBatch(note.batch.text);
        if (!batch)
            return tl::unexpected(batch.error());
        const auto story = act.shop().store().batchNotes(note.batch, Moment::max());
        if (!story)
            return tl::unexpected(story.error());
        const std::string obstacle = standsInTheWay(note, *batch, *story, act.shop().units());
        if (!obstacle.empty())
            return fail(ErrorCode::Refused, obstacle);
        BatchNote& reversal = act.addNote(BatchNoteKind::Reversed, note.batch);
        reversal.deltaMilli = -note.deltaMilli;
        reversal.reverses = note.id;
        // A note may be written for an earlier time than now, never the other way round.
        reversal.at = std::max(reversal.at, note.at);
        if (note.id == named)
            said = "Undone: " + lowerFirst(noteText(note, batch->amount.dimension, act.shop().units())) + " ("
                + batch->name + ").";
    }
    return said;
}

} // namespace gw
