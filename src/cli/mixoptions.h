#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shop/batch.h"

namespace gw {

/// The mix command's options as typed.
struct MixOptions {
    std::string recipe, need, have, room, form, ratio, massRatio, densities, filler, consistency, hardener,
        scale;
    std::optional<double> grade, assembly, water, extraWater, urea, cut, fromCut, strength, dye, pigment,
        potLife;
    double alcohol = 0;
    bool size = false, waxy = false;
    // To record it
    bool record = false;
    std::string place, who, note;
    std::vector<std::string> from; ///< "granules=GW..."
};

/// What is said beside the mix, to record it. Errors: BadInput.
Result<MixRecording> mixRecordingOf(const MixOptions& options);

/// The question they ask. Errors: BadInput, naming the option.
Result<MixAsked> mixAskedOf(const MixOptions& options);

} // namespace gw
