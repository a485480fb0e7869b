#pragma once

#include <string>
#include <utility>
#include <vector>

#include "demand/orderplan.h"

namespace gw::test {

/// Materials and requests as the order plan takes them, all in an invented shop in June 2026.
inline const Moment june
    = std::chrono::sys_days { Date { std::chrono::June / 1 / 2026 } } + std::chrono::hours { 8 };

inline PlanRequest juneList(double servicePercent = 95)
{
    return { Date { std::chrono::June / 1 / 2026 }, june, servicePercent, 30.436875 };
}

inline Range<Days> months(double low, double high) { return { meanMonth * low, meanMonth * high }; }

inline PackOffer offer(const std::string& name, Amount amount, std::int64_t minorUnits, double leadDays = 7)
{
    PackOffer pack;
    pack.pack = PackId { name };
    pack.name = name;
    pack.amount = amount;
    if (minorUnits >= 0)
        pack.price = Money { minorUnits, "EUR" };
    pack.leadDays = leadDays;
    return pack;
}

inline UsableLot lot(double value, double daysLeft, bool opened = false)
{
    return { grams(value), later(june, Days { daysLeft }), opened };
}

inline MaterialDemand material(
    const std::string& name, std::vector<double> usedPerMonth, std::vector<PackOffer> packs)
{
    MaterialDemand demand;
    demand.material = MaterialId { name };
    demand.name = name;
    demand.usedPerMonth = std::move(usedPerMonth);
    demand.packs = std::move(packs);
    return demand;
}

inline bool has(const std::string& text, const std::string& part)
{
    return text.find(part) != std::string::npos;
}

} // namespace gw::test
