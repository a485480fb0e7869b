#include "shop/candidates.h"

#include <algorithm>

#include "gluing/mix.h"

namespace gw {

namespace {

const Figure* figure(const std::vector<Figure>& figures, std::string_view key)
{
    for (const Figure& f : figures) {
        if (f.figure == key)
            return &f;
    }
    return nullptr;
}

template <class T> std::optional<Range<T>> bothEnds(const Figure* f)
{
    if (!f || !f->low || !f->high)
        return std::nullopt;
    return Range<T> { T { *f->low }, T { *f->high } };
}

std::optional<Celsius> degrees(std::optional<double> value)
{
    return value ? std::optional<Celsius>(Celsius { *value }) : std::nullopt;
}

/// "resin" or "hardener" for one half of a two-part glue; empty for everything that is used as it comes.
std::string partOf(const ClassRecord& cls)
{
    const Figure* part = figure(cls.figures, "part");
    return part ? part->text : std::string();
}

bool covers(const JobTypeRecord& job, const ClassRecord& cls)
{
    if (!job.typicalClass.empty() && cls.id == job.typicalClass)
        return true;
    return !job.family.empty() && cls.family == job.family;
}

/// What one unit of ready glue takes of a material, in the unit its stock is counted in.
double inStockUnit(
    const Catalogue& catalogue, const MaterialRecord& material, Dimension ready, double perUnit)
{
    const auto* cls = catalogue.classOf(material.id);
    if (!cls || cls->countedIn == ready)
        return perUnit;
    const auto converted = convert(amountOf(1000.0, ready), cls->countedIn, densityOf(*cls, material));
    return converted ? perUnit * converted->value() / 1000.0 : perUnit;
}

Coverage twoPart(const JobTypeRecord& job, const Catalogue& catalogue, const MaterialRecord& resin)
{
    Coverage coverage;
    coverage.name = resin.name;
    const auto* hardener = resin.partner ? catalogue.material(*resin.partner) : nullptr;
    const auto ratio = hardener ? hardenerPer100(catalogue, resin, *hardener) : std::nullopt;
    const auto shares = ratio ? sharesOfMassRatio(*ratio) : Result<MixShares>(MixShares { 1.0, 0.0 });
    if (!hardener || !ratio || !shares) {
        coverage.partnerMissing = true;
        coverage.parts.push_back({ resin.id, inStockUnit(catalogue, resin, job.countedIn, 1.0) });
        return coverage;
    }
    coverage.name = resin.name + " with " + hardener->name;
    coverage.parts.push_back({ resin.id, inStockUnit(catalogue, resin, job.countedIn, shares->resin) });
    coverage.parts.push_back(
        { hardener->id, inStockUnit(catalogue, *hardener, job.countedIn, shares->hardener) });
    return coverage;
}

Coverage onePart(const JobTypeRecord& job, const Catalogue& catalogue, const ClassRecord& cls,
    const MaterialRecord& material)
{
    Coverage coverage;
    coverage.name = material.name;
    double perUnit = 1.0;
    if (const auto ratio = figureOf(cls, material, "water_ratio");
        ratio && ratio->value && *ratio->value > 0) {
        perUnit = drySharePerUnit(*ratio->value);
        coverage.waterPerUnit = waterSharePerUnit(*ratio->value);
    }
    coverage.parts.push_back({ material.id, inStockUnit(catalogue, material, job.countedIn, perUnit) });
    return coverage;
}

} // namespace

/// Hardener for 100 g of resin: the label's own mass ratio, else the label's volumes with the densities, else
/// the class's.
std::optional<double> hardenerPer100(
    const Catalogue& catalogue, const MaterialRecord& resin, const MaterialRecord& hardener)
{
    const auto* resinClass = catalogue.classOf(resin.id);
    const auto* hardenerClass = catalogue.classOf(hardener.id);
    if (!resinClass || !hardenerClass)
        return std::nullopt;
    if (const Figure* mass = figure(hardener.labelFigures, "mix_ratio_mass"); mass && mass->value)
        return mass->value;
    if (const Figure* volume = figure(hardener.labelFigures, "mix_ratio_volume"); volume && volume->value) {
        const auto resinDensity = densityOf(*resinClass, resin);
        const auto hardenerDensity = densityOf(*hardenerClass, hardener);
        if (resinDensity && hardenerDensity) {
            const auto mass = hardenerPer100ByVolume(100.0, *volume->value, *resinDensity, *hardenerDensity);
            if (mass)
                return *mass;
        }
    }
    const Figure* ofClass = figure(hardenerClass->figures, "mix_ratio_mass");
    return ofClass ? ofClass->value : std::nullopt;
}

StockPart stockOf(const PartShare& share, const Catalogue& catalogue, const std::vector<ShelfItem>& items)
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

Family familyOf(const FamilyRecord& record)
{
    const auto get = [&](std::string_view key) { return figure(record.figures, key); };
    Family family;
    family.id = record.id;
    family.name = record.name;
    family.facesToSpread = record.facesToSpread;
    family.reversibleWith = record.reversibleWith;
    if (const Figure* undoing = get("undoing"); undoing && undoing->value)
        family.undoing = *undoing->value >= 2 ? Undoing::Ready
            : *undoing->value >= 1            ? Undoing::Hard
                                              : Undoing::None;
    family.glueTemperature = bothEnds<Celsius>(get("glue_temperature"));
    if (const Figure* air = get("air_temperature")) {
        family.airMin = degrees(air->low);
        family.airMax = degrees(air->high);
    }
    family.airBest = bothEnds<Celsius>(get("air_temperature_best"));
    if (const Figure* wood = get("wood_temperature"))
        family.woodMin = degrees(wood->low ? wood->low : wood->value);
    if (const Figure* best = get("wood_temperature_best")) {
        if (best->value)
            family.woodBest = Range<Celsius> { Celsius { *best->value }, Celsius { *best->value } };
        else
            family.woodBest = bothEnds<Celsius>(best);
    }
    family.woodMoisture = bothEnds<double>(get("wood_moisture"));
    family.humidity = bothEnds<double>(get("humidity"));
    if (const Figure* gap = get("gap")) {
        family.gapBestMm = gap->value ? gap->value : gap->low;
        family.gapMaxMm = gap->high;
    }
    if (const Figure* age = get("surface_age_max"))
        family.surfaceAgeMaxHours = age->high ? age->high : age->value;
    family.openMinutes = bothEnds<double>(get("open_time"));
    family.closedMinutes = bothEnds<double>(get("closed_time"));
    if (const Figure* unclamp = get("unclamp"))
        family.unclampMinutes = unclamp->value;
    if (const Figure* load = get("full_load"))
        family.fullLoadHours = load->value;
    if (const Figure* factor = get("cold_clamp_factor"); factor && factor->value)
        family.coldClampFactor = *factor->value;
    return family;
}

JobType jobTypeOf(const JobTypeRecord& record)
{
    JobType job;
    job.id = record.id;
    job.name = record.name;
    job.family = record.family;
    job.typicalClass = record.typicalClass;
    job.dimension = record.countedIn;
    job.areaCm2 = record.areaCm2;
    job.spread = record.spread;
    job.waste = record.waste;
    job.fixedLoss = record.fixedLoss;
    job.extra = record.extra;
    job.perMonth = record.perMonth;
    job.source = record.source;
    job.confidence = record.confidence;
    return job;
}

std::vector<Coverage> coveragesFor(const JobTypeRecord& job, const Catalogue& catalogue)
{
    std::vector<Coverage> coverages;
    for (const auto& [id, material] : catalogue.materials) {
        const auto* cls = catalogue.classOf(id);
        if (!cls || !covers(job, *cls))
            continue;
        const std::string part = partOf(*cls);
        // A hardener is never what covers the need by itself; it comes with its resin.
        if (part == "hardener")
            continue;
        Coverage coverage
            = part == "resin" ? twoPart(job, catalogue, material) : onePart(job, catalogue, *cls, material);
        coverage.typical = cls->id == job.typicalClass;
        coverages.push_back(std::move(coverage));
    }
    std::stable_sort(coverages.begin(), coverages.end(),
        [](const Coverage& a, const Coverage& b) { return a.typical && !b.typical; });
    return coverages;
}

} // namespace gw
