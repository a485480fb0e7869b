#include "codes/associations.h"

#include <algorithm>
#include <string_view>

#include "codes/applicationidentifiers.h"
#include "measure/quoted.h"

namespace gw {

namespace {

/// An identifier present, with its first value.
struct Entry {
    std::string_view ai;
    std::string_view value;
    const Identifier* identifier;
};
/// In the order of the identifiers, each once.
using Present = std::vector<Entry>;

/// Calls visit with each piece of the text between the marks, until it answers true; whether one did.
template <class Visit> bool anyPiece(std::string_view text, char mark, Visit visit)
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

const Entry* firstMatch(const Present& present, std::string_view pattern)
{
    const auto found = std::find_if(
        present.begin(), present.end(), [&](const Entry& e) { return matches(pattern, e.ai); });
    return found == present.end() ? nullptr : &*found;
}

/// "01,02" or "8006+21": one of them, a sum wanting all its parts.
bool satisfied(const Present& present, std::string_view group, bool itemKnown)
{
    return anyPiece(group, ',', [&](std::string_view alternative) {
        if (itemKnown && alternative == "01")
            return true;
        return !anyPiece(alternative, '+', [&](std::string_view part) { return !firstMatch(present, part); });
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
    present.reserve(elements.size());
    for (const Element& element : elements)
        present.push_back({ element.ai, element.value, identifierNamed(element.ai) });
    const auto byName = [](const Entry& a, const Entry& b) { return a.ai < b.ai; };
    std::stable_sort(present.begin(), present.end(), byName);
    const auto sameName = [](const Entry& a, const Entry& b) { return a.ai == b.ai; };
    present.erase(std::unique(present.begin(), present.end(), sameName), present.end());
    return present;
}

/// The identifier that this one cannot stand beside, or null.
const Entry* excludedBy(const Entry& entry, const Present& present)
{
    const Entry* other = nullptr;
    anyPiece(entry.identifier->excludes, ',', [&](std::string_view pattern) {
        const auto found = std::find_if(present.begin(), present.end(),
            [&](const Entry& e) { return e.ai != entry.ai && matches(pattern, e.ai); });
        if (found != present.end())
            other = &*found;
        return other != nullptr;
    });
    return other;
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
    const auto before = [](const Entry& entry, std::string_view ai) { return entry.ai < ai; };
    for (const Element& element : elements) {
        const auto first
            = std::lower_bound(present.begin(), present.end(), std::string_view(element.ai), before);
        if (first->value != element.value)
            return CodeError { "duplicate AI",
                '(' + element.ai + ") stands there twice, as " + inQuotes(first->value) + " and "
                    + inQuotes(element.value) + ". Look at the label, and type the right one." };
    }
    for (const Entry& entry : present) {
        if (const Entry* other = excludedBy(entry, present))
            return CodeError { "AIs exclude each other",
                named(*entry.identifier, entry.ai) + " and " + named(*other->identifier, other->ai)
                    + " cannot stand in one code. Look at the label, and type what is right." };
    }
    return std::nullopt;
}

std::vector<std::string> missingCompanions(std::span<const Element> elements, bool itemKnown)
{
    const Present present = presentIn(elements);
    std::vector<std::string> sentences;
    for (const Entry& entry : present) {
        anyPiece(entry.identifier->needs, ';', [&](std::string_view group) {
            const bool lacks = !satisfied(present, group, itemKnown);
            if (lacks)
                sentences.push_back(missingSentence(*entry.identifier, entry.ai, group));
            return lacks;
        });
    }
    return sentences;
}

} // namespace gw
