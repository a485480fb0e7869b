#include "gluing/conditiongates.h"

#include <string>

#include "gluing/sentences.h"
#include "measure/number.h"

/// The piece itself: how old its faces are, where it will stand, what it carries, whether it must open again.
namespace gw {

namespace {

std::string hoursWords(double hours)
{
    return hours < 72 ? numberWords(hours, 1) + " h" : numberWords(hours / 24, 0) + " days";
}

Gate suits(const char* id, const char* name, const Suitability& said, const GlueUpQuestion& question)
{
    Gate gate { id, name, said.result, said.what + ": " };
    switch (said.result) {
    case GateResult::Pass:
        gate.text += "right for " + glueName(question) + ".";
        break;
    case GateResult::Warn:
        gate.text += "possible with " + glueName(question) + ".";
        break;
    case GateResult::Stop:
        gate.text += "wrong for " + glueName(question) + "; choose another glue.";
        break;
    case GateResult::Unknown:
        gate.text += "nothing is known of " + glueName(question) + " there.";
        gate.fix = "Read what the label says of it.";
        break;
    }
    gate.text = sentencesTogether(gate.text, asSentence(said.reason));
    return gate;
}

} // namespace

Gate placeGate(const Suitability& place, const GlueUpQuestion& question)
{
    return suits("place", "Where it stands", place, question);
}

Gate loadGate(const Suitability& load, const GlueUpQuestion& question)
{
    return suits("load", "Load", load, question);
}

Gate glueGate(const GlueUpQuestion& question)
{
    const auto& wants = question.family.glueTemperature;
    if (!wants || !question.glue)
        return noFigure("glue", "Glue temperature", question, "glue's temperature");
    Gate gate { "glue", "Glue temperature", GateResult::Pass, {}, {}, true };
    const double now = roundedToTenth(*question.glue);
    gate.text = "The glue is " + temperatureWords(*question.glue, question) + "; "
        + temperatureRangeWords(*wants, question.units) + " is right.";
    if (now < roundedToTenth(wants->low)) {
        gate.result = GateResult::Warn;
        gate.fix = "Warm the glue: cold it is thick and wets badly.";
    } else if (now > roundedToTenth(wants->high)) {
        gate.result = GateResult::Warn;
        gate.fix = "Let the glue cool: hotter it goes off faster.";
    }
    return gate;
}

Gate surfaceGate(const GlueUpQuestion& question)
{
    const auto& most = question.family.surfaceAgeMaxHours;
    Gate gate { "surface", "Surface", GateResult::Pass, {}, {}, true };
    if (!most) {
        gate = noFigure("surface", "Surface", question, "surface's age");
        gate.advisory = true;
        return gate;
    }
    const std::string wanted = "glue within " + hoursWords(*most) + " of planing or scraping.";
    if (!question.surfaceAgeHours) {
        gate.result = GateResult::Unknown;
        gate.text = "When the faces were last cut is not known; " + wanted;
        gate.fix = "Say when the faces were planed, scraped or cleaned; a drop of water should spread in a "
                   "minute.";
        return gate;
    }
    gate.text = "The faces are " + hoursWords(*question.surfaceAgeHours) + " old; " + wanted;
    if (*question.surfaceAgeHours > *most) {
        gate.result = GateResult::Warn;
        gate.fix = "Scrape or plane the faces again.";
    }
    return gate;
}

Gate undoingGate(const GlueUpQuestion& question)
{
    const Family& family = question.family;
    const std::string how = asSentence(family.reversibleWith);
    Gate gate { "undoing", "Undoing", GateResult::Pass, {}, {}, true };
    const char* apart = "It does not come apart again.";
    switch (family.undoing) {
    case Undoing::Ready:
        gate.text = sentencesTogether("It comes apart again.", how);
        return gate;
    case Undoing::Hard:
        apart = "It comes apart hardly.";
        break;
    case Undoing::None:
        break;
    case Undoing::NotKnown:
        gate.result = GateResult::Unknown;
        gate.text = "How " + glueName(question) + " comes apart is not known.";
        gate.fix = "Read what the label says of taking it apart.";
        return gate;
    }
    gate.text = sentencesTogether(apart, how);
    if (!question.period) {
        gate.result = GateResult::Unknown;
        gate.text = sentencesTogether(gate.text, "Whether the piece is an old one is not said.");
        gate.fix = "Say whether the piece is an old one: that should come apart again.";
    } else if (*question.period && family.undoing == Undoing::Hard) {
        gate.result = GateResult::Warn;
        gate.fix
            = "For an old piece choose a glue that comes apart if you can, and write down what you used.";
    } else if (*question.period) {
        gate.result = GateResult::Warn;
        gate.fix = question.barrier.value_or(false)
            ? "Write down the barrier coat and that the owner agrees."
            : "Lay a barrier coat of hide glue first, have the owner agree, and write it down.";
    }
    return gate;
}

Gate ventilationGate(const GlueUpQuestion& question)
{
    Gate gate { "ventilation", "Fresh air", GateResult::Pass,
        "The vapour burns: the room is aired, with no flame or hot pot." };
    if (!question.ventilated) {
        gate.result = GateResult::Unknown;
        gate.text = "The vapour burns; whether the room is aired, with no flame or hot pot, is not said.";
        gate.fix
            = "Say whether the room is aired, with no flame, pilot light or hot pot in it; the label and the "
              "safety data sheet say what else.";
    } else if (!*question.ventilated) {
        gate.result = GateResult::Stop;
        gate.text = "The vapour burns, and the room is not aired.";
        gate.fix = "Air the room and put out every flame, pilot light and hot pot; the label, the safety "
                   "data sheet "
                   "and the fire code say what else.";
    }
    return gate;
}

} // namespace gw
