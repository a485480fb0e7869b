#pragma once

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "measure/error.h"

namespace gw {

/// One amount a single job may take, and how probable that is (0 to 1).
struct AmountChance {
    double amount = 0; ///< in any one unit, not negative
    double probability = 0;
};

/// The largest step of which all amounts are whole multiples, taking amounts to the nearest thousandth (the
/// ledger's own precision); 1 when all are zero.
double commonStep(const std::vector<AmountChance>& severity);

/// The first two moments of an amount, and the largest that can come.
struct AmountMoments {
    double first = 0;
    double second = 0;
    double largest = 0;
    double variance() const { return second > first * first ? second - first * first : 0; }
};
AmountMoments momentsOf(const std::vector<AmountChance>& severity);

/// What is wrong with amounts and their chances, in a sentence; none when they can be worked with (the
/// chances add up to 1 within a millionth).
std::optional<Error> flawIn(const std::vector<AmountChance>& severity);

/// A severity on the lattice: how many steps a job takes, rising, and how probable that is.
using LatticeAmounts = std::vector<std::pair<std::size_t, double>>;
/// Whole multiples of the step are exact; others are shared between their two neighbours so that the mean
/// stays.
LatticeAmounts onSteps(const std::vector<AmountChance>& severity, double step);

} // namespace gw
