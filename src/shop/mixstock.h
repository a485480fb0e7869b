#pragma once

#include <optional>
#include <string>
#include <vector>

#include "gluing/mixing.h"
#include "shop/acts.h"
#include "shop/shop.h"

namespace gw {

/// Every recipe of the reference data, by id, each with the figures of the one it is based on.
Result<std::vector<Recipe>> recipes(const Shop& shop);
/// By id, name or a part of either; of several the one the others are based on. Errors: NotFound, naming
/// those there are.
Result<Recipe> findRecipe(const Shop& shop, const std::string& text);

/// What a person says of a mix; what is not said is the recipe's, or the shelf's.
struct MixAsked {
    std::string recipe;
    std::optional<Amount> need; ///< what is to be ready
    double scaleStep = 0.1; ///< grams that the scale shows
    std::optional<Celsius> room {};
    // Hot hide glue
    std::optional<double> grade {}; ///< gel strength; none: what is good on the shelf, else 192
    GlueForm form = GlueForm::Granules;
    std::optional<double> assemblySeconds {}, waterRatio {}, extraWater {}, ureaShare {};
    bool size = false;
    // Epoxy; with no ratio that of a resin and its hardener on the shelf
    TwoPartRatio ratio {};
    Filler filler = Filler::None;
    Consistency consistency = Consistency::Mayonnaise;
    double dyePercent = 0, pigmentPercent = 0, alcohol = 0;
    std::optional<double> potLifeMinutes {};
    std::string hardenerKind {}; ///< "slow", "fast" or empty
    // Shellac and dye
    std::optional<double> cut {}, fromCut {};
    std::optional<Amount> have {}; ///< solution there is of fromCut
    bool waxy = false;
    std::optional<double> gramsPerLitre {};
};

/// Where one part comes from.
struct PartSource {
    std::string key; ///< of the plan's part
    std::string material; ///< empty: nothing of the kind on the shelf
    std::vector<Take> takes; ///< good containers, first to go off first
    GateResult result = GateResult::Unknown; ///< pass: good stock covers it
    std::string text; ///< a sentence; empty when it passes
};

struct MixAnswer {
    MixPlan plan;
    std::vector<PartSource> sources; ///< of the parts that come from the shelf, in the plan's order
    std::vector<Taking> takings; ///< what recording it would take; empty unless every part is covered
    std::vector<std::string> hazards; ///< names of the classes hazards are recorded for
    std::vector<std::string> pictograms; ///< GHS codes, each once
    std::vector<std::string> cautions;
    std::optional<double> grade; ///< hot hide glue: the gel strength it was reckoned with
};

/// What to weigh, in which order, and from which containers. Nothing is written. Errors: NotFound for the
/// recipe; BadInput for what cannot be mixed.
Result<MixAnswer> mixFromShelf(const Shop& shop, const MixAsked& asked, Moment asOf);

} // namespace gw
