#include "gluing/mixing.h"

#include <cmath>

#include "gluing/mix.h"
#include "gluing/sentences.h"
#include "gluing/weighing.h"
#include "measure/number.h"

namespace gw {

namespace {

// One pound avoirdupois in one US gallon, both by definition.
constexpr double gramsPerLitreOfACut = 453.59237 / 3.785411784;
constexpr double thinnestCut = 0.1, thickestCut = 10;

struct Cut {
    double perLitreAlcohol = 0; ///< grams of flakes
    double litresOfSolution = 0; ///< from a litre of alcohol
};

Cut cutOf(double pounds, const Recipe& recipe)
{
    const double perLitre = pounds * gramsPerLitreOfACut;
    const double flakes = recipe.value({}, "flake_density").value_or(1.1) * 1000; // grams a litre
    return { perLitre, 1 + perLitre / flakes };
}

Result<void> canCut(double pounds)
{
    if (pounds >= thinnestCut && pounds <= thickestCut)
        return {};
    return fail(ErrorCode::BadInput,
        "A cut of " + numberWords(pounds, 2) + " lb cannot be: say " + numberWords(thinnestCut, 1) + " to "
            + numberWords(thickestCut, 0) + " lb.");
}

std::string cutWords(double pounds) { return numberWords(pounds, 2) + " lb cut"; }

MixPart flakesPart(double mass, double scaleStep, bool dewaxed)
{
    std::vector<ClassId> classes { ClassId { "shellac_flakes_dewaxed" }, ClassId { "shellac_flakes_waxy" } };
    if (!dewaxed)
        std::swap(classes[0], classes[1]);
    return { "flakes", "Shellac flakes", weighable(mass, Dimension::Mass, scaleStep),
        weighable(mass / 0.55, Dimension::Volume, 1), std::move(classes) }; // loose, common practice
}

MixPart alcoholPart(double volume)
{
    return { "alcohol", "Denatured alcohol", weighable(volume, Dimension::Volume, volume < 100 ? 0.1 : 1), {},
        { ClassId { "alcohol_denatured" } } };
}

void addShellacLimits(MixPlan& plan, const Recipe& recipe, const Cut& cut, bool dewaxed)
{
    plan.limits.push_back(limitOf("g_per_l_alcohol", { cut.perLitreAlcohol, cut.perLitreAlcohol }, "g/l",
        numberWords(cut.perLitreAlcohol, 1) + " g of flakes to each litre of alcohol."));
    const double perSolution = cut.perLitreAlcohol / cut.litresOfSolution;
    plan.limits.push_back(limitOf("g_per_l_solution", { perSolution, perSolution }, "g/l",
        "A litre of finished solution holds " + numberWords(perSolution, 1)
            + " g: the flakes take up room of their own."));
    addLimit(
        plan, recipe, {}, "dissolve_time", "dissolve_h", "h", "It dissolves in ", " h, shaken now and then.");
    addLimit(plan, recipe, {}, dewaxed ? "shellac_mixed_life_dewaxed" : "shellac_mixed_life_waxy",
        "keeps_months", "month", "Dissolved it keeps ", " months.");
}

struct Powder {
    const char* ratioFigure;
    const char* what;
    const char* classId;
};

Result<MixPlan> mixPowder(const PowderWish& wish, const Recipe& recipe, const Powder& powder)
{
    if (auto can = canMix(recipe.name, wish.need, Dimension::Mass, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    const auto range = recipe.range({}, powder.ratioFigure);
    const auto start = recipe.value({}, powder.ratioFigure);
    if (!range || !start)
        return lacksFigure(recipe, "water ratio");
    const double ratio = wish.waterRatio.value_or(*start);
    if (!(ratio >= range->low / 2 && ratio <= range->high * 2))
        return fail(ErrorCode::BadInput,
            "Water of " + numberWords(ratio, 2) + " to one of powder by mass cannot be: the usual is "
                + rangeWords(*range, 2) + ".");
    MixPlan plan { recipe.id, recipe.name, wish.need, {}, {}, {}, {} };
    const MixPart dry { "powder", powder.what,
        weighable(wish.need.value() * drySharePerUnit(ratio), Dimension::Mass, wish.scaleStep), {},
        { ClassId { powder.classId } } };
    const MixPart water { "water", "Cold water",
        weighable(wish.need.value() * waterSharePerUnit(ratio), Dimension::Mass, wish.scaleStep), {}, {} };
    plan.parts = { dry, water };
    plan.limits.push_back(limitOf("water_ratio", *range, "kg/kg",
        numberWords(ratio, 2) + " parts of water to one of powder by mass; the usual is "
            + rangeWords(*range, 2) + "."));
    if (ratio < range->low || ratio > range->high)
        plan.warnings.push_back("Water of " + numberWords(ratio, 2) + " : 1 is outside the usual "
            + rangeWords(*range, 2) + ": go by the label.");
    plan.steps = filledSteps(
        recipe, { { "powder", weighWords(dry.amount) }, { "water", weighWords(water.amount) } });
    if (auto can = canWeigh(plan, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    return plan;
}

void warnOfCold(MixPlan& plan, const PowderWish& wish, const Recipe& recipe, std::string_view figure)
{
    const auto least = recipe.value({}, figure);
    if (least && wish.room && wish.room->value < *least)
        plan.warnings.push_back("The room is " + formatTemperature(*wish.room) + ": "
            + inSentence(recipe.name) + " wants " + formatTemperature(Celsius { *least })
            + " or more, from start to finish.");
}

} // namespace

Result<MixPlan> mixShellac(const ShellacWish& wish, const Recipe& recipe)
{
    if (auto can = canMix(recipe.name, wish.need, Dimension::Volume, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    if (auto can = canCut(wish.poundCut); !can)
        return tl::unexpected(can.error());
    const Cut cut = cutOf(wish.poundCut, recipe);
    const double alcohol = wish.need.value() / cut.litresOfSolution; // ml
    MixPlan plan { recipe.id, cutWords(wish.poundCut) + " of shellac", wish.need, {}, {}, {}, {} };
    const MixPart flakes = flakesPart(alcohol / 1000 * cut.perLitreAlcohol, wish.scaleStep, wish.dewaxed);
    const MixPart measured = alcoholPart(alcohol);
    plan.parts = { measured, flakes };
    addShellacLimits(plan, recipe, cut, wish.dewaxed);
    plan.steps = filledSteps(recipe,
        { { "flakes", weighWords(flakes.amount) }, { "alcohol", weighWords(measured.amount) },
            { "cut", cutWords(wish.poundCut) } });
    if (auto can = canWeigh(plan, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    return plan;
}

Result<MixPlan> thinShellac(const ShellacThinning& wish, const Recipe& recipe)
{
    if (auto can = canMix(recipe.name, wish.have, Dimension::Volume, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    for (const double pounds : { wish.from, wish.to }) {
        if (auto can = canCut(pounds); !can)
            return tl::unexpected(can.error());
    }
    const Cut from = cutOf(wish.from, recipe);
    const Cut to = cutOf(wish.to, recipe);
    const double alcohol = wish.have.value() / from.litresOfSolution; // ml in it now
    MixPlan plan { recipe.id, cutWords(wish.to) + " from a " + cutWords(wish.from), wish.have, {}, {}, {},
        {} };
    const std::string have = weighWords(wish.have);
    if (wish.to <= wish.from) {
        const double more = alcohol * (wish.from / wish.to - 1);
        plan.makes = millilitres(wish.have.value() + more);
        if (more > 0)
            plan.parts.push_back(alcoholPart(more));
        plan.steps = { have + " of a " + cutWords(wish.from) + " holds "
                + weighWords(weighable(alcohol, Dimension::Volume, 1)) + " of alcohol",
            more > 0 ? "Stir in " + weighWords(plan.parts.front().amount)
                    + " of alcohol, away from flame and hot pot"
                     : std::string("Nothing goes in: it is that cut already") };
    } else {
        const double flakes = alcohol / 1000 * (to.perLitreAlcohol - from.perLitreAlcohol);
        plan.makes = millilitres(alcohol * to.litresOfSolution);
        plan.parts.push_back(flakesPart(flakes, wish.scaleStep, true));
        plan.steps = { "A thicker cut wants more flakes, not less alcohol: never boil it down",
            "Add " + weighWords(plan.parts.front().amount) + " of flakes to the " + have
                + " and shake now and then until dissolved" };
    }
    addShellacLimits(plan, recipe, to, true);
    if (auto can = canWeigh(plan, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    return plan;
}

Result<MixPlan> mixCasein(const PowderWish& wish, const Recipe& recipe)
{
    auto plan = mixPowder(wish, recipe, { "casein_water_per_powder", "Casein glue powder", "casein_powder" });
    if (!plan)
        return plan;
    addLimit(*plan, recipe, {}, "casein_stand_before_restir", "stand_min", "min", "Let it stand ",
        " min, then stir again.");
    addLimit(*plan, recipe, {}, "casein_working_life_20C", "pot_life_h", "h", "At 20 °C it works for ",
        " h; none of it the next day.");
    addLimit(*plan, recipe, {}, "casein_assembly_max", "assembly_min", "min",
        "From spreading to pressure up to ", " min.");
    warnOfCold(*plan, wish, recipe, "casein_min_temp");
    return plan;
}

Result<MixPlan> mixUreaResin(const PowderWish& wish, const Recipe& recipe)
{
    auto plan = mixPowder(wish, recipe, { "uf_water_per_powder", "Urea resin powder", "uf_powder" });
    if (!plan)
        return plan;
    addLimit(*plan, recipe, {}, "uf_pot_life_21C", "pot_life_h", "h", "At 21 °C it lasts ", " h.");
    addLimit(*plan, recipe, {}, "uf_pot_life_32C", "pot_life_32c_h", "h", "At 32 °C only ", " h.");
    addLimit(*plan, recipe, {}, "uf_clamp_21C", "clamp_h", "h", "Clamped at 21 °C for ", " h.");
    addLimit(*plan, recipe, {}, "uf_clamp_27C", "clamp_27c_h", "h", "Clamped at 27 °C for ", " h.");
    addLimit(*plan, recipe, {}, "uf_max_line", "line_mm", "mm", "The line at most ", " mm thick.");
    warnOfCold(*plan, wish, recipe, "uf_min_wood_temp");
    return plan;
}

Result<MixPlan> mixDye(const DyeWish& wish, const Recipe& recipe)
{
    if (auto can = canMix(recipe.name, wish.need, Dimension::Volume, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    const auto usual = recipe.range({}, "dye_solution_strength");
    const double strength
        = wish.gramsPerLitre.value_or(recipe.value({}, "dye_solution_strength").value_or(10));
    if (!(strength > 0 && strength <= 100))
        return fail(ErrorCode::BadInput,
            "A dye of " + numberWords(strength, 2) + " g to the litre cannot be: say over 0 to 100 g.");
    MixPlan plan { recipe.id, recipe.name, wish.need, {}, {}, {}, {} };
    const MixPart powder { "dye", "Alcohol-soluble dye powder",
        weighable(wish.need.value() / 1000 * strength, Dimension::Mass, wish.scaleStep), {},
        { ClassId { "dye_alcohol_powder" } } };
    const MixPart alcohol = alcoholPart(wish.need.value());
    plan.parts = { powder, alcohol };
    if (usual) {
        plan.limits.push_back(limitOf("strength_g_l", *usual, "g/l",
            numberWords(strength, 1) + " g to the litre; the usual is " + rangeWords(*usual, 0) + " g."));
        if (strength < usual->low || strength > usual->high)
            plan.warnings.push_back("The usual strength is " + rangeWords(*usual, 0) + " g to the litre.");
    }
    addLimit(plan, recipe, {}, "dye_solution_life", "keeps_months", "month", "In dark glass it keeps ",
        " months.");
    plan.steps = filledSteps(
        recipe, { { "dye", weighWords(powder.amount) }, { "alcohol", weighWords(alcohol.amount) } });
    if (auto can = canWeigh(plan, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    return plan;
}

} // namespace gw
