#pragma once

#include <memory>

#include "shop/shop.h"

namespace gw {

/// The shop's climate as it was known at a moment: a reading after it bounds no gap and tells no season.
/// Stands until the shop is asked for its climate again.
class ClimateAsOf {
public:
    /// Errors: those of Shop::climate(). Of a moment that has readings after it the climate is made for this
    /// question alone, which takes a while with years of them.
    static Result<ClimateAsOf> of(const Shop& shop, const Catalogue& catalogue, Moment asOf);

    const WatchedClimate& operator*() const { return m_then ? *m_then : *m_now; }

private:
    const WatchedClimate* m_now = nullptr;
    std::shared_ptr<const WatchedClimate> m_then;
};

} // namespace gw
