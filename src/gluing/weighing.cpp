#include "gluing/weighing.h"

#include <algorithm>
#include <cmath>

#include "gluing/sentences.h"
#include "measure/number.h"

namespace gw {

namespace {

// Less is a smear in the cup and more no shop mixes; wider than any of the recipes' own sizes.
constexpr double leastBatch = 0.5;
constexpr double mostBatch = 50'000;

} // namespace

Amount weighable(double value, Dimension dimension, double scaleStep)
{
    const double step = value < 10 * scaleStep ? scaleStep / 10 : scaleStep;
    const double rounded = std::round(value / step) * step;
    return amountOf(rounded > 0 ? rounded : value, dimension);
}

std::string weighWords(const Amount& amount)
{
    return numberWords(amount.value(), amount.value() < 1 ? 3 : 2) + " "
        + std::string(baseUnit(amount.dimension));
}

Result<void> canMix(const std::string& name, Amount need, Dimension wanted, double scaleStep)
{
    if (need.dimension != wanted)
        return fail(ErrorCode::BadInput,
            "Say how much " + inSentence(name) + " by "
                + (wanted == Dimension::Mass ? "mass, such as 50 g." : "volume, such as 250 ml."));
    const std::string unit(baseUnit(wanted));
    if (need.value() < leastBatch || need.value() > mostBatch)
        return fail(ErrorCode::BadInput,
            formatAmount(need) + " of " + inSentence(name) + " cannot be mixed: say "
                + numberWords(leastBatch, 1) + " " + unit + " to " + numberWords(mostBatch / 1000, 0) + " k"
                + unit + ".");
    if (!(scaleStep >= 0.001 && scaleStep <= 10))
        return fail(ErrorCode::BadInput,
            "A scale that reads " + numberWords(scaleStep, 4) + " g cannot be: say 0.001 to 10 g.");
    return {};
}

Result<void> canWeigh(const MixPlan& plan, double scaleStep)
{
    for (const MixPart& part : plan.parts) {
        // A weighable part is at least a tenth of a step; under half a step the scale shows nothing.
        if (part.amount.dimension == Dimension::Mass && part.amount.value() < scaleStep / 2)
            return fail(ErrorCode::BadInput,
                formatAmount(part.amount) + " of " + lowerFirst(part.what) + " does not show on a scale of "
                    + numberWords(scaleStep, 3) + " g: mix more, or take a finer scale.");
    }
    return {};
}

const MixPart* MixPlan::part(std::string_view key) const
{
    const auto found = std::ranges::find(parts, key, &MixPart::key);
    return found == parts.end() ? nullptr : &*found;
}

const MixLimit* MixPlan::limit(std::string_view key) const
{
    const auto found = std::ranges::find(limits, key, &MixLimit::key);
    return found == limits.end() ? nullptr : &*found;
}

MixLimit limitOf(std::string key, Range<double> range, std::string unit, std::string text)
{
    return { std::move(key), range, std::move(unit), std::move(text) };
}

std::string rangeWords(const Range<double>& range, int decimals)
{
    const std::string low = numberWords(range.low, decimals);
    const std::string high = numberWords(range.high, decimals);
    return low == high ? low : low + " to " + high;
}

void addLimit(MixPlan& plan, const Recipe& recipe, std::string_view item, std::string_view parameter,
    std::string key, std::string unit, const std::string& before, const std::string& after)
{
    if (const auto range = recipe.range(item, parameter))
        plan.limits.push_back(
            limitOf(std::move(key), *range, std::move(unit), before + rangeWords(*range, 2) + after));
}

tl::unexpected<Error> lacksFigure(const Recipe& recipe, const std::string& what)
{
    return fail(ErrorCode::NotFound,
        "The reference data has no " + what + " for " + inSentence(recipe.name)
            + ": verify the store, or take the figure from the label.");
}

} // namespace gw
