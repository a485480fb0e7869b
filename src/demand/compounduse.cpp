#include "demand/compounduse.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace gw {

namespace {

constexpr double tailLeft = 1e-13;
constexpr double jumpLeft = 1e-22;
constexpr int scaleBits = 600; // far from both ends of a double's exponent

Error bad(const char* sentence) { return { ErrorCode::BadInput, sentence }; }

bool overZero(double value) { return value > 0 && std::isfinite(value); }

std::optional<Error> flawIn(const UseStream& stream)
{
    if (auto flaw = gw::flawIn(stream.amounts))
        return flaw;
    if (stream.belief) {
        if (!overZero(stream.belief->shape) || !overZero(stream.belief->rate) || !overZero(stream.ahead))
            return bad("What is believed of a number of jobs needs figures over zero; give two such as 2 1.");
    } else if (!stream.counts.empty()) {
        double total = 0;
        for (const double chance : stream.counts) {
            if (!std::isfinite(chance) || chance < 0)
                return bad("A probability is negative or no number; each must lie in 0 to 1.");
            total += chance;
        }
        if (std::abs(total - 1) > 1e-6)
            return bad(
                "The chances of the numbers of jobs do not add up to 1; correct them so that they do.");
    } else if (!std::isfinite(stream.mean) || stream.mean < 0) {
        return bad("The number of jobs must be zero or more; give a figure such as 2.5.");
    }
    return std::nullopt;
}

/// Mean and variance of how many come.
struct Number {
    double mean = 0, variance = 0;
    double most = 0; ///< beyond the mean, jobs of the largest size before next to nothing is left
};

Number numberIn(const UseStream& stream)
{
    if (stream.belief) {
        const double odds = stream.ahead / stream.belief->rate;
        const double mean = stream.belief->shape * odds;
        // Its tail falls by odds / (1 + odds) with each job.
        return { mean, mean * (1 + odds), std::max(12.0, 32 / std::log1p(1 / odds)) };
    }
    if (stream.counts.empty())
        return { stream.mean, stream.mean, 12 };
    double first = 0;
    double second = 0;
    for (std::size_t n = 0; n < stream.counts.size(); ++n) {
        first += static_cast<double>(n) * stream.counts[n];
        second += static_cast<double>(n * n) * stream.counts[n];
    }
    return { first, std::max(0.0, second - first * first),
        static_cast<double>(stream.counts.size()) - first };
}

struct Reach {
    double mean = 0, variance = 0, beyond = 0;
    /// Nothing above the tail limit is left further on.
    double most() const { return mean + 12 * std::sqrt(variance) + beyond; }
};

Reach reachOf(const std::vector<UseStream>& streams)
{
    Reach reach;
    for (const UseStream& stream : streams) {
        const AmountMoments amount = momentsOf(stream.amounts);
        const Number number = numberIn(stream);
        reach.mean += number.mean * amount.first;
        reach.variance += number.mean * amount.variance() + number.variance * amount.first * amount.first;
        reach.beyond = std::max(reach.beyond, number.most * amount.largest);
    }
    return reach;
}

/// Jumps of a compound Poisson: how often each size comes over the span.
struct Jumps {
    std::vector<double> often; ///< at 1, 2, ... steps; [0] is unused
    double none = 0; ///< the logarithm of the chance that none comes
};

void addPoisson(Jumps& jumps, const LatticeAmounts& amounts, double mean)
{
    for (const auto& [steps, probability] : amounts) {
        // An event that takes nothing does not count.
        if (steps == 0)
            continue;
        jumps.none -= mean * probability;
        if (steps < jumps.often.size())
            jumps.often[steps] += mean * probability;
    }
}

/// The generating function (1 - odds (f(z) - 1))^-shape, as shape times the series of -log(1 - a f+(z)), f+
/// the amounts over nothing: n s(n) = n a f(n) + sum of a f(y) (n - y) s(n - y).
void addMixed(Jumps& jumps, const LatticeAmounts& amounts, double shape, double odds)
{
    double taking = 0;
    for (const auto& [steps, probability] : amounts)
        taking += steps > 0 ? probability : 0;
    if (taking <= 0)
        return;
    jumps.none -= shape * std::log1p(odds * taking);
    const double a = odds / (1 + odds * taking);
    std::vector<double> weighted(jumps.often.size(), 0); // n s(n)
    std::size_t last = 0; // the last that is more than next to nothing
    const std::size_t largest = amounts.back().first;
    for (std::size_t n = 1; n < weighted.size() && n <= last + largest; ++n) {
        double value = 0;
        for (const auto& [steps, probability] : amounts) {
            if (steps == 0)
                continue;
            if (steps > n)
                break;
            value += a * probability * (steps == n ? static_cast<double>(n) : weighted[n - steps]);
        }
        weighted[n] = value;
        jumps.often[n] += shape * value / static_cast<double>(n);
        if (value > jumpLeft)
            last = n;
    }
}

/// Panjer's recursion from a start of 1; each time the values grow past 2^600 all are brought down by as much
/// and the powers counted, so that only what is below 1e-180 of the peak can be lost.
std::vector<double> panjer(const Jumps& jumps, std::size_t points)
{
    std::vector<double> weights { 0 };
    std::size_t last = 0;
    for (std::size_t k = 1; k < jumps.often.size(); ++k) {
        weights.push_back(jumps.often[k] * static_cast<double>(k));
        if (weights[k] > 0)
            last = k;
    }
    if (last == 0)
        return { 1.0 };
    // Amounts are few on a fine lattice: then only those that come are gone through.
    std::vector<std::size_t> coming;
    for (std::size_t k = 1; k <= last; ++k) {
        if (weights[k] > 0)
            coming.push_back(k);
    }

    const double grown = std::ldexp(1.0, scaleBits);
    int scalings = 0;
    double unit = std::exp(jumps.none);
    std::vector<double> values { 1.0 };
    values.reserve(std::min<std::size_t>(points, std::size_t { 1 } << 16));
    double sum = unit;
    for (std::size_t n = 1; n < points && 1 - sum > tailLeft; ++n) {
        double value = 0;
        for (const std::size_t k : coming) {
            if (k > n)
                break;
            value += weights[k] * values[n - k];
        }
        value /= static_cast<double>(n);
        values.push_back(value);
        if (value > grown) {
            for (double& each : values)
                each = std::ldexp(each, -scaleBits);
            ++scalings;
            unit = std::exp(jumps.none + scalings * scaleBits * std::numbers::ln2);
        }
        sum += values.back() * unit;
    }
    for (double& each : values)
        each *= unit;
    return values;
}

std::vector<double> convolved(const std::vector<double>& one, const LatticeAmounts& other, std::size_t points)
{
    const std::size_t size = std::min(points, one.size() + (other.empty() ? 0 : other.back().first));
    std::vector<double> sum(size, 0);
    for (const auto& [steps, probability] : other) {
        for (std::size_t i = 0; i < one.size() && i + steps < size; ++i)
            sum[i + steps] += one[i] * probability;
    }
    return sum;
}

/// A number known as a table, after what is there already: c0 g + f (c1 g + f (c2 g + ...)).
std::vector<double> withTable(const std::vector<double>& before, const LatticeAmounts& amounts,
    const std::vector<double>& counts, std::size_t points)
{
    std::vector<double> all(1, 0);
    for (std::size_t n = counts.size(); n-- > 0;) {
        if (n + 1 < counts.size())
            all = convolved(all, amounts, points);
        all.resize(std::max(all.size(), before.size()), 0);
        for (std::size_t i = 0; i < before.size(); ++i)
            all[i] += counts[n] * before[i];
    }
    return all;
}

} // namespace

