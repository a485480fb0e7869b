#include <algorithm>
#include <cstdlib>
#include <map>

#include "codes/ownlabel.h"
#include "measure/quoted.h"
#include "shop/batch.h"
#include "shop/batchpot.h"
#include "shop/candidates.h"
#include "shop/shelfitems.h"

namespace gw {

namespace {

/// A sentence with how bad it is.
struct Said {
    Verdict verdict = Verdict::Good;
    std::string text;
};

/// What every batch of one answer is looked at with.
struct Lookers {
    const Shop& shop;
    const Catalogue& catalogue;
    ShelfJudge judge;
    std::map<std::string, Recipe> recipes;
    std::map<JobId, std::string> jobs; ///< names
};

Result<std::map<std::string, Recipe>> recipesById(const Shop& shop)
{
    auto all = recipes(shop);
    if (!all)
        return tl::unexpected(all.error());
    std::map<std::string, Recipe> byId;
    for (Recipe& recipe : *all)
        byId.emplace(recipe.id, std::move(recipe));
    return byId;
}

/// What a container was when it went in, and what came to light of it since: its holds, and a failed test.
Result<std::vector<Said>> saidOfParent(
    Lookers& look, const ContainerRecord& container, const BatchRecord& batch, Moment asOf)
{
    std::vector<Said> said;
    const auto then = stateOf(look.shop, container, batch.made);
    if (!then)
        return tl::unexpected(then.error());
    const Judgement judgement = look.judge.item(container, *then, batch.made).judgement;
    for (const Reason& reason : judgement.reasons) {
        if (reason.verdict != Verdict::Good && reason.code != "lot_on_hold")
            said.push_back({ reason.verdict, "Mixed with " + container.label + ": " + reason.text });
    }
    const auto now = stateOf(look.shop, container, asOf);
    if (!now)
        return tl::unexpected(now.error());
    if (const auto& hold = now->history.hold)
        said.push_back({ Verdict::DoNotUse,
            "The lot of " + container.label + ", which went in, is on hold since "
                + spokenDate(dateOf(hold->since)) + (hold->why.empty() ? "." : ": " + hold->why + ".") });
    for (const BenchTest& test : now->history.tests) {
        if (!test.passed && test.at > batch.made)
            said.push_back({ Verdict::TestFirst,
                container.label + ", which went in, failed its bench test on " + spokenDate(dateOf(test.at))
                    + ": try this batch before it goes on." });
    }
    return said;
}

Result<std::vector<Said>> saidOfParents(Lookers& look, const BatchRecord& batch, Moment asOf)
{
    std::vector<Said> all;
    std::vector<ContainerId> seen;
    for (const BatchPart& part : batch.parts) {
        if (!part.container || std::ranges::find(seen, *part.container) != seen.end())
            continue;
        seen.push_back(*part.container);
        const auto container = look.shop.store().container(*part.container);
        if (!container)
            return tl::unexpected(container.error());
        if (!*container)
            continue;
        auto said = saidOfParent(look, **container, batch, asOf);
        if (!said)
            return said;
        all.insert(all.end(), said->begin(), said->end());
    }
    return all;
}

/// The verdict of the clocks alone. Heat damage is a model that may only colour a warning, so at worst it
/// asks for a test.
Verdict verdictOfClocks(const BatchState& state, Moment asOf)
{
    const PotState& pot = state.pot;
    Verdict verdict = Verdict::Good;
    for (const char* key : { "cup", "working", "keeps" }) {
        if (const PotDue* due = pot.dueFor(key))
            verdict = worst(verdict,
                due->when.high <= asOf      ? Verdict::DoNotUse
                    : due->when.low <= asOf ? Verdict::TestFirst
                                            : Verdict::Good);
    }
    // A cup or a pot of powder glue that says nothing of its time has none that is known.
    if (!state.isHotGlue() && pot.due.empty())
        verdict = worst(verdict, Verdict::NotKnown);
    if (state.isHotGlue()) {
        verdict = worst(verdict,
            pot.spoilage.low >= 1        ? Verdict::DoNotUse
                : pot.spoilage.high >= 1 ? Verdict::TestFirst
                                         : Verdict::Good);
        verdict = worst(verdict,
            pot.band == DoseBand::NotKnown    ? Verdict::NotKnown
                : pot.band == DoseBand::Early ? Verdict::Good
                                              : Verdict::TestFirst);
    }
    return verdict;
}

void judgeState(BatchState& state, std::vector<Said> said, std::span<const BatchNote> standing, Moment asOf)
{
    for (const BatchNote& note : standing) {
        if (note.kind == BatchNoteKind::Spoiled)
            said.push_back({ Verdict::DoNotUse,
                "Found spoiled on " + spokenDate(dateOf(note.at))
                    + ": discard it, whatever the clocks say." });
    }
    const Verdict clocks = verdictOfClocks(state, asOf);
    for (const std::string& text : state.pot.words)
        said.push_back({ clocks, text });
    std::ranges::stable_sort(said, std::ranges::greater {}, &Said::verdict);
    state.verdict = clocks;
    for (const Said& one : said) {
        state.verdict = worst(state.verdict, one.verdict);
        state.words.push_back(one.text);
    }
}

constexpr Days jointsShown { 7 }; // the longest time to full load of any family, and some more

std::vector<BatchJoint> jointsOf(Lookers& look, const FamilyId& id, const BatchRecord& batch,
    std::span<const BatchNote> standing, Moment asOf)
{
    std::vector<BatchJoint> joints;
    const auto family = look.catalogue.families.find(id);
    if (family == look.catalogue.families.end())
        return joints;
    const auto room = batch.value("room_c");
    const std::optional<Celsius> air = room ? std::optional(Celsius { *room }) : std::nullopt;
    for (const BatchNote& note : standing) {
        if (note.kind != BatchNoteKind::Used || daysBetween(note.at, asOf) > jointsShown)
            continue;
        const auto job = note.job ? look.jobs.find(*note.job) : look.jobs.end();
        joints.push_back({ note.id, note.at, job == look.jobs.end() ? std::string() : job->second,
            jointClocks(familyOf(family->second), note.at, air) });
    }
    std::ranges::reverse(joints);
    return joints;
}

Result<BatchState> stateOfBatch(Lookers& look, const BatchRecord& batch, Moment asOf)
{
    const auto notes = look.shop.store().batchNotes(batch.id, asOf);
    if (!notes)
        return tl::unexpected(notes.error());
    const auto recipe = look.recipes.find(batch.recipe);
    if (recipe == look.recipes.end())
        return fail(ErrorCode::StoreDamaged,
            "The store has no recipe " + inQuotes(batch.recipe) + " for the batch " + batch.label
                + "; run verify and restore a backup.");
    BatchState state;
    state.batch = batch;
    state.left = leftOf(batch, *notes);
    const FamilyId family { isHotGlue(batch.recipe) ? "hot_hide" : batch.recipe };
    if (look.catalogue.families.contains(family))
        state.family = family;
    const auto standing = standingNotes(*notes);
    const bool mixed = !standing.empty() && standing.front().kind == BatchNoteKind::Mixed;
    for (auto note = notes->rbegin(); note != notes->rend(); ++note) {
        if (note->kind == BatchNoteKind::Reversed)
            continue;
        const bool stands = std::ranges::find(standing, note->id, &BatchNote::id) != standing.end();
        state.notes.push_back({ note->id, note->kind, note->at,
            noteText(*note, batch.amount.dimension, look.shop.units()), note->who, !stands });
    }
    state.joints = jointsOf(look, state.family, batch, standing, asOf);
    if (batch.place)
        state.placeName = look.catalogue.placeName(*batch.place);
    const BatchNote* end = endAmong(standing);
    state.gone = end || !mixed;
    if (state.gone) {
        state.verdict = Verdict::DoNotUse;
        state.pot.gone = true;
        state.words.push_back(!end ? "Its mixing was undone."
                : end->kind == BatchNoteKind::UsedUp
                ? "It was used up on " + spokenDate(dateOf(end->at)) + "."
                : "It was thrown away on " + spokenDate(dateOf(end->at)) + ".");
        return state;
    }
    auto pot = potStateOf(batch, standing, recipe->second, asOf);
    if (!pot)
        return tl::unexpected(pot.error());
    state.pot = std::move(*pot);
    auto said = saidOfParents(look, batch, asOf);
    if (!said)
        return tl::unexpected(said.error());
    judgeState(state, std::move(*said), standing, asOf);
    return state;
}

/// Runs steps with what batches are looked at with.
template <class Steps>
auto withLookers(const Shop& shop, Steps&& steps) -> decltype(steps(std::declval<Lookers&>()))
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto climate = shop.climate(*catalogue);
    if (!climate)
        return tl::unexpected(climate.error());
    auto byId = recipesById(shop);
    if (!byId)
        return tl::unexpected(byId.error());
    const auto jobs = shop.store().jobs();
    if (!jobs)
        return tl::unexpected(jobs.error());
    Lookers look { shop, *catalogue, ShelfJudge(*catalogue, **climate), std::move(*byId), {} };
    for (const JobRecord& job : *jobs)
        look.jobs.emplace(job.id, job.piece.empty() ? job.name : job.piece);
    return steps(look);
}

} // namespace

