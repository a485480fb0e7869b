#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "demand/gammapoisson.h"
#include "demand/severity.h"
#include "demand/usedistribution.h"
#include "measure/error.h"

namespace gw {

/// One kind of event that takes something, over a span: what each takes, and how many come. The number is one
/// of three: with a belief of its rate it is Poisson mixed over that gamma belief, which is negative binomial
/// (size = shape, success chance rate / (rate + ahead)); with chances it is known as a table, as of jobs that
/// are planned with a date; else it is Poisson with a known mean.
struct UseStream {
    std::vector<AmountChance> amounts;
    std::optional<GammaRate> belief; ///< events in a period
    double ahead = 1; ///< periods, over zero; with a belief
    std::vector<double> counts; ///< chance of 0, 1, 2, ... events, adding up to 1
    double mean = 0; ///< of a Poisson number, where there is neither belief nor chances
};

/// What several independent streams use together, exactly, on one lattice. Each negative binomial compound is
/// a compound Poisson whose jumps are a logarithmic series of the amounts (Quenouille 1949), so all streams
/// become one compound Poisson and one Panjer recursion (Panjer 1981) for the class (a, b, 0),
/// n g(n) = sum k j(k) g(n-k); every term is positive, so it is strongly stable (Panjer and Wang 1993). The
/// start is scaled, so that many jobs do not underflow. Streams with a table are convolved in after it.
/// Errors, all BadInput: amounts or chances that cannot be (see flawIn), a belief or a mean that cannot be, a
/// step not over zero or so fine that the answer would take more than UseDistribution::mostPoints.
Result<UseDistribution> compoundUseOnLattice(const std::vector<UseStream>& streams, double step);

/// On the common step of all amounts, coarsened only when that would take more than maxPoints points.
Result<UseDistribution> compoundUse(
    const std::vector<UseStream>& streams, std::size_t maxPoints = UseDistribution::mostPoints);

} // namespace gw
