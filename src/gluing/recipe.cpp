#include "gluing/recipe.h"

#include <algorithm>

namespace gw {

namespace {

/// The words for a name in braces; none when it is not given.
std::optional<std::string> wordsFor(const std::vector<StepWord>& words, std::string_view name)
{
    const auto found = std::ranges::find(words, name, &StepWord::name);
    return found == words.end() ? std::nullopt : std::optional(found->words);
}

std::optional<std::string> filled(std::string_view text, const std::vector<StepWord>& words)
{
    std::string out;
    while (!text.empty()) {
        const auto open = std::min(text.find('{'), text.size());
        out += text.substr(0, open);
        text.remove_prefix(open);
        if (text.empty())
            break;
        const auto close = text.find('}');
        if (close == std::string_view::npos)
            return out + std::string(text);
        const auto put = wordsFor(words, text.substr(1, close - 1));
        if (!put)
            return std::nullopt;
        out += *put;
        text.remove_prefix(close + 1);
    }
    return out;
}

} // namespace

const RecipeFigure* Recipe::figure(std::string_view item, std::string_view parameter) const
{
    const auto found = std::ranges::find_if(
        figures, [&](const RecipeFigure& f) { return f.item == item && f.parameter == parameter; });
    return found == figures.end() ? nullptr : &*found;
}

std::optional<double> Recipe::value(std::string_view item, std::string_view parameter) const
{
    const RecipeFigure* f = figure(item, parameter);
    return f ? f->value : std::nullopt;
}

std::optional<Range<double>> Recipe::range(std::string_view item, std::string_view parameter) const
{
    const RecipeFigure* f = figure(item, parameter);
    if (!f)
        return std::nullopt;
    const auto low = f->low ? f->low : f->value;
    const auto high = f->high ? f->high : f->value;
    if (!low || !high)
        return std::nullopt;
    return Range<double> { *low, *high };
}

std::vector<std::string> Recipe::items(std::string_view parameter) const
{
    std::vector<std::string> found;
    for (const RecipeFigure& f : figures) {
        if (f.parameter == parameter)
            found.push_back(f.item);
    }
    return found;
}

std::vector<std::string> filledSteps(const Recipe& recipe, const std::vector<StepWord>& words)
{
    std::vector<std::string> steps;
    for (const std::string& step : recipe.steps) {
        if (auto text = filled(step, words))
            steps.push_back(std::move(*text));
    }
    return steps;
}

} // namespace gw
