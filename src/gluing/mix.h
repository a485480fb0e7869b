#pragma once

#include "measure/amount.h"
#include "measure/error.h"

namespace gw {

/// Dry glue or powder in one gram of ready glue, from the water ratio by mass (1.8 for 1.8 parts of water to
/// one dry): 1 / (1 + ratio). The ratio is 0 or more.
double drySharePerUnit(double waterRatio);

/// Water in one gram of ready glue, from the same ratio: what drySharePerUnit leaves of one.
double waterSharePerUnit(double waterRatio);

/// Both sides of a two-part glue in one gram of the mix, by mass; they add up to 1.
struct MixShares {
    double resin = 1;
    double hardener = 0;
};

/// From hardener in grams per 100 g of resin. Errors: BadInput unless it is over 0 and at most 1000.
Result<MixShares> sharesOfMassRatio(double hardenerPer100Resin);

/// Hardener in grams per 100 g of resin, from a label that gives volumes (2 : 1 is 2 and 1) and both
/// densities. The volume numbers themselves must never go on a scale. Errors: BadInput for a volume that is
/// not over 0, or a density outside 0.1 to 10 g/ml.
Result<double> hardenerPer100ByVolume(
    double resinVolumes, double hardenerVolumes, GramsPerMillilitre resin, GramsPerMillilitre hardener);

/// The least batch, in grams of mix, whose smaller part a scale still weighs to within a tolerance.
/// smallerShare is over 0, scaleStep is what the scale reads in grams, tolerance a share of that part (0.02
/// is 2 %).
double smallestBatchGrams(double smallerShare, double scaleStep, double tolerance);

} // namespace gw
