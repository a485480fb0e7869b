#include "gluing/conditiongates.h"

#include "gluing/sentences.h"

namespace gw {

std::string temperatureWords(Celsius temperature, const GlueUpQuestion& question)
{
    return formatTemperature(Celsius { roundedToTenth(temperature) }, question.units);
}

std::string glueName(const GlueUpQuestion& question)
{
    return question.family.name.empty() ? "this glue" : inSentence(question.family.name);
}

Gate noFigure(const char* id, const char* name, const GlueUpQuestion& question, const std::string& what)
{
    return { id, name, GateResult::Unknown,
        "What " + glueName(question) + " wants of the " + what + " is not known.",
        "Read what the label says of the " + what + "." };
}

std::vector<Gate> conditionGates(const GlueUpQuestion& question)
{
    const Family& family = question.family;
    const bool glues = !family.id.empty();
    std::vector<Gate> gates { airGate(question) };
    if (glues || family.woodMin)
        gates.push_back(woodGate(question));
    if (glues || family.humidity)
        gates.push_back(humidityGate(question));
    if (glues || family.woodMoisture)
        gates.push_back(moistureGate(question));
    if (glues || family.gapMaxMm)
        gates.push_back(gapGate(question));
    if (question.glue)
        gates.push_back(glueGate(question));
    if (glues)
        gates.push_back(surfaceGate(question));
    if (question.joint)
        gates.push_back(jointGate(*question.joint, question));
    if (question.residue)
        gates.push_back(residueGate(*question.residue, question));
    if (question.place)
        gates.push_back(placeGate(*question.place, question));
    if (question.load)
        gates.push_back(loadGate(*question.load, question));
    if (glues)
        gates.push_back(undoingGate(question));
    if (question.flammable)
        gates.push_back(ventilationGate(question));
    return gates;
}

} // namespace gw
