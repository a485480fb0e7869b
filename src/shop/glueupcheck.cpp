#include "shop/work.h"

#include "shop/candidates.h"
#include "shop/setup.h"
#include "shop/shelf.h"

namespace gw {

namespace {

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

StockPart partOf(const PartShare& share, const Catalogue& catalogue, const std::vector<ShelfItem>& items)
{
    StockPart part;
    part.material = share.material;
    part.sharePerUnit = share.perUnit;
    if (const auto* material = catalogue.material(share.material))
        part.name = material->name;
    const auto* cls = catalogue.classOf(share.material);
    if (cls)
        part.dimension = cls->countedIn;
    for (const ShelfItem& item : items) {
        if (item.material != share.material || item.left.milli <= 0)
            continue;
        const auto left = cls
            ? convert(item.left, part.dimension, densityOf(*cls, *catalogue.material(share.material)))
            : std::optional<Amount>(item.left);
        if (!left)
            continue;
        const auto& reasons = item.judgement.reasons;
        part.items.push_back({ item.id, item.label, item.placeName, *left, item.judgement.verdict,
            reasons.empty() ? std::string() : reasons.front().text, item.judgement.goodUntil,
            item.openedAt.has_value() });
    }
    return part;
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

    GlueUpQuestion question;
    question.family = gatesOf(*record, *catalogue);
    question.job = jobTypeOf(*record);
    question.pieces = pieces;
    question.units = shop.units();
    question.air = conditions.air;
    question.wood = conditions.wood;
    question.humidity = conditions.humidity;
    question.woodMoisture = conditions.woodMoisture;
    question.gapMm = conditions.gapMm;
    for (const Coverage& coverage : coveragesFor(*record, *catalogue)) {
        StockCandidate candidate;
        candidate.name = coverage.name;
        candidate.typical = coverage.typical;
        candidate.partnerMissing = coverage.partnerMissing;
        candidate.waterPerUnit = coverage.waterPerUnit;
        for (const PartShare& share : coverage.parts)
            candidate.parts.push_back(partOf(share, *catalogue, *items));
        question.candidates.push_back(std::move(candidate));
    }
    return checkGlueUp(question, asOf);
}

} // namespace gw
