#pragma once

#include <cstdint>

#include "measure/error.h"

namespace gw {

/// Use over a span taken as normal. The mean is zero or more, the spread (standard deviation) too.
struct NormalUse {
    double mean = 0;
    double spread = 0;
};

/// The chance of sufficing that balances both costs: short / (short + over), each per unit and not negative,
/// not both zero. Errors: BadInput.
Result<double> criticalRatio(double shortageCost, double excessCost);

/// The level that balances them for one span: mean + z spread, and zero where that would be negative.
/// Errors: BadInput (as above; also when one cost is zero, as then nothing or no amount at all would do).
Result<double> newsvendorLevel(NormalUse use, double shortageCost, double excessCost);

/// Expected cost at that level: (short + over) spread phi(z). Errors as above.
Result<double> newsvendorCost(NormalUse use, double shortageCost, double excessCost);

/// Order-up-to level for a list every `review` periods with `lead` periods to delivery: mean (R+L) + z spread
/// sqrt(R+L), use given per period; zero where that would be negative. Errors: BadInput.
Result<double> orderUpToLevel(NormalUse perPeriod, double review, double lead, double servicePercent);

/// The least stock that suffices for Poisson use with this mean. Errors: BadInput.
Result<std::uint64_t> poissonLevel(double mean, double servicePercent);

/// Expected shortfall of a standard normal beyond z: phi(z) - z (1 - Phi(z)).
double normalLoss(double z);

} // namespace gw
