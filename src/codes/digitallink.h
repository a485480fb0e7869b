#pragma once

#include <optional>
#include <string_view>

#include "codes/elementstring.h"

namespace gw {

/// A GS1 Digital Link URI (uncompressed): {stem}/01/{14
/// digits}[/22/..][/10/..][/21/..]?{identifier}={value}&... None when the text is an ordinary web address or
/// no address at all: only a path that names a key and something that may be its value is taken for a link.
/// Never opened, only read.
std::optional<ElementsRead> readDigitalLink(std::string_view text, int currentYear);

} // namespace gw
