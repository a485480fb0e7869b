#pragma once

#include <optional>
#include <string_view>

#include "codes/applicationidentifiers.h"
#include "codes/code.h"

namespace gw {

/// What is wrong with the value of an element, or nothing. currentYear places two-digit years: 29 February
/// needs it. Kinds: "empty value", "value too short", "value too long", "non-digit", "character set 82" (39,
/// 64), "check digit", "month", "day", "hour", "minute", "second", "value".
std::optional<CodeError> checkValue(
    const Identifier& identifier, std::string_view ai, std::string_view value, int currentYear);

} // namespace gw
