#include "scan/databartext.h"

#include <algorithm>
#include <vector>

namespace gw {

namespace {

constexpr char groupSeparator = 29;

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool allDigits(std::string_view text)
{
    return !text.empty() && std::all_of(text.begin(), text.end(), isDigit);
}

/// The digits of "(nn..)" at the start of the text, two to four of them; empty when there is none.
std::string_view bracketedKey(std::string_view text)
{
    const auto close = text.find(')');
    if (text.empty() || text.front() != '(' || close == std::string_view::npos || close < 3 || close > 5)
        return {};
    const auto key = text.substr(1, close - 1);
    return allDigits(key) ? key : std::string_view {};
}

bool hasPredefinedLength(std::string_view key)
{
    const int prefix = (key[0] - '0') * 10 + (key[1] - '0');
    return prefix <= 4 || (prefix >= 11 && prefix <= 20) || (prefix >= 31 && prefix <= 36) || prefix == 41;
}

} // namespace

std::string dataBarElementString(std::string_view text)
{
    if (text.size() == 14 && allDigits(text))
        return "01" + std::string(text);
    if (bracketedKey(text).empty())
        return std::string(text);

    std::string elements;
    bool separate = false;
    for (std::size_t at = 0; at < text.size();) {
        const auto key = bracketedKey(text.substr(at));
        if (key.empty()) {
            elements += text[at++];
            continue;
        }
        if (separate)
            elements += groupSeparator;
        elements += key;
        separate = !hasPredefinedLength(key);
        at += key.size() + 2;
    }
    return elements;
}

} // namespace gw
