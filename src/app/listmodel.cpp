#include "app/listmodel.h"

#include <algorithm>

namespace gw {

namespace {

/// For every row of the new list whether it stays: the longest run of common keys whose old places rise.
std::vector<bool> staying(const std::vector<int>& oldPlaces)
{
    std::vector<int> tails; // row that ends the best rising run of each length
    std::vector<int> before(oldPlaces.size(), -1);
    for (int row = 0; row < static_cast<int>(oldPlaces.size()); ++row) {
        const int place = oldPlaces[row];
        if (place < 0)
            continue;
        const auto at = std::lower_bound(tails.begin(), tails.end(), place,
            [&](int tail, int wanted) { return oldPlaces[tail] < wanted; });
        if (at != tails.begin())
            before[row] = *(at - 1);
        if (at == tails.end())
            tails.push_back(row);
        else
            *at = row;
    }
    std::vector<bool> stays(oldPlaces.size(), false);
    for (int row = tails.empty() ? -1 : tails.back(); row >= 0; row = before[row])
        stays[row] = true;
    return stays;
}

std::vector<RowChanges::Run> runsOf(const std::vector<bool>& keep)
{
    std::vector<RowChanges::Run> runs;
    for (int row = 0; row < static_cast<int>(keep.size()); ++row) {
        if (keep[row])
            continue;
        if (!runs.empty() && runs.back().first + runs.back().count == row)
            ++runs.back().count;
        else
            runs.push_back({ row, 1 });
    }
    return runs;
}

} // namespace

RowChanges rowChanges(const QStringList& before, const QStringList& after)
{
    QHash<QString, int> places;
    places.reserve(before.size());
    for (int row = 0; row < before.size(); ++row)
        places.insert(before.at(row), row);
    std::vector<int> oldPlaces(after.size());
    for (int row = 0; row < after.size(); ++row)
        oldPlaces[row] = places.value(after.at(row), -1);

    const auto newStays = staying(oldPlaces);
    std::vector<bool> oldStays(before.size(), false);
    for (std::size_t row = 0; row < newStays.size(); ++row) {
        if (newStays[row])
            oldStays[oldPlaces[row]] = true;
    }
    RowChanges changes { runsOf(oldStays), runsOf(newStays) };
    std::reverse(changes.gone.begin(), changes.gone.end());
    return changes;
}

} // namespace gw
