#pragma once

#include <string>
#include <vector>

#include "gluing/glueup.h"

/// The conditions of room, wood and joint against the family; nobody outside the room needs it.
namespace gw {

/// Every condition of room, wood, joint and piece, as far as it applies (see Gate).
std::vector<Gate> conditionGates(const GlueUpQuestion& question);

Gate airGate(const GlueUpQuestion& question);
Gate woodGate(const GlueUpQuestion& question);
Gate humidityGate(const GlueUpQuestion& question); ///< and the dew point against the wood
Gate moistureGate(const GlueUpQuestion& question);
Gate gapGate(const GlueUpQuestion& question);
Gate jointGate(const Suitability& joint, const GlueUpQuestion& question);
Gate residueGate(const Suitability& residue, const GlueUpQuestion& question);
Gate placeGate(const Suitability& place, const GlueUpQuestion& question);
Gate loadGate(const Suitability& load, const GlueUpQuestion& question);
Gate glueGate(const GlueUpQuestion& question); ///< meant where its temperature was said
Gate surfaceGate(const GlueUpQuestion& question);
Gate undoingGate(const GlueUpQuestion& question);
Gate ventilationGate(const GlueUpQuestion& question);

/// How long the wood takes to warm to a temperature in this room, as a sentence; empty when the room or the
/// wood is not known, or the wood is warm enough. A thickness not said is taken as 20 to 40 mm, legs to tops.
std::string warmingWords(const GlueUpQuestion& question, std::optional<Celsius> wood, Celsius to);

/// To a tenth of a degree, in the question's units.
std::string temperatureWords(Celsius temperature, const GlueUpQuestion& question);
/// The family's name inside a sentence; "this glue" when it has none.
std::string glueName(const GlueUpQuestion& question);
/// The family has no figure to judge by, so nothing can be said.
Gate noFigure(const char* id, const char* name, const GlueUpQuestion& question, const std::string& what);

} // namespace gw
