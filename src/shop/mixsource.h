#pragma once

#include "shop/mixstock.h"
#include "shop/shelf.h"

/// Which containers the parts of a mix come from; nobody outside the room needs it.
namespace gw {

/// A resin of this shop with its hardener.
struct ResinPair {
    MaterialId resin, hardener;
    double hardenerPer100 = 0;
    std::string name;
};

/// The pair with the most good stock, of a kind of hardener ("slow", "fast") where one is named.
std::optional<ResinPair> resinOnShelf(
    const Catalogue& catalogue, const std::vector<ShelfItem>& items, const std::string& hardenerKind);

/// Gel strength of the granules that are good on the shelf, the middle grade first; none when there are none.
std::optional<double> gradeOnShelf(const Catalogue& catalogue, const std::vector<ShelfItem>& items);

/// The material of the part's classes that covers it best, and its containers.
PartSource sourceOf(const MixPart& part, const Catalogue& catalogue, const std::vector<ShelfItem>& items,
    const std::optional<ResinPair>& pair, Moment asOf, UnitSystem units);

} // namespace gw
