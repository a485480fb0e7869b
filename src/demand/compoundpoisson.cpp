#include "demand/compoundpoisson.h"

#include <utility>

#include "demand/compounduse.h"

namespace gw {

namespace {

UseStream streamOf(double jobs, const std::vector<AmountChance>& severity)
{
    UseStream stream;
    stream.amounts = severity;
    stream.mean = jobs;
    return stream;
}

} // namespace

CompoundPoisson::CompoundPoisson(UseDistribution use)
    : UseDistribution(std::move(use))
{
}

Result<CompoundPoisson> CompoundPoisson::onLattice(
    double jobs, const std::vector<AmountChance>& severity, double step)
{
    return compoundUseOnLattice({ streamOf(jobs, severity) }, step).map([](UseDistribution use) {
        return CompoundPoisson(std::move(use));
    });
}

Result<CompoundPoisson> CompoundPoisson::of(
    double jobs, const std::vector<AmountChance>& severity, std::size_t maxPoints)
{
    return compoundUse({ streamOf(jobs, severity) }, maxPoints).map([](UseDistribution use) {
        return CompoundPoisson(std::move(use));
    });
}

} // namespace gw
