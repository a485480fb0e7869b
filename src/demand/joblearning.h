#pragma once

#include <cstddef>
#include <vector>

#include "demand/gammapoisson.h"
#include "demand/severity.h"

namespace gw {

/// How far an amount goes toward each weighing of the shop's own (own assumption): after five the estimate
/// has a sixth of the weight.
inline constexpr double towardWeighing = 0.3;
/// From so many jobs on the weighings spread the amount too (own assumption); fewer show no spread.
inline constexpr std::size_t jobsToSpread = 5;
/// What the shop says it expects counts as if seen for so many months (own assumption).
inline constexpr double priorMonths = 3;

/// What a job of one kind is taken to use of a material.
struct LearnedAmount {
    double mean = 0; ///< base units
    std::size_t jobs = 0; ///< weighed, behind it
    std::vector<AmountChance> chances; ///< with the mean; one amount below jobsToSpread jobs
};

/// From the estimate toward the shop's own weighings, oldest first, each taken in by towardWeighing. The
/// weights of that mean are the chances of the amounts once there are jobsToSpread of them. Without an
/// estimate (zero) it starts from the first weighing.
LearnedAmount learnAmount(double estimate, const std::vector<double>& weighed);

/// What is believed of how many come in a month: a gamma with what the shop expects counted for priorMonths,
/// and so many seen in so many months. An expectation of zero was not said and counts for nothing. Shape zero
/// where nothing is expected and none was seen. With more, what if so many more came: as sure as of the rest.
GammaRate learnRate(double expectedPerMonth, double seen, double months, double more = 0);

} // namespace gw
