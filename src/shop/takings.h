#pragma once

#include <string>
#include <vector>

#include "shop/actbuilder.h"

namespace gw {

/// Writes a job and what was taken for it into an act; a job without an id or a time is given one. Answers
/// what to say. Errors: as of useForJob().
Result<std::string> takeForJob(ActBuilder& act, const std::vector<Taking>& takings, JobRecord& job,
    const std::vector<Taking>& fromBatches);

} // namespace gw
