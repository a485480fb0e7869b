#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/range.h"

namespace gw {

/// One figure of a recipe, as in db/reference/recipe_figures.
struct RecipeFigure {
    std::string item; ///< the grade, ratio, consistency or cut it is for; empty: for all
    std::string parameter;
    std::optional<double> value, low, high;
    std::string unit, source, confidence;
};

/// How a batch is made: its figures with those of the recipe it is based on, and its steps. A step's text
/// may hold names in braces ("{water} of cold water") for which a plan puts in its own sizes.
struct Recipe {
    std::string id;
    std::string name;
    std::string note;
    std::vector<std::string> steps;
    std::vector<RecipeFigure> figures;

    const RecipeFigure* figure(std::string_view item, std::string_view parameter) const; ///< null: not known
    std::optional<double> value(std::string_view item, std::string_view parameter) const;
    std::optional<Range<double>> range(std::string_view item, std::string_view parameter) const;
    /// Every item that has such a figure, in the order of the table.
    std::vector<std::string> items(std::string_view parameter) const;
};

/// A recipe's steps with every name in braces replaced. A name that is not given stays out with its step:
/// a step that needs it does not apply.
struct StepWord {
    std::string name, words;
};
std::vector<std::string> filledSteps(const Recipe& recipe, const std::vector<StepWord>& words);

} // namespace gw
