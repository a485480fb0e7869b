#include "shop/monthdemands.h"

#include <algorithm>
#include <map>
#include <set>

#include "shop/candidates.h"
#include "shop/orders.h"
#include "shop/shelf.h"
#include "shop/usehistory.h"

namespace gw {

namespace {

/// When no pack says how long its supplier takes.
constexpr double usualLeadDays = 7;

using JobTypes = std::map<JobTypeId, JobTypeRecord>;

/// Job types whose materials the plan works out: those the shop expects, and those that came.
JobTypes plannedTypes(
    const std::vector<JobTypeRecord>& jobTypes, const UseHistory& history, const WhatIf& whatIf)
{
    JobTypes planned;
    for (const JobTypeRecord& jobType : jobTypes) {
        const auto seen = history.seen.find(jobType.id);
        if (jobType.perMonth > 0 || jobType.id == whatIf.moreOf || history.planned.contains(jobType.id)
            || (seen != history.seen.end() && seen->second.jobs > 0))
            planned.emplace(jobType.id, jobType);
    }
    return planned;
}

UseOfJob useOf(
    const JobTypeRecord& jobType, double estimate, const MaterialId& material, const UseHistory& history)
{
    UseOfJob use { jobType.name, jobType.perMonth, estimate };
    if (const auto seen = history.seen.find(jobType.id); seen != history.seen.end()) {
        use.jobsSeen = seen->second.jobs;
        use.monthsSeen = seen->second.months;
    }
    use.weighed = history.weighed(jobType.id, material);
    use.type = jobType.id.text;
    if (const auto planned = history.planned.find(jobType.id); planned != history.planned.end())
        use.planned = planned->second;
    return use;
}

/// The coverage a job's need is planned on: of the typical class where the shop has one, else the first that
/// has packs.
const Coverage* plannedCoverage(
    const std::vector<Coverage>& coverages, const std::map<MaterialId, MaterialDemand>& demands)
{
    for (const Coverage& coverage : coverages) {
        const bool onOffer = std::any_of(coverage.parts.begin(), coverage.parts.end(),
            [&](const PartShare& part) { return !demands.at(part.material).packs.empty(); });
        if (onOffer)
            return &coverage;
    }
    return coverages.empty() ? nullptr : &coverages.front();
}

/// The demands in the making, and which kinds of work they have.
struct Demands {
    std::map<MaterialId, MaterialDemand> of;
    std::set<std::pair<MaterialId, JobTypeId>> withJob;
};

void addJob(Demands& demands, const JobTypeRecord& jobType, const MaterialId& material, double estimate,
    const UseHistory& history)
{
    if (demands.withJob.emplace(material, jobType.id).second)
        demands.of.at(material).jobs.push_back(useOf(jobType, estimate, material, history));
}

void addJobs(const JobTypes& planned, const Catalogue& catalogue, const UseHistory& history, Demands& demands)
{
    for (const auto& [id, record] : planned) {
        const auto coverages = coveragesFor(record, catalogue);
        const Coverage* coverage = plannedCoverage(coverages, demands.of);
        if (!coverage)
            continue;
        const double ready = needFor(jobTypeOf(record), 1).value();
        for (const PartShare& part : coverage->parts)
            addJob(demands, record, part.material, ready * part.perUnit, history);
        if (coverage->parts.size() == 2 && coverage->parts.front().perUnit > 0) {
            MaterialDemand& resin = demands.of.at(coverage->parts.front().material);
            resin.partner = coverage->parts.back().material;
            resin.partnerPerUnit = coverage->parts.back().perUnit / coverage->parts.front().perUnit;
        }
    }
}

void addConsumables(const std::vector<ConsumableRecord>& consumables, const JobTypes& planned,
    const Catalogue& catalogue, const UseHistory& history, Demands& demands)
{
    for (const ConsumableRecord& consumable : consumables) {
        const auto job = planned.find(consumable.jobType);
        if (job == planned.end() || consumable.classId.empty() || consumable.amount.milli <= 0)
            continue;
        for (auto& [id, demand] : demands.of) {
            const auto* material = catalogue.material(id);
            const auto* cls = catalogue.classOf(id);
            if (!material || !cls || cls->id != consumable.classId)
                continue;
            const auto own = convert(consumable.amount, demand.dimension, densityOf(*cls, *material));
            if (own)
                addJob(demands, job->second, id, own->value(), history);
            break;
        }
    }
}

/// What left the shelf in each month, and of that what no job of the plan explains.
void addMonths(const UseHistory& history, Demands& demands)
{
    for (auto& [id, demand] : demands.of) {
        demand.usedPerMonth.assign(history.monthsKept, 0);
        demand.otherUsePerMonth.assign(history.monthsKept, 0);
    }
    const std::size_t before = UseHistory::monthsLearned - history.monthsKept;
    for (const MonthTaking& taking : history.months) {
        const auto demand = demands.of.find(taking.material);
        if (demand == demands.of.end() || taking.month < before)
            continue;
        demand->second.usedPerMonth[taking.month - before] += taking.amount;
        if (!demands.withJob.contains({ taking.material, taking.type }))
            demand->second.otherUsePerMonth[taking.month - before] += taking.amount;
    }
}

std::optional<Range<Days>> spanOf(const Life& life)
{
    return life.kind == Life::Kind::Ages ? std::optional<Range<Days>>(life.span) : std::nullopt;
}

std::map<MaterialId, MaterialDemand> emptyDemands(const Catalogue& catalogue, UnitSystem units)
{
    std::map<MaterialId, MaterialDemand> demands;
    for (const auto& [id, material] : catalogue.materials) {
        const auto* cls = catalogue.classOf(id);
        if (!cls)
            continue;
        MaterialDemand demand;
        demand.material = id;
        demand.name = material.name;
        demand.dimension = cls->countedIn;
        const LifeFigures figures = lifeFiguresOf(*cls, material);
        demand.sealedLife = spanOf(figures.sealed);
        demand.openedLife = spanOf(figures.opened);
        if (figures.frost == Frost::Harms)
            demand.frostHarmsBelow = figures.freezesAt;
        for (const auto& [packId, pack] : catalogue.packs) {
            if (pack.material != id)
                continue;
            const auto own = convert(pack.amount, demand.dimension, densityOf(*cls, material));
            if (own && own->milli > 0)
                demand.packs.push_back(
                    { packId, formatAmount(pack.amount, units), *own, pack.price, pack.supplier,
                        pack.leadDays.value_or(usualLeadDays), pack.soldBy, pack.least, pack.gtin14 });
        }
        demands.emplace(id, std::move(demand));
    }
    return demands;
}

/// What passes today. Tests are assumed not to pass until they have.
void addStock(const std::vector<ShelfItem>& items, const Catalogue& catalogue, Demands& demands)
{
    for (const ShelfItem& item : items) {
        const auto demand = demands.of.find(item.material);
        if (demand == demands.of.end() || item.judgement.verdict != Verdict::Good)
            continue;
        const auto* cls = catalogue.classOf(item.material);
        const auto left = convert(
            item.left, demand->second.dimension, densityOf(*cls, *catalogue.material(item.material)));
        if (left)
            demand->second.stock.push_back({ *left, item.judgement.goodUntil, item.openedAt.has_value() });
    }
}

void suppose(const WhatIf& whatIf, Demands& demands)
{
    for (auto& [id, demand] : demands.of) {
        for (UseOfJob& job : demand.jobs) {
            if (!whatIf.moreOf.empty() && job.type == whatIf.moreOf.text)
                job.morePerMonth = whatIf.morePerMonth;
        }
        for (PackOffer& pack : demand.packs) {
            if (!whatIf.lateSupplier.empty() && pack.supplier == whatIf.lateSupplier)
                pack.leadDays += whatIf.lateDays;
        }
    }
}

/// What is ordered counts as stock, as fresh as it will come.
Result<void> addOnOrder(const Shop& shop, Demands& demands, Moment now)
{
    const auto orders = onOrder(shop, now);
    if (!orders)
        return tl::unexpected(orders.error());
    for (const auto& [material, order] : *orders) {
        const auto demand = demands.of.find(material);
        if (demand == demands.of.end())
            continue;
        MaterialDemand& of = demand->second;
        std::optional<Moment> until;
        if (of.sealedLife)
            until = later(startOf(order.due), of.sealedLife->low);
        of.stock.push_back({ order.amount, until, false });
        of.onOrder.dimension = of.dimension;
        of.onOrder.milli += order.amount.milli;
    }
    return {};
}

} // namespace

Result<std::vector<MaterialDemand>> monthDemands(
    const Shop& shop, const Catalogue& catalogue, Date monthStart, Moment now, const WhatIf& whatIf)
{
    auto jobTypes = shop.store().jobTypes();
    if (!jobTypes)
        return tl::unexpected(jobTypes.error());
    auto consumables = shop.store().consumables();
    if (!consumables)
        return tl::unexpected(consumables.error());
    auto items = shelf(shop, { now, {}, {}, {}, false, false });
    if (!items)
        return tl::unexpected(items.error());

    auto history = useHistory(shop, catalogue, monthStart, now);
    if (!history)
        return tl::unexpected(history.error());

    Demands demands { emptyDemands(catalogue, shop.units()), {} };
    const JobTypes planned = plannedTypes(*jobTypes, *history, whatIf);
    addJobs(planned, catalogue, *history, demands);
    addConsumables(*consumables, planned, catalogue, *history, demands);
    addMonths(*history, demands);
    addStock(*items, catalogue, demands);
    suppose(whatIf, demands);
    if (auto added = addOnOrder(shop, demands, now); !added)
        return tl::unexpected(added.error());

    std::vector<MaterialDemand> all;
    all.reserve(demands.of.size());
    for (auto& [id, demand] : demands.of)
        all.push_back(std::move(demand));
    return all;
}

} // namespace gw
