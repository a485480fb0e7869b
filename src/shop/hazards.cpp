#include "shop/hazards.h"

#include <algorithm>
#include <array>
#include <set>

#include "measure/quoted.h"

namespace gw {

namespace {

constexpr std::array codes { "GHS01", "GHS02", "GHS03", "GHS04", "GHS05", "GHS06", "GHS07", "GHS08",
    "GHS09" };
constexpr std::string_view none = "none"; // read off the label, and there is none: not the same as not asked

const Figure* labelFigure(const MaterialRecord& material, std::string_view key)
{
    const auto found = std::ranges::find(material.labelFigures, key, &Figure::figure);
    return found == material.labelFigures.end() ? nullptr : &*found;
}

std::vector<std::string> split(std::string_view text)
{
    std::vector<std::string> parts;
    while (!text.empty()) {
        const auto end = std::min(text.find(';'), text.size());
        if (end > 0 && text.substr(0, end) != none)
            parts.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return parts;
}

std::string usualSignalWord(const std::vector<std::string>& pictograms)
{
    if (pictograms.empty())
        return {};
    const bool mild = std::ranges::all_of(
        pictograms, [](const std::string& code) { return code == "GHS07" || code == "GHS09"; });
    return mild ? "Warning" : "Danger";
}

Figure fromLabel(const char* key, std::string text)
{
    return { key, {}, {}, {}, std::move(text), {}, "label", "high", {}, false };
}

} // namespace

Hazards hazardsOf(const ClassRecord& cls, const MaterialRecord& material)
{
    const Figure* pictograms = labelFigure(material, "pictograms");
    const Figure* word = labelFigure(material, "signal_word");
    Hazards hazards;
    hazards.fromLabel = pictograms != nullptr;
    hazards.pictograms = pictograms ? split(pictograms->text) : cls.pictograms;
    hazards.signalWord
        = word ? (word->text == none ? std::string() : word->text) : usualSignalWord(hazards.pictograms);
    return hazards;
}

Result<std::vector<Figure>> hazardFigures(
    const std::vector<std::string>& pictograms, std::string_view signalWord)
{
    std::set<std::string> each;
    for (const std::string& code : pictograms) {
        if (std::ranges::find(codes, code) == codes.end())
            return fail(
                ErrorCode::BadInput, inQuotes(code) + " is no hazard pictogram; they are GHS01 to GHS09.");
        each.insert(code);
    }
    if (!signalWord.empty() && signalWord != none && signalWord != "Danger" && signalWord != "Warning")
        return fail(ErrorCode::BadInput,
            inQuotes(signalWord) + " is no signal word; a label has Danger, Warning or none.");
    std::string list;
    for (const std::string& code : each)
        list += (list.empty() ? "" : ";") + code;
    return std::vector<Figure> { fromLabel("pictograms", list.empty() ? std::string(none) : list),
        fromLabel("signal_word", signalWord.empty() ? std::string(none) : std::string(signalWord)) };
}

} // namespace gw