bool BatchState::isHotGlue() const { return gw::isHotGlue(batch.recipe); }

Result<std::vector<BatchState>> batchesAsOf(const Shop& shop, Moment asOf, Days goneWithin)
{
    const auto batches = shop.store().batches(asOf, later(asOf, -goneWithin));
    if (!batches)
        return tl::unexpected(batches.error());
    std::vector<BatchState> states;
    if (batches->empty())
        return states;
    return withLookers(shop, [&](Lookers& look) -> Result<std::vector<BatchState>> {
        for (const BatchRecord& batch : *batches) {
            auto state = stateOfBatch(look, batch, asOf);
            if (!state)
                return tl::unexpected(state.error());
            states.push_back(std::move(*state));
        }
        return std::move(states);
    });
}

Result<BatchState> batchAsOf(const Shop& shop, const std::string& idOrLabel, Moment asOf)
{
    const auto batch = findBatch(shop, idOrLabel);
    if (!batch)
        return tl::unexpected(batch.error());
    if (batch->made > asOf)
        return fail(ErrorCode::NotFound,
            batch->label + " was not mixed yet on " + spokenDate(dateOf(asOf)) + "; ask for a later time.");
    return withLookers(shop, [&](Lookers& look) { return stateOfBatch(look, *batch, asOf); });
}

