#include "shop/climateasof.h"

namespace gw {

Result<ClimateAsOf> ClimateAsOf::of(const Shop& shop, const Catalogue& catalogue, Moment asOf)
{
    auto now = shop.climate(catalogue);
    if (!now)
        return tl::unexpected(now.error());
    ClimateAsOf climate;
    climate.m_now = *now;
    if (auto then = (*now)->asOf(asOf))
        climate.m_then = std::make_shared<const WatchedClimate>(std::move(*then));
    return climate;
}

} // namespace gw
