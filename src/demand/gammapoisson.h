#pragma once

#include <cstdint>
#include <vector>

#include "measure/error.h"

namespace gw {

/// What is believed of a rate of events per period: a gamma distribution. Both over zero.
struct GammaRate {
    double shape = 0;
    double rate = 0; ///< in periods
    double mean() const { return shape / rate; }
};

/// The belief after counts were seen, each whole and not negative, over so many periods in all:
/// Gamma(shape + sum, rate + exposure). Errors: BadInput (prior or exposure not over zero, a count that is no
/// count).
Result<GammaRate> posteriorRate(GammaRate prior, const std::vector<double>& seen, double exposure);
/// The same with one period for each count; no counts leave the prior as it is.
Result<GammaRate> posteriorRate(GammaRate prior, const std::vector<double>& seen);

/// The rate that is not exceeded with this percentage. Errors: BadInput.
Result<double> rateQuantile(GammaRate belief, double percent);
/// The chance that the rate is over a value. Errors: BadInput.
Result<double> chanceRateOver(GammaRate belief, double value);

/// Events in so many periods ahead are negative binomial with size = shape and success chance rate / (rate +
/// ahead). Mean of that. Errors: BadInput (belief or periods ahead not over zero).
Result<double> meanAhead(GammaRate belief, double ahead);
/// The chance of at most so many events. Errors: BadInput.
Result<double> cumulativeAhead(GammaRate belief, double ahead, std::uint64_t events);
/// The least number of events that suffices with this percentage. Errors: BadInput.
Result<std::uint64_t> quantileAhead(GammaRate belief, double ahead, double percent);

} // namespace gw
