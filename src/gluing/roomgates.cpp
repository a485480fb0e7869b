#include "gluing/conditiongates.h"

#include <algorithm>
#include <string>

#include "gluing/sentences.h"
#include "gluing/warming.h"
#include "measure/moistair.h"
#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

/// How far the wood should be above the dew point; from memory of coating practice (ISO 12944-7 asks for 3 K
/// on steel).
constexpr double clearOfDew = 3;

/// Legs to tops, where nobody says how thick the wood is; our assumption.
constexpr double thinPart = 20, thickPart = 40; // mm

/// "20 to 35 °C", "20 °C or more"
std::string airWanted(const GlueUpQuestion& question)
{
    const Family& family = question.family;
    return family.airMax ? temperatureRangeWords({ *family.airMin, *family.airMax }, question.units)
                         : temperatureWords(*family.airMin, question) + " or more";
}

/// Over this the reference says nothing for the wood; none when there is no figure to go by.
std::optional<Celsius> woodTop(const Family& family)
{
    if (family.woodBest && family.airMax)
        return std::max(family.woodBest->high, *family.airMax);
    return family.airMax;
}

/// A wet surface: the wood at or near the dew point of the room's air. Pass when that cannot be told.
void addDew(Gate& gate, const GlueUpQuestion& question)
{
    if (!question.air || !question.wood || !question.humidity)
        return;
    const auto dew = dewPoint(*question.air, RelativeHumidity { *question.humidity });
    if (!dew)
        return; // dry air has no dew point
    const double above = roundedToTenth(*question.wood) - roundedToTenth(*dew);
    if (above >= clearOfDew)
        return;
    const std::string wood = temperatureWords(*question.wood, question);
    const std::string point = temperatureWords(*dew, question);
    const std::string warm = temperatureWords(Celsius { dew->value + clearOfDew }, question);
    if (above <= 0) {
        gate.result = GateResult::Stop;
        gate.text = sentencesTogether(
            "Water condenses on the wood: it is " + wood + ", the dew point " + point + ".", gate.text);
        gate.fix = sentencesTogether("Let the wood warm to " + warm + " and dry off: it is " + wood
                + ", and water condenses on it below " + point + ".",
            warmingWords(question, question.wood, Celsius { dew->value + clearOfDew }));
        return;
    }
    gate.result = GateResult::Warn;
    gate.text
        = sentencesTogether("The wood is " + wood + ", close to the dew point of " + point + ".", gate.text);
    gate.fix = sentencesTogether("Let the wood warm to " + warm + " if you can.",
        warmingWords(question, question.wood, Celsius { dew->value + clearOfDew }));
}

/// What is to be expected of a piece carried in from a place that was colder or warmer than the room.
std::string carriedIn(const GlueUpQuestion& question)
{
    if (!question.stoodAt || question.stoodName.empty())
        return {};
    const std::string there = "Where it stood, in " + inQuotes(question.stoodName) + ", it was "
        + temperatureWords(*question.stoodAt, question) + ".";
    return sentencesTogether(there, warmingWords(question, question.stoodAt, *question.family.woodMin));
}

} // namespace

std::string warmingWords(const GlueUpQuestion& question, std::optional<Celsius> wood, Celsius to)
{
    if (!question.air || !wood || *wood >= to)
        return {};
    const std::string there = temperatureWords(to, question);
    const auto thin = minutesToWarm({ *wood, *question.air, question.thicknessMm.value_or(thinPart) }, to);
    const auto thick = minutesToWarm({ *wood, *question.air, question.thicknessMm.value_or(thickPart) }, to);
    if (!thin || !thick)
        return {};
    if (!*thin || !*thick)
        return "This room will not bring it to " + there + ".";
    const std::string size = question.thicknessMm
        ? millimetreWords(*question.thicknessMm)
        : numberWords(thinPart, 0) + " to " + millimetreWords(thickPart);
    return "In this room it takes about " + waitWords({ (*thin)->low, (*thick)->high }) + " to " + there
        + ", for wood " + size + " thick.";
}

