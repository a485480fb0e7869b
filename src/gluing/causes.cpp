#include "gluing/causes.h"

#include <algorithm>
#include <cmath>

#include "gluing/sentences.h"
#include "measure/number.h"

namespace gw {

namespace {

constexpr double woodGave
    = 75; // percent of the face: the joint was sound (ASTM D2559-style bar, from memory)
constexpr double woodHeld = 25; // below: the line let go, not the wood
constexpr double doseUsual = 10, doseMuch = 25; // hours at 60 C, common practice
constexpr double ratioFine = 5, ratioFails = 20; // percent of the hardener, common practice

std::string degrees(Celsius t, const JointFacts& facts)
{
    return formatTemperature(Celsius { roundedToTenth(t) }, facts.units);
}

std::string minutesWords(double minutes)
{
    if (minutes < 90)
        return numberWords(minutes, minutes < 10 ? 1 : 0) + " min";
    return numberWords(minutes / 60, 1) + " h";
}

std::string glue(const JointFacts& facts)
{
    return facts.family.name.empty() ? "this glue" : inSentence(facts.family.name);
}

Cause notRecorded(const char* id, const char* name, const std::string& what, const char* test)
{
    return { id, name, Likelihood::NotKnown, 0, what + " is not recorded.", test };
}

/// How far beyond a limit, as a share of it: ranks within a likelihood, at most 1.
double beyond(double value, double limit)
{
    return std::min(1.0, std::abs(value - limit) / std::max(1.0, std::abs(limit)));
}

Cause stockCause(const JointFacts& f)
{
    Cause c { "stock", "The glue was past its best", Likelihood::Unlikely, 0, {},
        "Glue two scraps of the same wood with what is left of it, and break them after 24 h: the wood "
        "should tear." };
    if (!f.stock)
        return notRecorded(
            c.id.c_str(), c.name.c_str(), "Which stock went in, and how it stood then,", c.test.c_str());
    switch (*f.stock) {
    case Verdict::Good:
        c.why = "The stock was judged good when it was used.";
        return c;
    case Verdict::DoNotUse:
        c.likelihood = Likelihood::Likely;
        c.weight = 1;
        c.why = "The stock was not to be used any more.";
        break;
    case Verdict::TestFirst:
        c.likelihood = Likelihood::Possible;
        c.weight = 0.7;
        c.why = "The stock was to be tested first.";
        break;
    case Verdict::NotKnown:
        c.likelihood = Likelihood::NotKnown;
        c.why = "How the stock stood was not known when it was used.";
        break;
    }
    c.why = sentencesTogether(c.why, asSentence(f.stockReason));
    return c;
}

std::optional<Cause> frostCause(const JointFacts& f)
{
    if (!f.frostEvents || *f.frostEvents == 0)
        return std::nullopt; // what is not known of frost is in the stock's own verdict
    return Cause { "frost", "The glue had been frozen", Likelihood::Possible, 0.6,
        "It had been frozen "
            + std::string(*f.frostEvents == 1 ? "once" : std::to_string(*f.frostEvents) + " times")
            + " before it was used.",
        "Stir it and draw it down on glass: grains or strings mean it broke." };
}

std::optional<Cause> doseCause(const JointFacts& f)
{
    if (f.family.id.text != "hot_hide")
        return std::nullopt;
    Cause c { "heat_dose", "The pot had been hot too long", Likelihood::Unlikely, 0, {},
        "Let a spoonful of it gel beside a fresh one: a weak jelly that sets slowly has been hot too long. A "
        "weak jelly alone does not mean a weak joint." };
    if (!f.heatDoseHours)
        return notRecorded(c.id.c_str(), c.name.c_str(), "How long the pot was hot", c.test.c_str());
    c.why = "It had " + numberWords(*f.heatDoseHours, 1) + " h at 60 °C behind it.";
    if (*f.heatDoseHours > doseMuch) {
        c.likelihood = Likelihood::Likely;
        c.weight = beyond(*f.heatDoseHours, doseMuch);
    } else if (*f.heatDoseHours > doseUsual) {
        c.likelihood = Likelihood::Possible;
        c.weight = beyond(*f.heatDoseHours, doseUsual);
    }
    return c;
}

Cause coldCause(const JointFacts& f)
{
    Cause c { "cold", "Room or wood too cold", Likelihood::Unlikely, 0, {},
        "Look at the line: chalky, or gelled in a thick layer that never wetted the other face, is cold." };
    std::vector<std::string> missing, said;
    const auto hold = [&](const char* what, std::optional<Celsius> value, std::optional<Celsius> least,
                          std::optional<double> best) {
        if (!value || !least) {
            missing.push_back(what);
            return;
        }
        said.push_back("the " + std::string(what) + " was " + degrees(*value, f) + ", " + glue(f) + " wants "
            + degrees(*least, f) + " or more");
        if (value->value < least->value) {
            c.likelihood = Likelihood::Likely;
            c.weight = std::max(c.weight, std::min(1.0, 0.5 + (least->value - value->value) / 20));
        } else if (best && value->value < *best && c.likelihood == Likelihood::Unlikely) {
            c.likelihood = Likelihood::Possible;
            c.weight = std::max(c.weight, 0.3);
        }
    };
    hold("room", f.air, f.family.airMin,
        f.family.airBest ? std::optional(f.family.airBest->low.value) : std::nullopt);
    hold("wood", f.wood, f.family.woodMin,
        f.family.woodBest ? std::optional(f.family.woodBest->low.value) : std::nullopt);
    std::string why = listWords(said);
    if (!why.empty())
        why[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(why[0])));
    c.why = sentencesTogether(asSentence(why),
        missing.empty() ? std::string()
                        : "The temperature of the " + listWords(missing) + " is not recorded.");
    if (c.likelihood == Likelihood::Unlikely && !missing.empty())
        c.likelihood = Likelihood::NotKnown;
    return c;
}

Cause moistureCause(const JointFacts& f)
{
    Cause c { "moisture", "The wood too wet or too dry", Likelihood::Unlikely, 0, {},
        "Measure the wood beside the joint, and once more after a week in the room: what moves has not "
        "settled." };
    if (!f.woodMoisture || !f.family.woodMoisture)
        return notRecorded(c.id.c_str(), c.name.c_str(), "The wood's moisture", c.test.c_str());
    const Range<double>& wants = *f.family.woodMoisture;
    c.why = "The wood held " + percentWords(*f.woodMoisture) + "; " + glue(f) + " wants "
        + percentRangeWords(wants) + ".";
    if (*f.woodMoisture > wants.high) {
        c.likelihood = Likelihood::Likely;
        c.weight = std::min(1.0, 0.5 + (*f.woodMoisture - wants.high) / 10);
    } else if (*f.woodMoisture < wants.low) {
        c.likelihood = Likelihood::Possible;
        c.weight = std::min(1.0, 0.4 + (wants.low - *f.woodMoisture) / 10);
    }
    return c;
}

Cause gapCause(const JointFacts& f)
{
    Cause c { "gap", "The joint did not fit", Likelihood::Unlikely, 0, {},
        "Measure the line where it broke: a thick, glassy or crazed layer bridged a gap it cannot carry." };
    if (!f.gapMm || !f.family.gapMaxMm)
        return notRecorded(c.id.c_str(), c.name.c_str(), "The gap", c.test.c_str());
    c.why = "The gap was " + millimetreWords(*f.gapMm) + "; " + glue(f) + " bridges "
        + millimetreWords(*f.family.gapMaxMm) + " at most.";
    if (*f.gapMm > *f.family.gapMaxMm) {
        c.likelihood = Likelihood::Likely;
        c.weight = std::min(1.0, 0.6 + (*f.gapMm - *f.family.gapMaxMm) / *f.family.gapMaxMm / 5);
    } else if (f.family.gapBestMm && *f.gapMm > *f.family.gapBestMm) {
        c.likelihood = Likelihood::Possible;
        c.weight = 0.3;
    }
    return c;
}

Cause tableCause(const char* id, const char* name, const std::optional<Suitability>& said,
    const char* missing, const char* test)
{
    if (!said || said->result == GateResult::Unknown)
        return notRecorded(id, name, missing, test);
    Cause c { id, name, Likelihood::Unlikely, 0, asSentence(said->what), test };
    c.why = sentencesTogether(c.why, asSentence(said->reason));
    if (said->result == GateResult::Stop) {
        c.likelihood = Likelihood::Likely;
        c.weight = 0.9;
    } else if (said->result == GateResult::Warn) {
        c.likelihood = Likelihood::Possible;
        c.weight = 0.4;
    }
    return c;
}

Cause surfaceCause(const JointFacts& f)
{
    Cause c { "surface", "The surface was stale", Likelihood::Unlikely, 0, {},
        "A drop of water on the same wood should spread in a minute; where it beads nothing soaks in." };
    if (!f.surfaceAgeHours || !f.family.surfaceAgeMaxHours)
        return notRecorded(
            c.id.c_str(), c.name.c_str(), "When the faces were last cut, planed or scraped", c.test.c_str());
    c.why = "The faces were " + numberWords(*f.surfaceAgeHours, 0) + " h old; " + glue(f) + " wants "
        + numberWords(*f.family.surfaceAgeMaxHours, 0) + " h or less.";
    if (*f.surfaceAgeHours > *f.family.surfaceAgeMaxHours) {
        c.likelihood = Likelihood::Possible;
        c.weight = 0.3 + 0.3 * beyond(*f.surfaceAgeHours, *f.family.surfaceAgeMaxHours);
    }
    return c;
}

Cause assemblyCause(const JointFacts& f)
{
    Cause c { "assembly", "It took too long to close", Likelihood::Unlikely, 0, {},
        "Look for brush marks or a skin in the glue, and for a face it never reached." };
    if (!f.assemblyMinutes || !f.family.openMinutes)
        return notRecorded(
            c.id.c_str(), c.name.c_str(), "The time from spreading to pressure", c.test.c_str());
    // Open and closed time trade off, and which was which is not recorded: the longest there can be is both.
    const double most
        = f.family.openMinutes->high + (f.family.closedMinutes ? f.family.closedMinutes->high : 0);
    const double least = f.family.openMinutes->low;
    c.why = "It took " + minutesWords(*f.assemblyMinutes) + " from spreading to pressure; " + glue(f)
        + " stays open "
        + (least == most ? minutesWords(most) : numberWords(least, 1) + " to " + minutesWords(most))
        + " at 20 °C.";
    if (*f.assemblyMinutes > most) {
        c.likelihood = Likelihood::Likely;
        c.weight = 0.5 + 0.4 * beyond(*f.assemblyMinutes, most);
    } else if (*f.assemblyMinutes > least) {
        c.likelihood = Likelihood::Possible;
        c.weight = 0.4;
    }
    return c;
}

Cause clampCause(const JointFacts& f)
{
    Cause c { "clamp", "Taken out of the clamps too soon", Likelihood::Unlikely, 0, {},
        "Where it opened along one side while the glue was still soft, the line shows strings or a combed "
        "face." };
    if (!f.clampedMinutes || !f.family.unclampMinutes)
        return notRecorded(c.id.c_str(), c.name.c_str(), "How long it was in clamps", c.test.c_str());
    double wanted = *f.family.unclampMinutes;
    std::string at = "at 20 °C";
    if (f.air && f.air->value < 20 && f.family.coldClampFactor > 1) {
        wanted *= std::pow(f.family.coldClampFactor, (20 - f.air->value) / 10);
        at = "at " + degrees(*f.air, f);
    }
    c.why = "It was in clamps for " + minutesWords(*f.clampedMinutes) + "; " + glue(f) + " wants "
        + minutesWords(wanted) + " " + at + ".";
    if (*f.clampedMinutes < wanted) {
        c.likelihood = *f.clampedMinutes < wanted / 2 ? Likelihood::Likely : Likelihood::Possible;
        c.weight = 0.4 + 0.5 * (1 - *f.clampedMinutes / wanted);
    } else if (!f.air && f.family.coldClampFactor > 1) {
        c.likelihood = Likelihood::NotKnown;
        c.why = sentencesTogether(
            c.why, "In a cold room it would have wanted longer, and the room is not recorded.");
    }
    return c;
}

Cause loadCause(const JointFacts& f)
{
    Cause c { "load", "Loaded too soon", Likelihood::Unlikely, 0, {},
        "Ask when it was first sat on or used." };
    if (!f.loadedAfterHours || !f.family.fullLoadHours)
        return notRecorded(c.id.c_str(), c.name.c_str(), "When it first carried its load", c.test.c_str());
    c.why = "It carried its load after " + numberWords(*f.loadedAfterHours, 1) + " h; " + glue(f) + " wants "
        + numberWords(*f.family.fullLoadHours, 0) + " h.";
    if (*f.loadedAfterHours < *f.family.fullLoadHours) {
        c.likelihood = Likelihood::Possible;
        c.weight = 0.3 + 0.5 * (1 - *f.loadedAfterHours / *f.family.fullLoadHours);
    }
    return c;
}

std::optional<Cause> ratioCause(const JointFacts& f)
{
    if (!f.family.id.text.starts_with("epoxy"))
        return std::nullopt;
    Cause c { "ratio", "Resin and hardener out of ratio", Likelihood::Unlikely, 0, {},
        "Press a nail into the dab kept from that mix, or into the line: soft or tacky after a week is the "
        "ratio, the mixing or the cold." };
    if (!f.ratioErrorPercent)
        return notRecorded(c.id.c_str(), c.name.c_str(), "What was weighed", c.test.c_str());
    const double off = std::abs(*f.ratioErrorPercent);
    c.why = "The hardener was " + percentWords(off) + " off; within " + percentWords(ratioFine) + " is fine.";
    if (off >= ratioFails) {
        c.likelihood = Likelihood::Likely;
        c.weight = 1;
    } else if (off > ratioFine) {
        c.likelihood = Likelihood::Possible;
        c.weight = 0.3 + off / 50;
    }
    return c;
}

Cause humidityCause(const JointFacts& f)
{
    Cause c { "humidity", "The air too damp or too dry", Likelihood::Unlikely, 0, {},
        "Ask where the piece has stood since: round joints come loose through damp and dry alone." };
    if (!f.humidity || !f.family.humidity)
        return notRecorded(c.id.c_str(), c.name.c_str(), "The humidity", c.test.c_str());
    const Range<double>& wants = *f.family.humidity;
    c.why = "The humidity was " + percentWords(*f.humidity) + "; " + glue(f) + " wants "
        + percentRangeWords(wants) + ".";
    if (*f.humidity < wants.low || *f.humidity > wants.high) {
        c.likelihood = Likelihood::Possible;
        c.weight = 0.2;
    }
    return c;
}

/// What the faces show weighs for or against a cause; common practice, no source.
void weighFaces(std::vector<Cause>& causes, const JointFacts& f)
{
    const auto raise = [&causes](std::initializer_list<const char*> ids, const char* because) {
        for (const char* id : ids) {
            const auto found = std::ranges::find(causes, id, &Cause::id);
            if (found == causes.end())
                continue;
            if (found->likelihood == Likelihood::NotKnown || found->likelihood == Likelihood::Unlikely)
                found->likelihood = Likelihood::Possible;
            found->weight += 0.3;
            found->why = sentencesTogether(found->why, because);
        }
    };
    if (f.glueStillSoft.value_or(false))
        raise({ "ratio", "cold", "stock", "moisture" }, "The glue is still soft.");
    if (f.glueOnOneFaceOnly.value_or(false))
        raise({ "residue", "surface", "assembly" }, "The glue sits on one face only.");
    if (f.glueThickAndBubbly.value_or(false))
        raise({ "gap", "clamp" }, "The line is thick and bubbly.");
    if (f.glueGlassyUnbroken.value_or(false))
        raise({ "surface", "assembly", "residue" }, "The glue is glassy and unbroken.");
}

std::optional<Cause> woodCause(const JointFacts& f)
{
    if (!f.woodFailurePercent)
        return std::nullopt;
    Cause c { "wood_gave", "The wood gave, not the glue", Likelihood::Unlikely, 0,
        percentWords(*f.woodFailurePercent) + " of the face tore in the wood.",
        "Look where it broke: torn wood on both faces is a sound line in wood that was loaded too hard, or "
        "cut short across the grain." };
    if (*f.woodFailurePercent >= woodGave) {
        c.likelihood = Likelihood::Likely;
        c.weight = 1.2;
    } else if (*f.woodFailurePercent > woodHeld) {
        c.likelihood = Likelihood::Possible;
        c.weight = 0.5;
    }
    return c;
}

tl::unexpected<Error> cannotBe(const std::string& what)
{
    return fail(ErrorCode::BadInput, what + " cannot be: read the figure again, or leave it out.");
}

Result<void> canBe(const JointFacts& f)
{
    const auto outside = [](const std::optional<double>& value, double low, double high) {
        return value && !(*value >= low && *value <= high);
    };
    const auto cold
        = [&](const std::optional<Celsius>& t) { return t && !(t->value >= -40 && t->value <= 100); };
    if (cold(f.air) || cold(f.wood))
        return cannotBe("Such a temperature");
    if (outside(f.humidity, 0, 100) || outside(f.woodFailurePercent, 0, 100))
        return cannotBe("A share outside 0 to 100 %");
    if (outside(f.woodMoisture, 0, 250))
        return cannotBe("A wood moisture of " + percentWords(*f.woodMoisture));
    if (outside(f.gapMm, 0, 25))
        return cannotBe("A gap of " + millimetreWords(*f.gapMm));
    constexpr double years = 100'000'000;
    if (outside(f.surfaceAgeHours, 0, years) || outside(f.assemblyMinutes, 0, years)
        || outside(f.clampedMinutes, 0, years) || outside(f.loadedAfterHours, 0, years)
        || outside(f.heatDoseHours, 0, years))
        return cannotBe("Such a time");
    return {};
}

} // namespace

