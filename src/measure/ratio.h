#pragma once

#include <string_view>
#include <utility>

#include "measure/error.h"

namespace gw {

/// Two numbers with a colon between them, as a ratio is written: "2:1", "100 : 41,3". Errors: BadInput.
Result<std::pair<double, double>> parseRatio(std::string_view text);

} // namespace gw
