#include <algorithm>

#include "gluing/sentences.h"
#include "shop/actbuilder.h"
#include "shop/batch.h"
#include "shop/batchpot.h"

namespace gw {

namespace {

bool isOfHeat(BatchNoteKind kind)
{
    switch (kind) {
    case BatchNoteKind::Soaked:
    case BatchNoteKind::HeatOn:
    case BatchNoteKind::HeatRead:
    case BatchNoteKind::HeatOff:
    case BatchNoteKind::ToppedUp:
    case BatchNoteKind::Chilled:
    case BatchNoteKind::Frozen:
        return true;
    default:
        return false;
    }
}

Result<void> canBeSaid(const BatchRecord& batch, const BatchNoteAsked& asked)
{
    const auto bad = [](const char* sentence) { return fail(ErrorCode::BadInput, sentence); };
    if (asked.kind == BatchNoteKind::Mixed || asked.kind == BatchNoteKind::Reversed)
        return bad("A batch is mixed once, and undone by undoing; note something else of it.");
    if (isOfHeat(asked.kind) && !isHotGlue(batch.recipe))
        return fail(ErrorCode::BadInput,
            "Soaking, heat and cold are noted of hot glue, not of " + inSentence(batch.name) + ".");
    if (asked.kind == BatchNoteKind::HeatRead && !asked.temperature)
        return bad("Say what the thermometer in the glue reads, such as 61C.");
    if (asked.kind == BatchNoteKind::Weighed && !asked.weight)
        return bad("Say what vessel and glue weigh together, such as 312g.");
    if (asked.kind == BatchNoteKind::Used && (!asked.amount || asked.amount->milli <= 0))
        return bad("Say how much of it was used, over zero, such as 20g; or note that it is used up.");
    if (asked.kind == BatchNoteKind::Remark && asked.text.empty())
        return bad("Say what is to be noted.");
    if (asked.weight && asked.weight->dimension != Dimension::Mass)
        return bad("Vessel and glue are weighed together: give a mass such as 312g.");
    return {};
}

/// Whether it may stand after what was noted before.
Result<void> mayFollow(const BatchRecord& batch, std::span<const BatchNote> standing, Moment at)
{
    if (standing.empty() || standing.front().kind != BatchNoteKind::Mixed)
        return fail(ErrorCode::Refused,
            "The mixing of " + batch.label + " was undone; there is no such batch any more.");
    if (const BatchNote* end = endAmong(standing))
        return fail(ErrorCode::Refused,
            batch.label + (end->kind == BatchNoteKind::UsedUp ? " was used up on " : " was thrown away on ")
                + spokenDate(dateOf(end->at)) + "; undo that first if there is some left.");
    const BatchNote& last = standing.back();
    if (at < last.at)
        return fail(ErrorCode::Refused,
            "This lies before what was noted last of " + batch.label + " (" + formatMoment(last.at)
                + "); nothing was noted. Look at the clock of the tablet, or give a later time.");
    return {};
}

Result<void> heatFits(const PotState& pot, const BatchRecord& batch, BatchNoteKind kind)
{
    const bool wantsHeat = kind == BatchNoteKind::HeatOff || kind == BatchNoteKind::HeatRead;
    if (wantsHeat && !pot.heatSince)
        return fail(
            ErrorCode::Refused, batch.label + " is not on the heat; note first when it was put there.");
    if (kind == BatchNoteKind::HeatOn && pot.heatSince)
        return fail(ErrorCode::Refused,
            batch.label + " is on the heat already; note what the thermometer reads instead.");
    if ((kind == BatchNoteKind::Chilled && pot.stands == PotStands::Cold)
        || (kind == BatchNoteKind::Frozen && pot.stands == PotStands::Frozen))
        return fail(ErrorCode::Refused, batch.label + " is there already.");
    return {};
}

/// What goes out of the batch with a note.
Result<std::int64_t> deltaOf(
    const ActBuilder& act, const BatchRecord& batch, Amount left, const BatchNoteAsked& asked)
{
    if (asked.kind == BatchNoteKind::UsedUp || asked.kind == BatchNoteKind::ThrownAway)
        return -left.milli;
    if (asked.kind != BatchNoteKind::Used)
        return 0;
    if (asked.amount->dimension != left.dimension)
        return fail(ErrorCode::BadInput,
            batch.label + " is counted in " + std::string(baseUnit(left.dimension)) + ", not as "
                + act.say(*asked.amount) + ".");
    if (asked.amount->milli > left.milli)
        return fail(ErrorCode::Refused,
            "There is only " + act.say(left) + " in " + batch.label + ", not " + act.say(*asked.amount)
                + "; note it used up if it reached all the same.");
    return -asked.amount->milli;
}

} // namespace

Result<std::string> addBatchNote(ActBuilder& act, const std::string& idOrLabel, const BatchNoteAsked& asked)
{
    const auto batch = act.takeBatch(idOrLabel);
    if (!batch)
        return tl::unexpected(batch.error());
    if (auto can = canBeSaid(*batch, asked); !can)
        return tl::unexpected(can.error());
    const auto notes = act.shop().store().batchNotes(batch->id, Moment::max());
    if (!notes)
        return tl::unexpected(notes.error());
    auto standing = standingNotes(*notes);
    if (auto may = mayFollow(*batch, standing, act.time().at); !may)
        return tl::unexpected(may.error());
    const auto recipe = findRecipe(act.shop(), batch->recipe);
    if (!recipe)
        return tl::unexpected(recipe.error());
    const auto pot = potStateOf(*batch, standing, *recipe, act.time().at);
    if (!pot)
        return tl::unexpected(pot.error());
    if (auto fits = heatFits(*pot, *batch, asked.kind); !fits)
        return tl::unexpected(fits.error());
    const auto delta = deltaOf(act, *batch, leftOf(*batch, *notes), asked);
    if (!delta)
        return tl::unexpected(delta.error());

    BatchNote& note = act.addNote(asked.kind, batch->id);
    note.deltaMilli = *delta;
    note.temperature = asked.temperature;
    if (asked.weight)
        note.weightMilli = asked.weight->milli;
    note.job = asked.job;
    note.note = asked.text;
    note.who = asked.who;
    // The model refuses a temperature or a weight that glue cannot have.
    standing.push_back(note);
    if (const auto after = potStateOf(*batch, standing, *recipe, act.time().at); !after)
        return tl::unexpected(after.error());
    return batch->name + ": " + lowerFirst(noteText(note, batch->amount.dimension, act.shop().units())) + ".";
}

Result<ActDone> noteBatch(Shop& shop, const std::string& idOrLabel, const BatchNoteAsked& asked, ActTime time)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) { return addBatchNote(act, idOrLabel, asked); });
}

} // namespace gw
