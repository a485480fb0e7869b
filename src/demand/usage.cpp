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
constexpr std::size_t latticePoints = 4096;

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

} // namespace

UseForecast forecastUse(const MaterialDemand& demand)
{
    UseForecast use;
    for (const UseOfJob& job : demand.jobs) {
        if (job.jobsPerMonth > 0 && job.amountPerJob > 0) {
            use.jobs.push_back(job);
            use.perMonth += job.jobsPerMonth * job.amountPerJob;
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

Result<Amount> needOver(const UseForecast& use, Days span, double servicePercent, Dimension dimension)
{
    const double months = span / meanMonth;
    std::vector<AmountChance> severity;
    double events = 0;
    const auto add = [&](double count, double amount) {
        severity.push_back({ amount, count });
        events += count;
    };
    for (const UseOfJob& job : use.jobs)
        add(job.jobsPerMonth * months, job.amountPerJob);
    if (use.otherPerMonth > 0 && use.otherLump > 0)
        add(use.otherPerMonth / use.otherLump * months, use.otherLump);
    if (!(events > 0))
        return Amount { 0, dimension };
    for (auto& [amount, probability] : severity)
        probability /= events;

    const auto distribution = CompoundPoisson::of(events, severity, latticePoints);
    if (!distribution)
        return tl::unexpected(distribution.error());
    const auto quantile = distribution->quantile(servicePercent);
    if (!quantile)
        return tl::unexpected(quantile.error());
    const double unit = dimension == Dimension::Count ? 1000 : 1;
    const auto milli = static_cast<std::int64_t>(std::ceil(*quantile * 1000 / unit - 1e-6) * unit);
    return Amount { milli, dimension };
}

} // namespace gw
