#include "scan/region.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numeric>

namespace gw {

namespace {

using Wave = std::complex<float>;

/// The edges of one block of pixels. An edge counts alike from light to dark and from dark to light, so
/// angles are doubled; for square codes, whose edges go two ways, they are doubled again.
struct Block {
    float energy = 0;
    Wave twice;
    Wave fourTimes;
};

class Edges {
public:
    explicit Edges(const QImage& grey)
        : side(std::max(12, std::min(grey.width(), grey.height()) / 48))
        , columns(std::max(1, grey.width() / side))
        , rows(std::max(1, grey.height() / side))
        , blocks(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows))
    {
        // Of a large picture every other row tells enough.
        const int step = std::min(grey.width(), grey.height()) < 600 ? 1 : 2;
        for (int y = 1; y + 1 < std::min(grey.height(), rows * side); y += step)
            addRow(grey, y);
    }

    int side;
    int columns;
    int rows;
    std::vector<Block> blocks;

private:
    void addRow(const QImage& grey, int y)
    {
        const uchar* above = grey.constScanLine(y - 1);
        const uchar* row = grey.constScanLine(y);
        const uchar* below = grey.constScanLine(y + 1);
        for (int column = 0; column < columns; ++column) {
            Block& block = blocks[static_cast<std::size_t>(y / side) * static_cast<std::size_t>(columns)
                + static_cast<std::size_t>(column)];
            const int end = std::min((column + 1) * side, grey.width() - 1);
            for (int x = std::max(1, column * side); x < end; ++x) {
                // Scharr's weights: an edge counts alike at any angle.
                const int falling = below[x + 1] - above[x - 1];
                const int rising = below[x - 1] - above[x + 1];
                const auto dx
                    = static_cast<float>(3 * (falling - rising) + 10 * (row[x + 1] - row[x - 1])) / 16;
                const auto dy = static_cast<float>(3 * (falling + rising) + 10 * (below[x] - above[x])) / 16;
                const float square = dx * dx + dy * dy;
                if (square < 1)
                    continue;
                const Wave twice(dx * dx - dy * dy, 2 * dx * dy);
                block.energy += square;
                block.twice += twice;
                block.fourTimes += Wave(twice.real() * twice.real() - twice.imag() * twice.imag(),
                                       2 * twice.real() * twice.imag())
                    / square;
            }
        }
    }
};

/// What a block must have to belong to a symbol: well above the common block, towards the strongest ones.
float leastEnergy(const std::vector<Block>& blocks)
{
    std::vector<float> energies;
    energies.reserve(blocks.size());
    for (const Block& block : blocks)
        energies.push_back(block.energy);
    const auto at = [&energies](double share) {
        const auto place = energies.begin()
            + static_cast<std::ptrdiff_t>(share * static_cast<double>(energies.size() - 1));
        std::nth_element(energies.begin(), place, energies.end());
        return *place;
    };
    const float common = at(0.4);
    return common + 0.2F * (at(0.98) - common);
}

struct Part {
    Block sum;
    std::vector<int> members; ///< places in Edges::blocks
};

/// Blocks that touch, also by a corner.
std::vector<Part> connected(const Edges& edges)
{
    const float least = leastEnergy(edges.blocks);
    std::vector<char> open(edges.blocks.size());
    for (std::size_t i = 0; i < open.size(); ++i)
        open[i] = edges.blocks[i].energy > least ? 1 : 0;
    std::vector<Part> parts;
    for (std::size_t start = 0; start < open.size(); ++start) {
        if (!open[start])
            continue;
        Part part;
        open[start] = 0;
        part.members.push_back(static_cast<int>(start));
        for (std::size_t next = 0; next < part.members.size(); ++next) {
            const int place = part.members[next];
            const Block& block = edges.blocks[static_cast<std::size_t>(place)];
            part.sum.energy += block.energy;
            part.sum.twice += block.twice;
            part.sum.fourTimes += block.fourTimes;
            const int row = place / edges.columns;
            const int column = place % edges.columns;
            for (int y = std::max(0, row - 1); y <= std::min(edges.rows - 1, row + 1); ++y)
                for (int x = std::max(0, column - 1); x <= std::min(edges.columns - 1, column + 1); ++x) {
                    const int beside = y * edges.columns + x;
                    if (!open[static_cast<std::size_t>(beside)])
                        continue;
                    open[static_cast<std::size_t>(beside)] = 0;
                    part.members.push_back(beside);
                }
        }
        parts.push_back(std::move(part));
    }
    return parts;
}

Region regionOf(const Part& part, const Edges& edges)
{
    Region region;
    region.parallel = std::abs(part.sum.twice) / std::max(1.0F, part.sum.energy);
    const double angle
        = region.parallel > 0.5 ? std::arg(part.sum.twice) / 2 : std::arg(part.sum.fourTimes) / 4;
    region.degrees = -angle * 57.29577951308232;
    const double cosine = std::cos(angle);
    const double sine = std::sin(angle);
    double left = 1e9;
    double right = -1e9;
    double top = 1e9;
    double bottom = -1e9;
    for (const int place : part.members) {
        const int column = place % edges.columns;
        const int row = place / edges.columns;
        const double x = (column + 0.5) * edges.side;
        const double y = (row + 0.5) * edges.side;
        const double across = x * cosine + y * sine;
        const double along = -x * sine + y * cosine;
        left = std::min(left, across);
        right = std::max(right, across);
        top = std::min(top, along);
        bottom = std::max(bottom, along);
    }
    region.size = QSizeF(right - left + edges.side, bottom - top + edges.side);
    const double across = (left + right) / 2;
    const double along = (top + bottom) / 2;
    region.middle = QPointF(across * cosine - along * sine, across * sine + along * cosine);
    return region;
}

} // namespace

std::vector<Region> likelyRegions(const QImage& grey, std::size_t most)
{
    const Edges edges(grey);
    auto parts = connected(edges);
    const auto better = [](const Part& a, const Part& b) { return a.sum.energy > b.sum.energy; };
    most = std::min(most, parts.size());
    std::partial_sort(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(most), parts.end(), better);
    std::vector<Region> regions;
    for (std::size_t i = 0; i < most; ++i)
        regions.push_back(regionOf(parts[i], edges));
    return regions;
}

} // namespace gw
