#include "scan/closer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "scan/ballot.h"
#include "scan/closelook.h"
#include "scan/plausible.h"
#include "scan/region.h"

namespace gw {

namespace {

struct Limits {
    std::size_t regions; ///< parts of the picture that are looked at, the likeliest first
    double pixels; ///< of one enlarged part
};

constexpr Limits limitsOf(Closeness closeness)
{
    return closeness == Closeness::Frame ? Limits { 2, 100'000 } : Limits { 3, 1'500'000 };
}

/// How far round a bottle a label reaches to either side.
constexpr std::array bends { 1.25, 0.85 };

/// One part of a picture, and what was said of it.
class Closer {
public:
    Closer(const QImage& grey, const Region& region, double mostPixels, SymbolReader& reader,
        const Budget& budget)
        : m_region(region)
        , m_reader(reader)
        , m_budget(budget)
        , m_by(enlargement(region, mostPixels))
        , m_near(closeLook(grey, region, m_by))
        , m_level(levelledLook(m_near.picture))
    {
    }

    std::optional<Symbol> look()
    {
        const bool rather = m_region.parallel > 0.45;
        if (auto symbol = rather ? bars() : squares())
            return symbol;
        // Edges that go one way but not by much, or two ways but not alike, may be either.
        if (m_region.parallel > 0.15 && m_region.parallel < 0.75)
            return rather ? squares() : bars();
        return std::nullopt;
    }

private:
    static double enlargement(const Region& region, double mostPixels)
    {
        const double longer = std::max(region.size.width(), region.size.height());
        const double wanted = longer < 250 ? 3 : longer < 600 ? 2 : 1;
        return std::min(wanted, std::sqrt(mostPixels / (region.size.width() * region.size.height())));
    }

    /// Shows a look to every engine; true when enough was said.
    bool said(const Look& look, Sought sought)
    {
        if (look.picture.isNull() || !m_budget.isLeft())
            return false;
        auto seen = m_reader.readByEach({ look.picture.constBits(), look.picture.width(),
                                            look.picture.height(), look.picture.bytesPerLine() },
            sought);
        for (Symbol& symbol : seen)
            symbol.outline = (look.back * m_near.back).map(symbol.outline);
        m_ballot.add(std::move(seen));
        m_believed = m_ballot.believed();
        return m_believed.has_value();
    }

    std::optional<Symbol> bars()
    {
        // A few lines are looked at much quicker than a picture.
        if (linesOf({ m_level.picture, {} }) || said({ m_near.picture, {} }, Sought::Bars))
            return m_believed;
        for (const double bend : bends)
            if (linesOf(unrolledLook(m_level.picture, m_region.size.width() * m_by, bend)))
                return m_believed;
        if (linesOf(invertedLook(m_level.picture)))
            return m_believed;
        return std::nullopt;
    }

    bool linesOf(const Look& upright)
    {
        if (upright.picture.isNull())
            return false;
        Look lines = stripsLook(upright.picture);
        lines.back *= upright.back;
        if (said(lines, Sought::Bars))
            return true;
        for (const double sigma : { 1.0, 1.6, 2.4 })
            if (said({ refocused(lines.picture, sigma * m_by), lines.back }, Sought::Bars))
                return true;
        return false;
    }

    std::optional<Symbol> squares()
    {
        if (said({ m_near.picture, {} }, Sought::Squares) || said(m_level, Sought::Squares)
            || said({ sharpened(m_level.picture, 1.5 * m_by), {} }, Sought::Squares)
            || said(smoothedLook(m_level.picture), Sought::Squares)
            || said(invertedLook(m_level.picture), Sought::Squares))
            return m_believed;
        const Look aside = turnedLook(m_level.picture, 90);
        for (const double bend : bends) {
            if (said(unrolledLook(m_level.picture, m_region.size.width() * m_by, bend), Sought::Squares))
                return m_believed;
            Look flat = unrolledLook(aside.picture, m_region.size.height() * m_by, bend);
            flat.back *= aside.back;
            if (said(flat, Sought::Squares))
                return m_believed;
        }
        return std::nullopt;
    }

    Region m_region;
    SymbolReader& m_reader;
    const Budget& m_budget;
    double m_by;
    Look m_near;
    Look m_level;
    Ballot m_ballot;
    std::optional<Symbol> m_believed;
};

} // namespace

std::vector<Symbol> lookCloser(
    const QImage& grey, SymbolReader& reader, Closeness closeness, const Budget& budget)
{
    const Limits limits = limitsOf(closeness);
    std::vector<Symbol> found;
    for (const Region& region : likelyRegions(grey, limits.regions)) {
        if (!budget.isLeft())
            break;
        if (auto symbol = Closer(grey, region, limits.pixels, reader, budget).look())
            addUnseen(found, { std::move(*symbol) });
    }
    dropContradicted(found);
    return found;
}

} // namespace gw
