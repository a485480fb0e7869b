#include "demand/orderplan.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "demand/orderbudget.h"
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

/// The days a draft's need is for: what is planned earlier is the stock's to serve.
PlannedSpan plannedSpan(const PlanRequest& request, Days span)
{
    const Moment from = orderingFrom(request);
    // What should have been done and is not waits still.
    return { from <= request.now ? Date { std::chrono::sys_days {} } : dateOf(from),
        dateOf(later(from, span)) };
}

Result<OrderDraft> draftOf(const MaterialDemand& demand, const PlanRequest& request, Notes& notes)
{
    OrderDraft draft;
    draft.demand = &demand;
    takeOffers(draft, request, notes);
    if (demand.sealedLife)
        draft.limits.sealed = std::min(demand.sealedLife->low, longestLife);
    if (demand.openedLife)
        draft.limits.opened = std::min(demand.openedLife->low, longestLife);
    const auto unknown = [&](const Error& error) {
        return fail(
            error.code, "The need of " + inQuotes(demand.name) + " cannot be worked out. " + error.sentence);
    };
    draft.use = forecastUse(demand, plannedSpan(request, draft.lead + Days { request.reviewDays }));
    draft.usePerMonth = draft.use.perMonth;
    auto ahead = useOver(draft.use, draft.lead + Days { request.reviewDays });
    if (!ahead)
        return unknown(ahead.error());
    draft.ahead = std::move(*ahead);
    // Work with a date may be more than is usual.
    draft.usePerMonth = std::max(
        draft.usePerMonth, draft.ahead.mean() / ((draft.lead + Days { request.reviewDays }) / meanMonth));
    const auto need = needOf(draft.ahead, request.servicePercent, demand.dimension);
    if (!need)
        return unknown(need.error());
    draft.need = *need;
    return draft;
}

void noteUnknownNeeds(const std::vector<OrderDraft>& drafts, Notes& notes)
{
    std::vector<std::string> names;
    for (const OrderDraft& draft : drafts) {
        const MaterialDemand& demand = *draft.demand;
        if (draft.need.milli == 0 && demand.jobs.empty() && demand.usedPerMonth.empty()
            && demand.otherUsePerMonth.empty())
            names.push_back(inQuotes(demand.name));
    }
    if (names.empty())
        return;
    std::string text = "No use of " + names.front();
    for (std::size_t i = 1; i < names.size(); ++i)
        text += (i + 1 < names.size() ? ", " : " and ") + names[i];
    notes.push_back(
        text + " is planned or on record; " + (names.size() == 1 ? "its" : "their") + " need is not known.");
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

void choose(OrderDraft& draft, const std::optional<Amount>& matching, double servicePercent)
{
    const double usePerDay = draft.usePerMonth / meanMonth.count();
    Amount wanted = draft.need;
    if (matching && matching->milli > draft.need.milli) {
        draft.matched = matching;
        wanted = *matching;
    }
    draft.gap = { std::max<std::int64_t>(0, wanted.milli - draft.runoff.usable.milli), wanted.dimension };
    draft.target = draft.gap;
    if (usePerDay > 0)
        draft.untilUsedUp
            = Days { std::max(0.0, draft.runoff.usable.value() / usePerDay - draft.lead.count()) };
    if (const auto cap = lifeCap(draft.limits, usePerDay, draft.untilUsedUp); cap && *cap < draft.gap.value())
        draft.target
            = { std::max<std::int64_t>(1, amountOf(*cap, draft.gap.dimension).milli), draft.gap.dimension };
    const auto goesOffAtOnce = [](const std::optional<Days>& life) { return life && life->count() <= 0; };
    if (!goesOffAtOnce(draft.limits.sealed) && !goesOffAtOnce(draft.limits.opened))
        draft.choice = choosePacks(draft.offers,
            { draft.target, usePerDay, draft.runoff.usable.value(), draft.untilUsedUp, &draft.ahead,
                servicePercent },
            draft.limits);
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
    line.riskWithout = draft.riskWithout();
    if (!draft.choice)
        return line;
    line.ordered = draft.choice->ordered;
    double lead = 0;
    for (const auto& [offer, count] : draft.choice->packs) {
        line.packs.push_back({ offer->pack, offer->name, offer->supplier, static_cast<int>(count),
            offer->price, offer->gtin, offer->amount });
        lead = std::max(lead, offer->leadDays);
    }
    if (request.doorstep && draft.demand->frostHarmsBelow)
        line.cold = coldArrival(*request.doorstep, *draft.demand->frostHarmsBelow,
            dateOf(orderingFrom(request)), Days { lead }, dateOf(request.now));
    if (line.cold)
        line.why += coldText(*line.cold, request.doorstep->name);
    if (draft.choice->lasts)
        line.latestUse = dateOf(later(orderingFrom(request), Days { lead } + *draft.choice->lasts));
    return line;
}

/// What may freeze on arrival, as far as the doorstep is not known.
void noteUnknownDoorstep(const std::vector<OrderDraft>& drafts, const PlanRequest& request, Notes& notes)
{
    const bool matters = std::any_of(drafts.begin(), drafts.end(), [&](const OrderDraft& draft) {
        if (!draft.choice || !draft.demand->frostHarmsBelow)
            return false;
        const Date arrives = dateOf(later(orderingFrom(request), draft.lead));
        return !request.doorstep || !request.doorstep->low(arrives);
    });
    if (!matters)
        return;
    notes.push_back(request.doorstep
            ? "How cold it gets at " + inQuotes(request.doorstep->name)
                + " then is not known, nor whether what frost spoils may freeze there on arrival."
            : std::string(
                  "Which place deliveries wait in was not said, so it is not known whether what frost "
                  "spoils may freeze on arrival."));
}

void noteLeft(OrderPlan& plan, const PlanRequest& request)
{
    if (plan.left.empty())
        return;
    std::string text = "Left for the next list, to stay within " + formatMoney(*request.budget) + ":";
    for (const OrderLine& line : plan.left) {
        const double percent = 100 * line.riskWithout;
        text += (&line == &plan.left.front() ? " " : "; ") + line.name + " ("
            + (percent < 1 ? "under 1" : figure(std::round(percent)))
            + " % risk of running short until then)";
    }
    plan.notes.push_back(text + ".");
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
    noteUnknownNeeds(drafts, plan.notes);
    for (OrderDraft& draft : drafts)
        runOffStock(draft, request, plan.notes);
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (!follows[i])
            choose(drafts[i], std::nullopt, request.servicePercent);
    }
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (follows[i])
            choose(drafts[i], matchingAmount(drafts, links, i), request.servicePercent);
    }
    noteOneSidedStock(drafts, links, plan.notes);

    const std::vector<bool> left = leftByBudget(drafts, links, request, plan.notes);
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        const OrderDraft& draft = drafts[i];
        if (draft.gap.milli <= 0)
            continue;
        (left[i] ? plan.left : plan.lines).push_back(lineOf(draft, request));
        if (draft.offers.empty())
            plan.notes.push_back(
                "No pack of " + inQuotes(draft.demand->name) + " can be ordered; enter one.");
    }
    std::stable_sort(plan.left.begin(), plan.left.end(),
        [](const OrderLine& a, const OrderLine& b) { return a.riskWithout < b.riskWithout; });
    noteUnknownDoorstep(drafts, request, plan.notes);
    noteLeft(plan, request);
    addTotals(plan);
    return plan;
}

} // namespace gw
