#include "demand/partners.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "measure/quoted.h"

namespace gw {

namespace {

// Ratios are given to three or four figures: amounts that agree this closely match.
constexpr double closeEnough = 1.005;
constexpr double worthNoting = 1.1;
constexpr double leastNoted = 1; // a gram is scale noise

std::optional<std::size_t> indexOf(const std::vector<MaterialDemand>& materials, const MaterialId& id)
{
    const auto found = std::find_if(
        materials.begin(), materials.end(), [&](const MaterialDemand& each) { return each.material == id; });
    if (found == materials.end())
        return std::nullopt;
    return static_cast<std::size_t>(found - materials.begin());
}

Amount roundedUp(double value, Dimension dimension)
{
    return { static_cast<std::int64_t>(std::ceil(value * 1000 - 1e-3)), dimension };
}

double orderedOf(const OrderDraft& draft) { return draft.choice ? draft.choice->ordered.value() : 0; }

double haveOf(const OrderDraft& draft) { return draft.runoff.usable.value() + orderedOf(draft); }

void raise(OrderDraft& draft, double need, double usePerMonth)
{
    if (need > draft.need.value() * closeEnough)
        draft.need = roundedUp(need, draft.need.dimension);
    if (usePerMonth > draft.usePerMonth * closeEnough)
        draft.usePerMonth = usePerMonth;
}

} // namespace

std::vector<PartnerLink> partnerLinks(
    const std::vector<MaterialDemand>& materials, std::vector<std::string>& notes)
{
    std::vector<PartnerLink> links;
    for (std::size_t i = 0; i < materials.size(); ++i) {
        const MaterialDemand& material = materials[i];
        if (!material.partner)
            continue;
        const auto partner = indexOf(materials, *material.partner);
        if (!partner || *partner == i) {
            notes.push_back("The partner of " + inQuotes(material.name)
                + " is not among the materials; it is planned alone.");
            continue;
        }
        const bool known = std::any_of(links.begin(), links.end(), [&](const PartnerLink& link) {
            return std::minmax(link.leader, link.follower) == std::minmax(i, *partner);
        });
        if (known)
            continue;
        const double ratio = material.partnerPerUnit;
        const MaterialDemand& other = materials[*partner];
        if (ratio > 0)
            links.push_back(
                ratio <= 1 ? PartnerLink { i, *partner, ratio } : PartnerLink { *partner, i, 1 / ratio });
        else if (other.partner != material.material || !(other.partnerPerUnit > 0))
            notes.push_back("The mix ratio of " + inQuotes(material.name) + " and " + inQuotes(other.name)
                + " is not known; they are planned apart.");
    }
    return links;
}

void alignNeeds(std::vector<OrderDraft>& drafts, const std::vector<PartnerLink>& links)
{
    std::vector<double> need(drafts.size());
    std::vector<double> use(drafts.size());
    std::vector<int> leaders(drafts.size());
    for (const PartnerLink& link : links) {
        need[link.follower] += link.ratio * drafts[link.leader].need.value();
        use[link.follower] += link.ratio * drafts[link.leader].usePerMonth;
        ++leaders[link.follower];
    }
    for (const PartnerLink& link : links) {
        OrderDraft& follower = drafts[link.follower];
        if (leaders[link.follower] == 1)
            raise(drafts[link.leader], follower.need.value() / link.ratio, follower.usePerMonth / link.ratio);
        if (need[link.follower] > follower.need.value() * closeEnough) {
            follower.leaderName = drafts[link.leader].demand->name;
            follower.perLeaderUnit = link.ratio;
        }
    }
    for (const PartnerLink& link : links)
        raise(drafts[link.follower], need[link.follower], use[link.follower]);
}

Amount matchingAmount(
    const std::vector<OrderDraft>& drafts, const std::vector<PartnerLink>& links, std::size_t follower)
{
    double wanted = 0;
    for (const PartnerLink& link : links) {
        const OrderDraft& leader = drafts[link.leader];
        if (link.follower == follower)
            wanted += link.ratio * (leader.choice ? haveOf(leader) : leader.need.value());
    }
    return roundedUp(wanted, drafts[follower].need.dimension);
}

void noteOneSidedStock(const std::vector<OrderDraft>& drafts, const std::vector<PartnerLink>& links,
    std::vector<std::string>& notes)
{
    const auto note = [&](const OrderDraft& draft, double amount, const OrderDraft& other) {
        if (amount < leastNoted)
            return;
        notes.push_back(formatAmount(amountOf(amount, draft.need.dimension)) + " of "
            + inQuotes(draft.demand->name) + " in stock has no " + inQuotes(other.demand->name)
            + " to go with it: one-sided stock, dead until there is some.");
    };
    for (const PartnerLink& link : links) {
        const OrderDraft& leader = drafts[link.leader];
        const OrderDraft& follower = drafts[link.follower];
        double wanted = 0; // of the follower, by all there will be of its leaders
        double wantedByStock = 0;
        for (const PartnerLink& each : links) {
            if (each.follower == link.follower) {
                wanted += each.ratio * haveOf(drafts[each.leader]);
                wantedByStock += each.ratio * drafts[each.leader].runoff.usable.value();
            }
        }
        const double followerInStock = follower.runoff.usable.value();
        if (followerInStock > wanted * worthNoting)
            note(follower, followerInStock - wanted, leader);
        // Of several leaders of one follower none comes first: each is short by the same share.
        if (wantedByStock > haveOf(follower) * worthNoting)
            note(leader, leader.runoff.usable.value() * (1 - haveOf(follower) / wantedByStock), follower);
    }
}

} // namespace gw
