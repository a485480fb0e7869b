#pragma once

#include <cstddef>
#include <vector>

#include "measure/error.h"

namespace gw {

/// One amount a single job may take, and how probable that is (0 to 1).
struct AmountChance {
    double amount = 0; ///< in any one unit, not negative
    double probability = 0;
};

/// The largest step of which all amounts are whole multiples, taking amounts to the nearest thousandth (the
/// ledger's own precision); 1 when all are zero.
double commonStep(const std::vector<AmountChance>& severity);

/// How much is used when the number of jobs is Poisson and each takes an amount drawn from the severity,
/// independently: the compound Poisson distribution, on a lattice 0, step, 2 step, ... Evaluated by Panjer's
/// recursion (Panjer 1981), g(0) = exp(-l (1 - f0)), g(s) = (l/s) sum y f(y) g(s-y), which is strongly stable
/// for a Poisson number (Panjer and Wang 1993); the start is scaled, so that a large l does not underflow.
/// Amounts that are whole multiples of the step are exact; others are shared between their two neighbours so
/// that the mean stays.
class CompoundPoisson {
public:
    /// The most lattice points an answer may take.
    static constexpr std::size_t mostPoints = std::size_t { 1 } << 20;

    /// On a lattice of the caller's choice. Errors, all BadInput: a jobs number that is negative or not
    /// finite, no severity, a negative amount or probability, probabilities that do not add up to 1 (within a
    /// millionth), a step that is not over zero, or one so fine that the answer would take more than
    /// mostPoints.
    static Result<CompoundPoisson> onLattice(
        double jobs, const std::vector<AmountChance>& severity, double step);

    /// On the common step of the amounts, coarsened only when that would take more than maxPoints points.
    static Result<CompoundPoisson> of(
        double jobs, const std::vector<AmountChance>& severity, std::size_t maxPoints = mostPoints);

    double mean() const { return m_mean; }
    double variance() const { return m_variance; }
    double step() const { return m_step; }

    /// At 0, step, 2 step, ... until less than 1e-13 is left.
    const std::vector<double>& probabilities() const { return m_probabilities; }

    /// The chance that no more than this amount is used.
    double cumulative(double amount) const;

    /// The least lattice amount that suffices with this percentage. Errors: BadInput unless over 0 and under
    /// 100.
    Result<double> quantile(double servicePercent) const;

private:
    CompoundPoisson() = default;

    double m_mean = 0;
    double m_variance = 0;
    double m_step = 1;
    std::vector<double> m_probabilities;
    std::vector<double> m_cumulative;
};

} // namespace gw