Gate airGate(const GlueUpQuestion& question)
{
    const Family& family = question.family;
    if (!family.airMin)
        return noFigure("air", "Room", question, "room's temperature");
    Gate gate { "air", "Room", GateResult::Pass, {}, {} };
    if (!question.air) {
        gate.result = GateResult::Unknown;
        gate.text = "The room's temperature is not known; " + glueName(question) + " wants "
            + airWanted(question) + ".";
        gate.fix = "Measure the room's temperature.";
        return gate;
    }
    const double air = roundedToTenth(*question.air);
    const std::string now = temperatureWords(*question.air, question);
    if (air < roundedToTenth(*family.airMin)) {
        const std::string wanted
            = glueName(question) + " wants " + temperatureWords(*family.airMin, question) + " or more.";
        gate.result = GateResult::Stop;
        gate.text = "The room is " + now + "; " + wanted;
        gate.fix = "Warm the room: it is " + now + ", " + wanted;
    } else if (family.airMax && air > roundedToTenth(*family.airMax)) {
        const std::string wanted
            = glueName(question) + " wants " + temperatureWords(*family.airMax, question) + " or less.";
        gate.result = GateResult::Stop;
        gate.text = "The room is " + now + "; " + wanted;
        gate.fix = "Cool the room: it is " + now + ", " + wanted;
    } else if (family.airBest
        && (air < roundedToTenth(family.airBest->low) || air > roundedToTenth(family.airBest->high))) {
        gate.result = GateResult::Warn;
        gate.text = "The room is " + now + "; " + glueName(question) + " is at its best at "
            + temperatureRangeWords(*family.airBest, question.units) + ".";
        gate.fix = air < roundedToTenth(family.airBest->low)
            ? "Warm the room to " + temperatureWords(family.airBest->low, question) + " if you can."
            : "Cool the room to " + temperatureWords(family.airBest->high, question)
                + " if you can, and work quickly.";
    } else {
        gate.text = "The room is " + now + "; " + glueName(question) + " wants " + airWanted(question) + ".";
    }
    return gate;
}

Gate woodGate(const GlueUpQuestion& question)
{
    const Family& family = question.family;
    if (!family.woodMin)
        return noFigure("wood", "Wood temperature", question, "wood's temperature");
    Gate gate { "wood", "Wood temperature", GateResult::Pass, {}, {} };
    const std::string wanted
        = glueName(question) + " wants " + temperatureWords(*family.woodMin, question) + " or more.";
    if (!question.wood) {
        gate.result = GateResult::Unknown;
        gate.text = sentencesTogether("The wood's temperature is not known; " + wanted, carriedIn(question));
        gate.fix = "Measure the wood's temperature.";
        return gate;
    }
    const double wood = roundedToTenth(*question.wood);
    const std::string now = temperatureWords(*question.wood, question);
    gate.text = "The wood is " + now + "; " + wanted;
    const auto top = woodTop(family);
    if (wood < roundedToTenth(*family.woodMin)) {
        gate.result = GateResult::Stop;
        gate.fix = sentencesTogether("Warm the wood: it is " + now + ", " + wanted,
            warmingWords(question, question.wood, *family.woodMin));
    } else if (family.woodBest && wood < roundedToTenth(family.woodBest->low)) {
        gate.result = GateResult::Warn;
        gate.text = sentencesTogether(
            gate.text, "At " + temperatureRangeWords(*family.woodBest, question.units) + " it is best.");
        gate.fix = "Warm the wood to " + temperatureWords(family.woodBest->low, question) + " if you can.";
    } else if (top && wood > roundedToTenth(*top)) {
        gate.result = GateResult::Warn;
        gate.text = "The wood is " + now + ": nothing is known of " + glueName(question) + " over "
            + temperatureWords(*top, question) + ".";
        gate.fix = "Let the wood cool to " + temperatureWords(*top, question) + ".";
    }
    return gate;
}

Gate humidityGate(const GlueUpQuestion& question)
{
    const auto& wants = question.family.humidity;
    if (!wants)
        return noFigure("humidity", "Humidity", question, "humidity");
    Gate gate { "humidity", "Humidity", GateResult::Pass, {}, {} };
    const std::string wanted = glueName(question) + " wants " + percentRangeWords(*wants) + ".";
    if (!question.humidity) {
        gate.result = GateResult::Unknown;
        gate.text = "The humidity is not known; " + wanted;
        gate.fix = "Measure the humidity of the room.";
        return gate;
    }
    const double humidity = *question.humidity;
    gate.text = "The humidity is " + percentWords(humidity) + "; " + wanted;
    if (humidity < wants->low) {
        gate.result = GateResult::Warn;
        gate.fix = "Damp the air, or work quickly: open time is short in dry air.";
    } else if (humidity > wants->high) {
        gate.result = GateResult::Warn;
        gate.fix = "Dry the air, or leave the clamps on longer.";
    }
    addDew(gate, question);
    return gate;
}

} // namespace gw
