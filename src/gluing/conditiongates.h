#pragma once

#include <string>
#include <vector>

#include "gluing/glueup.h"

/// The conditions of room, wood and joint against the family; nobody outside the room needs it.
namespace gw {

/// air, wood, humidity, moisture, gap, joint, residue, as far as they apply (see Gate).
std::vector<Gate> conditionGates(const GlueUpQuestion& question);

Gate airGate(const GlueUpQuestion& question);
Gate woodGate(const GlueUpQuestion& question);
Gate humidityGate(const GlueUpQuestion& question); ///< and the dew point against the wood
Gate moistureGate(const GlueUpQuestion& question);
Gate gapGate(const GlueUpQuestion& question);
Gate jointGate(const Suitability& joint, const GlueUpQuestion& question);
Gate residueGate(const Suitability& residue, const GlueUpQuestion& question);

/// To a tenth of a degree, in the question's units.
std::string temperatureWords(Celsius temperature, const GlueUpQuestion& question);
/// The family's name inside a sentence; "this glue" when it has none.
std::string glueName(const GlueUpQuestion& question);
/// The family has no figure to judge by, so nothing can be said.
Gate noFigure(const char* id, const char* name, const GlueUpQuestion& question, const std::string& what);

} // namespace gw
