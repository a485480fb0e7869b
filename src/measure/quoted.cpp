#include "measure/quoted.h"

#include <algorithm>
#include <cstddef>

namespace gw {

namespace {

constexpr std::size_t longestShown = 40;

/// Length in bytes of the well-formed UTF-8 sequence at the start of the text, 0 when there is none.
/// Overlong forms, surrogates and code points past U+10FFFF are not well-formed (RFC 3629, section 4).
std::size_t sequenceLength(std::string_view text)
{
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80)
        return 1;
    std::size_t length = 0;
    unsigned char lowest = 0x80;
    unsigned char highest = 0xBF;
    if (lead >= 0xC2 && lead <= 0xDF) {
        length = 2;
    } else if (lead >= 0xE0 && lead <= 0xEF) {
        length = 3;
        lowest = lead == 0xE0 ? 0xA0 : 0x80;
        highest = lead == 0xED ? 0x9F : 0xBF;
    } else if (lead >= 0xF0 && lead <= 0xF4) {
        length = 4;
        lowest = lead == 0xF0 ? 0x90 : 0x80;
        highest = lead == 0xF4 ? 0x8F : 0xBF;
    } else {
        return 0;
    }
    if (text.size() < length || byte(1) < lowest || byte(1) > highest)
        return 0;
    for (std::size_t i = 2; i < length; ++i) {
        if (byte(i) < 0x80 || byte(i) > 0xBF)
            return 0;
    }
    return length;
}

/// Control characters, C1 controls among them, and the ones that turn the direction of the text around them.
bool isUnshowable(std::string_view sequence)
{
    const auto lead = static_cast<unsigned char>(sequence[0]);
    if (lead < 0x20 || lead == 0x7F)
        return true;
    if (sequence.size() == 2)
        return lead == 0xC2 && static_cast<unsigned char>(sequence[1]) < 0xA0;
    if (sequence.size() == 3 && lead == 0xE2) {
        const auto second = static_cast<unsigned char>(sequence[1]);
        const auto third = static_cast<unsigned char>(sequence[2]);
        return (second == 0x80 && ((third >= 0x8E && third <= 0x8F) || (third >= 0xA8 && third <= 0xAE)))
            || (second == 0x81 && third >= 0xA6 && third <= 0xA9);
    }
    return false;
}

} // namespace

std::string inQuotes(std::string_view text)
{
    std::string shown = "\"";
    std::size_t characters = 0;
    while (!text.empty() && characters < longestShown) {
        const std::size_t length = sequenceLength(text);
        if (length == 0 || isUnshowable(text.substr(0, length)))
            shown += '?';
        else
            shown += text.substr(0, length);
        text.remove_prefix(std::max<std::size_t>(length, 1));
        ++characters;
    }
    if (!text.empty())
        shown += "...";
    return shown + '"';
}

} // namespace gw
