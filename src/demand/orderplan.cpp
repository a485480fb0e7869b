#include "demand/orderplan.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "demand/ordercheck.h"
#include "demand/orderdraft.h"
#include "demand/orderwords.h"
#include "demand/partners.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr Days longestLife { 36525 }; // a century: beyond it dates mean nothing

using Notes = std::vector<std::string>;

/// When the list's orders go out: now, or the start of a later month.
Moment orderingFrom(const PlanRequest& request)
{
    const Date first = request.monthStart.year() / request.monthStart.month() / std::chrono::day { 1 };
    return std::max(request.now, startOf(first));
}

/// The offers that can be weighed against each other. What comes only after the next list's quickest delivery
/// can wait for that list, so it is left out; it would stretch the time all others are asked to cover.
void takeOffers(OrderDraft& draft, const PlanRequest& request, Notes& notes)
{
    const MaterialDemand& demand = *draft.demand;
    double quickest = HUGE_VAL;
    for (const PackOffer& offer : demand.packs) {
        if (offer.amount.dimension == demand.dimension)
            quickest = std::min(quickest, offer.leadDays);
    }
    draft.lead = Days { PackOffer {}.leadDays };
    for (const PackOffer& offer : demand.packs) {
        const std::string which = "The pack " + inQuotes(offer.name) + " of " + inQuotes(demand.name);
        if (offer.amount.dimension != demand.dimension) {
            notes.push_back(which + " is given in " + std::string(baseUnit(offer.amount.dimension))
                + " and the use in " + std::string(baseUnit(demand.dimension)) + "; it is left out.");
        } else if (offer.leadDays > quickest + request.reviewDays) {
            notes.push_back(which + " takes " + figure(std::round(offer.leadDays)) + " days to come, others "
                + figure(std::round(quickest)) + "; it is left out.");
        } else {
            draft.lead = draft.offers.empty() ? Days { offer.leadDays }
                                              : std::max(draft.lead, Days { offer.leadDays });
            draft.offers.push_back(&offer);
        }
    }
}

Result<OrderDraft> draftOf(const MaterialDemand& demand, const PlanRequest& request, Notes& notes)
{
    OrderDraft draft;
    draft.demand = &demand;
    takeOffers(draft, request, notes);
    draft.use = forecastUse(demand);
    draft.usePerMonth = draft.use.perMonth;
    if (demand.sealedLife)
        draft.limits.sealed = std::min(demand.sealedLife->low, longestLife);
    if (demand.openedLife)
        draft.limits.opened = std::min(demand.openedLife->low, longestLife);
    const auto need = needOver(
        draft.use, draft.lead + Days { request.reviewDays }, request.servicePercent, demand.dimension);
    if (!need)
        return fail(need.error().code,
            "The need of " + inQuotes(demand.name) + " cannot be worked out. " + need.error().sentence);
    draft.need = *need;
    return draft;
}

void noteUnknownNeed(const OrderDraft& draft, Notes& notes)
{
    const MaterialDemand& demand = *draft.demand;
    if (draft.need.milli == 0 && demand.jobs.empty() && demand.usedPerMonth.empty()
        && demand.otherUsePerMonth.empty())
        notes.push_back(
            "No use of " + inQuotes(demand.name) + " is planned or on record; its need is not known.");
}

void runOffStock(OrderDraft& draft, const PlanRequest& request, Notes& notes)
{
    std::vector<UsableLot> stock;
    for (const UsableLot& lot : draft.demand->stock) {
        if (lot.left.dimension == draft.demand->dimension)
            stock.push_back(lot);
        else
            notes.push_back("A container of " + inQuotes(draft.demand->name) + " is kept in "
                + std::string(baseUnit(lot.left.dimension)) + "; it is not counted.");
    }
    const Days wait = daysBetween(request.now, orderingFrom(request));
    draft.runoff = runOff(std::move(stock), draft.demand->dimension,
        { request.now, wait, draft.lead + Days { request.reviewDays } },
        draft.usePerMonth / meanMonth.count(), draft.limits.opened);
}

