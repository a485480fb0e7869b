#pragma once

#include <string>

#include "gluing/mixing.h"

/// Sizes as they are weighed out, and the bounds of a batch; nobody outside the room needs it.
namespace gw {

/// Rounded to what the scale shows; below ten of its steps to a tenth of one. Never rounded to nothing.
Amount weighable(double value, Dimension dimension, double scaleStep = 0.1);

/// "17.9 g": as the scale shows it.
std::string weighWords(const Amount& amount);

/// Whether such a batch can be. Errors: BadInput, the sentence says what to do.
Result<void> canMix(const std::string& name, Amount need, Dimension wanted, double scaleStep);

/// Refuses a part so small that the scale does not show it. Errors: BadInput.
Result<void> canWeigh(const MixPlan& plan, double scaleStep);

MixLimit limitOf(std::string key, Range<double> range, std::string unit, std::string text);
/// A limit of the recipe's own figure, when it has one: its range, else its value.
void addLimit(MixPlan& plan, const Recipe& recipe, std::string_view item, std::string_view parameter,
    std::string key, std::string unit, const std::string& before, const std::string& after);

std::string rangeWords(const Range<double>& range, int decimals); ///< "30 to 90", "68"

tl::unexpected<Error> lacksFigure(const Recipe& recipe, const std::string& what);

} // namespace gw
