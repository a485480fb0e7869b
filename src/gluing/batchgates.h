#pragma once

#include <vector>

#include "gluing/glueup.h"

/// What a batch at hand says to the glue-up; nobody outside the room needs it.
namespace gw {

/// Whether it may go on: its verdict as a gate, and how long its cup can still be worked.
Gate batchGate(const BatchAtHand& batch, const GlueUpQuestion& question, Moment now);

/// What it covers of the need; none where one of them is not known, or they are measured differently.
Amount coveredBy(const BatchAtHand& batch, Amount need);

/// The amount gate where the batch covers all of the need.
Gate batchAmountGate(const BatchAtHand& batch, Amount need, UnitSystem units);

} // namespace gw
