#include "demand/newsvendor.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <boost/math/distributions/normal.hpp>

#include "demand/compoundpoisson.h"
#include "demand/quietmath.h"
#include "demand/service.h"

namespace gw {

namespace {

using Normal = boost::math::normal_distribution<double, QuietMath>;

Result<double> standardScore(double probability)
{
    const double z = boost::math::quantile(Normal(), probability);
    if (!std::isfinite(z))
        return fail(ErrorCode::BadInput, "This level is too near to never or always to be worked out.");
    return z;
}

bool zeroOrMore(double value) { return std::isfinite(value) && value >= 0; }

std::optional<Error> flawIn(NormalUse use)
{
    if (zeroOrMore(use.mean) && zeroOrMore(use.spread))
        return std::nullopt;
    return Error { ErrorCode::BadInput, "Mean and spread of the use must both be zero or more." };
}

/// z of the critical ratio.
Result<double> balance(NormalUse use, double shortageCost, double excessCost)
{
    if (const auto flaw = flawIn(use))
        return tl::unexpected(*flaw);
    auto ratio = criticalRatio(shortageCost, excessCost);
    if (!ratio)
        return ratio;
    if (*ratio <= 0)
        return fail(ErrorCode::BadInput,
            "If running short costs nothing, nothing need be kept; give a cost over zero.");
    if (*ratio >= 1)
        return fail(
            ErrorCode::BadInput, "If too much costs nothing, no amount is enough; give a cost over zero.");
    return standardScore(*ratio);
}

} // namespace

Result<double> criticalRatio(double shortageCost, double excessCost)
{
    if (!zeroOrMore(shortageCost) || !zeroOrMore(excessCost))
        return fail(ErrorCode::BadInput, "Costs of running short and of too much must be zero or more.");
    const double both = shortageCost + excessCost;
    if (both == 0 || !std::isfinite(both))
        return fail(
            ErrorCode::BadInput, "Running short or having too much must cost something; give one over zero.");
    return shortageCost / both;
}

Result<double> newsvendorLevel(NormalUse use, double shortageCost, double excessCost)
{
    auto z = balance(use, shortageCost, excessCost);
    if (!z)
        return z;
    return std::max(0.0, use.mean + *z * use.spread);
}

Result<double> newsvendorCost(NormalUse use, double shortageCost, double excessCost)
{
    auto z = balance(use, shortageCost, excessCost);
    if (!z)
        return z;
    return (shortageCost + excessCost) * use.spread * boost::math::pdf(Normal(), *z);
}

Result<double> orderUpToLevel(NormalUse perPeriod, double review, double lead, double servicePercent)
{
    if (const auto flaw = flawIn(perPeriod))
        return tl::unexpected(*flaw);
    if (!zeroOrMore(review) || !zeroOrMore(lead) || review + lead == 0)
        return fail(
            ErrorCode::BadInput, "Review and lead time must be zero or more, and one of them over zero.");
    if (!isService(servicePercent))
        return fail(ErrorCode::BadInput, serviceSentence());
    auto z = standardScore(servicePercent / 100);
    if (!z)
        return z;
    const double span = review + lead;
    return std::max(0.0, perPeriod.mean * span + *z * perPeriod.spread * std::sqrt(span));
}

Result<std::uint64_t> poissonLevel(double mean, double servicePercent)
{
    const auto use = CompoundPoisson::onLattice(mean, { { 1, 1 } }, 1);
    if (!use)
        return tl::unexpected(use.error());
    const auto level = use->quantile(servicePercent);
    if (!level)
        return tl::unexpected(level.error());
    return static_cast<std::uint64_t>(std::llround(*level));
}

double normalLoss(double z)
{
    return boost::math::pdf(Normal(), z) - z * boost::math::cdf(boost::math::complement(Normal(), z));
}

} // namespace gw
