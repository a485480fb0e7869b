#include "shop/piecefailed.h"

#include <algorithm>

#include "measure/quoted.h"
#include "shop/candidates.h"
#include "shop/piecepage.h"
#include "shop/pieceworks.h"
#include "shop/shelf.h"
#include "shop/suitability.h"

namespace gw {

namespace {

/// The family of a work: the record's, else that of the glue that was used.
FamilyId familyOfWork(const PieceWork& work, const Catalogue& catalogue)
{
    if (work.record && !work.record->family.empty())
        return work.record->family;
    for (const PieceUse& use : work.uses) {
        const auto cls = catalogue.classes.find(use.classId);
        if (cls != catalogue.classes.end() && !cls->second.family.empty())
            return cls->second.family;
    }
    return {};
}

Result<const PieceWork*> workMeant(
    const PiecePage& page, const FailedJoint& joint, const Catalogue& catalogue)
{
    std::string days;
    for (const PieceWork& work : page.work) {
        if (familyOfWork(work, catalogue).empty())
            continue;
        if (!joint.on || dateOf(work.at) == *joint.on)
            return &work;
        days += (days.empty() ? "" : ", ") + formatDate(dateOf(work.at));
    }
    if (days.empty())
        return fail(ErrorCode::NotFound, "No glue is recorded on " + page.piece + ".");
    return fail(ErrorCode::NotFound,
        "Nothing was glued on " + page.piece + " on " + formatDate(*joint.on) + "; it was on " + days + ".");
}

/// How the stock stood: as the record has it, else as it is judged now for that moment.
Result<void> addStock(JointFacts& facts, const Shop& shop, const PieceWork& work)
{
    for (const PieceUse& use : work.uses) {
        Verdict verdict = use.verdict.value_or(Verdict::NotKnown);
        std::string reason = use.reason;
        std::optional<int> frosts;
        if (work.record) {
            const auto stood = std::ranges::find(
                work.record->containers, use.container, &GlueUpContainerRecord::container);
            if (stood != work.record->containers.end())
                frosts = stood->frostEvents;
        } else {
            const auto page = containerPage(shop, use.container.text, work.at);
            if (!page && page.error().code != ErrorCode::NotFound)
                return tl::unexpected(page.error());
            if (page) {
                const Judgement& judgement = page->item.judgement;
                verdict = judgement.verdict;
                reason = judgement.reasons.empty() ? std::string() : judgement.reasons.front().text;
                frosts = judgement.frostEvents;
            }
        }
        if (!facts.stock || worst(*facts.stock, verdict) != *facts.stock) {
            facts.stock = verdict;
            facts.stockReason = reason;
        }
        if (frosts)
            facts.frostEvents = std::max(facts.frostEvents.value_or(0), *frosts);
    }
    return {};
}

std::optional<double> number(const GlueUpRecord& record, const char* key)
{
    const GlueUpFact* fact = record.fact(key);
    return fact ? fact->value : std::nullopt;
}

std::optional<Celsius> temperature(const GlueUpRecord& record, const char* key)
{
    const auto value = number(record, key);
    return value ? std::optional(Celsius { *value }) : std::nullopt;
}

Result<void> addSaid(JointFacts& facts, const Shop& shop, const GlueUpRecord& record)
{
    facts.air = temperature(record, "air");
    facts.wood = temperature(record, "wood");
    facts.heatDoseHours = number(record, "heat_dose");
    facts.humidity = number(record, "humidity");
    facts.woodMoisture = number(record, "wood_moisture");
    facts.gapMm = number(record, "gap");
    facts.surfaceAgeHours = number(record, "surface_age");
    facts.assemblyMinutes = number(record, "assembly");
    facts.clampedMinutes = number(record, "clamped");
    const auto tables = SuitabilityTables::read(shop);
    if (!tables)
        return tl::unexpected(tables.error());
    // A joint or residue the tables no longer know leaves its cause not known.
    if (const GlueUpFact* joint = record.fact("joint")) {
        if (const auto known = tables->joint(joint->text, facts.gapMm))
            facts.joint = tables->ofJoint(*known, facts.family.id);
    }
    if (const GlueUpFact* residue = record.fact("residue")) {
        if (const auto known = tables->residue(residue->text))
            facts.residue = tables->overResidue(*known, facts.family.id);
    }
    return {};
}

/// What was not written down, as it is remembered; and what the faces show.
void addSeen(JointFacts& facts, const FailedJoint& joint)
{
    const auto fill = [](std::optional<double>& fact, const std::optional<double>& remembered) {
        if (!fact)
            fact = remembered;
    };
    fill(facts.assemblyMinutes, joint.assemblyMinutes);
    fill(facts.clampedMinutes, joint.clampedMinutes);
    fill(facts.loadedAfterHours, joint.loadedAfterHours);
    fill(facts.gapMm, joint.gapMm);
    fill(facts.ratioErrorPercent, joint.ratioErrorPercent);
    facts.woodFailurePercent = joint.woodFailurePercent;
    facts.glueStillSoft = joint.stillSoft;
    facts.glueOnOneFaceOnly = joint.oneFaceOnly;
    facts.glueThickAndBubbly = joint.thickAndBubbly;
    facts.glueGlassyUnbroken = joint.glassyUnbroken;
}

Result<void> addOthers(WhyFailed& why, const Shop& shop, const PieceWork& work, Moment asOf)
{
    std::vector<std::pair<MaterialId, std::string>> asked;
    for (const PieceUse& use : work.uses) {
        const auto container = shop.store().container(use.container);
        if (!container)
            return tl::unexpected(container.error());
        if (!*container)
            continue;
        // Without a lot the container stands for itself.
        const std::pair lot((*container)->material, use.lot.empty() ? use.container.text : use.lot);
        if (std::ranges::find(asked, lot) != asked.end())
            continue;
        asked.push_back(lot);
        const auto found = piecesWithLot(shop, use.container.text, asOf);
        if (!found)
            return tl::unexpected(found.error());
        why.usesWithoutPiece += found->withoutPiece;
        for (const LotUse& other : found->uses) {
            if (foldedPiece(other.piece) != foldedPiece(why.piece))
                why.others.push_back({ other.piece, other.materialName, found->lot, other.label, other.at });
        }
    }
    std::ranges::stable_sort(why.others, std::ranges::greater {}, &WhyFailed::OtherPiece::at);
    return {};
}

} // namespace

Result<WhyFailed> whyFailed(const Shop& shop, const FailedJoint& joint, Moment asOf)
{
    const auto page = piecePage(shop, joint.piece, asOf);
    if (!page)
        return tl::unexpected(page.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto work = workMeant(*page, joint, *catalogue);
    if (!work)
        return tl::unexpected(work.error());

    JointFacts facts;
    facts.units = shop.units();
    const auto family = catalogue->families.find(familyOfWork(**work, *catalogue));
    if (family != catalogue->families.end())
        facts.family = familyOf(family->second);
    if (auto added = addStock(facts, shop, **work); !added)
        return tl::unexpected(added.error());
    if ((*work)->record) {
        if (auto added = addSaid(facts, shop, *(*work)->record); !added)
            return tl::unexpected(added.error());
    }
    addSeen(facts, joint);
    auto causes = causesOf(facts);
    if (!causes)
        return tl::unexpected(causes.error());

    WhyFailed why;
    why.piece = page->piece;
    why.at = (*work)->at;
    why.jobName = (*work)->jobName;
    why.glue = facts.family.name;
    why.recorded = (*work)->record.has_value();
    why.causes = std::move(*causes);
    why.note = "Ranked from what was written down; a cause that is not known may still be the one. The tests "
               "tell them apart.";
    if (auto added = addOthers(why, shop, **work, asOf); !added)
        return tl::unexpected(added.error());
    return why;
}

} // namespace gw
