#pragma once

#include <optional>
#include <string>

#include <CLI/App.hpp>

#include "shop/work.h"

namespace gw {

/// What the check and the record of a glue-up are told, as typed; empty and none are not said.
struct CheckOptions {
    std::string jobType, air, wood, glue, joint, residue, period, place, load, woodStood, barrier, ventilated,
        batch;
    int pieces = 1;
    std::optional<double> humidity, moisture, otherMoisture, gap, surfaceAge, thickness;
};

/// All but the one for period, whose name differs.
void addCheckOptions(CLI::App& command, CheckOptions& options);
/// Errors: BadInput for a temperature that is none.
Result<Conditions> conditionsOf(const CheckOptions& options);

} // namespace gw
