#include "gluing/mix.h"

#include <cassert>

#include "gluing/sentences.h"
#include "measure/number.h"

namespace gw {

namespace {

// Wider than any resin, hardener or powder: outside it a figure was mistyped.
constexpr double lightest = 0.1;
constexpr double heaviest = 10;
constexpr double mostHardener = 1000;

bool isDensity(GramsPerMillilitre density) { return density.value >= lightest && density.value <= heaviest; }

} // namespace

double drySharePerUnit(double waterRatio)
{
    assert(waterRatio >= 0);
    return 1 / (1 + waterRatio);
}

double waterSharePerUnit(double waterRatio) { return 1 - drySharePerUnit(waterRatio); }

Result<MixShares> sharesOfMassRatio(double hardenerPer100Resin)
{
    if (!(hardenerPer100Resin > 0 && hardenerPer100Resin <= mostHardener))
        return fail(ErrorCode::BadInput,
            numberWords(hardenerPer100Resin, 1)
                + " g of hardener to 100 g of resin cannot be: take the ratio by mass from the label.");
    const double whole = 100 + hardenerPer100Resin;
    return MixShares { 100 / whole, hardenerPer100Resin / whole };
}

Result<double> hardenerPer100ByVolume(
    double resinVolumes, double hardenerVolumes, GramsPerMillilitre resin, GramsPerMillilitre hardener)
{
    const double volumes = hardenerVolumes / resinVolumes;
    if (!(resinVolumes > 0 && hardenerVolumes > 0 && volumes > 0 && volumes <= mostHardener))
        return fail(ErrorCode::BadInput,
            "A mix of " + numberWords(resinVolumes, 2) + " : " + numberWords(hardenerVolumes, 2)
                + " by volume cannot be: take the ratio from the label.");
    if (!isDensity(resin) || !isDensity(hardener))
        return fail(ErrorCode::BadInput,
            "Densities of " + numberWords(resin.value, 2) + " and " + numberWords(hardener.value, 2)
                + " g/ml cannot be: take them from the labels, or weigh 10 ml of each.");
    return 100 * volumes * hardener.value / resin.value;
}

double smallestBatchGrams(double smallerShare, double scaleStep, double tolerance)
{
    assert(smallerShare > 0 && scaleStep > 0 && tolerance > 0);
    return scaleStep / tolerance / smallerShare;
}

} // namespace gw
