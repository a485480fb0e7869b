#include "shop/entrylines.h"

#include <algorithm>
#include <cmath>

#include "shop/stock.h"

namespace gw {

namespace {

std::string amountText(const Entry& entry, Dimension dimension, UnitSystem units)
{
    return formatAmount(Amount { std::abs(entry.deltaMilli), dimension }, units);
}

std::string withNote(const std::string& text, const Entry& entry)
{
    return entry.note.empty() ? text : text + ": " + entry.note;
}

} // namespace

std::string entryText(const Entry& entry, Dimension dimension, const Catalogue& catalogue, UnitSystem units)
{
    const std::string amount = amountText(entry, dimension, units);
    const std::string place = entry.place ? catalogue.placeName(*entry.place) : std::string();
    switch (entry.kind) {
    case EntryKind::Arrived:
        return withNote("Arrived with " + amount + (place.empty() ? "" : ", put in " + place), entry);
    case EntryKind::Opened:
        return withNote("Opened", entry);
    case EntryKind::Used:
        return withNote("Used " + amount, entry);
    case EntryKind::Counted:
        if (entry.deltaMilli == 0)
            return withNote("Counted, as thought", entry);
        return withNote(
            "Counted, " + amount + (entry.deltaMilli < 0 ? " less" : " more") + " than thought", entry);
    case EntryKind::Moved:
        return withNote("Moved to " + place, entry);
    case EntryKind::Decanted:
        return withNote(entry.deltaMilli < 0
                ? "Poured " + amount + " over into another container"
                : "Filled with " + amount + (place.empty() ? "" : ", put in " + place),
            entry);
    case EntryKind::Mixed:
        return withNote("Took " + amount + " for a batch", entry);
    case EntryKind::Tested: {
        std::string text = entry.passed.value_or(false) ? "Passed its bench test" : "Failed its bench test";
        if (entry.woodFailurePercent)
            text += ", wood failure " + std::to_string(std::lround(*entry.woodFailurePercent)) + " %";
        if (entry.grainy)
            text += ", grainy after frost";
        return withNote(text, entry);
    }
    case EntryKind::Retired:
        return withNote(entry.deltaMilli == 0 ? "Retired" : "Retired with " + amount + " left", entry);
    case EntryKind::Held:
        return withNote("Lot " + entry.lot + " held back", entry);
    case EntryKind::Released:
        return withNote("Lot " + entry.lot + " released", entry);
    case EntryKind::Reversed:
        return "Undone";
    }
    return {};
}

std::vector<EntryLine> entryLines(const ContainerRecord& container, std::span<const Entry> entries,
    const Catalogue& catalogue, const std::map<JobId, std::string>& jobNames, UnitSystem units)
{
    const auto reversed = reversedAmong(entries);
    std::vector<EntryLine> lines;
    Amount after { 0, container.capacity.dimension };
    for (const Entry& entry : entries) {
        if (entry.container == container.id)
            after.milli += entry.deltaMilli;
        if (entry.kind == EntryKind::Reversed)
            continue;
        EntryLine line;
        line.entry = entry.id;
        line.act = entry.act;
        line.kind = entry.kind;
        line.at = entry.at;
        line.text = entryText(entry, container.capacity.dimension, catalogue, units);
        if (entry.job) {
            const auto job = jobNames.find(*entry.job);
            if (job != jobNames.end() && !job->second.empty())
                line.text += " for " + job->second;
        }
        line.after = after;
        line.undone = reversed.contains(entry.id);
        line.undoable = !line.undone;
        lines.push_back(std::move(line));
    }
    std::reverse(lines.begin(), lines.end());
    return lines;
}

} // namespace gw
