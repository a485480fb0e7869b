#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "demand/orderdraft.h"

namespace gw {

/// Two materials used together. The larger part of the mix leads: the other follows its orders, never the
/// other way round, as rounding up to packs on both sides would chase itself.
struct PartnerLink {
    std::size_t leader = 0;
    std::size_t follower = 0;
    double ratio = 0; ///< units of the follower for each unit of the leader, at most 1
};

/// The links among the materials, each pair once. What cannot be linked is noted.
std::vector<PartnerLink> partnerLinks(
    const std::vector<MaterialDemand>& materials, std::vector<std::string>& notes);

/// Raises use and need so that both sides of a pair ask for amounts that can be mixed with each other.
void alignNeeds(std::vector<OrderDraft>& drafts, const std::vector<PartnerLink>& links);

/// What of a follower must be there to go with its leaders once their packs are chosen: all of a leader that
/// is ordered, and of one that is not what it needs. Zero for a material that follows none.
Amount matchingAmount(
    const std::vector<OrderDraft>& drafts, const std::vector<PartnerLink>& links, std::size_t follower);

/// Stock that has nothing to be mixed with, even after what is ordered has come.
void noteOneSidedStock(const std::vector<OrderDraft>& drafts, const std::vector<PartnerLink>& links,
    std::vector<std::string>& notes);

} // namespace gw
