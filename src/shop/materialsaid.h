#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shop/shop.h"

namespace gw {

/// The figures of a material that are read off its label; others of its own stay when these change.
bool isReadOffLabel(std::string_view figure);

/// Whether a class is one half of a two-part glue: "resin", "hardener", or empty for what needs no other.
std::string partOf(const ClassRecord& cls);
/// The materials that may be the other half of one of that class: hardeners for a resin and the other way
/// round, those of its own family first, then by name.
std::vector<MaterialRecord> partnersFor(const Catalogue& catalogue, const ClassId& cls);

/// What a person says of a material the shop buys; all of it is told, and what is not told is not known.
struct MaterialSaid {
    std::vector<Figure> labelFigures; ///< those of isReadOffLabel()
    std::optional<MaterialId> partner;
};
/// Takes it up from now on; what the shop did before rests on what it knew then. A partner that has none yet
/// names this one too. Errors: NotFound; BadInput for a partner that is not the other half.
Result<MaterialRecord> sayOfMaterial(Shop& shop, const MaterialId& material, const MaterialSaid& said);

/// Joins two halves within an act that is under way: saves the material with its partner, and the partner
/// with it where that has none. Errors: as sayOfMaterial().
Result<void> savePartners(Shop& shop, const Catalogue& catalogue, MaterialRecord& material,
    const std::optional<MaterialId>& partner);

} // namespace gw
