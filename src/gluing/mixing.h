#pragma once

#include <optional>
#include <string>
#include <vector>

#include "gluing/glueup.h"
#include "gluing/recipe.h"
#include "measure/amount.h"
#include "measure/error.h"
#include "measure/id.h"
#include "measure/range.h"
#include "measure/temperature.h"

/// What to weigh for a batch, and in which order to do it. All plans refuse (BadInput) what cannot be
/// weighed or stirred: less than half a gram or millilitre, more than 50 kg or 50 l, or a part the scale
/// does not show. A figure that the recipe lacks is NotFound.
namespace gw {

/// One thing that goes in.
struct MixPart {
    std::string key; ///< stable: "granules", "water", "resin", "hardener", "filler", "dye", "pigment", ...
    std::string what; ///< "Hide glue granules, 192 g", "Cold water"
    Amount amount; ///< as it is weighed or measured: rounded to the scale
    std::optional<Amount> volume {}; ///< what that fills, loose; to find the cup by, never to measure by
    std::vector<ClassId> classes; ///< that it may be taken from, the first the likeliest; none for water
};

/// A figure to keep to. key is stable: "soak_min", "work_temp_c", "pot_life_min", "smallest_batch_g", ...
struct MixLimit {
    std::string key;
    Range<double> range; ///< equal ends for one figure
    std::string unit; ///< "min", "C", "g", "h", "day", "month", "%", "ml", "kg/kg", "g/100 g"
    std::string text; ///< a sentence
};

struct MixPlan {
    std::string recipe; ///< id
    std::string name;
    Amount makes; ///< what was asked for
    std::vector<MixPart> parts; ///< in the order they go in
    std::vector<std::string> steps;
    std::vector<MixLimit> limits;
    std::vector<std::string> warnings; ///< what is wrong or better done otherwise; empty: nothing

    const MixPart* part(std::string_view key) const;
    const MixLimit* limit(std::string_view key) const;
};

enum class GlueForm { Granules, Pearls, Cake };

/// Hot glue from dry glue and cold water, by mass.
struct HideGlueWish {
    Amount need; ///< ready glue, mass
    double gelStrength
        = 192; ///< grams by the 12.5 % method; between two grades of the table the ratio is too
    GlueForm form = GlueForm::Granules;
    /// From spreading to pressure. 15 s takes the thickest of the grade's range and a minute the thinnest,
    /// between them evenly (S5 names the two ends; the line between is our assumption). None: the start.
    std::optional<double> assemblySeconds {};
    std::optional<double> waterRatio {}; ///< the person's own, by mass; beats grade and time
    std::optional<double> extraWater {}; ///< for the syringe: more water, kg per kg of dry glue
    std::optional<double> ureaShare {}; ///< kg per kg of dry glue
    bool size = false; ///< thin, for end grain
    double scaleStep = 0.1; ///< grams
};
Result<MixPlan> mixHideGlue(const HideGlueWish& wish, const Recipe& recipe);

/// Water by mass to one of dry glue for a grade, low to high with the start between. Errors: BadInput
/// outside the grades of the recipe.
struct WaterRatio {
    double low = 0, start = 0, high = 0;
};
Result<WaterRatio> waterRatioOf(double gelStrength, const Recipe& recipe);

/// The label's ratio: by mass, or by volume with both densities.
struct TwoPartRatio {
    std::string name; ///< "2:1, slow"; may be empty
    std::optional<double> hardenerPer100; ///< grams to 100 g of resin
    double resinVolumes = 0, hardenerVolumes = 0;
    GramsPerMillilitre resin { 0 }, hardener { 0 };
};
enum class Filler { None, Silica, WoodFlour, Microspheres, Whiting };
enum class Consistency { Syrup, Ketchup, Mayonnaise, PeanutButter };

struct EpoxyWish {
    Amount need; ///< of resin and hardener together, mass
    TwoPartRatio ratio {};
    Filler filler = Filler::None;
    Consistency consistency = Consistency::Mayonnaise;
    double dyePercent = 0, pigmentPercent = 0; ///< of the mixed mass
    double alcohol = 0; ///< grams of alcohol or dye solution a person means to add
    std::optional<Celsius> room {};
    std::optional<double> potLifeMinutes {}; ///< the label's, for 100 g at 25 C
    std::string hardenerKind {}; ///< "slow", "fast" or empty
    double scaleStep = 0.1;
};
Result<MixPlan> mixEpoxy(const EpoxyWish& wish, const Recipe& recipe);

/// Pot life in minutes of a mass in a cup at a temperature, from minutes for a mass at a temperature:
/// halved for every 10 C warmer (rule of thumb) and by mass to the power -0.3 (common practice, rough), the
/// range by the recipe's ranges of both. Errors: BadInput for a mass or time that is not over 0.
struct PotLife {
    double minutes = 0, forGrams = 100;
    Celsius at { 25 };
};
Result<Range<double>> potLifeMinutes(
    const PotLife& label, double grams, Celsius temperature, const Recipe& recipe, double* middle = nullptr);

struct ShellacWish {
    Amount need; ///< finished solution, volume
    double poundCut = 2; ///< pounds of flakes in a US gallon of alcohol
    bool dewaxed = true;
    double scaleStep = 0.1;
};
Result<MixPlan> mixShellac(const ShellacWish& wish, const Recipe& recipe);

/// From one cut to another: alcohol to a thinner one, flakes to a thicker.
struct ShellacThinning {
    Amount have; ///< solution, volume
    double from = 2, to = 1;
    double scaleStep = 0.1;
};
Result<MixPlan> thinShellac(const ShellacThinning& wish, const Recipe& recipe);

struct PowderWish {
    Amount need; ///< ready glue, mass
    std::optional<double> waterRatio {}; ///< by mass; none: the recipe's start
    std::optional<Celsius> room {};
    double scaleStep = 0.1;
};
Result<MixPlan> mixCasein(const PowderWish& wish, const Recipe& recipe);
Result<MixPlan> mixUreaResin(const PowderWish& wish, const Recipe& recipe);

struct DyeWish {
    Amount need; ///< volume of alcohol
    std::optional<double> gramsPerLitre {}; ///< none: the recipe's start
    double scaleStep = 0.01;
};
Result<MixPlan> mixDye(const DyeWish& wish, const Recipe& recipe);

} // namespace gw
