#pragma once

#include <memory>
#include <optional>
#include <string>

#include "shop/shop.h"

namespace gw {

/// What every command shares: the general options as typed, and the shop, opened when a command first needs
/// it.
struct CommandContext {
    std::string storeWhere; ///< --store, else the default
    std::string asOfText; ///< --as-of as typed
    bool json = false;
    std::string unitsText = "metric";
    Moment now; ///< the clock when the program started

    UnitSystem units() const { return unitsText == "us" ? UnitSystem::Us : UnitSystem::Metric; }
    /// The moment asked about: --as-of, else now. Errors: BadInput.
    Result<Moment> asOf() const;
    /// The shop on its store. Errors: those of Store::open.
    Result<Shop*> shop();

private:
    std::unique_ptr<Shop> m_shop;
};

/// This moment, from the machine's clock.
Moment clockNow();

} // namespace gw
