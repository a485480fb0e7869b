#pragma once

#include <cstdint>
#include <string>

namespace gw {

/// Money in minor units with its currency (ISO 4217).
struct Money {
    std::int64_t minorUnits = 0;
    std::string currency;
    friend bool operator==(const Money&, const Money&) = default;
};

std::string formatMoney(const Money& money); ///< "12.50 EUR"

} // namespace gw