std::string_view word(Likelihood likelihood)
{
    switch (likelihood) {
    case Likelihood::Likely:
        return "likely";
    case Likelihood::Possible:
        return "possible";
    case Likelihood::Unlikely:
        return "unlikely";
    case Likelihood::NotKnown:
        break;
    }
    return "not_known";
}

Result<std::vector<Cause>> causesOf(const JointFacts& facts)
{
    if (auto can = canBe(facts); !can)
        return tl::unexpected(can.error());
    std::vector<Cause> causes;
    const auto add = [&causes](std::optional<Cause> cause) {
        if (cause)
            causes.push_back(std::move(*cause));
    };
    add(woodCause(facts));
    add(stockCause(facts));
    add(frostCause(facts));
    add(doseCause(facts));
    add(ratioCause(facts));
    add(tableCause("joint", "The wrong glue for the joint", facts.joint, "Which kind of joint it was",
        "Look the joint up under Which glue, with its gap and load."));
    add(tableCause("residue", "Something was left in the joint", facts.residue,
        "What was in the joint before",
        "Scrape a little off the face: old glue curls or softens in warm water, wax smears, and a drop of "
        "water beads on both."));
    add(gapCause(facts));
    add(coldCause(facts));
    add(moistureCause(facts));
    add(assemblyCause(facts));
    add(clampCause(facts));
    add(surfaceCause(facts));
    add(loadCause(facts));
    add(humidityCause(facts));
    weighFaces(causes, facts);
    std::ranges::stable_sort(causes, [](const Cause& a, const Cause& b) {
        return a.likelihood != b.likelihood ? a.likelihood < b.likelihood : a.weight > b.weight;
    });
    return causes;
}

} // namespace gw
