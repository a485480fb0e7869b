#include "shop/mixstock.h"

#include <algorithm>

#include "measure/quoted.h"
#include "shop/cautions.h"
#include "shop/mixsource.h"

namespace gw {

namespace {

/// What every plan needs, or the sentence that asks for it.
Result<Amount> needOf(const MixAsked& asked, const Recipe& recipe)
{
    if (!asked.need)
        return fail(ErrorCode::BadInput,
            "Say how much is to be ready of " + inQuotes(recipe.name) + ", such as 50 g or 250 ml.");
    return *asked.need;
}

double gradeFor(const MixAsked& asked, std::optional<double> shelfGrade)
{
    return asked.grade.value_or(shelfGrade.value_or(192));
}

Result<MixPlan> hidePlan(const MixAsked& asked, const Recipe& recipe, std::optional<double> shelfGrade)
{
    const auto need = needOf(asked, recipe);
    if (!need)
        return tl::unexpected(need.error());
    HideGlueWish wish { *need, gradeFor(asked, shelfGrade), asked.form, asked.assemblySeconds,
        asked.waterRatio, asked.extraWater, asked.ureaShare, asked.size, asked.scaleStep };
    // The syringe wants it thinner, by the recipe's own figure where nobody says more.
    if (!wish.extraWater && recipe.id == "hot_hide_syringe")
        wish.extraWater = recipe.value({}, "syringe_extra_water");
    return mixHideGlue(wish, recipe);
}

Result<MixPlan> epoxyPlan(
    const Shop& shop, const MixAsked& asked, Recipe recipe, const std::optional<ResinPair>& pair)
{
    const auto need = needOf(asked, recipe);
    if (!need)
        return tl::unexpected(need.error());
    Filler filler = asked.filler;
    if (recipe.id == "epoxy_neat"
        && (filler != Filler::None || asked.dyePercent > 0 || asked.pigmentPercent > 0)) {
        auto thick = findRecipe(shop, "epoxy_thick");
        if (!thick)
            return tl::unexpected(thick.error());
        recipe = std::move(*thick);
    } else if (recipe.id == "epoxy_thick" && filler == Filler::None) {
        filler = Filler::Silica;
    }
    EpoxyWish wish { *need, asked.ratio, filler, asked.consistency, asked.dyePercent, asked.pigmentPercent,
        asked.alcohol, asked.room, asked.potLifeMinutes, asked.hardenerKind, asked.scaleStep };
    if (pair) {
        wish.ratio.hardenerPer100 = pair->hardenerPer100;
        wish.ratio.name = pair->name;
    }
    return mixEpoxy(wish, recipe);
}

Result<MixPlan> shellacPlan(const MixAsked& asked, const Recipe& recipe)
{
    if (asked.fromCut || asked.have) {
        if (!asked.fromCut || !asked.have)
            return fail(ErrorCode::BadInput,
                "To change a solution say both how much there is of it and its cut, such as 300 ml of 2 lb.");
        return thinShellac({ *asked.have, *asked.fromCut, asked.cut.value_or(1), asked.scaleStep }, recipe);
    }
    const auto need = needOf(asked, recipe);
    if (!need)
        return tl::unexpected(need.error());
    return mixShellac({ *need, asked.cut.value_or(2), !asked.waxy, asked.scaleStep }, recipe);
}

Result<MixPlan> planFor(const Shop& shop, const MixAsked& asked, const Recipe& recipe,
    const std::optional<ResinPair>& pair, std::optional<double> shelfGrade)
{
    if (recipe.id.starts_with("hot_hide"))
        return hidePlan(asked, recipe, shelfGrade);
    if (recipe.id.starts_with("epoxy"))
        return epoxyPlan(shop, asked, recipe, pair);
    if (recipe.id == "shellac")
        return shellacPlan(asked, recipe);
    const auto need = needOf(asked, recipe);
    if (!need)
        return tl::unexpected(need.error());
    const PowderWish powder { *need, asked.waterRatio, asked.room, asked.scaleStep };
    if (recipe.id == "casein")
        return mixCasein(powder, recipe);
    if (recipe.id == "uf")
        return mixUreaResin(powder, recipe);
    if (recipe.id == "dye_solution")
        return mixDye({ *need, asked.gramsPerLitre, asked.scaleStep }, recipe);
    return fail(
        ErrorCode::NotFound, "How " + inQuotes(recipe.name) + " is mixed is not known to this program.");
}

void addHazards(MixAnswer& answer, const std::vector<const ClassRecord*>& classes)
{
    for (const ClassRecord* cls : classes) {
        if (!cls->pictograms.empty() || !cls->hazardNote.empty())
            answer.hazards.push_back(cls->name);
        for (const std::string& code : cls->pictograms) {
            if (std::ranges::find(answer.pictograms, code) == answer.pictograms.end())
                answer.pictograms.push_back(code);
        }
    }
    std::ranges::sort(answer.pictograms);
}

/// The class a part really comes from, else the likeliest.
const ClassRecord* classFor(const MixPart& part, const PartSource& source, const Catalogue& catalogue)
{
    for (const auto& [id, material] : catalogue.materials) {
        if (material.name == source.material)
            return catalogue.classOf(id);
    }
    const auto found = catalogue.classes.find(part.classes.front());
    return found == catalogue.classes.end() ? nullptr : &found->second;
}

} // namespace

Result<MixAnswer> mixFromShelf(const Shop& shop, const MixAsked& asked, Moment asOf)
{
    const auto recipe = findRecipe(shop, asked.recipe);
    if (!recipe)
        return tl::unexpected(recipe.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto items = shelf(shop, { asOf, {}, {}, {}, false, false });
    if (!items)
        return tl::unexpected(items.error());
    const TwoPartRatio& ratio = asked.ratio;
    const bool ratioSaid = ratio.hardenerPer100 || ratio.resinVolumes != 0 || ratio.hardenerVolumes != 0
        || !ratio.name.empty();
    std::optional<ResinPair> pair;
    if (recipe->id.starts_with("epoxy") && !ratioSaid)
        pair = resinOnShelf(*catalogue, *items, asked.hardenerKind);

    const auto shelfGrade = gradeOnShelf(*catalogue, *items);
    auto plan = planFor(shop, asked, *recipe, pair, shelfGrade);
    if (!plan)
        return tl::unexpected(plan.error());
    MixAnswer answer { std::move(*plan), {}, {}, {}, {}, {}, {} };
    if (recipe->id.starts_with("hot_hide"))
        answer.grade = gradeFor(asked, shelfGrade);
    std::vector<const ClassRecord*> classes;
    for (const MixPart& part : answer.plan.parts) {
        if (part.classes.empty())
            continue;
        answer.sources.push_back(sourceOf(part, *catalogue, *items, pair, asOf, shop.units()));
        const ClassRecord* cls = classFor(part, answer.sources.back(), *catalogue);
        if (cls && std::ranges::find(classes, cls) == classes.end())
            classes.push_back(cls);
    }
    const bool covered = !answer.sources.empty()
        && std::ranges::all_of(
            answer.sources, [](const PartSource& source) { return source.result == GateResult::Pass; });
    for (const PartSource& source : answer.sources) {
        for (const Take& take : source.takes) {
            if (covered)
                answer.takings.push_back({ take.container.text, take.amount });
        }
    }
    addHazards(answer, classes);
    auto cautions = cautionsFor(shop, classes, { "opening", "mixing" });
    if (!cautions)
        return tl::unexpected(cautions.error());
    answer.cautions = std::move(*cautions);
    return answer;
}

} // namespace gw
