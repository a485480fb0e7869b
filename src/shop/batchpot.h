#pragma once

#include <span>
#include <vector>

#include "gluing/pot.h"
#include "gluing/recipe.h"
#include "shop/mixstock.h"
#include "store/batchrecords.h"

/// Between what the store keeps of a batch and the clocks of its model; the acts and the answers share it.
namespace gw {

/// Those that no later note of the list took back, and no reversals.
std::vector<BatchNote> standingNotes(std::span<const BatchNote> notes);
/// What is left by all of them.
Amount leftOf(const BatchRecord& batch, std::span<const BatchNote> notes);
/// The first note that ended it: used up or thrown away; null while it stands.
const BatchNote* endAmong(std::span<const BatchNote> standing);

bool isHotGlue(std::string_view recipe);
bool isEpoxy(std::string_view recipe);

/// The clocks of a batch by its standing notes. Errors: those of gluing/pot.h.
Result<PotState> potStateOf(
    const BatchRecord& batch, std::span<const BatchNote> standing, const Recipe& recipe, Moment now);

/// What the recipe, the label and the person fixed for a mix, as the batch keeps it.
std::vector<BatchFigure> figuresOf(const MixAsked& asked, const MixAnswer& mix);

} // namespace gw