Result<UseDistribution> compoundUseOnLattice(const std::vector<UseStream>& streams, double step)
{
    for (const UseStream& stream : streams) {
        if (const auto flaw = flawIn(stream))
            return tl::unexpected(*flaw);
    }
    if (!std::isfinite(step) || step <= 0)
        return fail(ErrorCode::BadInput, "The step must be over zero.");
    const Reach reach = reachOf(streams);
    const double most = std::ceil(reach.most() / step) + 2;
    if (!(most <= static_cast<double>(UseDistribution::mostPoints)))
        return fail(ErrorCode::BadInput,
            "The amounts are too many steps apart to work out exactly; give fewer jobs or rounder amounts.");
    const auto points = static_cast<std::size_t>(most);

    Jumps jumps { std::vector<double>(points, 0), 0 };
    for (const UseStream& stream : streams) {
        if (!stream.belief && !stream.counts.empty())
            continue;
        const LatticeAmounts amounts = onSteps(stream.amounts, step);
        if (stream.belief)
            addMixed(jumps, amounts, stream.belief->shape, stream.ahead / stream.belief->rate);
        else
            addPoisson(jumps, amounts, stream.mean);
    }
    std::vector<double> probabilities = panjer(jumps, points);
    for (const UseStream& stream : streams) {
        if (!stream.belief && !stream.counts.empty())
            probabilities = withTable(probabilities, onSteps(stream.amounts, step), stream.counts, points);
    }
    return UseDistribution(step, std::move(probabilities), reach.mean, reach.variance);
}

Result<UseDistribution> compoundUse(const std::vector<UseStream>& streams, std::size_t maxPoints)
{
    std::vector<AmountChance> amounts;
    for (const UseStream& stream : streams) {
        if (const auto flaw = flawIn(stream))
            return tl::unexpected(*flaw);
        amounts.insert(amounts.end(), stream.amounts.begin(), stream.amounts.end());
    }
    const double points
        = static_cast<double>(std::clamp<std::size_t>(maxPoints, 16, UseDistribution::mostPoints)) - 3;
    return compoundUseOnLattice(streams, std::max(commonStep(amounts), reachOf(streams).most() / points));
}

} // namespace gw
