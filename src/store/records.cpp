#include "store/records.h"

#include <algorithm>
#include <array>

namespace gw {

namespace {

// In the order of EntryKind.
constexpr std::array<std::string_view, 12> kindWords { "arrived", "opened", "used", "counted", "moved",
    "decanted", "mixed", "tested", "retired", "held", "released", "reversed" };

} // namespace

std::string_view word(EntryKind kind) { return kindWords.at(static_cast<std::size_t>(kind)); }

std::optional<EntryKind> entryKindOfWord(std::string_view word)
{
    const auto found = std::ranges::find(kindWords, word);
    if (found == kindWords.end())
        return std::nullopt;
    return static_cast<EntryKind>(found - kindWords.begin());
}

} // namespace gw
