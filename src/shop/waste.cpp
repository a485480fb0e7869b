#include "shop/waste.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "demand/orderwords.h"
#include "demand/usage.h"
#include "shop/candidates.h"
#include "shop/cautions.h"
#include "shop/monthdemands.h"
#include "shop/shelf.h"
#include "shop/stock.h"

namespace gw {

namespace {

constexpr std::size_t worksNamed = 2;

/// "Chair, full (2.3 a month at 14 g)", the work that takes most of it first.
std::string useOnText(const MaterialDemand& demand, UnitSystem units)
{
    std::vector<ForecastJob> jobs = forecastUse(demand).jobs;
    std::sort(jobs.begin(), jobs.end(),
        [](const ForecastJob& a, const ForecastJob& b) { return a.perMonth() > b.perMonth(); });
    std::string text;
    for (std::size_t i = 0; i < std::min(jobs.size(), worksNamed); ++i)
        text += (i == 0 ? "" : "; ") + jobs[i].jobName + " (" + figure(jobs[i].rate.mean()) + " a month at "
            + formatAmount(amountOf(jobs[i].amount.mean, demand.dimension), units) + ")";
    return text;
}

/// Work nobody expects but that the material would do.
std::string couldDoText(
    const MaterialId& material, const Catalogue& catalogue, const std::vector<JobTypeRecord>& jobTypes)
{
    std::string text;
    std::size_t named = 0;
    for (const JobTypeRecord& jobType : jobTypes) {
        const auto coverages = coveragesFor(jobType, catalogue);
        const bool does = std::any_of(coverages.begin(), coverages.end(), [&](const Coverage& coverage) {
            return std::any_of(coverage.parts.begin(), coverage.parts.end(),
                [&](const PartShare& part) { return part.material == material; });
        });
        if (does && named < worksNamed) {
            text += (named == 0 ? "" : "; ") + jobType.name;
            ++named;
        }
    }
    return text;
}

std::map<ContainerId, ContainerRecord> byId(std::vector<ContainerRecord> containers)
{
    std::map<ContainerId, ContainerRecord> all;
    for (ContainerRecord& container : containers)
        all.emplace(container.id, std::move(container));
    return all;
}

bool isUse(const Entry& entry)
{
    return entry.deltaMilli < 0 && (entry.kind == EntryKind::Used || entry.kind == EntryKind::Mixed);
}

} // namespace

std::optional<Money> Worth::of(const ContainerRecord& container, Amount amount) const
{
    std::optional<Money> price = container.price;
    Amount holds = container.capacity;
    if (!price && container.pack) {
        if (const auto pack = m_catalogue.packs.find(*container.pack); pack != m_catalogue.packs.end()) {
            price = pack->second.price;
            holds = pack->second.amount;
        }
    }
    if (!price) {
        double least = 0;
        for (const auto& [id, pack] : m_catalogue.packs) {
            if (pack.material != container.material || !pack.price || pack.price->minorUnits <= 0)
                continue;
            const double unit = static_cast<double>(pack.price->minorUnits) / pack.amount.value();
            if (!price || unit < least) {
                least = unit;
                price = pack.price;
                holds = pack.amount;
            }
        }
    }
    const ClassRecord* cls = m_catalogue.classOf(container.material);
    const MaterialRecord* material = m_catalogue.material(container.material);
    if (!price || price->minorUnits <= 0 || holds.milli <= 0 || !cls || !material)
        return std::nullopt;
    const auto same = convert(amount, holds.dimension, densityOf(*cls, *material));
    if (!same)
        return std::nullopt;
    const double share = same->value() / holds.value();
    return Money { std::llround(static_cast<double>(price->minorUnits) * share), price->currency };
}

void addMoney(std::vector<Money>& sums, const Money& money)
{
    const auto same = std::find_if(
        sums.begin(), sums.end(), [&](const Money& sum) { return sum.currency == money.currency; });
    if (same == sums.end())
        sums.push_back(money);
    else
        same->minorUnits += money.minorUnits;
}

Result<ExpiringList> expiringSoon(const Shop& shop, int days, Moment asOf)
{
    if (days < 1 || days > 730)
        return fail(ErrorCode::BadInput, "Give the days to look ahead as 1 to 730.");
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto items = shelf(shop, { asOf, {}, {}, {}, false, false });
    if (!items)
        return tl::unexpected(items.error());
    auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    const auto jobTypes = shop.store().jobTypes();
    if (!jobTypes)
        return tl::unexpected(jobTypes.error());
    const Date today = dateOf(asOf);
    const auto demands
        = monthDemands(shop, *catalogue, Date { today.year(), today.month(), std::chrono::day { 1 } }, asOf);
    if (!demands)
        return tl::unexpected(demands.error());

    const auto records = byId(std::move(*containers));
    const Worth worth(*catalogue);
    ExpiringList list;
    for (const ShelfItem& item : *items) {
        const auto until = item.judgement.goodUntil;
        if (!until || *until < asOf || *until > later(asOf, Days { static_cast<double>(days) })
            || item.judgement.verdict == Verdict::DoNotUse)
            continue;
        Expiring soon { item.id, item.label, item.materialName, item.placeName, item.left, *until };
        soon.days = static_cast<int>(daysBetween(asOf, *until).count());
        if (const auto record = records.find(item.id); record != records.end())
            soon.worth = worth.of(record->second, item.left);
        const auto demand = std::find_if(demands->begin(), demands->end(),
            [&](const MaterialDemand& each) { return each.material == item.material; });
        if (demand != demands->end())
            soon.useOn = useOnText(*demand, shop.units());
        if (soon.useOn.empty())
            soon.useOn = couldDoText(item.material, *catalogue, *jobTypes);
        if (soon.worth)
            addMoney(list.worth, *soon.worth);
        else
            ++list.unpriced;
        list.items.push_back(std::move(soon));
    }
    std::stable_sort(list.items.begin(), list.items.end(),
        [](const Expiring& a, const Expiring& b) { return a.until < b.until; });
    return list;
}

Result<std::vector<DisposalGroup>> disposalList(const Shop& shop, Moment asOf)
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto items = shelf(shop, { asOf, {}, Verdict::DoNotUse, {}, false, false });
    if (!items)
        return tl::unexpected(items.error());
    std::vector<DisposalGroup> groups;
    for (const ShelfItem& item : *items) {
        auto handling = cautionsFor(shop, { catalogue->classOf(item.material) }, { "disposing" });
        if (!handling)
            return tl::unexpected(handling.error());
        auto group = std::find_if(groups.begin(), groups.end(),
            [&](const DisposalGroup& each) { return each.handling == *handling; });
        if (group == groups.end())
            group = groups.insert(groups.end(), DisposalGroup { *handling, {} });
        group->items.push_back({ item.label, item.materialName, item.placeName, item.left,
            item.judgement.reasons.empty() ? std::string() : item.judgement.reasons.front().text });
    }
    // What nothing is on record of comes last.
    std::stable_sort(groups.begin(), groups.end(), [](const DisposalGroup& a, const DisposalGroup& b) {
        return !a.handling.empty() && b.handling.empty();
    });
    return groups;
}

