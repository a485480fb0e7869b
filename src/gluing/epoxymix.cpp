#include "gluing/mixing.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "gluing/mix.h"
#include "gluing/sentences.h"
#include "gluing/weighing.h"
#include "measure/number.h"

namespace gw {

namespace {

constexpr double hardenerTolerance = 0.02; // common practice; 5 % off is still fine, 10 % noticeably softer
constexpr double dyeGrainDensity
    = 1.4; // g/ml, organic dye, from memory; a dye's share is too small to matter

struct Ratio {
    double hardenerPer100 = 0;
    std::optional<GramsPerMillilitre> mixed;
    std::string words; ///< where it is from
};

Ratio byVolume(double hardenerPer100, const TwoPartRatio& label)
{
    const double volume = label.resinVolumes + label.hardenerVolumes;
    const double mass = label.resinVolumes * label.resin.value + label.hardenerVolumes * label.hardener.value;
    return { hardenerPer100, GramsPerMillilitre { mass / volume },
        numberWords(label.resinVolumes, 2) + " : " + numberWords(label.hardenerVolumes, 2) + " by volume at "
            + numberWords(label.resin.value, 2) + " and " + numberWords(label.hardener.value, 2) + " g/ml" };
}

/// The label's own figures, or the recipe's usual ones for a ratio of that name.
Result<Ratio> ratioOf(const TwoPartRatio& label, const Recipe& recipe)
{
    if (label.hardenerPer100) {
        if (const auto shares = sharesOfMassRatio(*label.hardenerPer100); !shares)
            return tl::unexpected(shares.error());
        return Ratio { *label.hardenerPer100, {}, "the ratio by mass" };
    }
    TwoPartRatio volumes = label;
    const bool said = label.resinVolumes != 0 || label.hardenerVolumes != 0;
    if (!said) {
        const auto usual = recipe.value(label.name, "resin_per_hardener_volume");
        if (label.name.empty() || !usual)
            return fail(ErrorCode::BadInput,
                "Say the ratio of resin to hardener from the label: by mass such as 100:41.3, or by volume "
                "such as 2:1.");
        volumes.resinVolumes = *usual;
        volumes.hardenerVolumes = 1;
    }
    if (volumes.resin.value == 0 && volumes.hardener.value == 0) {
        const auto resin = recipe.value(label.name, "resin_density");
        const auto hardener = recipe.value(label.name, "hardener_density");
        if (!resin || !hardener)
            return fail(ErrorCode::BadInput,
                "A ratio by volume wants both densities: take them from the labels, or weigh 10 ml of each.");
        volumes.resin = { *resin };
        volumes.hardener = { *hardener };
    }
    const auto mass = hardenerPer100ByVolume(
        volumes.resinVolumes, volumes.hardenerVolumes, volumes.resin, volumes.hardener);
    if (!mass)
        return tl::unexpected(mass.error());
    return byVolume(*mass, volumes);
}

struct FillerFacts {
    const char* figure;
    const char* name;
    const char* item; ///< of its densities
    const char* classId;
    double trueDensity; ///< when the recipe has none; microspheres: of the whole hollow grain
};

FillerFacts factsOf(Filler filler)
{
    switch (filler) {
    case Filler::WoodFlour:
        return { "wood_flour_g_per_100g_mixed", "Wood flour, dry", "wood flour", "wood_flour", 1.45 };
    case Filler::Microspheres:
        return { "microspheres_g_per_100g_mixed", "Microspheres", "microspheres", "microballoons", 0.25 };
    case Filler::Whiting:
        return { "whiting_g_per_100g_mixed", "Whiting", "whiting", "whiting_chalk", 2.71 };
    case Filler::Silica:
    case Filler::None:
        break;
    }
    return { "silica_g_per_100g_mixed", "Colloidal silica", "silica", "colloidal_silica", 2.2 };
}

std::string_view consistencyWord(Consistency consistency)
{
    constexpr std::array words { "syrup", "ketchup", "mayonnaise", "peanut butter" };
    return words.at(static_cast<std::size_t>(consistency));
}

/// The recipe's item that begins with the word: "mayonnaise (vertical, 1-3 mm gaps)".
std::string itemFor(const Recipe& recipe, const char* figure, Consistency consistency)
{
    for (const std::string& item : recipe.items(figure)) {
        if (item.starts_with(consistencyWord(consistency)))
            return item;
    }
    return {};
}

/// Grams to 100 g of mix: the figure to start from, else the middle of its range.
std::optional<double> startOf(const Recipe& recipe, std::string_view item, std::string_view parameter)
{
    if (const auto value = recipe.value(item, parameter))
        return value;
    const auto range = recipe.range(item, parameter);
    return range ? std::optional((range->low + range->high) / 2) : std::nullopt;
}

/// Adds the filler; gives what it adds to the volume, in ml.
Result<double> addFiller(
    MixPlan& plan, std::vector<StepWord>& words, const EpoxyWish& wish, const Recipe& recipe)
{
    if (wish.filler == Filler::None)
        return 0.0;
    const FillerFacts facts = factsOf(wish.filler);
    const std::string item = itemFor(recipe, facts.figure, wish.consistency);
    const auto per100 = startOf(recipe, item, facts.figure);
    if (item.empty() || !per100)
        return lacksFigure(recipe, "amount of " + lowerFirst(facts.name));
    const double mass = wish.need.value() * *per100 / 100;
    const std::string stands = "stands like " + std::string(consistencyWord(wish.consistency));
    if (mass <= 0) {
        plan.warnings.push_back(
            std::string(facts.name) + ": none is wanted for a mix that " + "runs like syrup.");
        return 0.0;
    }
    MixPart part { "filler", facts.name, weighable(mass, Dimension::Mass, wish.scaleStep), {},
        { ClassId { facts.classId } } };
    if (const auto bulk = recipe.value(facts.item, "bulk_density"))
        part.volume = weighable(mass / *bulk, Dimension::Volume, 1);
    words.push_back({ "filler",
        weighWords(part.amount) + " of " + lowerFirst(part.what)
            + (part.volume ? " (about " + weighWords(*part.volume) + " loose)" : "") });
    words.push_back({ "stands", stands });
    if (const auto range = recipe.range(item, facts.figure))
        plan.limits.push_back(limitOf("filler_g_per_100g", *range, "g/100 g",
            "It " + stands + " with " + rangeWords(*range, 1) + " g of " + lowerFirst(facts.name)
                + " to 100 g of mix; go by how it stands."));
    plan.parts.push_back(std::move(part));
    return mass / recipe.value(facts.item, "true_density").value_or(facts.trueDensity);
}

/// Adds dye and pigment, each below its ceiling; gives what they add to the volume, in ml.
Result<double> addColour(
    MixPlan& plan, std::vector<StepWord>& words, const EpoxyWish& wish, const Recipe& recipe)
{
    double volume = 0;
    std::vector<std::string> said;
    const auto add = [&](const char* key, const char* what, double percent, const char* figure,
                         std::vector<ClassId> classes) -> Result<void> {
        if (percent == 0)
            return {};
        const auto range = recipe.range({}, figure);
        const double usualTop = recipe.value({}, figure).value_or(1);
        const double top = range ? range->high : usualTop;
        if (!(percent > 0 && percent <= top))
            return fail(ErrorCode::BadInput,
                numberWords(percent, 2) + " % of " + lowerFirst(what)
                    + " spoils the cure: say over 0 and at most " + numberWords(top, 1)
                    + " % of the mix, better no more than " + numberWords(usualTop, 1) + " %.");
        const double mass = wish.need.value() * percent / 100;
        const MixPart part { key, what, amountOf(std::max(mass, 0.001), Dimension::Mass), {},
            std::move(classes) };
        said.push_back(numberWords(mass * 1000, 0) + " mg of " + lowerFirst(what));
        plan.parts.push_back(part);
        plan.limits.push_back(limitOf(std::string(key) + "_max_pct", { usualTop, top }, "%",
            "At most " + numberWords(usualTop, 1) + " % of " + lowerFirst(what) + " in the mix, "
                + numberWords(top, 1) + " % at the very most."));
        if (percent > usualTop)
            plan.warnings.push_back(numberWords(percent, 2) + " % of " + lowerFirst(what)
                + " is over the usual " + numberWords(usualTop, 1) + " %: cure a dab first.");
        volume += mass / dyeGrainDensity;
        return {};
    };
    if (auto dye = add("dye", "Alcohol-soluble dye powder", wish.dyePercent, "dye_powder_dry_max",
            { ClassId { "dye_alcohol_powder" } });
        !dye)
        return tl::unexpected(dye.error());
    if (auto pigment
        = add("pigment", "Dry pigment", wish.pigmentPercent, "pigment_max", { ClassId { "pigment_dry" } });
        !pigment)
        return tl::unexpected(pigment.error());
    if (!said.empty())
        words.push_back({ "colour", listWords(said) });
    return volume;
}

void addPotLife(MixPlan& plan, const EpoxyWish& wish, const Recipe& recipe)
{
    if (!wish.potLifeMinutes) {
        plan.warnings.push_back("How long it can be worked is not known: the label gives minutes at a "
                                "temperature for a mass.");
        return;
    }
    double middle = 0;
    const Celsius room = wish.room.value_or(Celsius { 25 });
    const auto life = potLifeMinutes({ *wish.potLifeMinutes }, wish.need.value(), room, recipe, &middle);
    if (!life)
        return;
    plan.limits.push_back(limitOf("pot_life_min", *life, "min",
        "In the cup about " + numberWords(middle, 0) + " min at " + formatTemperature(room)
            + (wish.room ? "" : " (the room is not known)") + ", somewhere in " + rangeWords(*life, 0)
            + " min; spread thin it lasts longer. Stop when the cup is warm to the hand."));
}

void addEpoxyCare(MixPlan& plan, const EpoxyWish& wish, const Recipe& recipe, double smallest)
{
    if (wish.need.value() < smallest)
        plan.warnings.push_back("On a scale that reads " + numberWords(wish.scaleStep, 3)
            + " g the hardener may be out by more than 2 %: mix "
            + numberWords(std::ceil(smallest * 10) / 10, 1)
            + " g or more and leave the rest to harden, or take a finer scale or syringes.");
    const double cup = recipe.value({}, "cup_mass_max").value_or(100);
    if (wish.need.value() > cup)
        plan.warnings.push_back("No more than " + numberWords(cup, 0)
            + " g in one cup: a thick mass heats itself and can smoke. Mix "
            + numberWords(std::ceil(wish.need.value() / cup), 0) + " cups, or pour into a flat tray.");
    const auto least = recipe.value(wish.hardenerKind, "min_temp");
    if (least && wish.room && wish.room->value < *least)
        plan.warnings.push_back("At " + formatTemperature(*wish.room) + " a " + wish.hardenerKind
            + " hardener may never cure right: it wants " + formatTemperature(Celsius { *least })
            + " or more for wood, resin and air.");
    if (wish.filler != Filler::None)
        addLimit(
            plan, recipe, {}, "lift_max", "lift_mm", "mm", "Fill deep places in lifts of at most ", " mm.");
}

} // namespace

Result<Range<double>> potLifeMinutes(
    const PotLife& label, double grams, Celsius temperature, const Recipe& recipe, double* middle)
{
    if (!(label.minutes > 0 && label.minutes <= 10'000 && label.forGrams > 0 && grams > 0
            && grams <= 100'000))
        return fail(ErrorCode::BadInput,
            "A pot life of " + numberWords(label.minutes, 1) + " min for " + numberWords(grams, 1)
                + " g cannot be: take minutes, temperature and mass from the label.");
    const auto factors = recipe.range({}, "time_factor_per_10C").value_or(Range<double> { 2, 2 });
    const auto exponents = recipe.range({}, "mass_exponent").value_or(Range<double> { -0.3, -0.3 });
    const auto life = [&](double factor, double exponent) {
        return label.minutes * std::pow(factor, (label.at.value - temperature.value) / 10)
            * std::pow(grams / label.forGrams, exponent);
    };
    const std::array corners { life(factors.low, exponents.low), life(factors.low, exponents.high),
        life(factors.high, exponents.low), life(factors.high, exponents.high) };
    if (middle)
        *middle = life(recipe.value({}, "time_factor_per_10C").value_or(2),
            recipe.value({}, "mass_exponent").value_or(-0.3));
    const auto [low, high] = std::ranges::minmax(corners);
    return Range<double> { low, high };
}

Result<MixPlan> mixEpoxy(const EpoxyWish& wish, const Recipe& recipe)
{
    if (auto can = canMix(recipe.name, wish.need, Dimension::Mass, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    if (wish.alcohol != 0)
        return fail(ErrorCode::BadInput,
            "No alcohol or dye solution goes into epoxy: already a percent or two slows the cure and leaves "
            "it "
            "soft. Colour it with dry dye powder or pigment.");
    if (wish.potLifeMinutes && !(*wish.potLifeMinutes > 0 && *wish.potLifeMinutes <= 10'000))
        return fail(ErrorCode::BadInput,
            "A pot life of " + numberWords(*wish.potLifeMinutes, 1)
                + " min cannot be: take it from the label.");
    const auto ratio = ratioOf(wish.ratio, recipe);
    if (!ratio)
        return tl::unexpected(ratio.error());
    const auto shares = sharesOfMassRatio(ratio->hardenerPer100);
    if (!shares)
        return tl::unexpected(shares.error());

    MixPlan plan { recipe.id, recipe.name, wish.need, {}, {}, {}, {} };
    const MixPart resin { "resin", "Epoxy resin",
        weighable(wish.need.value() * shares->resin, Dimension::Mass, wish.scaleStep), {},
        { ClassId { "epoxy_resin" } } };
    const MixPart hardener { "hardener", "Hardener",
        weighable(wish.need.value() * shares->hardener, Dimension::Mass, wish.scaleStep), {},
        { ClassId { wish.hardenerKind == "fast" ? "epoxy_hardener_fast" : "epoxy_hardener_slow" } } };
    plan.parts = { resin, hardener };
    std::vector<StepWord> words { { "resin", weighWords(resin.amount) },
        { "hardener", weighWords(hardener.amount) },
        { "ratio", "100 : " + numberWords(ratio->hardenerPer100, 1) } };
    plan.limits.push_back(
        limitOf("hardener_per_100", { ratio->hardenerPer100, ratio->hardenerPer100 }, "g/100 g",
            "By mass 100 : " + numberWords(ratio->hardenerPer100, 1) + ", from " + ratio->words + "."));
    if (ratio->mixed)
        plan.warnings.push_back("The volume numbers never go on a scale: by mass it is 100 : "
            + numberWords(ratio->hardenerPer100, 1) + ".");
    const double smallest
        = smallestBatchGrams(std::min(shares->resin, shares->hardener), wish.scaleStep, hardenerTolerance);
    plan.limits.push_back(limitOf("smallest_batch_g", { smallest, smallest }, "g",
        "The least that a scale of " + numberWords(wish.scaleStep, 3)
            + " g still weighs to 2 %: " + numberWords(smallest, smallest < 10 ? 1 : 0) + " g."));

    const auto colour = addColour(plan, words, wish, recipe);
    if (!colour)
        return tl::unexpected(colour.error());
    const auto filler = addFiller(plan, words, wish, recipe);
    if (!filler)
        return tl::unexpected(filler.error());
    const double mixDensity
        = ratio->mixed ? ratio->mixed->value : recipe.value({}, "mixed_density").value_or(1.1);
    const double yield = wish.need.value() / mixDensity + *filler + *colour;
    plan.limits.push_back(
        limitOf("yield_ml", { yield, yield }, "ml", "It fills about " + numberWords(yield, 1) + " ml."));
    addPotLife(plan, wish, recipe);
    addEpoxyCare(plan, wish, recipe, smallest);
    plan.steps = filledSteps(recipe, words);
    if (auto can = canWeigh({ {}, {}, {}, { resin, hardener }, {}, {}, {} }, wish.scaleStep); !can)
        return tl::unexpected(can.error());
    return plan;
}

} // namespace gw
