#include "gluing/conditiongates.h"

#include <algorithm>
#include <string>

#include "gluing/sentences.h"
#include "measure/moistair.h"
#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr double partsMayDiffer = 2; // percent, from memory of joinery handbooks

/// What wood that has long stood in this air holds; told, never counted as measured.
std::string moistureEstimate(const GlueUpQuestion& question)
{
    if (!question.air || !question.humidity)
        return {};
    const RelativeHumidity humidity { *question.humidity };
    if (!inHandbookTable(*question.air, humidity))
        return {};
    const auto moisture = equilibriumMoisture(*question.air, humidity);
    return moisture
        ? "If it has stood in this air for weeks, it holds about " + numberWords(moisture->percent, 0) + " %."
        : std::string();
}

/// An estimate passes only where all of it does: what it leaves open is for the meter.
void judgeStood(Gate& gate, const GlueUpQuestion& question, const std::string& wanted)
{
    const Range<double> wants = *question.family.woodMoisture;
    const Range<double> stood = *question.stood->percent;
    gate.text = sentencesTogether(
        "Not measured, but it stood in " + inQuotes(question.stoodName) + ". " + question.stood->why,
        asSentence(upperFirst(wanted)));
    if (stood.low > wants.high) {
        gate.result = GateResult::Stop;
        gate.fix = "Let the wood dry in a drier room for weeks, or measure it: " + glueName(question)
            + " wants " + percentWords(wants.high) + " or less.";
    } else if (stood.high > wants.high) {
        gate.result = GateResult::Unknown;
        gate.fix = "Measure the wood's moisture: it may be over " + percentWords(wants.high) + ".";
    } else if (stood.low < wants.low) {
        gate.result = GateResult::Warn;
        gate.fix = "Measure the wood's moisture, or spread more: dry wood starves the line.";
    }
}

} // namespace

Gate moistureGate(const GlueUpQuestion& question)
{
    const auto& wants = question.family.woodMoisture;
    if (!wants)
        return noFigure("moisture", "Wood moisture", question, "wood's moisture");
    Gate gate { "moisture", "Wood moisture", GateResult::Pass, {} };
    const std::string wanted = glueName(question) + " wants " + percentRangeWords(*wants) + ".";
    if (!question.woodMoisture && question.stood && question.stood->percent) {
        judgeStood(gate, question, wanted);
        return gate;
    }
    if (!question.woodMoisture) {
        gate.result = GateResult::Unknown;
        gate.text = sentencesTogether("The wood's moisture is not measured; " + wanted,
            question.stood ? question.stood->why : moistureEstimate(question));
        gate.fix = "Measure the wood's moisture.";
        return gate;
    }
    const double wettest = std::max(*question.woodMoisture, question.otherMoisture.value_or(0));
    const double driest = std::min(*question.woodMoisture, question.otherMoisture.value_or(1000));
    const std::string now
        = wettest == driest ? percentWords(wettest) : percentRangeWords({ driest, wettest });
    gate.text = "The wood holds " + now + "; " + wanted;
    if (wettest > wants->high) {
        gate.result = GateResult::Stop;
        gate.fix = "Dry the wood: it holds " + percentWords(wettest) + ", " + glueName(question) + " wants "
            + percentWords(wants->high) + " or less.";
    } else if (driest < wants->low) {
        gate.result = GateResult::Warn;
        gate.fix = "Let the wood take up moisture in damper air, or spread more: dry wood starves the line.";
    } else if (wettest - driest > partsMayDiffer) {
        gate.result = GateResult::Warn;
        gate.text = sentencesTogether(
            gate.text, "The two parts should be within " + percentWords(partsMayDiffer) + " of each other.");
        gate.fix = "Let both parts stand together in the room until they agree.";
    }
    return gate;
}

Gate gapGate(const GlueUpQuestion& question)
{
    const Family& family = question.family;
    if (!family.gapMaxMm)
        return noFigure("gap", "Fit", question, "gap");
    Gate gate { "gap", "Fit", GateResult::Pass, {}, {} };
    const std::string wanted
        = glueName(question) + " bridges " + millimetreWords(*family.gapMaxMm) + " at most.";
    if (!question.gapMm) {
        gate.result = GateResult::Unknown;
        gate.text = "The gap in the dry joint is not known; " + wanted;
        gate.fix = "Measure the gap with a feeler in the dry joint.";
        return gate;
    }
    const std::string now = millimetreWords(*question.gapMm);
    gate.text = "The gap is " + now + "; " + wanted;
    if (*question.gapMm > *family.gapMaxMm) {
        gate.result = GateResult::Stop;
        gate.fix = "Close the gap with wood: it is " + now + ", " + wanted;
    } else if (family.gapBestMm && *question.gapMm > *family.gapBestMm) {
        gate.result = GateResult::Warn;
        gate.text = sentencesTogether(gate.text, "Up to " + millimetreWords(*family.gapBestMm) + " is best.");
        gate.fix = "Fit the joint closer if you can.";
    }
    return gate;
}

Gate jointGate(const Suitability& joint, const GlueUpQuestion& question)
{
    Gate gate { "joint", "Joint", joint.result, joint.what + ": ", {} };
    switch (joint.result) {
    case GateResult::Pass:
        gate.text += "right for " + glueName(question) + ".";
        break;
    case GateResult::Warn:
        gate.text += "possible with " + glueName(question) + ", not the first choice.";
        break;
    case GateResult::Stop:
        gate.text += "wrong for " + glueName(question) + "; choose another glue.";
        break;
    case GateResult::Unknown:
        gate.text += "nothing is known of " + glueName(question) + " here.";
        gate.fix = "Try it on scrap of the same wood, and break it.";
        break;
    }
    gate.text = sentencesTogether(gate.text, asSentence(joint.reason));
    return gate;
}

Gate residueGate(const Suitability& residue, const GlueUpQuestion& question)
{
    Gate gate { "residue", "In the joint", residue.result, {} };
    const std::string what = lowerFirst(residue.what);
    gate.text = sentencesTogether(
        asSentence(residue.what + " under " + glueName(question)), asSentence(residue.reason));
    switch (residue.result) {
    case GateResult::Pass:
        break;
    case GateResult::Warn:
        gate.fix = "Take off the " + what + " as far as you can.";
        break;
    case GateResult::Stop:
        gate.fix
            = "Clean the joint back to bare wood: " + glueName(question) + " does not hold on " + what + ".";
        break;
    case GateResult::Unknown:
        gate.text = sentencesTogether(gate.text, "What that does is not known.");
        gate.fix = "Clean the joint back to bare wood, or try it on scrap first.";
        break;
    }
    return gate;
}

} // namespace gw
