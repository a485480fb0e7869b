#pragma once

#include "ageing/airpath.h"
#include "ageing/chill.h"

namespace gw {

// How contents go along the air of a place: for the answers of chill.h and what remembers them.

/// One piece of air.
void walkPiece(const AirPath::Piece& piece, FrostWalk& contents);
/// From where the contents are up to a moment.
void walk(AirPath& path, FrostWalk& contents, Moment to);

Chill chillAlong(const Air& air, Moment from, Moment to, const Response& response, const Warmth& start);
Below belowAlong(const Air& air, Moment from, Moment to, Celsius limit);

} // namespace gw
