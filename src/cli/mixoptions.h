#pragma once

#include <optional>
#include <string>

#include "shop/mixstock.h"

namespace gw {

/// The mix command's options as typed.
struct MixOptions {
    std::string recipe, need, have, room, form, ratio, massRatio, densities, filler, consistency, hardener,
        scale;
    std::optional<double> grade, assembly, water, extraWater, urea, cut, fromCut, strength, dye, pigment,
        potLife;
    double alcohol = 0;
    bool size = false, waxy = false;
};

/// The question they ask. Errors: BadInput, naming the option.
Result<MixAsked> mixAskedOf(const MixOptions& options);

} // namespace gw
