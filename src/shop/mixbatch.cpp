#include <algorithm>

#include "gluing/sentences.h"
#include "measure/number.h"
#include "measure/quoted.h"
#include "shop/actbuilder.h"
#include "shop/batch.h"
#include "shop/batchpot.h"
#include "shop/ownlabels.h"

namespace gw {

namespace {

constexpr std::string_view notFromTheShelf = "-";

/// Takes so much of a part out of one container.
Result<void> takePart(ActBuilder& act, BatchRecord& batch, const MixPart& part, const Taking& taking)
{
    auto found = act.takeStanding(taking.container);
    if (!found)
        return tl::unexpected(found.error());
    if (const auto& hold = found->state.history.hold)
        return fail(ErrorCode::Refused,
            "The lot of " + found->container.label + " is on hold since " + spokenDate(dateOf(hold->since))
                + (hold->why.empty() ? "" : " (" + hold->why + ")")
                + "; take another container, or release the lot first.");
    auto own = act.inItsOwnUnit(*found, taking.amount);
    if (!own)
        return tl::unexpected(own.error());
    auto entry = act.takeOut(*found, *own, EntryKind::Mixed);
    if (!entry)
        return tl::unexpected(entry.error());
    (*entry)->note = batch.label;
    batch.parts.push_back({ part.key, found->material->name, *own, found->container.id, (*entry)->id });
    return {};
}

const PartSource* sourceOf(const MixAnswer& mix, const std::string& key)
{
    const auto found = std::ranges::find(mix.sources, key, &PartSource::key);
    return found == mix.sources.end() ? nullptr : &*found;
}

Result<void> addPart(ActBuilder& act, BatchRecord& batch, const MixPart& part, const MixAnswer& mix,
    const MixRecording& recording)
{
    const auto named = recording.from.find(part.key);
    if (part.classes.empty() || (named != recording.from.end() && named->second == notFromTheShelf)) {
        batch.parts.push_back({ part.key, part.what, part.amount, {}, {} });
        return {};
    }
    if (named != recording.from.end())
        return takePart(act, batch, part, { named->second, part.amount });
    const PartSource* source = sourceOf(mix, part.key);
    if (!source || source->result != GateResult::Pass)
        return fail(ErrorCode::Refused,
            (source ? source->text : "Where it comes from is not known: " + part.what + ".")
                + " Nothing was recorded; say which container was used, or that it did not come off the "
                  "shelf.");
    for (const Take& take : source->takes) {
        if (auto taken = takePart(act, batch, part, { take.container.text, take.amount }); !taken)
            return taken;
    }
    return {};
}

Result<void> knowsTheParts(const MixAnswer& mix, const MixRecording& recording)
{
    for (const auto& [key, container] : recording.from) {
        const MixPart* part = mix.plan.part(key);
        if (part && !part->classes.empty())
            continue;
        std::string keys;
        for (const PartSource& source : mix.sources)
            keys += (keys.empty() ? "" : ", ") + source.key;
        return fail(ErrorCode::BadInput,
            "No part " + inQuotes(key) + " of this mix comes off the shelf; there are: " + keys + ".");
    }
    return {};
}

std::string nameOf(const MixAnswer& mix)
{
    return mix.grade ? mix.plan.name + ", " + numberWords(*mix.grade, 0) + " g grade" : mix.plan.name;
}

} // namespace

Result<ActDone> mixBatch(Shop& shop, const MixAsked& asked, const MixRecording& recording, ActTime time)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        const auto mix = mixFromShelf(shop, asked, time.at);
        if (!mix)
            return tl::unexpected(mix.error());
        if (auto known = knowsTheParts(*mix, recording); !known)
            return tl::unexpected(known.error());
        auto label = freeOwnLabel(shop.store());
        if (!label)
            return tl::unexpected(label.error());
        BatchRecord batch;
        batch.id = BatchId { newUuid() };
        batch.label = std::move(*label);
        batch.recipe = mix->plan.recipe;
        batch.name = nameOf(*mix);
        batch.made = time.at;
        batch.created = time.now;
        batch.amount = mix->plan.makes;
        batch.who = recording.who;
        batch.figures = figuresOf(asked, *mix);
        auto place = act.placeNamed(recording.place);
        if (!place)
            return tl::unexpected(place.error());
        batch.place = *place;
        for (const MixPart& part : mix->plan.parts) {
            if (auto added = addPart(act, batch, part, *mix, recording); !added)
                return tl::unexpected(added.error());
        }
        if (auto added = shop.store().addBatch(batch); !added)
            return tl::unexpected(added.error());
        BatchNote& mixed = act.addNote(BatchNoteKind::Mixed, batch.id);
        mixed.deltaMilli = batch.amount.milli;
        mixed.place = batch.place;
        mixed.who = recording.who;
        mixed.note = recording.note;
        return "Mixed " + act.say(batch.amount) + " of " + inSentence(batch.name) + ": batch " + batch.label
            + ".";
    });
}

} // namespace gw
