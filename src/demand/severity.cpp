#include "demand/severity.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <numeric>

namespace gw {

namespace {

constexpr double sumTolerance = 1e-6; // people type 0.333333 three times

double totalOf(const std::vector<AmountChance>& severity)
{
    return std::accumulate(severity.begin(), severity.end(), 0.0,
        [](double sum, const AmountChance& each) { return sum + each.probability; });
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

AmountMoments momentsOf(const std::vector<AmountChance>& severity)
{
    const double total = totalOf(severity);
    AmountMoments moments;
    for (const auto& [amount, probability] : severity) {
        moments.first += amount * probability / total;
        moments.second += amount * amount * probability / total;
        if (probability > 0)
            moments.largest = std::max(moments.largest, amount);
    }
    return moments;
}

std::optional<Error> flawIn(const std::vector<AmountChance>& severity)
{
    const auto bad = [](const char* sentence) { return Error { ErrorCode::BadInput, sentence }; };
    if (severity.empty())
        return bad("No amounts are given; say what a job takes as amount:probability, such as 37:1.");
    for (const auto& [amount, probability] : severity) {
        if (!std::isfinite(amount) || amount < 0)
            return bad("An amount a job takes is negative or no number; give zero or more.");
        if (!std::isfinite(probability) || probability < 0)
            return bad("A probability is negative or no number; each must lie in 0 to 1.");
    }
    if (std::abs(totalOf(severity) - 1) > sumTolerance)
        return bad("The probabilities do not add up to 1; correct them so that they do.");
    return std::nullopt;
}

LatticeAmounts onSteps(const std::vector<AmountChance>& severity, double step)
{
    const double total = totalOf(severity);
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

} // namespace gw
