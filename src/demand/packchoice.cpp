#include "demand/packchoice.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <tuple>

namespace gw {

namespace {

/// The least number that can be had of a pack and is no lower: whole cases, and not below the minimum.
std::int64_t orderable(std::int64_t count, const PackOffer& offer)
{
    if (count <= 0)
        return 0;
    const std::int64_t least = std::max<std::int64_t>(count, offer.least);
    return (least + offer.soldBy - 1) / offer.soldBy * offer.soldBy;
}

std::int64_t packsToCover(std::int64_t milli, const PackOffer& offer)
{
    return milli <= 0 ? 0 : orderable((milli - 1) / offer.amount.milli + 1, offer);
}

Amount amountIn(const std::vector<PackTaken>& packs)
{
    Amount sum { 0, packs.front().offer->amount.dimension };
    for (const auto& [offer, count] : packs)
        sum.milli += offer->amount.milli * count;
    return sum;
}

/// Days the packs take to be used or to go off once opened, the sealed life not counted.
double daysToEmpty(
    const std::vector<PackTaken>& packs, const ShelfLimits& limits, double usePerDay, double margin)
{
    double days = 0;
    for (const auto& [offer, count] : packs) {
        double each = offer->amount.value() / usePerDay;
        if (limits.opened)
            each = std::min(each, limits.opened->count() * margin);
        days += each * static_cast<double>(count);
    }
    return days;
}

std::optional<Days> lastsFor(
    const std::vector<PackTaken>& packs, const ShelfLimits& limits, const PackNeed& need)
{
    if (!limits.opened)
        return limits.sealed;
    // The last pack is opened when the others are empty or gone off.
    const double lastOne
        = std::min(packs.back().offer->amount.value() / need.usePerDay, limits.opened->count());
    const double ends = need.untilUsedUp.count() + daysToEmpty(packs, limits, need.usePerDay, 1) - lastOne
        + limits.opened->count();
    return Days { limits.sealed ? std::min(ends, limits.sealed->count()) : ends };
}

/// Weighs sets of packs against each other and keeps the best: least cost, then least amount, then fewest
/// packs.
class Weighing {
public:
    Weighing(const std::vector<const PackOffer*>& offers, const PackNeed& need, const ShelfLimits& limits)
        : m_need(need)
        , m_offers(offers)
        , m_unitPrices(unitPrices(offers))
        , m_unitOfWaste(*std::min_element(m_unitPrices.begin(), m_unitPrices.end()))
        , m_unitOfShortage(m_unitOfWaste * need.servicePercent / (100 - need.servicePercent))
        , m_limits(limits)
    {
    }

    void consider(
        std::size_t larger, std::int64_t largerCount, std::size_t smaller, std::int64_t smallerCount)
    {
        if (largerCount + smallerCount > mostPacks)
            return;
        std::vector<PackTaken> packs;
        double price = 0;
        std::int64_t unpriced = 0;
        const auto take = [&](std::size_t which, std::int64_t count) {
            if (count == 0)
                return;
            packs.push_back({ m_offers[which], count });
            price += m_unitPrices[which] * m_offers[which]->amount.value() * static_cast<double>(count);
            if (!m_offers[which]->price || m_offers[which]->price->minorUnits == 0)
                unpriced += count;
        };
        take(larger, largerCount);
        take(smaller, smallerCount);

        const Amount ordered = amountIn(packs);
        const double waste = ordered.value()
            - usedInTime(packs, m_limits, m_need.usePerDay, lifeCountedOn, m_need.untilUsedUp);
        const double missing
            = m_need.ahead ? m_need.ahead->expectedShort(m_need.usable + ordered.value()) : 0;
        const double sum = price + m_unitOfWaste * std::max(0.0, waste) + m_unitOfShortage * missing;
        // Rounded, so that sets that cost the same tie whatever the last digits of their sums.
        const double cost = std::round(sum * 1e4);
        const Rank rank { cost, ordered.milli, unpriced, largerCount + smallerCount };
        if (!m_best || rank < m_rank) {
            m_rank = rank;
            m_best = PackChoice { packs, ordered,
                usedInTime(packs, m_limits, m_need.usePerDay, 1, m_need.untilUsedUp),
                lastsFor(packs, m_limits, m_need) };
        }
    }

    const std::optional<PackChoice>& best() const { return m_best; }

private:
    using Rank = std::tuple<double, std::int64_t, std::int64_t, std::int64_t>;

    const PackNeed& m_need;
    const std::vector<const PackOffer*>& m_offers;
    std::vector<double> m_unitPrices;
    double m_unitOfWaste;
    double m_unitOfShortage;
    const ShelfLimits& m_limits;
    Rank m_rank;
    std::optional<PackChoice> m_best;
};

} // namespace

std::vector<double> unitPrices(const std::vector<const PackOffer*>& offers)
{
    std::vector<double> prices(offers.size(), 0);
    const std::string* currency = nullptr;
    double dearest = 0;
    for (std::size_t i = 0; i < offers.size(); ++i) {
        const auto& price = offers[i]->price;
        if (!price || price->minorUnits <= 0)
            continue;
        if (currency && *currency != price->currency)
            return std::vector<double>(offers.size(), 1.0);
        currency = &price->currency;
        prices[i] = static_cast<double>(price->minorUnits) / offers[i]->amount.value();
        dearest = std::max(dearest, prices[i]);
    }
    for (double& price : prices) {
        if (price == 0)
            price = currency ? dearest : 1.0;
    }
    return prices;
}

double usedInTime(const std::vector<PackTaken>& packs, const ShelfLimits& limits, double usePerDay,
    double margin, Days wait)
{
    if (!limits.opened && !limits.sealed)
        return amountIn(packs).value();
    if (!(usePerDay > 0))
        return 0;
    double days = daysToEmpty(packs, limits, usePerDay, margin);
    if (limits.sealed)
        days = std::clamp(limits.sealed->count() * margin - wait.count(), 0.0, days);
    return std::min(days * usePerDay, amountIn(packs).value());
}

std::optional<double> lifeCap(const ShelfLimits& limits, double usePerDay, Days wait)
{
    if (!limits.sealed)
        return std::nullopt;
    return usePerDay * std::max(0.0, limits.sealed->count() * lifeCountedOn - wait.count());
}

std::optional<PackChoice> choosePacks(
    const std::vector<const PackOffer*>& offers, const PackNeed& need, const ShelfLimits& limits)
{
    if (offers.empty() || need.target.milli <= 0 || !(need.usePerDay > 0))
        return std::nullopt;
    std::vector<const PackOffer*> bySize = offers;
    // Equal ones in the order they were entered in.
    std::sort(bySize.begin(), bySize.end(), [](const PackOffer* a, const PackOffer* b) {
        return a->amount != b->amount ? a->amount > b->amount : std::less<>()(a, b);
    });

    Weighing weighing(bySize, need, limits);
    for (std::size_t larger = 0; larger < bySize.size(); ++larger) {
        const PackOffer& offer = *bySize[larger];
        const std::int64_t alone = packsToCover(need.target.milli, offer);
        weighing.consider(larger, alone, larger, 0);
        for (std::size_t smaller = larger + 1; smaller < bySize.size(); ++smaller) {
            for (std::int64_t count = orderable(1, offer); count < std::min(alone, mostPacks);
                count += offer.soldBy) {
                const std::int64_t rest = need.target.milli - count * offer.amount.milli;
                weighing.consider(larger, count, smaller, packsToCover(rest, *bySize[smaller]));
            }
        }
    }
    return weighing.best();
}

} // namespace gw
