#include "shop/work.h"

#include <algorithm>
#include <tuple>

#include "gluing/sentences.h"
#include "shop/batch.h"
#include "shop/candidates.h"
#include "shop/climate.h"
#include "shop/setup.h"
#include "shop/shelf.h"
#include "shop/suitability.h"

namespace gw {

namespace {

constexpr std::chrono::days stoodLookedAt { 42 };
constexpr std::chrono::hours lastSpeaksFor { 6 }; // as between readings

/// A finish has no family of gates; its class still says between which temperatures it may be used.
Family gatesOf(const JobTypeRecord& job, const Catalogue& catalogue)
{
    const auto family = catalogue.families.find(job.family);
    if (family != catalogue.families.end())
        return familyOf(family->second);
    Family gates;
    const auto cls = catalogue.classes.find(job.typicalClass);
    if (cls == catalogue.classes.end())
        return gates;
    gates.name = cls->second.name;
    if (const auto use = figureOf(cls->second, MaterialRecord {}, "use_temperature")) {
        if (use->low)
            gates.airMin = Celsius { *use->low };
        if (use->high)
            gates.airMax = Celsius { *use->high };
    }
    return gates;
}

/// What the tables say of the joint, the residue, the place and the load that were named.
Result<void> addSuitability(
    GlueUpQuestion& question, const Shop& shop, const Catalogue& catalogue, const Conditions& said)
{
    const auto family = catalogue.families.find(question.family.id);
    const bool named = !said.joint.empty() || !said.residue.empty();
    if (!named && !said.servicePlace && !said.load)
        return {};
    const auto tables = SuitabilityTables::read(shop);
    if (!tables)
        return tl::unexpected(tables.error());
    if (!said.joint.empty()) {
        const auto joint = tables->joint(said.joint, said.gapMm);
        if (!joint)
            return tl::unexpected(joint.error());
        question.joint = tables->ofJoint(*joint, question.family.id);
    }
    if (!said.residue.empty()) {
        const auto residue = tables->residue(said.residue);
        if (!residue)
            return tl::unexpected(residue.error());
        question.residue = tables->overResidue(*residue, question.family.id);
    }
    if (family == catalogue.families.end())
        return {};
    if (said.servicePlace)
        question.place = ofPlace(*said.servicePlace, family->second, *tables);
    if (said.load)
        question.load = ofLoad(*said.load, family->second);
    return {};
}

/// What the wood holds and how cold it was by the air of the place it stood in.
Result<void> addStood(GlueUpQuestion& question, const Shop& shop, const Catalogue& catalogue,
    const std::string& placeName, Moment asOf)
{
    if (placeName.empty())
        return {};
    const auto place = findPlace(shop, placeName);
    if (!place)
        return tl::unexpected(place.error());
    const auto climate = shop.climate(catalogue);
    if (!climate)
        return tl::unexpected(climate.error());
    question.stoodName = place->name;
    std::vector<AirReading> readings;
    if (const WatchedTrace* watched = (*climate)->readings(place->id)) {
        const Trace& trace = watched->trace();
        const std::size_t end = trace.countUpTo(asOf);
        for (std::size_t i = trace.countUpTo(asOf - stoodLookedAt); i < end; ++i) {
            const Reading reading = trace.reading(i);
            readings.push_back({ reading.at, reading.temperature, reading.humidity });
        }
    }
    question.stood = moistureWhereItStood(readings, asOf);
    // What it was yesterday says nothing of the wood carried in now.
    if (!readings.empty() && asOf - readings.back().at <= lastSpeaksFor)
        question.stoodAt = readings.back().temperature;
    return {};
}

BatchAtHand atHand(const BatchState& state)
{
    BatchAtHand batch { state.batch.id, state.batch.label, state.batch.name, state.left, state.verdict,
        state.words, state.isHotGlue(), state.pot.heatSince.has_value(), state.pot.doseHours, {} };
    for (const char* key : { "cup", "working" }) {
        if (const PotDue* due = state.pot.dueFor(key))
            batch.until = due->when.low;
    }
    return batch;
}

/// The batch that would be used first: the one named, else the best of the family.
Result<void> addBatch(GlueUpQuestion& question, const Shop& shop, const std::string& named, Moment asOf)
{
    if (named == "-" || question.family.id.empty())
        return {};
    if (!named.empty()) {
        const auto state = batchAsOf(shop, named, asOf);
        if (!state)
            return tl::unexpected(state.error());
        if (state->family != question.family.id)
            return fail(ErrorCode::BadInput,
                state->batch.label + " is " + inSentence(state->batch.name) + ", and this wants "
                    + inSentence(question.family.name) + "; name another batch.");
        question.batch = atHand(*state);
        return {};
    }
    const auto states = batchesAsOf(shop, asOf);
    if (!states)
        return tl::unexpected(states.error());
    const Amount need = needFor(question.job, question.pieces);
    const BatchState* best = nullptr;
    const auto key = [&](const BatchState& state) {
        return std::tuple(state.left < need, state.verdict, state.batch.made);
    };
    for (const BatchState& state : *states) {
        // A pot that is past use, or of which too little is known, must not make the answer worse than no pot
        // would: it is not taken unless a person names it.
        const bool mayServe = state.verdict == Verdict::Good || state.verdict == Verdict::TestFirst;
        if (state.family == question.family.id && state.left.milli > 0 && mayServe
            && (!best || key(state) < key(*best)))
            best = &state;
    }
    if (best)
        question.batch = atHand(*best);
    return {};
}

bool burns(const ClassRecord& cls)
{
    return std::ranges::find(cls.pictograms, "GHS02") != cls.pictograms.end();
}

/// Whether what would be used gives off vapour that burns: the usual class, else any this shop has for it.
bool isFlammable(const JobTypeRecord& job, const Catalogue& catalogue, const std::vector<Coverage>& coverages)
{
    const auto typical = catalogue.classes.find(job.typicalClass);
    if (typical != catalogue.classes.end())
        return burns(typical->second);
    return std::ranges::any_of(coverages, [&catalogue](const Coverage& coverage) {
        return std::ranges::any_of(coverage.parts, [&catalogue](const PartShare& part) {
            const auto* cls = catalogue.classOf(part.material);
            return cls && burns(*cls);
        });
    });
}

GlueUpQuestion questionOf(
    const JobTypeRecord& job, const Catalogue& catalogue, int pieces, const Conditions& said)
{
    GlueUpQuestion question;
    question.family = gatesOf(job, catalogue);
    question.job = jobTypeOf(job);
    question.pieces = pieces;
    question.air = said.air;
    question.wood = said.wood;
    question.humidity = said.humidity;
    question.woodMoisture = said.woodMoisture;
    question.otherMoisture = said.otherMoisture;
    question.gapMm = said.gapMm;
    question.glue = said.glue;
    question.surfaceAgeHours = said.surfaceAgeHours;
    question.thicknessMm = said.thicknessMm;
    question.period = said.period;
    question.barrier = said.barrier;
    question.ventilated = said.ventilated;
    return question;
}

} // namespace

Result<GlueUpAnswer> checkJob(
    const Shop& shop, const std::string& jobType, int pieces, const Conditions& conditions, Moment asOf)
{
    auto record = findJobType(shop, jobType);
    if (!record)
        return tl::unexpected(record.error());
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto items = shelf(shop, { asOf, {}, {}, {}, false, false });
    if (!items)
        return tl::unexpected(items.error());

    GlueUpQuestion question = questionOf(*record, *catalogue, pieces, conditions);
    question.units = shop.units();
    if (auto added = addSuitability(question, shop, *catalogue, conditions); !added)
        return tl::unexpected(added.error());
    if (auto added = addStood(question, shop, *catalogue, conditions.woodStood, asOf); !added)
        return tl::unexpected(added.error());
    if (auto added = addBatch(question, shop, conditions.batch, asOf); !added)
        return tl::unexpected(added.error());
    const std::vector<Coverage> coverages = coveragesFor(*record, *catalogue);
    question.flammable = isFlammable(*record, *catalogue, coverages);
    for (const Coverage& coverage : coverages) {
        StockCandidate candidate;
        candidate.name = coverage.name;
        candidate.typical = coverage.typical;
        candidate.partnerMissing = coverage.partnerMissing;
        candidate.waterPerUnit = coverage.waterPerUnit;
        for (const PartShare& share : coverage.parts)
            candidate.parts.push_back(stockOf(share, *catalogue, *items));
        question.candidates.push_back(std::move(candidate));
    }
    return checkGlueUp(question, asOf);
}

} // namespace gw
