#pragma once

#include <cstddef>
#include <vector>

#include "demand/compounduse.h"
#include "demand/joblearning.h"
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

/// From a day to another, both counted; by default none.
struct PlannedSpan {
    Date from {};
    Date to {};
    bool holds(Date day) const
    {
        return from.ok() && to.ok() && std::chrono::sys_days { from } <= std::chrono::sys_days { day }
        && std::chrono::sys_days { day } <= std::chrono::sys_days { to };
    }
};

/// What is believed of one kind of work: how many come in a month, and what each takes.
struct ForecastJob {
    std::string jobName;
    GammaRate rate; ///< months
    LearnedAmount amount;
    int planned = 0; ///< with a date in the span asked for; they are part of what is expected
    double perMonth() const { return rate.rate > 0 ? rate.mean() * amount.mean : 0; }
};

/// How much of a material is expected to be used in a month, and in what lumps.
struct UseForecast {
    UseBasis basis = UseBasis::None;
    double perMonth = 0; ///< base units, jobs and other together
    std::vector<ForecastJob> jobs; ///< those that take something
    double otherPerMonth = 0; ///< of perMonth, what is not from jobs
    double otherLump = 0; ///< the lump other use is taken to come in
    std::size_t months = 0; ///< of history behind the other use
};

/// Expected use of one material. Use that no planned job explains is taken to come in equal lumps at random
/// (a scaled Poisson, our own choice). Used in few months: what a month took is one lump. Used in most: lump
/// = variance / mean, so that mean and variance a month are those seen, with one month more counted than was
/// seen, off by the whole mean, as a short history must not pass for a steady one. The demand must have
/// passed its checks; a negative month (a count that found more) counts as zero.
/// Jobs planned with a day in the span are known; of the kind only what is expected beyond them stays
/// uncertain (own assumption).
UseForecast forecastUse(const MaterialDemand& demand, const PlannedSpan& span = {});

/// How much is used over a span: each kind of work's number is Poisson mixed over what is believed of it,
/// other use comes in its lumps. Errors: BadInput.
Result<UseDistribution> useOver(const UseForecast& use, Days span);

/// What suffices with this percentage. Base units, rounded up to the thousandth, and to whole pieces for what
/// is counted. Errors: BadInput.
Result<Amount> needOf(const UseDistribution& use, double servicePercent, Dimension dimension);

} // namespace gw
