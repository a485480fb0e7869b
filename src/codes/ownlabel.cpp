#include "codes/ownlabel.h"

#include <algorithm>
#include <cstddef>

namespace gw {

namespace {

constexpr std::string_view alphabet = "23456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr std::string_view mark = "GW";
constexpr std::size_t dataLength = 6;
constexpr std::size_t codeLength = mark.size() + dataLength + 1;
constexpr std::size_t longestTyped = 32;
static_assert(alphabet.size() == 30);

// No weighted sum modulo 30 can catch every slip: weights must be odd to catch wrong characters, and the
// difference of two neighbouring weights, being even, misses swaps. So the characters stand for the 30
// symmetries of the regular 15-gon: 0 to 14 turns, 15 to 29 mirrorings. The product of all, each on its place
// turned about so many times, is 0 for a right code. The turn-about f(turn j) = turn -1-j, f(mirroring j) =
// mirroring j is anti-symmetric on this group: x f(y) = y f(x) only if x = y, so that no swap of neighbours
// passes; a group lets no single change pass. H. P. Gumm, A new class of check-digit methods for arbitrary
// number systems, IEEE Trans. Inf. Theory 31 (1985) 102-105.
constexpr int turns = 15;

constexpr int product(int a, int b)
{
    const int sum = a < turns ? a % turns + b % turns : a % turns - b % turns + turns;
    const bool mirrored = (a < turns) != (b < turns);
    return sum % turns + (mirrored ? turns : 0);
}

constexpr int turnedAbout(int a) { return a < turns ? turns - 1 - a : a; }

/// The turn-about twice is no change, so only odd places feel it.
constexpr int placed(int a, std::size_t place) { return place % 2 == 1 ? turnedAbout(a) : a; }

int valueOf(char c)
{
    const auto at = alphabet.find(c);
    return at == std::string_view::npos ? -1 : static_cast<int>(at);
}

/// Six characters, all of the alphabet.
char checkCharacter(std::string_view data)
{
    int sum = 0;
    for (std::size_t place = 0; place < data.size(); ++place)
        sum = product(sum, placed(valueOf(data[place]), place));
    for (const char c : alphabet) {
        if (product(sum, placed(valueOf(c), data.size())) == 0)
            return c;
    }
    return 0; // unreachable: a group has an inverse for every element
}

std::string_view dataOf(std::string_view code) { return code.substr(mark.size(), dataLength); }

/// The text in the written form of a label code, its check character not yet looked at; empty when it is not
/// of that shape.
std::string shaped(std::string_view text)
{
    if (text.size() > longestTyped)
        return {};
    std::string code;
    for (const char c : text) {
        if (c == ' ' || c == '-')
            continue;
        code += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    if (code.size() != codeLength || !code.starts_with(mark))
        return {};
    const bool ours
        = std::all_of(code.begin() + mark.size(), code.end(), [](char c) { return valueOf(c) >= 0; });
    return ours ? code : std::string();
}

} // namespace

std::string ownLabelCode(std::uint64_t number)
{
    std::string data(dataLength, alphabet[0]);
    for (std::size_t place = data.size(); place-- > 0; number /= alphabet.size())
        data[place] = alphabet[number % alphabet.size()];
    return std::string(mark) + data + checkCharacter(data);
}

std::optional<std::string> parseOwnLabel(std::string_view text)
{
    std::string code = shaped(text);
    if (code.empty() || code.back() != checkCharacter(dataOf(code)))
        return std::nullopt;
    return code;
}

bool looksLikeOwnLabel(std::string_view text) { return !shaped(text).empty(); }

} // namespace gw
