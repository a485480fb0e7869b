#include "shop/work.h"

#include "shop/doorstep.h"
#include "shop/monthdemands.h"

namespace gw {

namespace {

/// The doorstep asked for, else the shop's own; none when neither was said.
Result<std::optional<Doorstep>> findDoorstep(
    const Shop& shop, const Catalogue& catalogue, const OrderAsked& asked, Moment now)
{
    std::string name = asked.doorstep;
    if (name.empty()) {
        auto said = doorstepName(shop);
        if (!said)
            return tl::unexpected(said.error());
        name = *said;
    }
    if (name.empty())
        return std::optional<Doorstep> {};
    auto doorstep = doorstepOf(shop, catalogue, name, now);
    if (!doorstep)
        return tl::unexpected(doorstep.error());
    return std::optional<Doorstep>(std::move(*doorstep));
}

} // namespace

Result<OrderHeading> orderHeading(const Shop& shop, Date monthStart, Moment now)
{
    const auto name = shop.store().setting("shop_name");
    if (!name)
        return tl::unexpected(name.error());
    return OrderHeading { name->value_or(std::string()), monthStart, dateOf(now), shop.units() };
}

Result<OrderPlan> orderForMonth(const Shop& shop, const OrderAsked& asked, Moment now)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto demands = monthDemands(shop, *catalogue, asked.monthStart, now, asked.whatIf);
    if (!demands)
        return tl::unexpected(demands.error());
    auto doorstep = findDoorstep(shop, *catalogue, asked, now);
    if (!doorstep)
        return tl::unexpected(doorstep.error());
    PlanRequest request { asked.monthStart, now, asked.servicePercent };
    request.budget = asked.budget;
    request.doorstep = std::move(*doorstep);
    return planOrder(request, *demands);
}

} // namespace gw
