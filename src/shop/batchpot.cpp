#include "shop/batchpot.h"

#include <algorithm>
#include <array>
#include <unordered_set>

namespace gw {

namespace {

// A pot put on the heat without a look at the thermometer was colder than what is read within the hour: the
// reading stands for all of it (assumption).
constexpr std::chrono::hours readBackWithin { 1 };

constexpr std::array<std::pair<BatchNoteKind, PotEventKind>, 12> events { {
    { BatchNoteKind::Mixed, PotEventKind::SoakBegan }, // dry glue is mixed by laying it in cold water
    { BatchNoteKind::Soaked, PotEventKind::Soaked },
    { BatchNoteKind::HeatOn, PotEventKind::HeatOn },
    { BatchNoteKind::HeatRead, PotEventKind::HeatOn },
    { BatchNoteKind::HeatOff, PotEventKind::HeatOff },
    { BatchNoteKind::ToppedUp, PotEventKind::ToppedUp },
    { BatchNoteKind::Weighed, PotEventKind::Weighed },
    { BatchNoteKind::Chilled, PotEventKind::Chilled },
    { BatchNoteKind::Frozen, PotEventKind::Frozen },
    { BatchNoteKind::Used, PotEventKind::Used },
    { BatchNoteKind::UsedUp, PotEventKind::ThrownAway },
    { BatchNoteKind::ThrownAway, PotEventKind::ThrownAway },
} };

std::vector<PotEvent> eventsOf(std::span<const BatchNote> standing)
{
    std::vector<PotEvent> all;
    for (const BatchNote& note : standing) {
        const auto kind
            = std::ranges::find(events, note.kind, &std::pair<BatchNoteKind, PotEventKind>::first);
        if (kind == events.end())
            continue;
        std::optional<double> grams;
        if (note.weightMilli)
            grams = static_cast<double>(*note.weightMilli) / 1000;
        const bool readNow = note.kind == BatchNoteKind::HeatRead && !all.empty();
        if (readNow && all.back().kind == PotEventKind::HeatOn && !all.back().temperature
            && note.at - all.back().at <= readBackWithin)
            all.back().temperature = note.temperature;
        all.push_back({ kind->second, note.at, note.temperature, grams });
    }
    return all;
}

std::optional<Moment> thrownAway(std::span<const BatchNote> standing)
{
    const BatchNote* end = endAmong(standing);
    return end ? std::optional(end->at) : std::nullopt;
}

std::optional<Celsius> roomOf(const BatchRecord& batch)
{
    const auto room = batch.value("room_c");
    return room ? std::optional(Celsius { *room }) : std::nullopt;
}

GlueForm formOf(const BatchRecord& batch)
{
    const BatchFigure* form = batch.figure("form");
    if (form && form->text == "pearls")
        return GlueForm::Pearls;
    return form && form->text == "cake" ? GlueForm::Cake : GlueForm::Granules;
}

Result<PotState> cupStateOf(
    const BatchRecord& batch, std::span<const BatchNote> standing, const Recipe& recipe, Moment now)
{
    EpoxyCup cup { batch.made, batch.amount.value(), roomOf(batch), {}, thrownAway(standing) };
    if (const auto minutes = batch.value("label_pot_life_min"))
        cup.label = PotLife { *minutes, recipe.value({}, "pot_life_reference_mass").value_or(100),
            Celsius { recipe.value({}, "pot_life_reference_temp").value_or(25) } };
    return stateOf(cup, recipe, now);
}

Keeping keepingOf(const BatchRecord& batch)
{
    if (batch.recipe == "casein")
        return Keeping::Casein;
    if (batch.recipe == "uf")
        return Keeping::UreaPowder;
    if (batch.recipe == "dye_solution")
        return Keeping::Dye;
    const BatchFigure* flakes = batch.figure("flakes");
    return flakes && flakes->text == "waxy" ? Keeping::ShellacWaxy : Keeping::ShellacDewaxed;
}

void addValue(
    std::vector<BatchFigure>& figures, const char* key, std::optional<double> value, const char* unit)
{
    const bool there = std::ranges::find(figures, key, &BatchFigure::figure) != figures.end();
    if (value && !there)
        figures.push_back({ key, value, value, {}, unit });
}

} // namespace

std::vector<BatchNote> standingNotes(std::span<const BatchNote> notes)
{
    std::unordered_set<EntryId> reversed;
    for (const BatchNote& note : notes) {
        if (note.reverses)
            reversed.insert(*note.reverses);
    }
    std::vector<BatchNote> standing;
    for (const BatchNote& note : notes) {
        if (note.kind != BatchNoteKind::Reversed && !reversed.contains(note.id))
            standing.push_back(note);
    }
    return standing;
}

Amount leftOf(const BatchRecord& batch, std::span<const BatchNote> notes)
{
    Amount left { 0, batch.amount.dimension };
    for (const BatchNote& note : notes)
        left.milli += note.deltaMilli;
    return left;
}

const BatchNote* endAmong(std::span<const BatchNote> standing)
{
    const auto end = std::ranges::find_if(standing, [](const BatchNote& note) {
        return note.kind == BatchNoteKind::UsedUp || note.kind == BatchNoteKind::ThrownAway;
    });
    return end == standing.end() ? nullptr : &*end;
}

bool isHotGlue(std::string_view recipe) { return recipe.starts_with("hot_hide"); }
bool isEpoxy(std::string_view recipe) { return recipe.starts_with("epoxy"); }

Result<PotState> potStateOf(
    const BatchRecord& batch, std::span<const BatchNote> standing, const Recipe& recipe, Moment now)
{
    if (isHotGlue(batch.recipe))
        return stateOf(HotGluePot { formOf(batch), batch.made, eventsOf(standing) }, recipe, now);
    if (isEpoxy(batch.recipe))
        return cupStateOf(batch, standing, recipe, now);
    return stateOf(
        KeptBatch { keepingOf(batch), batch.made, roomOf(batch), thrownAway(standing) }, recipe, now);
}

std::vector<BatchFigure> figuresOf(const MixAsked& asked, const MixAnswer& mix)
{
    std::vector<BatchFigure> figures;
    for (const MixLimit& limit : mix.plan.limits) {
        if (std::ranges::find(figures, limit.key, &BatchFigure::figure) == figures.end())
            figures.push_back({ limit.key, limit.range.low, limit.range.high, {}, limit.unit });
    }
    addValue(figures, "room_c", asked.room ? std::optional(asked.room->value) : std::nullopt, "C");
    if (isHotGlue(mix.plan.recipe)) {
        constexpr std::array forms { "granules", "pearls", "cake" };
        figures.push_back({ "form", {}, {}, forms.at(static_cast<std::size_t>(asked.form)), {} });
        addValue(figures, "grade", mix.grade, "g");
        addValue(figures, "urea_share", asked.ureaShare, "kg/kg");
    } else if (isEpoxy(mix.plan.recipe)) {
        addValue(figures, "label_pot_life_min", asked.potLifeMinutes, "min");
        if (!asked.hardenerKind.empty())
            figures.push_back({ "hardener", {}, {}, asked.hardenerKind, {} });
    } else if (mix.plan.recipe == "shellac") {
        addValue(figures, "cut_lb", asked.cut.value_or(asked.fromCut ? 1 : 2), "lb");
        figures.push_back({ "flakes", {}, {}, asked.waxy ? "waxy" : "dewaxed", {} });
    } else if (mix.plan.recipe == "dye_solution") {
        addValue(figures, "dye_g_l", asked.gramsPerLitre, "g/l");
    } else if (const MixPart* powder = mix.plan.part("powder"), *water = mix.plan.part("water");
        powder && water) {
        addValue(figures, "water_ratio_taken", water->amount.value() / powder->amount.value(), "kg/kg");
    }
    return figures;
}

} // namespace gw
