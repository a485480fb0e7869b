#pragma once

#include <string>
#include <string_view>

namespace gw {

/// A text from outside, fit to stand inside a sentence: in double quotes, control bytes and broken UTF-8
/// shown as "?", cut after some forty characters. Never longer than 200 bytes, whatever came in.
std::string inQuotes(std::string_view text);

} // namespace gw
