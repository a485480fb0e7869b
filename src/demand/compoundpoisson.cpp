#include "demand/compoundpoisson.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <numbers>
#include <numeric>
#include <optional>
#include <utility>

#include "demand/service.h"

namespace gw {

namespace {

constexpr double sumTolerance = 1e-6; // people type 0.333333 three times
constexpr double tailLeft = 1e-13;
constexpr int scaleBits = 600; // far from both ends of a double's exponent

/// Severity on the lattice: how many steps a job takes, and how probable that is.
using Lattice = std::vector<std::pair<std::size_t, double>>;

struct Moments {
    double first = 0;
    double second = 0;
    double largest = 0;
};

Moments momentsOf(const std::vector<AmountChance>& severity)
{
    double total = 0;
    for (const auto& [amount, probability] : severity)
        total += probability;
    Moments moments;
    for (const auto& [amount, probability] : severity) {
        moments.first += amount * probability / total;
        moments.second += amount * amount * probability / total;
        if (probability > 0)
            moments.largest = std::max(moments.largest, amount);
    }
    return moments;
}

std::optional<Error> flawIn(double jobs, const std::vector<AmountChance>& severity)
{
    const auto bad = [](const char* sentence) { return Error { ErrorCode::BadInput, sentence }; };
    if (!std::isfinite(jobs) || jobs < 0)
        return bad("The number of jobs must be zero or more; give a figure such as 2.5.");
    if (severity.empty())
        return bad("No amounts are given; say what a job takes as amount:probability, such as 37:1.");
    double total = 0;
    for (const auto& [amount, probability] : severity) {
        if (!std::isfinite(amount) || amount < 0)
            return bad("An amount a job takes is negative or no number; give zero or more.");
        if (!std::isfinite(probability) || probability < 0)
            return bad("A probability is negative or no number; each must lie in 0 to 1.");
        total += probability;
    }
    if (std::abs(total - 1) > sumTolerance)
        return bad("The probabilities do not add up to 1; correct them so that they do.");
    return std::nullopt;
}

/// Beyond this many mean-and-spread units nothing above the tail limit is left for any compound Poisson met
/// here.
double reachOf(double jobs, const Moments& moments)
{
    return jobs * moments.first + 12 * std::sqrt(jobs * moments.second) + 12 * moments.largest;
}

Lattice latticeOf(const std::vector<AmountChance>& severity, double step)
{
    double total = 0;
    for (const auto& [amount, probability] : severity)
        total += probability;
    std::map<std::size_t, double> at;
    for (const auto& [amount, probability] : severity) {
        if (probability <= 0)
            continue;
        const double steps = amount / step;
        const double nearest = std::round(steps);
        if (std::abs(steps - nearest) <= 1e-9 * std::max(1.0, steps)) {
            at[static_cast<std::size_t>(nearest)] += probability / total;
            continue;
        }
        const double below = std::floor(steps);
        at[static_cast<std::size_t>(below)] += probability / total * (below + 1 - steps);
        at[static_cast<std::size_t>(below) + 1] += probability / total * (steps - below);
    }
    return { at.begin(), at.end() };
}

/// The recursion from a start of 1 instead of exp(-l); each time the values grow past 2^600 all are brought
/// down by as much and the powers counted, so that only what is below 1e-180 of the peak can be lost.
std::vector<double> panjer(double jobs, const Lattice& lattice, std::size_t points)
{
    // A job that takes nothing does not count: the number is thinned.
    Lattice taking = lattice;
    double rate = jobs;
    if (!taking.empty() && taking.front().first == 0) {
        rate = jobs * std::max(0.0, 1 - taking.front().second);
        taking.erase(taking.begin());
    }
    if (taking.empty() || rate <= 0)
        return { 1.0 };

    const double grown = std::ldexp(1.0, scaleBits);
    int scalings = 0;
    double unit = std::exp(-rate);
    std::vector<double> values { 1.0 };
    double sum = unit;
    for (std::size_t s = 1; s < points && 1 - sum > tailLeft; ++s) {
        double value = 0;
        for (const auto& [steps, probability] : taking) {
            if (steps > s)
                break;
            value += jobs * static_cast<double>(steps) * probability * values[s - steps];
        }
        value /= static_cast<double>(s);
        values.push_back(value);
        if (value > grown) {
            for (double& each : values)
                each = std::ldexp(each, -scaleBits);
            ++scalings;
            unit = std::exp(-rate + scalings * scaleBits * std::numbers::ln2);
        }
        sum += values.back() * unit;
    }
    for (double& each : values)
        each *= unit;
    return values;
}

} // namespace

double commonStep(const std::vector<AmountChance>& severity)
{
    std::int64_t step = 0;
    for (const auto& [amount, probability] : severity) {
        if (probability > 0 && std::isfinite(amount) && amount > 0 && amount < 1e15)
            step = std::gcd(step, std::max<std::int64_t>(1, std::llround(amount * 1000)));
    }
    return step == 0 ? 1.0 : static_cast<double>(step) / 1000.0;
}

Result<CompoundPoisson> CompoundPoisson::onLattice(
    double jobs, const std::vector<AmountChance>& severity, double step)
{
    if (const auto flaw = flawIn(jobs, severity))
        return tl::unexpected(*flaw);
    if (!std::isfinite(step) || step <= 0)
        return fail(ErrorCode::BadInput, "The step must be over zero.");
    const Moments moments = momentsOf(severity);
    const double points = std::ceil(reachOf(jobs, moments) / step) + 1;
    if (!(points <= static_cast<double>(mostPoints)))
        return fail(ErrorCode::BadInput,
            "The amounts are too many steps apart to work out exactly; give fewer jobs or rounder amounts.");

    CompoundPoisson answer;
    answer.m_mean = jobs * moments.first;
    answer.m_variance = jobs * moments.second;
    answer.m_step = step;
    answer.m_probabilities = panjer(jobs, latticeOf(severity, step), static_cast<std::size_t>(points) + 1);
    answer.m_cumulative.resize(answer.m_probabilities.size());
    std::partial_sum(
        answer.m_probabilities.begin(), answer.m_probabilities.end(), answer.m_cumulative.begin());
    for (double& each : answer.m_cumulative)
        each = std::min(each, 1.0);
    return answer;
}

Result<CompoundPoisson> CompoundPoisson::of(
    double jobs, const std::vector<AmountChance>& severity, std::size_t maxPoints)
{
    if (const auto flaw = flawIn(jobs, severity))
        return tl::unexpected(*flaw);
    const double points = static_cast<double>(std::clamp<std::size_t>(maxPoints, 16, mostPoints)) - 2;
    const double finest = reachOf(jobs, momentsOf(severity)) / points;
    return onLattice(jobs, severity, std::max(commonStep(severity), finest));
}

double CompoundPoisson::cumulative(double amount) const
{
    if (!(amount >= 0))
        return 0;
    const double steps = std::floor(amount / m_step * (1 + 1e-12));
    const double last = static_cast<double>(m_cumulative.size() - 1);
    return m_cumulative[static_cast<std::size_t>(std::min(steps, last))];
}

Result<double> CompoundPoisson::quantile(double servicePercent) const
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