std::string localRulesDecide()
{
    return "This is how such things are usually handled. The label, the safety data sheet and the local "
           "rules "
           "decide; ask your waste site where they differ or say nothing.";
}

Result<WasteOfYear> wasteOfYear(const Shop& shop, Moment asOf)
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    const auto entries = shop.store().entriesUpTo(asOf);
    if (!entries)
        return tl::unexpected(entries.error());
    const auto records = byId(std::move(*containers));
    const auto reversed = reversedAmong(*entries);
    const Worth worth(*catalogue);
    WasteOfYear waste;
    waste.year = static_cast<int>(dateOf(asOf).year());
    const Moment begun = startOf(Date { dateOf(asOf).year(), std::chrono::January, std::chrono::day { 1 } });
    for (const Entry& entry : *entries) {
        if (!entry.container || entry.at < begun || entry.deltaMilli >= 0 || reversed.contains(entry.id))
            continue;
        const auto record = records.find(*entry.container);
        if (record == records.end())
            continue;
        const Amount amount { -entry.deltaMilli, record->second.capacity.dimension };
        const auto cost = worth.of(record->second, amount);
        if (isUse(entry) && cost)
            addMoney(waste.usedCost, *cost);
        if (entry.kind != EntryKind::Retired)
            continue;
        const MaterialRecord* material = catalogue->material(record->second.material);
        waste.items.push_back({ entry.at, record->second.label, material ? material->name : std::string(),
            amount, cost, entry.note });
        if (cost)
            addMoney(waste.cost, *cost);
        else
            ++waste.unpriced;
    }
    std::stable_sort(
        waste.items.begin(), waste.items.end(), [](const Wasted& a, const Wasted& b) { return a.at > b.at; });
    return waste;
}

} // namespace gw
