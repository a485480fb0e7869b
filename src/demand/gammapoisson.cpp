#include "demand/gammapoisson.h"

#include <cmath>
#include <optional>

#include <boost/math/distributions/gamma.hpp>
#include <boost/math/distributions/negative_binomial.hpp>

#include "demand/quietmath.h"
#include "demand/service.h"

namespace gw {

namespace {

using Gamma = boost::math::gamma_distribution<double, QuietMath>;
using NegativeBinomial = boost::math::negative_binomial_distribution<double, QuietMath>;

constexpr double mostFigure = 1e12;

bool zeroOrMore(double value) { return value >= 0 && value <= mostFigure; }
bool overZero(double value) { return value > 0 && value <= mostFigure; }

std::optional<Error> flawIn(GammaRate belief)
{
    if (overZero(belief.shape) && overZero(belief.rate))
        return std::nullopt;
    return Error { ErrorCode::BadInput,
        "Shape and rate must both be over zero, from the start or from what was seen; give two figures such "
        "as 2 1." };
}

std::optional<Error> flawIn(GammaRate belief, double ahead)
{
    if (const auto flaw = flawIn(belief))
        return flaw;
    if (!overZero(ahead))
        return Error { ErrorCode::BadInput, "The periods ahead must be over zero." };
    return std::nullopt;
}

NegativeBinomial ahead(GammaRate belief, double periods)
{
    return NegativeBinomial(belief.shape, belief.rate / (belief.rate + periods));
}

} // namespace

Result<GammaRate> posteriorRate(GammaRate prior, const std::vector<double>& seen, double exposure)
{
    if (!zeroOrMore(prior.shape) || !zeroOrMore(prior.rate))
        return fail(
            ErrorCode::BadInput, "Shape and rate must be zero or more; give two figures such as 2 1.");
    if (!zeroOrMore(exposure) || (exposure == 0 && !seen.empty()))
        return fail(ErrorCode::BadInput, "The periods watched must be over zero.");
    GammaRate posterior = prior;
    for (const double count : seen) {
        if (!zeroOrMore(count) || count != std::floor(count))
            return fail(
                ErrorCode::BadInput, "What was seen must be whole numbers of zero or more, such as 6 2 2 1.");
        posterior.shape += count;
    }
    posterior.rate += exposure;
    if (auto flaw = flawIn(posterior))
        return tl::unexpected(*flaw);
    return posterior;
}

Result<GammaRate> posteriorRate(GammaRate prior, const std::vector<double>& seen)
{
    return posteriorRate(prior, seen, static_cast<double>(seen.size()));
}

Result<double> rateQuantile(GammaRate belief, double percent)
{
    if (const auto flaw = flawIn(belief))
        return tl::unexpected(*flaw);
    if (!isService(percent))
        return fail(ErrorCode::BadInput, serviceSentence());
    return boost::math::quantile(Gamma(belief.shape, 1 / belief.rate), percent / 100);
}

Result<double> chanceRateOver(GammaRate belief, double value)
{
    if (const auto flaw = flawIn(belief))
        return tl::unexpected(*flaw);
    if (!std::isfinite(value) || value < 0)
        return fail(ErrorCode::BadInput, "A rate to compare with must be zero or more.");
    return boost::math::cdf(boost::math::complement(Gamma(belief.shape, 1 / belief.rate), value));
}

Result<double> meanAhead(GammaRate belief, double periods)
{
    if (const auto flaw = flawIn(belief, periods))
        return tl::unexpected(*flaw);
    return belief.mean() * periods;
}

Result<double> cumulativeAhead(GammaRate belief, double periods, std::uint64_t events)
{
    if (const auto flaw = flawIn(belief, periods))
        return tl::unexpected(*flaw);
    return boost::math::cdf(ahead(belief, periods), static_cast<double>(events));
}

Result<std::uint64_t> quantileAhead(GammaRate belief, double periods, double percent)
{
    if (const auto flaw = flawIn(belief, periods))
        return tl::unexpected(*flaw);
    if (!isService(percent))
        return fail(ErrorCode::BadInput, serviceSentence());
    const NegativeBinomial distribution = ahead(belief, periods);
    const double wanted = percent / 100;
    const double real = boost::math::quantile(distribution, wanted);
    if (!(real >= 0 && real < 1e15))
        return fail(ErrorCode::BadInput,
            "These figures lead to no number that can be counted; check shape and rate.");
    // The real-valued root may lie a hair off a whole number: settle on the least count that suffices.
    double count = std::ceil(real);
    while (count > 0 && boost::math::cdf(distribution, count - 1) >= wanted)
        count -= 1;
    while (boost::math::cdf(distribution, count) < wanted && count - real < 4)
        count += 1;
    return static_cast<std::uint64_t>(count);
}

} // namespace gw
