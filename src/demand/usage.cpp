#include "demand/usage.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "demand/intermittent.h"

namespace gw {

namespace {

// Twelve months are seldom more than there are: 0.1 would leave a third of the weight on the first of them.
constexpr double alpha = 0.2;
// Mean interval over which the bias of Croston's method outweighs its merit (Syntetos, Boylan and Croston
// 2005; from memory).
constexpr double nowAndThen = 1.32;
constexpr std::size_t recentMonths = 3;
constexpr std::size_t monthsForSpread = 12;
// Fine enough that the lattice shows in no figure a person sees, coarse enough for hundreds of materials at
// once.
constexpr std::size_t latticePoints = 1024;

using Months = std::vector<double>;

Months lastOf(const Months& all, std::size_t count)
{
    return { all.end() - static_cast<std::ptrdiff_t>(std::min(count, all.size())), all.end() };
}

Months withoutNegative(Months months)
{
    for (double& used : months)
        used = std::max(0.0, used);
    return months;
}

double meanOf(const Months& months)
{
    return months.empty()
        ? 0
        : std::accumulate(months.begin(), months.end(), 0.0) / static_cast<double>(months.size());
}

/// Used in few months: what a month took is one lump, E[x^2]/E[x] over the months with use.
double lumpWhenNowAndThen(const Months& months)
{
    double sum = 0;
    double squares = 0;
    for (const double used : months) {
        sum += used;
        squares += used * used;
    }
    return sum > 0 ? squares / sum : 0;
}

/// Used in most months: variance / mean, the variance with one month more than was seen, off by the whole
/// mean.
double lumpWhenSteady(const Months& months, double forecast)
{
    if (forecast <= 0)
        return 0;
    const double mean = meanOf(months);
    double squares = forecast * forecast;
    for (const double used : months)
        squares += (used - mean) * (used - mean);
    return squares / static_cast<double>(months.size()) / forecast;
}

void forecastNowAndThen(const Months& months, UseForecast& use)
{
    const auto state = smoothIntermittent(months, alpha);
    if (!state || state->interval == 0)
        return;
    const bool seldom = state->interval > nowAndThen;
    const auto method = seldom ? IntermittentMethod::SyntetosBoylan : IntermittentMethod::Croston;
    use.otherPerMonth = intermittentForecast(months, method, alpha).value_or(0);
    use.otherLump = seldom ? lumpWhenNowAndThen(months) : lumpWhenSteady(months, use.otherPerMonth);
}

void forecastWithoutPlan(const Months& months, UseForecast& use)
{
    const Months recent = lastOf(months, recentMonths);
    const auto used = std::count_if(recent.begin(), recent.end(), [](double each) { return each > 0; });
    if (2 * static_cast<std::size_t>(used) > recent.size()) {
        use.basis = UseBasis::RecentMonths;
        use.otherPerMonth = meanOf(recent);
        use.otherLump = lumpWhenSteady(lastOf(months, monthsForSpread), use.otherPerMonth);
        use.months = recent.size();
        return;
    }
    forecastNowAndThen(months, use);
    use.months = months.size();
    use.basis = use.otherPerMonth > 0 ? UseBasis::NowAndThen : UseBasis::None;
}

/// Those planned come for certain; the rest of what is expected may.
void addJob(std::vector<UseStream>& streams, const ForecastJob& job, double months)
{
    if (job.planned > 0) {
        UseStream known { job.amount.chances, std::nullopt, 1, {}, 0 };
        known.counts.assign(static_cast<std::size_t>(job.planned) + 1, 0);
        known.counts.back() = 1;
        streams.push_back(std::move(known));
    }
    const double expected = job.rate.rate > 0 ? job.rate.mean() * months : 0;
    if (expected > job.planned)
        streams.push_back({ job.amount.chances,
            GammaRate { job.rate.shape * (1 - job.planned / expected), job.rate.rate }, months, {}, 0 });
}

} // namespace

UseForecast forecastUse(const MaterialDemand& demand, const PlannedSpan& span)
{
    UseForecast use;
    for (const UseOfJob& job : demand.jobs) {
        ForecastJob forecast { job.jobName,
            learnRate(job.jobsPerMonth, job.jobsSeen, job.monthsSeen, job.morePerMonth),
            learnAmount(job.amountPerJob, job.weighed) };
        forecast.planned = static_cast<int>(
            std::count_if(job.planned.begin(), job.planned.end(), [&](Date day) { return span.holds(day); }));
        const bool expected = forecast.rate.shape > 0 && forecast.rate.rate > 0;
        if ((expected || forecast.planned > 0) && forecast.amount.mean > 0) {
            use.perMonth += forecast.perMonth();
            use.jobs.push_back(std::move(forecast));
        }
    }
    if (use.jobs.empty()) {
        const Months months
            = withoutNegative(demand.usedPerMonth.empty() ? demand.otherUsePerMonth : demand.usedPerMonth);
        if (!months.empty())
            forecastWithoutPlan(months, use);
    } else {
        const Months months = withoutNegative(demand.otherUsePerMonth);
        if (!months.empty())
            forecastNowAndThen(months, use);
        use.months = months.size();
        use.basis = use.otherPerMonth > 0 ? UseBasis::JobsAndOther : UseBasis::Jobs;
    }
    use.perMonth += use.otherPerMonth;
    return use;
}

Result<UseDistribution> useOver(const UseForecast& use, Days span)
{
    const double months = span / meanMonth;
    std::vector<UseStream> streams;
    if (!(months > 0))
        return UseDistribution();
    for (const ForecastJob& job : use.jobs)
        addJob(streams, job, months);
    if (use.otherPerMonth > 0 && use.otherLump > 0) {
        UseStream lumps;
        lumps.amounts = { { use.otherLump, 1 } };
        lumps.mean = use.otherPerMonth / use.otherLump * months;
        streams.push_back(std::move(lumps));
    }
    return compoundUse(streams, latticePoints);
}

Result<Amount> needOf(const UseDistribution& use, double servicePercent, Dimension dimension)
{
    const auto quantile = use.quantile(servicePercent);
    if (!quantile)
        return tl::unexpected(quantile.error());
    const double unit = dimension == Dimension::Count ? 1000 : 1;
    const auto milli = static_cast<std::int64_t>(std::ceil(*quantile * 1000 / unit - 1e-6) * unit);
    return Amount { milli, dimension };
}

} // namespace gw
