#include "gluing/glueup.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "gluing/batchgates.h"
#include "gluing/conditiongates.h"
#include "gluing/saidfigures.h"
#include "gluing/sentences.h"
#include "gluing/stockgates.h"

namespace gw {

namespace {

constexpr double clockReference = 20; // C, that the families' times are stated for

/// Glue put on hot sets by chilling: a cold room takes time away, where it gives time to every other kind.
bool setsByChilling(const Family& family)
{
    return family.glueTemperature && family.airMax && family.glueTemperature->low > *family.airMax;
}

std::string clockNote(const GlueUpQuestion& question)
{
    const Family& family = question.family;
    const std::string at20
        = "Working times are for " + formatTemperature(Celsius { clockReference }, question.units);
    const std::string unclamp = question.air ? "" : ", and so is the time in clamps: the room is not known";
    if (setsByChilling(family))
        return at20 + unclamp + "; a cooler room or cooler wood makes them shorter.";
    return at20 + unclamp + "; warm, dry or moving air makes them shorter.";
}

GlueUpClocks clocksOf(const GlueUpQuestion& question)
{
    const Family& family = question.family;
    GlueUpClocks clocks { family.openMinutes, family.closedMinutes, family.unclampMinutes,
        family.fullLoadHours, {} };
    if (!clocks.openMinutes && !clocks.closedMinutes && !clocks.unclampMinutes && !clocks.fullLoadHours)
        return clocks;
    clocks.note = clockNote(question);
    if (!clocks.unclampMinutes || !question.air)
        return clocks;
    if (family.airMin && roundedToTenth(*question.air) < roundedToTenth(*family.airMin)) {
        clocks.unclampMinutes.reset();
        clocks.note = sentencesTogether(
            clocks.note, "In a room this cold it is not known when the clamps may come off.");
    } else if (question.air->value < clockReference && family.coldClampFactor > 1) {
        *clocks.unclampMinutes
            *= std::pow(family.coldClampFactor, (clockReference - question.air->value) / 10);
        clocks.note = sentencesTogether(clocks.note,
            "The time in clamps is for " + temperatureWords(*question.air, question)
                + "; the full load takes longer too.");
    }
    return clocks;
}

const Gate* gateOf(const std::vector<Gate>& gates, std::string_view id)
{
    const auto found
        = std::find_if(gates.begin(), gates.end(), [id](const Gate& gate) { return gate.id == id; });
    return found == gates.end() ? nullptr : &*found;
}

GlueUpVerdict verdictOf(const std::vector<Gate>& gates)
{
    const auto any = [&gates](GateResult result, bool withFix) {
        return std::any_of(gates.begin(), gates.end(), [&](const Gate& gate) {
            return gate.result == result && gate.fix.empty() != withFix
                && !(gate.advisory && result == GateResult::Unknown);
        });
    };
    if (any(GateResult::Stop, false))
        return GlueUpVerdict::Stop;
    if (any(GateResult::Stop, true))
        return GlueUpVerdict::FixFirst;
    return any(GateResult::Unknown, true) || any(GateResult::Unknown, false) ? GlueUpVerdict::NotKnown
                                                                             : GlueUpVerdict::Go;
}

/// What the batch at hand and the shelf say to the need: the batch first, the shelf to what it leaves.
void addStock(GlueUpAnswer& answer, const GlueUpQuestion& question, Moment now)
{
    answer.batch = question.batch;
    answer.fromBatch = { 0, answer.need.dimension };
    if (answer.batch) {
        answer.gates.push_back(batchGate(*answer.batch, question, now));
        answer.fromBatch = coveredBy(*answer.batch, answer.need);
        if (answer.fromBatch.milli > 0 && answer.fromBatch == answer.need) {
            answer.gates.push_back(batchAmountGate(*answer.batch, answer.need, question.units));
            return;
        }
    }
    StockAnswer stock = answerFromStock(question, answer.need - answer.fromBatch, now);
    if (answer.fromBatch.milli > 0)
        stock.amount.text = "Besides the " + formatAmount(answer.fromBatch, question.units) + " in "
            + answer.batch->label + ": " + lowerFirst(stock.amount.text);
    if (stock.partner)
        answer.gates.push_back(*stock.partner);
    answer.gates.push_back(stock.age);
    answer.gates.push_back(stock.amount);
    answer.stockName = std::move(stock.name);
    answer.use = std::move(stock.use);
    answer.weighOut = std::move(stock.weighOut);
    answer.shortBy = stock.shortBy;
}

/// Whether a gate is one that made the answer what it is.
bool decided(const Gate& gate, GlueUpVerdict answer)
{
    switch (answer) {
    case GlueUpVerdict::Stop:
        return gate.result == GateResult::Stop && gate.fix.empty();
    case GlueUpVerdict::FixFirst:
        return gate.result == GateResult::Stop;
    case GlueUpVerdict::NotKnown:
        return gate.result == GateResult::Unknown && !gate.advisory;
    case GlueUpVerdict::Go:
        break;
    }
    return false;
}

/// What to see to first: no use in warming wood for a glue that is not there.
std::string firstFix(const std::vector<Gate>& gates, GlueUpVerdict answer)
{
    constexpr std::array order { "ventilation", "joint", "place", "load", "batch", "partner", "age", "amount",
        "residue", "wood", "air", "moisture", "gap", "humidity" };
    for (const char* id : order) {
        const Gate* gate = gateOf(gates, id);
        if (gate && decided(*gate, answer))
            return gate->fix.empty() ? gate->text : gate->fix;
    }
    return {};
}

} // namespace

std::string_view word(GateResult result)
{
    switch (result) {
    case GateResult::Pass:
        return "pass";
    case GateResult::Warn:
        return "warn";
    case GateResult::Stop:
        return "stop";
    case GateResult::Unknown:
        break;
    }
    return "unknown";
}

std::string_view word(GlueUpVerdict verdict)
{
    switch (verdict) {
    case GlueUpVerdict::Go:
        return "go";
    case GlueUpVerdict::FixFirst:
        return "fix_first";
    case GlueUpVerdict::Stop:
        return "stop";
    case GlueUpVerdict::NotKnown:
        break;
    }
    return "not_known";
}

Result<GlueUpAnswer> checkGlueUp(const GlueUpQuestion& question, Moment now)
{
    if (const auto figures = checkFigures(question); !figures)
        return tl::unexpected(figures.error());

    GlueUpAnswer answer;
    answer.need = needFor(question.job, question.pieces);
    addStock(answer, question, now);
    const std::vector<Gate> conditions = conditionGates(question);
    answer.gates.insert(answer.gates.end(), conditions.begin(), conditions.end());

    answer.answer = verdictOf(answer.gates);
    answer.firstFix = firstFix(answer.gates, answer.answer);
    answer.clocks = clocksOf(question);
    answer.reversibleWith = question.family.reversibleWith;
    for (const Gate& gate : answer.gates) {
        if (gate.result == GateResult::Unknown && !gate.fix.empty())
            answer.asks.push_back(gate.fix);
    }
    return answer;
}

} // namespace gw
