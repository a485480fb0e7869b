#include "demand/orderbudget.h"

#include <algorithm>
#include <numeric>

#include "measure/quoted.h"

namespace gw {

namespace {

/// Drafts that are only of use together, with what they cost and what they keep from being short.
struct Group {
    std::vector<std::size_t> drafts;
    std::int64_t cost = 0; ///< minor units
    double kept = 0; ///< minor units' worth not short
    double worth() const { return kept / static_cast<double>(std::max<std::int64_t>(1, cost)); }
};

/// Minor units; none when a price is missing or in another currency.
std::optional<std::int64_t> costOf(const PackChoice& choice, const std::string& currency)
{
    std::int64_t cost = 0;
    for (const auto& [offer, count] : choice.packs) {
        if (!offer->price || offer->price->minorUnits <= 0 || offer->price->currency != currency)
            return std::nullopt;
        cost += offer->price->minorUnits * count;
    }
    return cost;
}

/// The first draft each draft is linked with.
std::vector<std::size_t> rootsOf(std::size_t count, const std::vector<PartnerLink>& links)
{
    std::vector<std::size_t> roots(count);
    std::iota(roots.begin(), roots.end(), std::size_t { 0 });
    for (std::size_t pass = 0; pass < links.size(); ++pass) {
        for (const PartnerLink& link : links)
            roots[link.leader] = roots[link.follower] = std::min(roots[link.leader], roots[link.follower]);
    }
    return roots;
}

void add(Group& group, std::size_t index, const OrderDraft& draft, std::int64_t cost)
{
    group.drafts.push_back(index);
    group.cost += cost;
    const double usable = draft.runoff.usable.value();
    const double ordered = draft.choice->ordered.value();
    const double unit = static_cast<double>(cost) / ordered;
    group.kept += unit * (draft.ahead.expectedShort(usable) - draft.ahead.expectedShort(usable + ordered));
}

} // namespace

std::vector<bool> leftByBudget(const std::vector<OrderDraft>& drafts, const std::vector<PartnerLink>& links,
    const PlanRequest& request, std::vector<std::string>& notes)
{
    std::vector<bool> left(drafts.size(), false);
    if (!request.budget)
        return left;
    const std::vector<std::size_t> roots = rootsOf(drafts.size(), links);
    std::vector<Group> groups(drafts.size());
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (drafts[i].gap.milli <= 0 || !drafts[i].choice)
            continue;
        if (const auto cost = costOf(*drafts[i].choice, request.budget->currency))
            add(groups[roots[i]], i, drafts[i], *cost);
        else
            notes.push_back("What " + inQuotes(drafts[i].demand->name) + " costs in "
                + request.budget->currency + " is not known; the budget is reckoned without it.");
    }
    std::erase_if(groups, [](const Group& group) { return group.drafts.empty(); });
    std::stable_sort(
        groups.begin(), groups.end(), [](const Group& a, const Group& b) { return a.worth() > b.worth(); });
    std::int64_t open = request.budget->minorUnits;
    for (const Group& group : groups) {
        if (group.cost <= open) {
            open -= group.cost;
            continue;
        }
        for (const std::size_t draft : group.drafts)
            left[draft] = true;
    }
    return left;
}

} // namespace gw
