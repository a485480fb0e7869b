#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "demand/orderplan.h"
#include "demand/usedistribution.h"

namespace gw {

/// How long what arrives lasts, at the low end; none where no limit is known.
struct ShelfLimits {
    std::optional<Days> sealed; ///< from arrival
    std::optional<Days> opened; ///< from first opening
};

/// What is at hand and what may come, as far as a choice of packs asks.
struct PackNeed {
    Amount target; ///< must be covered
    double usePerDay = 0; ///< base units, as expected
    double usable = 0; ///< in stock, used before what is bought
    Days untilUsedUp {}; ///< from arrival until the stock is
    const UseDistribution* ahead
        = nullptr; ///< use over delivery and review; none: being short is not weighed
    double servicePercent = 95;
};

/// One kind of pack and how many of it.
struct PackTaken {
    const PackOffer* offer = nullptr; ///< of the offers handed in
    std::int64_t count = 0;
};

/// What to buy to cover an amount.
struct PackChoice {
    std::vector<PackTaken> packs; ///< one kind, or two with the larger first
    Amount ordered;
    double used = 0; ///< of that, before it goes off, at expected use; base units
    std::optional<Days> lasts; ///< after arrival, until the last of it goes off
};

/// Part of the use in a life that is counted on: the margin of the trade's rule of thumb (common practice, no
/// source).
inline constexpr double lifeCountedOn = 0.8;
/// More packs than this for one line is a mistake in a figure, not an order.
inline constexpr std::int64_t mostPacks = 10'000;

/// What packs of so much each give before they go off, opened one after the other once the stock is used up
/// (after a wait from arrival) and used at an even rate; a margin below 1 shortens the lives. Base units.
double usedInTime(const std::vector<PackTaken>& packs, const ShelfLimits& limits, double usePerDay,
    double margin, Days wait = {});

/// The most that may be ordered at once so that it is used within the sealed life: use x (life x 0.8 - wait).
/// None without a life.
std::optional<double> lifeCap(const ShelfLimits& limits, double usePerDay, Days wait = {});

/// The packs, of one kind or two, that cover the target at the least expected cost: price, what would go off
/// before it is used, valued at the least price of a unit on offer, and what is expected to be short in spite
/// of them at service/(1 - service) of that, the price of being short that makes this service level the best
/// one (newsvendor; own use of it). Whole cases only, and no fewer than are delivered. The cost of packs does
/// not depend on the target and being short falls ever slower with them, so a smaller target or more stock
/// never orders more. Beyond the target a further pack never pays, as the risk left is below 1 - service. A
/// price that is missing or zero counts as the dearest unit price known; with no price at all, or several
/// currencies, the amount stands for it. None when no offer covers the target with mostPacks packs. Offers
/// must be of one dimension and over zero.
std::optional<PackChoice> choosePacks(
    const std::vector<const PackOffer*>& offers, const PackNeed& need, const ShelfLimits& limits);

/// Unit price by which offers compare (minor units for each base unit), 1 for all where prices cannot be
/// compared.
std::vector<double> unitPrices(const std::vector<const PackOffer*>& offers);

} // namespace gw
