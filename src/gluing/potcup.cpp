#include "gluing/potclock.h"
#include "gluing/weighing.h"
#include "measure/number.h"

namespace gw {

namespace {

constexpr double minutesAnHour = 60;

void sayPast(PotState& state, Moment now, const std::string& maybe, const std::string& certain)
{
    for (const PotDue& one : state.due) {
        if (one.when.high <= now)
            state.words.push_back(certain);
        else if (one.when.low <= now)
            state.words.push_back(maybe);
    }
}

Result<Range<Moment>> monthsOf(const Recipe& recipe, const char* figure, Moment mixed)
{
    const auto months = recipe.range({}, figure);
    if (!months)
        return lacksFigure(recipe, "how long it keeps");
    return Range<Moment> { later(mixed, months->low * meanMonth), later(mixed, months->high * meanMonth) };
}

// Hours of urea resin: the two rows of the recipe, the logarithm straight between them. Colder than the first
// gives no more time and warmer than the second is not known.
std::optional<Range<double>> ureaHours(const Recipe& recipe, std::optional<Celsius> room)
{
    const auto cool = recipe.range({}, "uf_pot_life_21C"), warm = recipe.range({}, "uf_pot_life_32C");
    if (!cool || !warm || !room || room->value > 32)
        return std::nullopt;
    const double share = std::clamp((room->value - 21) / (32 - 21), 0.0, 1.0);
    return Range<double> { cool->low * std::pow(warm->low / cool->low, share),
        cool->high * std::pow(warm->high / cool->high, share) };
}

Result<void> keepingDue(PotState& state, const KeptBatch& batch, const Recipe& recipe)
{
    const auto addMonths = [&](const char* figure, const char* text) -> Result<void> {
        const auto when = monthsOf(recipe, figure, batch.mixed);
        if (!when)
            return tl::unexpected(when.error());
        state.due.push_back({ "keeps", *when, text });
        return {};
    };
    constexpr auto tryShellac
        = "Try it on glass: tack-free in 15 to 30 min and no dent from a nail after 24 h, or mix new.";
    switch (batch.kind) {
    case Keeping::ShellacWaxy:
        return addMonths("shellac_mixed_life_waxy", tryShellac);
    case Keeping::ShellacDewaxed:
        return addMonths("shellac_mixed_life_dewaxed", tryShellac);
    case Keeping::Dye:
        return addMonths("dye_solution_life", "Compare it with its chip kept in the dark.");
    case Keeping::Casein: {
        const auto hours = recipe.range({}, "casein_working_life_20C");
        if (!hours)
            return lacksFigure(recipe, "how long it can be worked");
        state.due.push_back({ "working",
            minutesLater(batch.mixed, { hours->low * minutesAnHour, hours->high * minutesAnHour }),
            "Stop using the casein: it does not keep until the next day." });
        return {};
    }
    case Keeping::UreaPowder:
        if (const auto hours = ureaHours(recipe, batch.room))
            state.due.push_back({ "working",
                minutesLater(batch.mixed, { hours->low * minutesAnHour, hours->high * minutesAnHour }),
                "Stop using the urea resin." });
        else
            state.words.emplace_back("How long it can be worked is not known at this temperature.");
        return {};
    }
    return {};
}

} // namespace

Result<void> mixedBefore(Moment mixed, Moment now)
{
    if (mixed > now)
        return fail(ErrorCode::BadInput,
            "This batch was mixed in the future (" + formatMoment(mixed)
                + "). Look at the clock of the tablet.");
    return {};
}

const PotDue* PotState::dueFor(std::string_view key) const
{
    const auto found = std::ranges::find(due, key, &PotDue::key);
    return found == due.end() ? nullptr : &*found;
}

Result<PotState> stateOf(const EpoxyCup& cup, const Recipe& recipe, Moment now)
{
    if (const auto fine = mixedBefore(cup.mixed, now); !fine)
        return tl::unexpected(fine.error());
    if (!(cup.grams > 0 && cup.grams <= 100'000))
        return fail(ErrorCode::BadInput,
            "A cup of " + numberWords(cup.grams, 1) + " g cannot be. Say what it weighs.");
    PotState state;
    state.gone = cup.thrownAway.has_value() && *cup.thrownAway <= now;
    if (state.gone)
        return state;
    if (!cup.label || !cup.room) {
        state.words.emplace_back(cup.label ? "How long the cup lasts is not known: say how warm the room is."
                                           : "How long the cup lasts is not known: the label gives minutes "
                                             "at a temperature for a mass.");
        return state;
    }
    const auto life = potLifeMinutes(*cup.label, cup.grams, *cup.room, recipe);
    if (!life)
        return tl::unexpected(life.error());
    state.due.push_back({ "cup", minutesLater(cup.mixed, *life),
        "Use up the cup. Stop when it is warm to the hand, whatever the clock says." });
    sayPast(state, now, "The cup may be going off: stop when it is warm to the hand.",
        "The cup is past its time: take no more from it, and spread out what is left or move it outside.");
    return state;
}

Result<PotState> stateOf(const KeptBatch& batch, const Recipe& recipe, Moment now)
{
    if (const auto fine = mixedBefore(batch.mixed, now); !fine)
        return tl::unexpected(fine.error());
    PotState state;
    state.gone = batch.thrownAway.has_value() && *batch.thrownAway <= now;
    if (state.gone)
        return state;
    if (const auto fine = keepingDue(state, batch, recipe); !fine)
        return tl::unexpected(fine.error());
    sayPast(
        state, now, "It may be past its time: test it before it goes on.", "It is past its time: mix new.");
    return state;
}

std::vector<PotDue> jointClocks(const Family& family, Moment spread, std::optional<Celsius> air)
{
    std::vector<PotDue> due;
    if (family.openMinutes)
        due.push_back({ "open", minutesLater(spread, *family.openMinutes), "Close the joint." });
    if (family.closedMinutes)
        due.push_back({ "closed", minutesLater(spread, *family.closedMinutes), "No more moving: press." });
    if (!air)
        return due;
    // Warmth shortens it too, but a clamp taken off too soon costs more than one left on.
    const double slower
        = std::pow(std::max(1.0, family.coldClampFactor), std::max(0.0, 20 - air->value) / 10);
    const auto add = [&](const char* key, std::optional<double> minutes, const char* text) {
        if (!minutes)
            return;
        const Moment at = minutesLater(spread, *minutes * slower);
        due.push_back({ key, { at, at }, text });
    };
    add("unclamp", family.unclampMinutes, "The clamps may come off.");
    add("full_load",
        family.fullLoadHours ? std::optional(*family.fullLoadHours * minutesAnHour) : std::nullopt,
        "The joint may be loaded in full.");
    sortDue(due);
    return due;
}

} // namespace gw
