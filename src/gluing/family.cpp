#include "gluing/family.h"

#include <cmath>

namespace gw {

namespace {

constexpr double squareCentimetresPerSquareMetre = 10'000;

} // namespace

Amount needFor(const JobType& job, int pieces)
{
    if (pieces <= 0)
        return { 0, job.dimension };
    const double spreadOut = job.areaCm2 / squareCentimetresPerSquareMetre * job.spread * (1 + job.waste);
    const double need = pieces * (spreadOut + job.extra) + job.fixedLoss;
    return std::isfinite(need) && need > 0 ? amountOf(need, job.dimension) : Amount { 0, job.dimension };
}

} // namespace gw
