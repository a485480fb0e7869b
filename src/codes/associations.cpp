#include "codes/associations.h"

#include <algorithm>
#include <functional>
#include <map>
#include <string_view>

#include "codes/applicationidentifiers.h"
#include "measure/quoted.h"

namespace gw {

namespace {

/// Identifiers present, each with its first value.
using Present = std::map<std::string_view, std::string_view, std::less<>>;

/// Calls visit with each piece of the text between the marks, until it answers true; whether one did.
bool anyPiece(std::string_view text, char mark, const std::function<bool(std::string_view)>& visit)
{
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(mark), text.size());
        if (visit(text.substr(0, end)))
            return true;
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return false;
}

/// "310n" matches any 310 and one digit more.
bool matches(std::string_view pattern, std::string_view ai)
{
    return std::equal(pattern.begin(), pattern.end(), ai.begin(), ai.end(),
        [](char p, char c) { return p == 'n' || p == c; });
}

bool holdsAny(const Present& present, std::string_view pattern)
{
    return std::any_of(
        present.begin(), present.end(), [&](const auto& entry) { return matches(pattern, entry.first); });
}

/// "01,02" or "8006+21": one of them, a sum wanting all its parts.
bool satisfied(const Present& present, std::string_view group, bool itemKnown)
{
    return anyPiece(group, ',', [&](std::string_view alternative) {
        if (itemKnown && alternative == "01")
            return true;
        return !anyPiece(alternative, '+', [&](std::string_view part) { return !holdsAny(present, part); });
    });
}

/// "(01), (02) or (8006)".
std::string spoken(std::string_view group)
{
    std::vector<std::string> names;
    anyPiece(group, ',', [&](std::string_view alternative) {
        names.push_back('(' + std::string(alternative) + ')');
        return false;
    });
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i)
        text += (i == 0 ? "" : i + 1 == names.size() ? " or " : ", ") + names[i];
    return text;
}

Present presentIn(std::span<const Element> elements)
{
    Present present;
    for (const Element& element : elements)
        present.emplace(element.ai, element.value);
    return present;
}

/// Nearly every identifier belongs to an item: say so in words a person at the shelf can act on.
std::string missingSentence(const Identifier& identifier, std::string_view ai, std::string_view group)
{
    if (group.starts_with("01"))
        return "The code gives " + named(identifier, ai)
            + " but no item number beside it: pick the material by hand.";
    return "The code gives " + named(identifier, ai) + " without " + spoken(group)
        + " beside it: check it against the label.";
}

} // namespace

std::optional<CodeError> checkTogether(std::span<const Element> elements)
{
    const Present present = presentIn(elements);
    for (const Element& element : elements) {
        if (present.find(element.ai)->second != element.value)
            return CodeError { "duplicate AI",
                '(' + element.ai + ") stands there twice, as " + inQuotes(present.find(element.ai)->second)
                    + " and " + inQuotes(element.value) + ". Look at the label, and type the right one." };
    }
    for (const auto& entry : present) {
        const std::string_view ai = entry.first;
        const Identifier* identifier = identifierNamed(ai);
        std::string_view other;
        const bool excluded
            = identifier && anyPiece(identifier->excludes, ',', [&](std::string_view pattern) {
                  const auto found = std::find_if(present.begin(), present.end(), [&](const auto& candidate) {
                      return candidate.first != ai && matches(pattern, candidate.first);
                  });
                  if (found != present.end())
                      other = found->first;
                  return found != present.end();
              });
        if (excluded)
            return CodeError { "AIs exclude each other",
                named(*identifier, ai) + " and " + named(*identifierNamed(other), other)
                    + " cannot stand in one code. Look at the label, and type what is right." };
    }
    return std::nullopt;
}

std::vector<std::string> missingCompanions(std::span<const Element> elements, bool itemKnown)
{
    const Present present = presentIn(elements);
    std::vector<std::string> sentences;
    for (const auto& entry : present) {
        const std::string_view ai = entry.first;
        const Identifier* identifier = identifierNamed(ai);
        if (!identifier)
            continue;
        anyPiece(identifier->needs, ';', [&](std::string_view group) {
            const bool lacks = !satisfied(present, group, itemKnown);
            if (lacks)
                sentences.push_back(missingSentence(*identifier, ai, group));
            return lacks;
        });
    }
    return sentences;
}

} // namespace gw
