#pragma once

#include <cstddef>
#include <vector>

#include "demand/compoundpoisson.h"
#include "demand/orderplan.h"

namespace gw {

/// Where the expected use of a material comes from.
enum class UseBasis {
    None, ///< no use is planned or was seen
    Jobs, ///< jobs planned
    JobsAndOther, ///< jobs planned, and use that no job type explains
    RecentMonths, ///< no plan: mean of the last three months
    NowAndThen, ///< no plan, and used in few months: intermittent forecast
};

/// How much of a material is expected to be used in a month, and in what lumps.
struct UseForecast {
    UseBasis basis = UseBasis::None;
    double perMonth = 0; ///< base units, jobs and other together
    std::vector<UseOfJob> jobs; ///< those that take something
    double otherPerMonth = 0; ///< of perMonth, what is not from jobs
    double otherLump = 0; ///< the lump other use is taken to come in
    std::size_t months = 0; ///< of history behind the other use
};

/// Expected use of one material. Use that no planned job explains is taken to come in equal lumps at random
/// (a scaled Poisson, our own choice). Used in few months: what a month took is one lump. Used in most: lump
/// = variance / mean, so that mean and variance a month are those seen, with one month more counted than was
/// seen, off by the whole mean, as a short history must not pass for a steady one. The demand must have
/// passed its checks; a negative month (a count that found more) counts as zero.
UseForecast forecastUse(const MaterialDemand& demand);

/// What suffices over a span with this percentage: jobs and lumps as one compound Poisson. Base units,
/// rounded up to the thousandth, and to whole pieces for what is counted. Errors: BadInput.
Result<Amount> needOver(const UseForecast& use, Days span, double servicePercent, Dimension dimension);

} // namespace gw
