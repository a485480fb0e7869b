#include "app/arrivalmodel.h"

#include "app/clock.h"
#include "app/shelfrow.h"
#include "app/words.h"
#include "shop/stock.h"

namespace gw {

namespace {

/// How far back in the ledger arrivals are looked for: uses come between them.
constexpr int entriesLookedAt = 600;
constexpr Days undoableFor { 1 };

Result<ArrivalRow> arrivalRow(const Shop& shop, const Catalogue& catalogue, const Entry& arrived, Moment now)
{
    ArrivalRow row;
    row.key = q(arrived.id.text);
    row.container = q(arrived.container->text);
    auto container = shop.store().container(*arrived.container);
    if (!container)
        return tl::unexpected(container.error());
    if (!*container)
        return row;
    const ClassRecord* cls = catalogue.classOf((*container)->material);
    const MaterialRecord* material = catalogue.material((*container)->material);
    row.label = q((*container)->label);
    row.name = material ? q(material->name) : QString();
    QStringList note { amountText((*container)->capacity, shop.units()) };
    if (arrived.place)
        note.append(q(catalogue.placeName(*arrived.place)));
    note.append(momentText(arrived.at, localDay(now)));
    row.note = note.join(QStringLiteral(" · "));
    for (const std::string& vessel : { (*container)->vessel, material ? material->vessel : std::string(),
             cls ? cls->vessel : std::string() }) {
        if (row.shape.isEmpty())
            row.shape = q(vessel);
    }
    row.contents = contentsKind(cls);
    row.undoable = daysBetween(arrived.recorded, now) < undoableFor;
    return row;
}

} // namespace

Result<std::vector<ArrivalRow>> latestArrivals(const Shop& shop, int count, Moment now)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto entries = shop.store().latestEntries(entriesLookedAt);
    if (!entries)
        return tl::unexpected(entries.error());
    const auto reversed = reversedAmong(*entries);
    std::vector<ArrivalRow> rows;
    for (const Entry& entry : *entries) {
        if (entry.kind != EntryKind::Arrived || !entry.container || reversed.contains(entry.id))
            continue;
        auto row = arrivalRow(shop, *catalogue, entry, now);
        if (!row)
            return tl::unexpected(row.error());
        rows.push_back(std::move(*row));
        if (static_cast<int>(rows.size()) == count)
            break;
    }
    return rows;
}

int ArrivalModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant ArrivalModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const ArrivalRow& row = m_rows[index.row()];
    switch (role) {
    case Key:
        return row.key;
    case Container:
        return row.container;
    case Label:
        return row.label;
    case Qt::DisplayRole:
    case Name:
        return row.name;
    case Note:
        return row.note;
    case Shape:
        return row.shape;
    case Contents:
        return row.contents;
    case Undoable:
        return row.undoable;
    default:
        return {};
    }
}

QHash<int, QByteArray> ArrivalModel::roleNames() const
{
    return { { Key, "key" }, { Container, "container" }, { Label, "label" }, { Name, "name" },
        { Note, "note" }, { Shape, "shape" }, { Contents, "contents" }, { Undoable, "undoable" } };
}

} // namespace gw
