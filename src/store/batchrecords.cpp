#include "store/batchrecords.h"

#include <algorithm>
#include <array>

namespace gw {

namespace {

// In the order of BatchNoteKind.
constexpr std::array<std::string_view, 15> kindWords { "mixed", "soaked", "heat_on", "heat_read", "heat_off",
    "topped_up", "weighed", "chilled", "frozen", "used", "used_up", "spoiled", "thrown_away", "remark",
    "reversed" };

} // namespace

std::string_view word(BatchNoteKind kind) { return kindWords.at(static_cast<std::size_t>(kind)); }

std::optional<BatchNoteKind> batchNoteKindOfWord(std::string_view word)
{
    const auto found = std::ranges::find(kindWords, word);
    if (found == kindWords.end())
        return std::nullopt;
    return static_cast<BatchNoteKind>(found - kindWords.begin());
}

const BatchFigure* BatchRecord::figure(std::string_view key) const
{
    const auto found = std::ranges::find(figures, key, &BatchFigure::figure);
    return found == figures.end() ? nullptr : &*found;
}

std::optional<double> BatchRecord::value(std::string_view key) const
{
    const BatchFigure* found = figure(key);
    return found ? found->low : std::nullopt;
}

} // namespace gw
