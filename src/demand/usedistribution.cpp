#include "demand/usedistribution.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "demand/service.h"

namespace gw {

UseDistribution::UseDistribution(double step, std::vector<double> probabilities, double mean, double variance)
    : m_mean(mean)
    , m_variance(variance)
    , m_step(step)
    , m_probabilities(std::move(probabilities))
    , m_cumulative(m_probabilities.size())
    , m_short(m_probabilities.size(), 0)
{
    std::partial_sum(m_probabilities.begin(), m_probabilities.end(), m_cumulative.begin());
    for (double& each : m_cumulative)
        each = std::min(each, 1.0);
    for (std::size_t i = m_short.size(); i-- > 1;)
        m_short[i - 1] = m_short[i] + m_step * (1 - m_cumulative[i - 1]);
}

double UseDistribution::cumulative(double amount) const
{
    if (!(amount >= 0))
        return 0;
    const double steps = std::floor(amount / m_step * (1 + 1e-12));
    const double last = static_cast<double>(m_cumulative.size() - 1);
    return m_cumulative[static_cast<std::size_t>(std::min(steps, last))];
}

double UseDistribution::expectedShort(double amount) const
{
    if (!(amount > 0))
        return m_short.front() - std::min(0.0, amount);
    const double steps = amount / m_step;
    if (steps >= static_cast<double>(m_short.size() - 1))
        return 0;
    const auto below = static_cast<std::size_t>(steps);
    // Between two lattice points the chance of being short stays what it was at the lower one.
    return m_short[below] - (amount - static_cast<double>(below) * m_step) * (1 - m_cumulative[below]);
}

Result<double> UseDistribution::quantile(double servicePercent) const
{
    if (!isService(servicePercent))
        return fail(ErrorCode::BadInput, serviceSentence());
    // The last digits of a sum of many terms are noise; a level that is met but for them is met.
    const double wanted = servicePercent / 100 - 1e-12;
    const auto found = std::lower_bound(m_cumulative.begin(), m_cumulative.end(), wanted);
    const auto at = std::min<std::ptrdiff_t>(
        found - m_cumulative.begin(), static_cast<std::ptrdiff_t>(m_cumulative.size()) - 1);
    return static_cast<double>(at) * m_step;
}

} // namespace gw
