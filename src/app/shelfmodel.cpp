#include "app/shelfmodel.h"

namespace gw {

int ShelfModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant ShelfModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const ShelfRow& row = m_rows[index.row()];
    switch (role) {
    case Key:
        return row.key;
    case Label:
        return row.label;
    case Qt::DisplayRole:
    case Name:
        return row.name;
    case Amount:
        return row.amount;
    case Place:
        return row.place;
    case Verdict:
        return row.verdict;
    case Reason:
        return row.reason;
    case Shape:
        return row.shape;
    case Contents:
        return row.contents;
    case Level:
        return row.level;
    default:
        return {};
    }
}

QHash<int, QByteArray> ShelfModel::roleNames() const
{
    return { { Key, "key" }, { Label, "label" }, { Name, "name" }, { Amount, "amount" }, { Place, "place" },
        { Verdict, "verdict" }, { Reason, "reason" }, { Shape, "shape" }, { Contents, "contents" },
        { Level, "level" } };
}

} // namespace gw
