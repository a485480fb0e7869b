#pragma once

#include "gluing/glueup.h"

namespace gw {

/// Whether what was said can be at all; nobody outside the room needs it. Errors: BadInput, the sentence
/// names the figure.
Result<void> checkFigures(const GlueUpQuestion& question);

} // namespace gw
