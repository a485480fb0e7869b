#include "shop/glueuprecord.h"

#include <algorithm>

#include <QString>

#include "measure/number.h"
#include "shop/climate.h"
#include "shop/setup.h"
#include "shop/shelf.h"
#include "shop/suitability.h"
#include "shop/takings.h"

namespace gw {

namespace {

constexpr std::size_t mostPhotos = 12;
// A cold store is colder and the check tells how to warm what comes from it, but no glue of ours is put on so
// cold; the figure was mistyped (own limit).
constexpr Celsius coldestGlued { -5 };
constexpr double longestAssembly = 24 * 60, longestClamped = 60 * 24 * 60; // minutes

std::string tidied(const std::string& text)
{
    return QString::fromStdString(text).simplified().toStdString();
}

Result<void> mustBeWithin(const std::optional<double>& minutes, double most, const char* what)
{
    if (!minutes || (*minutes >= 0 && *minutes <= most))
        return {};
    return fail(ErrorCode::BadInput,
        std::string(what) + " of " + numberWords(*minutes, 0) + " min cannot be: say 0 to "
            + numberWords(most, 0) + " min.");
}

Result<void> mustBeGluable(const std::optional<Celsius>& temperature, const char* what, UnitSystem units)
{
    if (!temperature || *temperature >= coldestGlued)
        return {};
    return fail(ErrorCode::BadInput,
        std::string(what) + " at " + formatTemperature(*temperature, units) + " cannot have been glued: say "
            + formatTemperature(coldestGlued, units) + " or above, or leave it out.");
}

Result<void> checkSaid(const GlueUpSaid& said, UnitSystem units)
{
    if (tidied(said.piece).empty())
        return fail(ErrorCode::BadInput, "Say which piece it was, such as \"Hall table, Linden\".");
    if (said.photos.size() > mostPhotos)
        return fail(ErrorCode::BadInput,
            "Keep at most " + std::to_string(mostPhotos) + " photographs of one glue-up.");
    if (auto can = mustBeGluable(said.conditions.wood, "Wood", units); !can)
        return can;
    if (auto can = mustBeGluable(said.conditions.air, "A room", units); !can)
        return can;
    if (auto can = mustBeWithin(said.assemblyMinutes, longestAssembly, "An assembly time"); !can)
        return can;
    return mustBeWithin(said.clampedMinutes, longestClamped, "A time in clamps");
}

class Facts {
public:
    void add(const char* key, const std::optional<double>& value)
    {
        if (value)
            m_facts.push_back({ key, value, {} });
    }
    void add(const char* key, const std::optional<Celsius>& value)
    {
        if (value)
            m_facts.push_back({ key, value->value, {} });
    }
    void add(const char* key, const std::string& text)
    {
        if (std::string tidy = tidied(text); !tidy.empty())
            m_facts.push_back({ key, {}, std::move(tidy) });
    }
    void add(const char* key, const std::optional<bool>& said, const char* yes, const char* no)
    {
        if (said)
            m_facts.push_back({ key, {}, *said ? yes : no });
    }
    std::vector<GlueUpFact> all() { return std::move(m_facts); }

private:
    std::vector<GlueUpFact> m_facts;
};

/// The joint is the one that was named, else the job type's own.
Result<std::string> jointName(
    const SuitabilityTables& tables, const GlueUpSaid& said, const JobTypeRecord& job)
{
    const std::string& asked = said.conditions.joint.empty() ? job.joint : said.conditions.joint;
    if (asked.empty())
        return std::string();
    const auto joint = tables.joint(asked, said.conditions.gapMm);
    return joint ? Result<std::string>(joint->name) : tl::unexpected(joint.error());
}

Result<std::vector<GlueUpFact>> factsOf(const Shop& shop, const GlueUpSaid& said, const JobTypeRecord& job)
{
    const auto tables = SuitabilityTables::read(shop);
    if (!tables)
        return tl::unexpected(tables.error());
    const auto joint = jointName(*tables, said, job);
    if (!joint)
        return tl::unexpected(joint.error());
    const Conditions& conditions = said.conditions;
    Facts facts;
    facts.add("who", said.who);
    facts.add("joint", *joint);
    facts.add("period", conditions.period, "period", "modern");
    if (!conditions.residue.empty()) {
        const auto residue = tables->residue(conditions.residue);
        if (!residue)
            return tl::unexpected(residue.error());
        facts.add("residue", residue->name);
    }
    facts.add("gap", conditions.gapMm);
    facts.add("air", conditions.air);
    facts.add("humidity", conditions.humidity);
    facts.add("wood", conditions.wood);
    facts.add("wood_moisture", conditions.woodMoisture);
    facts.add("other_moisture", conditions.otherMoisture);
    if (!conditions.woodStood.empty()) {
        const auto place = findPlace(shop, conditions.woodStood);
        if (!place)
            return tl::unexpected(place.error());
        facts.add("wood_stood", place->name);
    }
    facts.add("glue", conditions.glue);
    facts.add("surface_age", conditions.surfaceAgeHours);
    facts.add("thickness", conditions.thicknessMm);
    facts.add("barrier", conditions.barrier, "yes", "no");
    facts.add("ventilated", conditions.ventilated, "yes", "no");
    if (conditions.servicePlace)
        facts.add("service_place", std::string(word(*conditions.servicePlace)));
    if (conditions.load)
        facts.add("load", std::string(word(*conditions.load)));
    facts.add("assembly", said.assemblyMinutes);
    facts.add("clamped", said.clampedMinutes);
    return facts.all();
}

std::vector<GlueUpGateRecord> gatesOf(const GlueUpAnswer& answer)
{
    std::vector<GlueUpGateRecord> gates;
    for (const Gate& gate : answer.gates)
        gates.push_back({ gate.id, gate.name, std::string(word(gate.result)), gate.text });
    return gates;
}

/// How the containers stand before anything is taken out of them.
Result<std::vector<GlueUpContainerRecord>> standingOf(
    const Shop& shop, const std::vector<Taking>& takings, Moment asOf)
{
    std::vector<GlueUpContainerRecord> containers;
    for (const Taking& taking : takings) {
        auto page = containerPage(shop, taking.container, asOf);
        if (!page)
            return tl::unexpected(page.error());
        const Judgement& judgement = page->item.judgement;
        const auto known = std::ranges::find(containers, page->item.id, &GlueUpContainerRecord::container);
        if (known != containers.end())
            continue;
        containers.push_back({ page->item.id, judgement.verdict,
            judgement.reasons.empty() ? std::string() : judgement.reasons.front().text,
            judgement.frostEvents });
    }
    return containers;
}

struct Takings {
    std::vector<Taking> containers, batches;
    bool empty() const { return containers.empty() && batches.empty(); }
};

Takings takingsOf(const GlueUpSaid& said, const GlueUpAnswer& answer)
{
    Takings takings { said.takings, said.fromBatches };
    if (!takings.empty())
        return takings;
    for (const Take& take : answer.use)
        takings.containers.push_back({ take.container.text, take.amount });
    if (answer.batch && answer.fromBatch.milli > 0)
        takings.batches.push_back({ answer.batch->label, answer.fromBatch });
    return takings;
}

/// Which batch went in, and how long it had been hot by then; its verdict stands with its gate.
void addBatchFacts(
    std::vector<GlueUpFact>& facts, const GlueUpAnswer& answer, const std::vector<Taking>& fromBatches)
{
    std::string labels;
    for (const Taking& taking : fromBatches)
        labels += (labels.empty() ? "" : ", ") + taking.container;
    if (labels.empty())
        return;
    facts.push_back({ "batch", {}, labels });
    const bool same = answer.batch && fromBatches.size() == 1
        && (fromBatches[0].container == answer.batch->label
            || fromBatches[0].container == answer.batch->id.text);
    if (same && answer.batch->doseHours)
        facts.push_back({ "heat_dose", answer.batch->doseHours, {} });
}

std::string glueOf(const JobTypeRecord& job, const Catalogue& catalogue)
{
    if (const auto family = catalogue.families.find(job.family); family != catalogue.families.end())
        return family->second.name;
    const auto cls = catalogue.classes.find(job.typicalClass);
    return cls == catalogue.classes.end() ? std::string() : cls->second.name;
}

Result<std::string> writeGlueUp(ActBuilder& act, const GlueUpSaid& said)
{
    Shop& shop = act.shop();
    const Moment at = act.time().at;
    const auto type = findJobType(shop, said.jobType);
    if (!type)
        return tl::unexpected(type.error());
    const auto answer = checkJob(shop, type->id.text, said.pieces, said.conditions, at);
    if (!answer)
        return tl::unexpected(answer.error());
    auto facts = factsOf(shop, said, *type);
    if (!facts)
        return tl::unexpected(facts.error());
    const auto takings = takingsOf(said, *answer);
    if (takings.empty())
        return fail(
            ErrorCode::BadInput, "The shelf has nothing fit for this; say what was used and how much of it.");
    addBatchFacts(*facts, *answer, takings.batches);
    auto containers = standingOf(shop, takings.containers, at);
    if (!containers)
        return tl::unexpected(containers.error());

    JobRecord job { {}, type->id, type->name, tidied(said.piece), at };
    auto words = takeForJob(act, takings.containers, job, takings.batches);
    if (!words)
        return words;
    GlueUpRecord record;
    record.id = GlueUpId { newUuid() };
    record.act = act.id();
    record.job = job.id;
    record.at = at;
    record.recorded = act.time().now;
    record.piece = job.piece;
    record.jobName = type->name;
    record.pieces = said.pieces;
    if (act.catalogue().families.contains(type->family))
        record.family = type->family;
    record.glue = glueOf(*type, act.catalogue());
    record.answer = word(answer->answer);
    record.firstFix = answer->firstFix;
    record.comesApart = answer->reversibleWith;
    record.note = tidied(said.note);
    record.device = shop.device();
    record.facts = std::move(*facts);
    record.gates = gatesOf(*answer);
    record.containers = std::move(*containers);
    if (auto kept = shop.store().addGlueUp(record, said.photos); !kept)
        return tl::unexpected(kept.error());
    return "Kept the glue-up of " + job.piece + ". " + *words;
}

} // namespace

Result<ActDone> recordGlueUp(Shop& shop, const GlueUpSaid& said, ActTime time)
{
    if (auto can = checkSaid(said, shop.units()); !can)
        return tl::unexpected(can.error());
    return ActBuilder::run(shop, time, [&](ActBuilder& act) { return writeGlueUp(act, said); });
}

std::string factWords(const GlueUpFact& fact, UnitSystem units)
{
    if (!fact.value)
        return fact.text;
    const auto kind = std::ranges::find(factKinds, fact.fact, &FactKind::key);
    const std::string_view unit = kind == factKinds.end() ? std::string_view {} : kind->unit;
    if (unit == "C")
        return formatTemperature(Celsius { *fact.value }, units);
    return numberWords(*fact.value, 2) + (unit.empty() ? "" : " ") + std::string(unit);
}

} // namespace gw
