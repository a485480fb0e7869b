#include "gluing/potclock.h"
#include "gluing/weighing.h"
#include "measure/number.h"

namespace gw {

namespace {

constexpr double factorPer10 = 2.8, factorLow = 2.0, factorHigh = 3.2; // prepared_batches: MODEL
constexpr double hoursADay = 24;

double doseOf(double hours, Celsius temperature, double factor)
{
    return hours * std::pow(factor, (temperature.value - 60) / 10);
}

// Keeping times in days: the low end is the cautious one.
struct Keeps {
    Range<double> soaking, gel, cold, frozen;
    const Range<double>* in(PotStands where) const
    {
        switch (where) {
        case PotStands::Soaking:
            return &soaking;
        case PotStands::Out:
            return &gel;
        case PotStands::Cold:
            return &cold;
        case PotStands::Frozen:
            return &frozen;
        case PotStands::Hot:
            break;
        }
        return nullptr;
    }
};

Result<void> inOrder(const HotGluePot& pot, Moment now)
{
    Moment before = pot.mixed;
    for (const PotEvent& event : pot.events) {
        if (event.at < before)
            return fail(ErrorCode::BadInput,
                "This stands before what was noted ahead of it (" + formatMoment(before)
                    + "). Look at the clock of the tablet; nothing was noted.");
        if (event.at > now)
            return fail(ErrorCode::BadInput,
                "This stands in the future (" + formatMoment(event.at)
                    + "). Look at the clock of the tablet; nothing was noted.");
        // Glue in an open water bath is between ice and boiling water.
        if (event.temperature && !(event.temperature->value >= 0 && event.temperature->value <= 105))
            return fail(ErrorCode::BadInput,
                "Glue in a pot cannot be at " + formatTemperature(*event.temperature)
                    + ". Read the thermometer in the glue again.");
        if (event.grams && !(*event.grams > 0 && *event.grams <= 100'000))
            return fail(ErrorCode::BadInput,
                "A pot cannot weigh " + numberWords(*event.grams, 1) + " g. Weigh pot and glue again.");
        before = event.at;
    }
    return {};
}

// Walks through what was noted, adding up each span between two events.
class Walk {
public:
    Walk(PotState& state, const Keeps& keeps, Moment mixed)
        : m_state(state)
        , m_keeps(keeps)
        , m_from(mixed)
    {
    }

    void upTo(Moment at)
    {
        const double hours = hoursBetween(m_from, at);
        if (m_where == PotStands::Hot && hours > 0)
            heat(hours);
        if (m_where == PotStands::Cold)
            m_state.chilledFor += daysBetween(m_from, at);
        if (const auto* keep = m_keeps.in(m_where)) {
            m_state.spoilage.low += hours / hoursADay / keep->high;
            m_state.spoilage.high += hours / hoursADay / keep->low;
        }
        m_from = at;
    }

    void take(const PotEvent& event)
    {
        upTo(event.at);
        switch (event.kind) {
        case PotEventKind::SoakBegan:
            m_where = PotStands::Soaking;
            m_state.standsSince = event.at;
            soakBegan = event.at;
            break;
        case PotEventKind::Soaked:
            foundSoaked = true;
            break;
        case PotEventKind::HeatOn:
            if (m_where != PotStands::Hot) {
                m_state.heatSince = event.at;
                m_state.standsSince = event.at;
                m_state.reheats += m_heated ? 1 : 0;
                thaws += m_where == PotStands::Frozen ? 1 : 0;
            }
            m_heated = true;
            m_where = PotStands::Hot;
            temperature = event.temperature;
            boiled = boiled || (temperature && temperature->value >= boiling);
            break;
        case PotEventKind::HeatOff:
            leave(PotStands::Out, event.at);
            break;
        case PotEventKind::Chilled:
            leave(PotStands::Cold, event.at);
            break;
        case PotEventKind::Frozen:
            leave(PotStands::Frozen, event.at);
            break;
        case PotEventKind::ThrownAway:
            m_state.gone = true;
            break;
        case PotEventKind::ToppedUp:
        case PotEventKind::Weighed:
        case PotEventKind::Used:
            break;
        }
        weigh(event);
    }

    bool heated() const { return m_heated; }
    PotStands stands() const { return m_where; }
    const Range<double>* keepsNow() const { return m_keeps.in(m_where); }

    std::optional<Moment> soakBegan;
    std::optional<Celsius> temperature;
    bool boiled = false, unread = false, foundSoaked = false;
    int thaws = 0;

private:
    // A bath thermometer a little off, or a shop high up: taken as boiling from here on. Common practice, no
    // source.
    static constexpr double boiling = 97;

    void heat(double hours)
    {
        if (!temperature) {
            unread = true;
            return;
        }
        m_dose += doseOf(hours, *temperature, factorPer10);
        // By list it answers values; else references to what is gone by then.
        const auto [low, high] = std::minmax(
            { doseOf(hours, *temperature, factorLow), doseOf(hours, *temperature, factorHigh) });
        m_state.doseRange.low += low;
        m_state.doseRange.high += high;
        m_state.doseHours = m_dose;
    }

    void leave(PotStands where, Moment at)
    {
        m_where = where;
        m_state.standsSince = at;
        m_state.heatSince.reset();
    }

    // What is missing against the last weighing is water that went off, unless glue was taken out between.
    void weigh(const PotEvent& event)
    {
        if (event.kind == PotEventKind::Used || event.kind == PotEventKind::ToppedUp) {
            m_full = event.grams;
            m_state.topUpGrams.reset();
            return;
        }
        if (!event.grams)
            return;
        if (m_full)
            m_state.topUpGrams = std::max(0.0, *m_full - *event.grams);
        else
            m_full = event.grams;
    }

    PotState& m_state;
    const Keeps& m_keeps;
    Moment m_from;
    PotStands m_where = PotStands::Out;
    bool m_heated = false;
    double m_dose = 0;
    std::optional<double> m_full;
};

struct Bands {
    double late = 0, over = 0;
};

void judgeDose(PotState& state, const Walk& walk, const Bands& bands)
{
    const double dose = state.doseHours.value_or(0);
    if (walk.boiled || dose > bands.over)
        state.band = DoseBand::Over;
    else if (walk.unread)
        state.band = DoseBand::NotKnown;
    else
        state.band = dose > bands.late ? DoseBand::Late : DoseBand::Early;
    if (!walk.unread && !state.doseHours)
        state.doseHours = 0;
    if (walk.unread)
        state.doseHours.reset();
    const std::string mild = "it sets slower, the jelly is weaker and the tack likely lower";
    if (walk.boiled)
        state.words.push_back("It boiled: " + mild + ". Take a new batch for joints.");
    else if (state.band == DoseBand::Over)
        state.words.push_back("It was hot for " + numberWords(dose, 1) + " hours at 60 °C or more: " + mild
            + ". Take a new batch for joints.");
    else if (state.band == DoseBand::Late)
        state.words.push_back("It was hot for " + numberWords(dose, 1) + " hours at 60 °C: " + mild
            + ". Better for rub blocks and size.");
    else if (state.band == DoseBand::NotKnown)
        state.words.emplace_back("How much heat it has had is not known: a temperature is missing.");
}

void expectDose(PotState& state, const Walk& walk, const Bands& bands, Moment now)
{
    if (!state.heatSince || !walk.temperature || !state.doseHours)
        return;
    const double perHour = doseOf(1, *walk.temperature, factorPer10);
    const auto add = [&](double limit, const char* key, const char* text) {
        // Past ones stay on the list; the heat before this span is not looked through again.
        const Moment at
            = std::max(*state.heatSince, minutesLater(now, (limit - *state.doseHours) / perHour * 60));
        state.due.push_back({ key, { at, at }, text });
    };
    add(bands.late, "dose_late", "The pot has had its heat: turn it off, chill it or use it up.");
    add(bands.over, "dose_over", "Take a new batch for joints.");
}

void judgeKeeping(PotState& state, const Walk& walk, Moment now)
{
    if (state.spoilage.low >= 1)
        state.words.emplace_back("It has stood longer than such glue keeps: discard it.");
    else if (state.spoilage.high >= 1)
        state.words.emplace_back("It may have stood too long: sniff and look. A bad smell means discard, "
                                 "whatever else the clocks say.");
    const auto* keep = walk.keepsNow();
    if (!keep || keep->low <= 0)
        return;
    const auto when = [&](double used, double days) { return later(now, Days { (1 - used) * days }); };
    state.due.push_back(
        { "spoils", { when(state.spoilage.high, keep->low), when(state.spoilage.low, keep->high) },
            "Use it, move it to the cold or discard it." });
}

} // namespace

double hoursAt60(double hours, Celsius temperature) { return doseOf(hours, temperature, factorPer10); }

Result<PotState> stateOf(const HotGluePot& pot, const Recipe& recipe, Moment now)
{
    if (const auto fine = mixedBefore(pot.mixed, now); !fine)
        return tl::unexpected(fine.error());
    if (const auto fine = inOrder(pot, now); !fine)
        return tl::unexpected(fine.error());
    const char* soakFigure = pot.form == GlueForm::Granules ? "soak_granules_fine"
        : pot.form == GlueForm::Pearls                      ? "soak_pearls"
                                                            : "soak_cake_flake";
    const auto soak = recipe.range({}, soakFigure), spoil = recipe.range({}, "room_temp_spoil"),
               gel = recipe.range({}, "room_temp_gel_life_20C"), cold = recipe.range({}, "fridge_life_4C"),
               frozen = recipe.range({}, "freezer_life_minus18C");
    const auto late = recipe.value({}, "dose_green_max"), over = recipe.value({}, "dose_amber_max");
    if (!soak || !spoil || !gel || !cold || !frozen || !late || !over)
        return lacksFigure(recipe, "how long it soaks, keeps and may be hot");

    PotState state;
    const Keeps keeps { *spoil, *gel, *cold, *frozen };
    Walk walk(state, keeps, pot.mixed);
    for (const PotEvent& event : pot.events) {
        walk.take(event);
        if (state.gone)
            return state;
    }
    walk.upTo(now);
    judgeDose(state, walk, { *late, *over });
    judgeKeeping(state, walk, now);
    if (const auto most = recipe.value({}, "reheats_max"); most && state.reheats > *most)
        state.words.push_back("Warmed again " + numberWords(state.reheats, 0) + " times, and "
            + numberWords(*most, 0) + " is the usual most: take a new batch.");
    if (walk.thaws > 0)
        state.words.emplace_back("It was frozen and thawed: do not freeze it again.");
    if (const auto most = recipe.value({}, "do_not_exceed");
        state.heatSince && walk.temperature && most && walk.temperature->value > *most)
        state.words.push_back("At " + formatTemperature(*walk.temperature)
            + " heat damage rises fast: bring it down to 60 to 63 °C.");
    state.stands = walk.stands();
    if (state.heatSince)
        state.temperature = walk.temperature;
    if (walk.soakBegan && !walk.heated() && !walk.foundSoaked)
        state.due.push_back({ "soaked", minutesLater(*walk.soakBegan, *soak),
            "Soaked: look whether it is swollen through, then warm it in the water bath." });
    expectDose(state, walk, { *late, *over }, now);
    sortDue(state.due);
    return state;
}

} // namespace gw
