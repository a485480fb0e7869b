#include "gluing/batchgates.h"

#include <algorithm>
#include <cmath>

#include "gluing/sentences.h"
#include "measure/number.h"

namespace gw {

namespace {

constexpr double margin = 1.1; // as for stock: less than a tenth over leaves nothing for a spill
constexpr double minutesAnHour = 60;

/// "12 min", "3 h": whole minutes rounded down, as time that is not there must not be promised.
std::string timeWords(Days time)
{
    const double minutes = std::floor(time.count() * 24 * minutesAnHour);
    if (minutes < 2 * minutesAnHour)
        return numberWords(minutes, 0) + " min";
    const double hours = std::floor(minutes / minutesAnHour);
    return hours < 48 ? numberWords(hours, 0) + " h" : numberWords(std::floor(hours / 24), 0) + " days";
}

std::string fixFor(Verdict verdict, bool hot)
{
    switch (verdict) {
    case Verdict::DoNotUse:
        return "Mix a new batch.";
    case Verdict::NotKnown:
        return hot
            ? "Read the thermometer in the glue and note it, or mix a new batch."
            : "Say the room's temperature and the label's minutes when it is mixed, or mix a new batch.";
    case Verdict::TestFirst:
    case Verdict::Good:
        break;
    }
    return {};
}

GateResult resultOf(Verdict verdict)
{
    switch (verdict) {
    case Verdict::Good:
        return GateResult::Pass;
    case Verdict::TestFirst:
        return GateResult::Warn;
    case Verdict::DoNotUse:
        return GateResult::Stop;
    case Verdict::NotKnown:
        break;
    }
    return GateResult::Unknown;
}

std::string warmTo(const GlueUpQuestion& question)
{
    const auto& range = question.family.glueTemperature;
    return range ? " to " + temperatureRangeWords(*range, question.units) : std::string();
}

} // namespace

Gate batchGate(const BatchAtHand& batch, const GlueUpQuestion& question, Moment now)
{
    Gate gate { "batch", "Batch", resultOf(batch.verdict),
        batch.name + " (" + batch.label + "), " + formatAmount(batch.left, question.units) + " left.", {} };
    if (batch.verdict == Verdict::Good && batch.until && *batch.until > now)
        gate.text = sentencesTogether(
            gate.text, "About " + timeWords(daysBetween(now, *batch.until)) + " until it is to be used up.");
    if (batch.doseHours && batch.verdict != Verdict::DoNotUse)
        gate.text = sentencesTogether(
            gate.text, "Heat so far: " + numberWords(*batch.doseHours, 1) + " hours at 60 °C.");
    for (const std::string& word : batch.words)
        gate.text = sentencesTogether(gate.text, word);
    const bool cold = batch.isHotGlue && !batch.onTheHeat && batch.verdict != Verdict::DoNotUse;
    if (cold)
        gate.text = sentencesTogether(gate.text, "It is not on the heat.");
    gate.fix = fixFor(batch.verdict, batch.isHotGlue);
    if (cold && gate.fix.empty())
        gate.fix = "Warm it in the water bath" + warmTo(question) + " first.";
    if (cold && gate.result == GateResult::Pass)
        gate.result = GateResult::Warn;
    return gate;
}

Amount coveredBy(const BatchAtHand& batch, Amount need)
{
    if (need.milli <= 0 || batch.left.dimension != need.dimension || batch.verdict == Verdict::DoNotUse)
        return { 0, need.dimension };
    return { std::clamp<std::int64_t>(batch.left.milli, 0, need.milli), need.dimension };
}

Gate batchAmountGate(const BatchAtHand& batch, Amount need, UnitSystem units)
{
    Gate gate { "amount", "Amount", GateResult::Pass,
        "Needs " + formatAmount(need, units) + ", and " + formatAmount(batch.left, units) + " is mixed in "
            + batch.label + ".",
        {} };
    if (static_cast<double>(batch.left.milli) < margin * static_cast<double>(need.milli)) {
        gate.result = GateResult::Warn;
        gate.text = sentencesTogether(gate.text, "That is less than a tenth over.");
        gate.fix = "Have more at hand.";
    }
    return gate;
}

} // namespace gw
