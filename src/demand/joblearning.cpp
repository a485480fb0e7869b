#include "demand/joblearning.h"

#include <algorithm>

namespace gw {

LearnedAmount learnAmount(double estimate, const std::vector<double>& weighed)
{
    LearnedAmount learned;
    learned.jobs = weighed.size();
    learned.mean = estimate > 0 || weighed.empty() ? estimate : weighed.front();
    std::vector<AmountChance> chances { { learned.mean, 1 } };
    for (const double amount : weighed) {
        learned.mean += towardWeighing * (amount - learned.mean);
        for (AmountChance& each : chances)
            each.probability *= 1 - towardWeighing;
        chances.push_back({ amount, towardWeighing });
    }
    learned.chances
        = weighed.size() >= jobsToSpread ? chances : std::vector<AmountChance> { { learned.mean, 1 } };
    return learned;
}

GammaRate learnRate(double expectedPerMonth, double seen, double months, double more)
{
    const bool said = expectedPerMonth > 0 || more > 0;
    const double rate = (said ? priorMonths : 0) + std::max(0.0, months);
    return { expectedPerMonth * priorMonths + std::max(0.0, seen) + std::max(0.0, more) * rate, rate };
}

} // namespace gw
