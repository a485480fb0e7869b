#pragma once

#include <optional>

#include "demand/orderplan.h"

namespace gw {

/// What is wrong with a request, in a sentence that says what to do; none when it can be planned.
std::optional<Error> flawIn(const PlanRequest& request);

/// The same for what is known of one material; the sentence names it.
std::optional<Error> flawIn(const MaterialDemand& material);

} // namespace gw
