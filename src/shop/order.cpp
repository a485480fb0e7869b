#include "shop/work.h"

#include <algorithm>
#include <array>
#include <map>

#include "shop/candidates.h"
#include "shop/shelf.h"
#include "shop/stock.h"

namespace gw {

namespace {

/// How many whole months of use before the plan it learns from.
constexpr int monthsLearned = 12;
/// When no pack says how long its supplier takes.
constexpr double usualLeadDays = 7;

struct Use {
    std::array<double, monthsLearned> all {};
    std::array<double, monthsLearned> other {}; ///< not explained by a job type with a rate
};

/// Which of the months before the plan a moment falls in: 0 the oldest; none outside them.
std::optional<std::size_t> monthIndex(Moment at, Date monthStart)
{
    const Date day = dateOf(at);
    const auto back = (monthStart.year() / monthStart.month()) - (day.year() / day.month());
    const int months = static_cast<int>(back.count());
    if (months < 1 || months > monthsLearned)
        return std::nullopt;
    return static_cast<std::size_t>(monthsLearned - months);
}

/// Job types whose materials the plan works out from their rate.
std::map<JobTypeId, JobTypeRecord> plannedTypes(const std::vector<JobTypeRecord>& jobTypes)
{
    std::map<JobTypeId, JobTypeRecord> planned;
    for (const JobTypeRecord& jobType : jobTypes) {
        if (jobType.perMonth > 0)
            planned.emplace(jobType.id, jobType);
    }
    return planned;
}

Result<std::map<MaterialId, Use>> useSoFar(
    const Shop& shop, const std::map<JobTypeId, JobTypeRecord>& planned, Date monthStart, Moment now)
{
    auto entries = shop.store().entriesUpTo(now);
    if (!entries)
        return tl::unexpected(entries.error());
    auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    auto jobs = shop.store().jobs();
    if (!jobs)
        return tl::unexpected(jobs.error());

    std::map<ContainerId, MaterialId> materialOf;
    for (const ContainerRecord& container : *containers)
        materialOf.emplace(container.id, container.material);
    std::map<JobId, JobTypeId> typeOf;
    for (const JobRecord& job : *jobs)
        typeOf.emplace(job.id, job.type);

    const auto reversed = reversedAmong(*entries);
    std::map<MaterialId, Use> uses;
    for (const Entry& entry : *entries) {
        const bool takesOut = entry.kind == EntryKind::Used || entry.kind == EntryKind::Mixed
            || entry.kind == EntryKind::Counted;
        if (!takesOut || !entry.container || entry.deltaMilli >= 0 || reversed.contains(entry.id))
            continue;
        const auto index = monthIndex(entry.at, monthStart);
        const auto material = materialOf.find(*entry.container);
        if (!index || material == materialOf.end())
            continue;
        const double amount = static_cast<double>(-entry.deltaMilli) / 1000.0;
        Use& use = uses[material->second];
        use.all[*index] += amount;
        const auto type = entry.job ? typeOf.find(*entry.job) : typeOf.end();
        if (type == typeOf.end() || !planned.contains(type->second))
            use.other[*index] += amount;
    }
    return uses;
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

void addJobs(const std::map<JobTypeId, JobTypeRecord>& planned, const Catalogue& catalogue,
    std::map<MaterialId, MaterialDemand>& demands)
{
    for (const auto& [id, record] : planned) {
        const auto coverages = coveragesFor(record, catalogue);
        const Coverage* coverage = plannedCoverage(coverages, demands);
        if (!coverage)
            continue;
        const double ready = needFor(jobTypeOf(record), 1).value();
        for (const PartShare& part : coverage->parts)
            demands.at(part.material).jobs.push_back({ record.name, record.perMonth, ready * part.perUnit });
        if (coverage->parts.size() == 2 && coverage->parts.front().perUnit > 0) {
            MaterialDemand& resin = demands.at(coverage->parts.front().material);
            resin.partner = coverage->parts.back().material;
            resin.partnerPerUnit = coverage->parts.back().perUnit / coverage->parts.front().perUnit;
        }
    }
}

void addConsumables(const std::vector<ConsumableRecord>& consumables,
    const std::map<JobTypeId, JobTypeRecord>& planned, const Catalogue& catalogue,
    std::map<MaterialId, MaterialDemand>& demands)
{
    for (const ConsumableRecord& consumable : consumables) {
        const auto job = planned.find(consumable.jobType);
        if (job == planned.end() || consumable.classId.empty() || consumable.amount.milli <= 0)
            continue;
        for (auto& [id, demand] : demands) {
            const auto* material = catalogue.material(id);
            const auto* cls = catalogue.classOf(id);
            if (!material || !cls || cls->id != consumable.classId)
                continue;
            const auto own = convert(consumable.amount, demand.dimension, densityOf(*cls, *material));
            if (own)
                demand.jobs.push_back({ job->second.name, job->second.perMonth, own->value() });
            break;
        }
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
        for (const auto& [packId, pack] : catalogue.packs) {
            if (pack.material != id)
                continue;
            const auto own = convert(pack.amount, demand.dimension, densityOf(*cls, material));
            if (own && own->milli > 0)
                demand.packs.push_back({ packId, formatAmount(pack.amount, units), *own, pack.price,
                    pack.supplier, pack.leadDays.value_or(usualLeadDays) });
        }
        demands.emplace(id, std::move(demand));
    }
    return demands;
}

} // namespace

Result<OrderPlan> orderForMonth(const Shop& shop, Date monthStart, double servicePercent, Moment now)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto jobTypes = shop.store().jobTypes();
    if (!jobTypes)
        return tl::unexpected(jobTypes.error());
    auto consumables = shop.store().consumables();
    if (!consumables)
        return tl::unexpected(consumables.error());
    auto items = shelf(shop, { now, {}, {}, {}, false, false });
    if (!items)
        return tl::unexpected(items.error());

    const auto planned = plannedTypes(*jobTypes);
    auto uses = useSoFar(shop, planned, monthStart, now);
    if (!uses)
        return tl::unexpected(uses.error());

    auto demands = emptyDemands(*catalogue, shop.units());
    addJobs(planned, *catalogue, demands);
    addConsumables(*consumables, planned, *catalogue, demands);
    for (auto& [id, demand] : demands) {
        const Use& use = (*uses)[id];
        demand.usedPerMonth.assign(use.all.begin(), use.all.end());
        demand.otherUsePerMonth.assign(use.other.begin(), use.other.end());
    }
    for (const ShelfItem& item : *items) {
        const auto demand = demands.find(item.material);
        // Tests are assumed not to pass until they have.
        if (demand == demands.end() || item.judgement.verdict != Verdict::Good)
            continue;
        const auto* cls = catalogue->classOf(item.material);
        const auto left = convert(
            item.left, demand->second.dimension, densityOf(*cls, *catalogue->material(item.material)));
        if (left)
            demand->second.stock.push_back({ *left, item.judgement.goodUntil, item.openedAt.has_value() });
    }

    std::vector<MaterialDemand> all;
    all.reserve(demands.size());
    for (auto& [id, demand] : demands)
        all.push_back(std::move(demand));
    return planOrder({ monthStart, now, servicePercent }, all);
}

} // namespace gw
