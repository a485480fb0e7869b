#pragma once

#include <cstddef>
#include <vector>

#include "measure/error.h"

namespace gw {

/// How much is used over a span, as chances on a lattice 0, step, 2 step, ...
class UseDistribution {
public:
    /// The most lattice points an answer may take.
    static constexpr std::size_t mostPoints = std::size_t { 1 } << 20;

    UseDistribution() = default; ///< nothing is used
    /// Mean and variance are those of the model, which a coarse lattice need not meet to the last figure.
    UseDistribution(double step, std::vector<double> probabilities, double mean, double variance);

    double mean() const { return m_mean; }
    double variance() const { return m_variance; }
    double step() const { return m_step; }

    /// At 0, step, 2 step, ... until next to nothing is left.
    const std::vector<double>& probabilities() const { return m_probabilities; }

    /// The chance that no more than this amount is used.
    double cumulative(double amount) const;
    /// How much is short, on the mean, when there is this amount: E[max(0, use - amount)].
    double expectedShort(double amount) const;

    /// The least lattice amount that suffices with this percentage. Errors: BadInput unless over 0 and under
    /// 100.
    Result<double> quantile(double servicePercent) const;

private:
    double m_mean = 0;
    double m_variance = 0;
    double m_step = 1;
    std::vector<double> m_probabilities { 1.0 };
    std::vector<double> m_cumulative { 1.0 };
    std::vector<double> m_short { 0.0 }; ///< expected shortage with stock of so many steps
};

} // namespace gw