Result<BatchRecord> findBatch(const Shop& shop, const std::string& idOrLabel)
{
    const auto label = parseOwnLabel(idOrLabel);
    auto found = label ? shop.store().batchByLabel(*label) : shop.store().batch(BatchId { idOrLabel });
    if (!found)
        return tl::unexpected(found.error());
    if (*found)
        return std::move(**found);
    return fail(ErrorCode::NotFound,
        "There is no batch " + inQuotes(idOrLabel)
            + " in this shop; look for it among the pots or scan its label.");
}

std::string noteText(const BatchNote& note, Dimension dimension, UnitSystem units)
{
    const std::string amount = formatAmount(Amount { std::abs(note.deltaMilli), dimension }, units);
    std::string text;
    switch (note.kind) {
    case BatchNoteKind::Mixed:
        text = "Mixed " + amount;
        break;
    case BatchNoteKind::Soaked:
        text = "Found soaked through";
        break;
    case BatchNoteKind::HeatOn:
        text = "On the heat";
        break;
    case BatchNoteKind::HeatRead:
        text = "Temperature read";
        break;
    case BatchNoteKind::HeatOff:
        text = "Off the heat";
        break;
    case BatchNoteKind::ToppedUp:
        text = "Topped up with hot water";
        break;
    case BatchNoteKind::Weighed:
        text = "Weighed";
        break;
    case BatchNoteKind::Chilled:
        text = "Into the refrigerator";
        break;
    case BatchNoteKind::Frozen:
        text = "Into the freezer";
        break;
    case BatchNoteKind::Used:
        text = "Used " + amount;
        break;
    case BatchNoteKind::UsedUp:
        text = "Used up";
        break;
    case BatchNoteKind::Spoiled:
        text = "Found spoiled";
        break;
    case BatchNoteKind::ThrownAway:
        text = "Thrown away" + (note.deltaMilli == 0 ? std::string() : " with " + amount + " left");
        break;
    case BatchNoteKind::Remark:
        return note.note;
    case BatchNoteKind::Reversed:
        return "Undone";
    }
    if (note.temperature)
        text += " at " + formatTemperature(*note.temperature, units);
    if (note.weightMilli)
        text += ", vessel and glue " + formatAmount(Amount { *note.weightMilli, Dimension::Mass }, units);
    return note.note.empty() ? text : text + ": " + note.note;
}

} // namespace gw
