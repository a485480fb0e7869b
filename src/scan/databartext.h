#pragma once

#include <string>
#include <string_view>

namespace gw {

/// The element string that a DataBar symbol transmits (ISO/IEC 24724), from what an engine makes of it: the
/// 14 digits of a GTIN alone, the elements written for people with brackets, or the element string itself,
/// handed on as it is. Group separators go where the General Specifications ask for them: after an element
/// without a predefined length, unless it is the last (table of predefined lengths: section 7.8, from
/// memory).
std::string dataBarElementString(std::string_view text);

} // namespace gw
