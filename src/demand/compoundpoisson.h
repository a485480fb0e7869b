#pragma once

#include <cstddef>
#include <vector>

#include "demand/severity.h"
#include "demand/usedistribution.h"
#include "measure/error.h"

namespace gw {

/// How much is used when the number of jobs is Poisson and each takes an amount drawn from the severity,
/// independently: the compound Poisson distribution, g(0) = exp(-l (1 - f0)),
/// g(s) = (l/s) sum y f(y) g(s-y) (Panjer 1981); compounduse.h works it out.
class CompoundPoisson : public UseDistribution {
public:
    /// On a lattice of the caller's choice. Errors, all BadInput: a jobs number that is negative or not
    /// finite, no severity, a negative amount or probability, probabilities that do not add up to 1 (within a
    /// millionth), a step that is not over zero, or one so fine that the answer would take more than
    /// mostPoints.
    static Result<CompoundPoisson> onLattice(
        double jobs, const std::vector<AmountChance>& severity, double step);

    /// On the common step of the amounts, coarsened only when that would take more than maxPoints points.
    static Result<CompoundPoisson> of(
        double jobs, const std::vector<AmountChance>& severity, std::size_t maxPoints = mostPoints);

private:
    explicit CompoundPoisson(UseDistribution use);
};

} // namespace gw
