#pragma once

#include <vector>

#include <QString>

#include "shop/shelf.h"

namespace gw {

/// A container as a card shows it; made on the shop's thread, so that the screen only copies it.
struct ShelfRow {
    QString key; ///< the container's id
    QString label;
    QString name;
    QString amount; ///< "405 g of 500 g"
    QString place;
    QString placeId;
    QString verdict; ///< word, see verdictKey()
    QString reason;
    QString shape; ///< vessel
    QString contents; ///< kind of stuff, see contentsKind()
    double level = 0;
    QString sought; ///< everything it can be found by, in lower case

    friend bool operator==(const ShelfRow&, const ShelfRow&) = default;
};

ShelfRow shelfRow(const ShelfItem& item, const Catalogue& catalogue, UnitSystem units);
/// The shelf as of a moment as rows, worst first. Runs on the shop's thread.
Result<std::vector<ShelfRow>> shelfRows(const Shop& shop, Moment asOf);

/// The word by which the theme colours what is in a vessel: "hide", "pva", "resin" ...; "unknown" for what it
/// has no colour for.
QString contentsKind(const ClassRecord* cls);

} // namespace gw
