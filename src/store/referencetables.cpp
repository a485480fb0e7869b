#include "store/referencetables.h"

#include <algorithm>
#include <array>

namespace gw {

namespace {

constexpr std::string_view range = "value low high";

constexpr std::array specs {
    ReferenceSpec { "sources", "key title kind status", 1 },
    ReferenceSpec { "pictograms", "code symbol means", 1 },
    ReferenceSpec { "families", "family_id name spread_faces reversible_with creep source confidence", 1 },
    ReferenceSpec { "family_figures", "family_id figure value low high text unit source confidence", 2,
        "families", range },
    ReferenceSpec { "classes",
        "class_id name group family form vessel counted_in frost moisture hazard_note spoilage_signs "
        "bench_test source "
        "confidence",
        1 },
    ReferenceSpec { "class_figures", "class_id figure value low high text unit source confidence basis", 2,
        "classes", range, "shop_changed_ms IS NOT NULL", "",
        "UPDATE class_figures SET value = NULL, low = NULL, high = NULL, text = NULL, source = 'shop', "
        "confidence = NULL, "
        "basis = NULL" },
    ReferenceSpec { "class_hazards", "class_id pictogram note", 2, "classes" },
    ReferenceSpec { "joints", "joint name", 1 },
    ReferenceSpec { "joint_fitness", "joint family_id rating reason source confidence", 2, "joints" },
    ReferenceSpec { "residues", "residue name", 1 },
    ReferenceSpec { "incompatibilities", "under over result source severity", 2, "residues" },
    ReferenceSpec { "recipes", "recipe_id name group note based_on", 1 },
    ReferenceSpec { "recipe_figures", "recipe_id item parameter value low high unit source confidence", 3,
        "recipes", range },
    ReferenceSpec { "recipe_steps", "recipe_id step text", 2, "recipes", "step" },
    ReferenceSpec { "job_types",
        "job_type_id name family_id typical_class counted_in area_cm2 spread_g_per_m2 net waste_fraction "
        "fixed_loss extra "
        "estimate note source confidence joint",
        1, "", "area_cm2 spread_g_per_m2 net waste_fraction fixed_loss extra estimate",
        "(shop_changed_ms IS NOT NULL OR shop_per_month IS NOT NULL)", "job_types.shop_changed_ms IS NULL" },
    ReferenceSpec { "job_type_parts", "job_type_id part area_cm2 count", 2, "job_types", "area_cm2 count" },
    ReferenceSpec {
        "job_type_consumables", "job_type_id item class_id amount unit", 2, "job_types", "amount" },
    ReferenceSpec { "cautions", "caution_id applies_to moment text source confidence", 1 },
    ReferenceSpec {
        "general_figures", "topic figure value low high text unit source confidence", 2, "", range },
};

} // namespace

std::span<const ReferenceSpec> referenceSpecs() { return specs; }

const ReferenceSpec* referenceSpec(std::string_view name)
{
    const auto found = std::ranges::find(specs, name, &ReferenceSpec::name);
    return found == specs.end() ? nullptr : &*found;
}

std::vector<std::string_view> words(std::string_view spaced)
{
    std::vector<std::string_view> out;
    while (!spaced.empty()) {
        const auto end = std::min(spaced.find(' '), spaced.size());
        if (end > 0)
            out.push_back(spaced.substr(0, end));
        spaced.remove_prefix(std::min(end + 1, spaced.size()));
    }
    return out;
}

} // namespace gw
