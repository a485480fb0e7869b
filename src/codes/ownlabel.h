#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace gw {

/// The short code on our own labels: "GW" + six characters + one check character, all from an alphabet
/// without look-alikes (no I, L, O, U, 0, 1). Catches every single wrong character and every swap of
/// neighbours. Read back without regard to case, spaces or hyphens.

/// The code that a number stands for; the device draws the number at random, the store refuses a code already
/// taken.
std::string ownLabelCode(std::uint64_t number);

/// The code in its one written form when the text is one of ours and its check character holds.
std::optional<std::string> parseOwnLabel(std::string_view text);

/// Whether a text has the shape of one of ours, its check character aside: a slip of reading or typing,
/// rather than some other text.
bool looksLikeOwnLabel(std::string_view text);

} // namespace gw
