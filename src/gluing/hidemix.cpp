#include "gluing/mixing.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "gluing/mix.h"
#include "gluing/sentences.h"
#include "gluing/weighing.h"
#include "measure/number.h"

namespace gw {

namespace {

constexpr std::string_view ratioFigure = "water_per_glue_mass";
constexpr double nearGrade = 20; // grams of gel strength; lots of one grade differ by as much
constexpr double quickSeconds = 15, slowSeconds = 60; // S5: pressure at once, or after about a minute

/// "hide_192g" is 192.
std::optional<double> gradeOf(std::string_view item)
{
    constexpr std::string_view before = "hide_";
    if (!item.starts_with(before))
        return std::nullopt;
    item.remove_prefix(before.size());
    double grade = 0;
    const auto read = std::from_chars(item.data(), item.data() + item.size(), grade);
    return read.ec == std::errc() ? std::optional(grade) : std::nullopt;
}

struct Grade {
    double strength;
    WaterRatio ratio;
};

std::vector<Grade> gradesOf(const Recipe& recipe)
{
    std::vector<Grade> grades;
    for (const std::string& item : recipe.items(ratioFigure)) {
        const auto strength = gradeOf(item);
        const RecipeFigure* f = recipe.figure(item, ratioFigure);
        if (strength && f->value && f->low && f->high)
            grades.push_back({ *strength, { *f->low, *f->value, *f->high } });
    }
    std::ranges::sort(grades, {}, &Grade::strength);
    return grades;
}

double between(double a, double b, double share) { return a + (b - a) * share; }

struct Soak {
    const char* figure;
    const char* words;
};

Soak soakOf(GlueForm form)
{
    switch (form) {
    case GlueForm::Pearls:
        return { "soak_pearls", "pearls" };
    case GlueForm::Cake:
        return { "soak_cake_flake", "cake" };
    case GlueForm::Granules:
        break;
    }
    return { "soak_granules_fine", "granules" };
}

std::vector<ClassId> classesNear(double strength)
{
    struct Known {
        const char* id;
        double strength;
    };
    std::array known { Known { "hide_granules_135", 135 }, Known { "hide_granules_192", 192 },
        Known { "hide_granules_251", 251 }, Known { "hide_granules_315", 315 } };
    std::ranges::stable_sort(
        known, {}, [strength](const Known& k) { return std::abs(k.strength - strength); });
    // Only the nearest, and only when it is near: another grade wants another ratio.
    if (std::abs(known.front().strength - strength) > nearGrade)
        return {};
    return { ClassId { known.front().id } };
}

std::string durationWords(const Range<double>& minutes)
{
    return minutes.high > 120 ? rangeWords({ minutes.low / 60, minutes.high / 60 }, 1) + " h"
                              : rangeWords(minutes, 0) + " min";
}

/// The water by mass to one of dry glue, and why.
struct Chosen {
    double ratio = 0;
    std::string why;
};

Result<Chosen> ratioFor(const HideGlueWish& wish, const Recipe& recipe)
{
    if (wish.waterRatio) {
        if (!(*wish.waterRatio >= 0.5 && *wish.waterRatio <= 10))
            return fail(ErrorCode::BadInput,
                "Water of " + numberWords(*wish.waterRatio, 2)
                    + " to one of glue by mass cannot be: say 0.5 to 10.");
        return Chosen { *wish.waterRatio, "as you said" };
    }
    if (wish.size) {
        const auto size = recipe.range({}, "size_water_per_glue");
        if (!size)
            return lacksFigure(recipe, "water ratio of a size");
        return Chosen { (size->low + size->high) / 2, "thin, to size end grain" };
    }
    const auto grade = waterRatioOf(wish.gelStrength, recipe);
    if (!grade)
        return tl::unexpected(grade.error());
    const std::string name = numberWords(wish.gelStrength, 0) + " g grade";
    if (!wish.assemblySeconds)
        return Chosen { grade->start, "the start for the " + name };
    if (!(*wish.assemblySeconds > 0 && *wish.assemblySeconds <= 600))
        return fail(ErrorCode::BadInput,
            numberWords(*wish.assemblySeconds, 1)
                + " s from spreading to pressure cannot be for hot glue: say 1 to 600 s.");
    const double share
        = std::clamp((*wish.assemblySeconds - quickSeconds) / (slowSeconds - quickSeconds), 0.0, 1.0);
    return Chosen { between(grade->low, grade->high, share),
        "for the " + name + " with " + numberWords(*wish.assemblySeconds, 0)
            + " s from spreading to pressure" };
}

void addHideLimits(MixPlan& plan, const HideGlueWish& wish, const Recipe& recipe, double ratio)
{
    plan.limits.push_back(limitOf("water_ratio", { ratio, ratio }, "kg/kg",
        numberWords(ratio, 2) + " parts of water to one of dry glue by mass."));
    const Soak soak = soakOf(wish.form);
    if (const auto minutes = recipe.range({}, soak.figure))
        plan.limits.push_back(
            limitOf("soak_min", *minutes, "min", "Soak " + durationWords(*minutes) + " in cold water."));
    addLimit(plan, recipe, {}, "work_temp", "work_temp_c", "C", "Use it at ", " °C.");
    addLimit(plan, recipe, {}, "work_temp_acceptable", "work_temp_acceptable_c", "C",
        "Acceptable, not preferred: ", " °C.");
    addLimit(plan, recipe, {}, "do_not_exceed", "do_not_exceed_c", "C",
        "Above this it loses strength fast: ", " °C.");
    addLimit(plan, recipe, {}, "pot_day_limit_hours_at_60C", "pot_day_h", "h",
        "In the pot for the working day: ", " h at 60 °C.");
    addLimit(plan, recipe, {}, "evaporation_open_pot_60C", "evaporation_pct_h", "%", "An open pot loses ",
        " % of its water an hour: weigh it and top up with hot water.");
    addLimit(plan, recipe, {}, "room_temp_gel_life_20C", "gel_days", "day", "As a gel at 20 °C: ", " days.");
    addLimit(plan, recipe, {}, "fridge_life_4C", "fridge_days", "day", "Cold, at 2 to 5 °C: ", " days.");
    addLimit(plan, recipe, {}, "freezer_life_minus18C", "freezer_days", "day", "Frozen: ", " days.");
    addLimit(plan, recipe, {}, "reheats_max", "reheats", "count", "Warmed again at most ", " times.");
}

/// A scoop of granules weighs less than a scoop of water, and what that does to the ratio.
std::string volumeTrap(const MixPart& dry, const Amount& water, double bulk)
{
    const double equal = 1 / bulk;
    return "Weigh both. These granules fill about "
        + weighWords(weighable(dry.volume->value(), Dimension::Volume, 1)) + " loose, the water "
        + weighWords(millilitres(water.value())) + ": equal scoops would be " + numberWords(equal, 2)
        + " : 1 by mass and two scoops of water to one " + numberWords(2 * equal, 1) + " : 1.";
}

} // namespace

Result<WaterRatio> waterRatioOf(double gelStrength, const Recipe& recipe)
{
    const std::vector<Grade> grades = gradesOf(recipe);
    if (grades.empty())
        return lacksFigure(recipe, "water ratio by grade");
    if (!(gelStrength >= grades.front().strength && gelStrength <= grades.back().strength))
        return fail(ErrorCode::BadInput,
            "No water ratio is known for a gel strength of " + numberWords(gelStrength, 0) + " g: say "
                + numberWords(grades.front().strength, 0) + " to " + numberWords(grades.back().strength, 0)
                + " g by the 12.5 % method, or the ratio itself.");
    const auto above = std::ranges::lower_bound(grades, gelStrength, {}, &Grade::strength);
    if (above->strength == gelStrength)
        return above->ratio;
    const Grade& a = *(above - 1);
    const Grade& b = *above;
    const double share = (gelStrength - a.strength) / (b.strength - a.strength);
    return WaterRatio { between(a.ratio.low, b.ratio.low, share),
        between(a.ratio.start, b.ratio.start, share), between(a.ratio.high, b.ratio.high, share) };
}

Result<MixPlan> mixHideGlue(const HideGlueWish& wish, const Recipe& recipe)
{
    if (auto can = canMix(recipe.name, wish.need, Dimension::Mass, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    const auto chosen = ratioFor(wish, recipe);
    if (!chosen)
        return tl::unexpected(chosen.error());
    const double extra = wish.extraWater.value_or(0);
    if (!(extra >= 0 && extra <= 5))
        return fail(ErrorCode::BadInput,
            "More water of " + numberWords(extra, 2) + " kg per kg of dry glue cannot be: say 0 to 5.");
    const double urea = wish.ureaShare.value_or(0);
    if (!(urea >= 0 && urea <= 1))
        return fail(ErrorCode::BadInput,
            "Urea of " + numberWords(urea * 100, 0) + " % of the dry glue cannot be: say 0 to 100 %.");

    MixPlan plan { recipe.id, recipe.name, wish.need, {}, {}, {}, {} };
    // Everything in the pot counts to what was asked for: dry glue, water and urea.
    const double dry = wish.need.value() / (1 + chosen->ratio + extra + urea);
    const double bulk = recipe.value({}, "granule_bulk_density").value_or(0.66);
    MixPart granules { "granules", "Dry hide glue, " + numberWords(wish.gelStrength, 0) + " g grade",
        weighable(dry, Dimension::Mass, wish.scaleStep), weighable(dry / bulk, Dimension::Volume, 1),
        classesNear(wish.gelStrength) };
    const Amount water = weighable(dry * chosen->ratio, Dimension::Mass, wish.scaleStep);
    plan.parts = { granules, { "water", "Cold water", water, {}, {} } };
    std::vector<StepWord> words { { "granules", weighWords(granules.amount) }, { "water", weighWords(water) },
        { "pot", weighWords(grams(granules.amount.value() + water.value())) } };
    const Soak soak = soakOf(wish.form);
    if (const auto minutes = recipe.range({}, soak.figure))
        words.push_back({ "soak", durationWords(*minutes) });
    if (extra > 0) {
        const Amount hot = weighable(dry * extra, Dimension::Mass, wish.scaleStep);
        plan.parts.push_back({ "hot_water", "Hot water, once it has melted", hot, {}, {} });
        words.push_back({ "hot_water", weighWords(hot) });
        plan.limits.push_back(limitOf("water_ratio_thinned", { chosen->ratio + extra, chosen->ratio + extra },
            "kg/kg", "Thinned it is " + numberWords(chosen->ratio + extra, 2) + " : 1 by mass."));
    }
    if (urea > 0) {
        const Amount weighed = weighable(dry * urea, Dimension::Mass, wish.scaleStep);
        plan.parts.push_back({ "urea", "Urea", weighed, {}, { ClassId { "urea_additive" } } });
        words.push_back({ "urea", weighWords(weighed) });
    }
    addHideLimits(plan, wish, recipe, chosen->ratio);
    plan.steps = filledSteps(recipe, words);
    plan.warnings.push_back(volumeTrap(granules, water, bulk));
    plan.warnings.push_back("More water gives more time to close the joint: " + numberWords(chosen->ratio, 2)
        + " : 1 is " + chosen->why + ".");
    if (const auto longer = recipe.range({}, "urea_for_longer_open"); longer && urea > longer->high)
        plan.warnings.push_back(
            "So much urea leaves the line weaker in damp and heat, and it goes off in the "
            "jar as liquid glue does.");
    if (auto can = canWeigh(plan, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    return plan;
}

} // namespace gw
