#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "shop/work.h"

namespace gw {

/// What a person says of a glue-up that was done. What is not said is not written.
struct GlueUpSaid {
    std::string jobType; ///< id or name
    int pieces = 1;
    Conditions conditions;
    std::string piece; ///< the client's piece; must be said
    std::string who, note;
    std::optional<double> assemblyMinutes; ///< from spreading to pressure
    std::optional<double> clampedMinutes;
    /// From containers, and from batches by label code or id. Both empty: what the check says to use.
    std::vector<Taking> takings, fromBatches;
    std::vector<std::string> photos; ///< JPEGs, each up to LabelPhoto::mostBytes
};

/// Writes a glue-up in one act: a job of its own, what was used, what was said, every gate and every
/// container's verdict as it stood then, and the photographs. The record is never changed; undoing the act
/// marks it as undone. It is written whatever the check says: it tells what was done. Errors: those of
/// checkJob() and useForJob(); BadInput without a piece, for figures that cannot be, and where nothing is
/// said to have been used and the check has nothing to use; then nothing at all is written.
Result<ActDone> recordGlueUp(Shop& shop, const GlueUpSaid& said, ActTime time);

/// The kinds of facts, in the order a person would read them.
struct FactKind {
    std::string_view key; ///< stable, in the store
    std::string_view name; ///< "Room"
    std::string_view unit; ///< of the number: "C", "%", "mm", "h", "min"; empty for words
};
inline constexpr std::array<FactKind, 22> factKinds { {
    { "who", "Done by", "" },
    { "joint", "Joint", "" },
    { "period", "Piece", "" }, // "period", "modern"
    { "residue", "Left in the joint", "" },
    { "gap", "Widest gap", "mm" },
    { "air", "Room", "C" },
    { "humidity", "Humidity", "%" },
    { "wood", "Wood", "C" },
    { "wood_moisture", "Wood moisture", "%" },
    { "other_moisture", "Other part's moisture", "%" },
    { "wood_stood", "Wood stood in", "" },
    { "batch", "Batch", "" },
    { "glue", "Glue", "C" },
    { "heat_dose", "Heat behind it, as at 60 °C", "h" },
    { "surface_age", "Faces cut before", "h" },
    { "thickness", "Thickest part", "mm" },
    { "barrier", "Barrier coat", "" }, // "yes", "no"
    { "ventilated", "Room aired", "" },
    { "service_place", "Will stand", "" }, // "dry", "damp", "outdoor", "hot"
    { "load", "Will carry", "" }, // "light", "lasting", "shock"
    { "assembly", "Spread to pressure", "min" },
    { "clamped", "In clamps", "min" },
} };

/// "18 C", "45 %", "outdoor": a fact for a sentence, in the person's units.
std::string factWords(const GlueUpFact& fact, UnitSystem units);

} // namespace gw