void choose(OrderDraft& draft, const std::optional<Amount>& matching)
{
    const double usePerDay = draft.usePerMonth / meanMonth.count();
    Amount wanted = draft.need;
    if (matching && matching->milli > draft.need.milli) {
        draft.matched = matching;
        wanted = *matching;
    }
    draft.gap = { std::max<std::int64_t>(0, wanted.milli - draft.runoff.usable.milli), wanted.dimension };
    draft.target = draft.gap;
    if (const auto cap = lifeCap(draft.limits, usePerDay); cap && *cap < draft.gap.value())
        draft.target
            = { std::max<std::int64_t>(1, amountOf(*cap, draft.gap.dimension).milli), draft.gap.dimension };
    const auto goesOffAtOnce = [](const std::optional<Days>& life) { return life && life->count() <= 0; };
    if (!goesOffAtOnce(draft.limits.sealed) && !goesOffAtOnce(draft.limits.opened))
        draft.choice = choosePacks(draft.offers, draft.target, draft.limits, usePerDay);
}

std::vector<bool> followersAmong(const std::vector<PartnerLink>& links, std::size_t count)
{
    std::vector<bool> follows(count, false);
    for (const PartnerLink& link : links)
        follows[link.follower] = true;
    return follows;
}

OrderLine lineOf(const OrderDraft& draft, const PlanRequest& request)
{
    OrderLine line;
    line.material = draft.demand->material;
    line.name = draft.demand->name;
    line.need = draft.need;
    line.usable = draft.runoff.usable;
    line.ordered = Amount { 0, draft.demand->dimension };
    line.why = whyOrdered(draft, request);
    if (!draft.choice)
        return line;
    line.ordered = draft.choice->ordered;
    double lead = 0;
    for (const auto& [offer, count] : draft.choice->packs) {
        line.packs.push_back(
            { offer->pack, offer->name, offer->supplier, static_cast<int>(count), offer->price });
        lead = std::max(lead, offer->leadDays);
    }
    if (draft.choice->lasts)
        line.latestUse = dateOf(later(orderingFrom(request), Days { lead } + *draft.choice->lasts));
    return line;
}

void addTotals(OrderPlan& plan)
{
    for (const OrderLine& line : plan.lines) {
        for (const PackCount& pack : line.packs) {
            if (!pack.price || pack.price->minorUnits == 0) {
                plan.notes.push_back("The price of " + inQuotes(pack.name) + " of " + inQuotes(line.name)
                    + " is not known; the total is without it.");
                continue;
            }
            const auto same = std::find_if(plan.totals.begin(), plan.totals.end(),
                [&](const Money& total) { return total.currency == pack.price->currency; });
            Money& total = same != plan.totals.end()
                ? *same
                : plan.totals.emplace_back(Money { 0, pack.price->currency });
            total.minorUnits += pack.price->minorUnits * pack.count;
        }
    }
}

} // namespace

Result<OrderPlan> planOrder(const PlanRequest& request, const std::vector<MaterialDemand>& materials)
{
    if (const auto flaw = flawIn(request))
        return tl::unexpected(*flaw);
    OrderPlan plan;
    std::vector<OrderDraft> drafts;
    for (const MaterialDemand& material : materials) {
        if (const auto flaw = flawIn(material))
            return tl::unexpected(*flaw);
        auto draft = draftOf(material, request, plan.notes);
        if (!draft)
            return tl::unexpected(draft.error());
        drafts.push_back(std::move(*draft));
    }

    const std::vector<PartnerLink> links = partnerLinks(materials, plan.notes);
    alignNeeds(drafts, links);
    const std::vector<bool> follows = followersAmong(links, drafts.size());
    for (OrderDraft& draft : drafts) {
        noteUnknownNeed(draft, plan.notes);
        runOffStock(draft, request, plan.notes);
    }
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (!follows[i])
            choose(drafts[i], std::nullopt);
    }
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (follows[i])
            choose(drafts[i], matchingAmount(drafts, links, i));
    }
    noteOneSidedStock(drafts, links, plan.notes);

    for (const OrderDraft& draft : drafts) {
        if (draft.gap.milli <= 0)
            continue;
        plan.lines.push_back(lineOf(draft, request));
        if (draft.offers.empty())
            plan.notes.push_back(
                "No pack of " + inQuotes(draft.demand->name) + " can be ordered; enter one.");
    }
    addTotals(plan);
    return plan;
}

} // namespace gw
