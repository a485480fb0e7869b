#include "app/shelfrow.h"

#include "app/words.h"

#include <QCoreApplication>

namespace gw {

QString contentsKind(const ClassRecord* cls)
{
    if (!cls)
        return QStringLiteral("unknown");
    const std::string& group = cls->group;
    const auto named = [cls](const char* part) { return cls->id.text.find(part) != std::string::npos; };
    if (group == "hot_hide")
        return QStringLiteral("hide");
    if (group == "liquid_protein")
        return QStringLiteral("liquid_hide");
    if (group == "pva" || group == "casein")
        return QStringLiteral("pva");
    if (group == "epoxy")
        return named("hardener") ? QStringLiteral("hardener") : QStringLiteral("resin");
    if (group == "ca")
        return QStringLiteral("resin");
    if (group == "pur" || named("oil"))
        return QStringLiteral("hardener");
    if (named("silica"))
        return QStringLiteral("silica");
    if (named("wax"))
        return QStringLiteral("wax");
    if (named("shellac"))
        return QStringLiteral("shellac");
    if (group == "colour")
        return QStringLiteral("dye");
    if (group == "solvent")
        return QStringLiteral("solvent");
    if (group == "filler" || group == "uf" || group == "additive")
        return QStringLiteral("powder");
    return QStringLiteral("unknown");
}

ShelfRow shelfRow(const ShelfItem& item, const Catalogue& catalogue, UnitSystem units)
{
    ShelfRow row;
    row.key = q(item.id.text);
    row.label = q(item.label);
    row.name = q(item.materialName);
    row.amount = QCoreApplication::translate("gw::Words", "%1 of %2")
                     .arg(amountText(item.left, units), amountText(item.capacity, units));
    row.place = q(item.placeName);
    row.placeId = q(item.place.text);
    row.verdict = verdictKey(item.judgement.verdict);
    row.reason = reasonText(item.judgement);
    row.shape = q(item.vessel);
    row.contents = contentsKind(catalogue.classOf(item.material));
    row.level = item.level();
    row.sought = QStringList { row.name, q(item.className), q(item.lot), row.label, row.place }
                     .join(u'\n')
                     .toLower();
    return row;
}

Result<std::vector<ShelfRow>> shelfRows(const Shop& shop, Moment asOf)
{
    auto items = shelf(shop, { asOf, {}, {}, {}, false, true });
    if (!items)
        return tl::unexpected(items.error());
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    std::vector<ShelfRow> rows;
    rows.reserve(items->size());
    for (const ShelfItem& item : *items)
        rows.push_back(shelfRow(item, *catalogue, shop.units()));
    return rows;
}

} // namespace gw
