#include "app/todaymodel.h"

namespace gw {

int TodayModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant TodayModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const TodayRow& row = m_rows[index.row()];
    switch (role) {
    case Key:
        return row.key;
    case Container:
        return row.container;
    case IconName:
        return row.icon;
    case Qt::DisplayRole:
    case Title:
        return row.title;
    case Note:
        return row.note;
    case Label:
        return row.label;
    case Verdict:
        return row.verdict;
    default:
        return {};
    }
}

QHash<int, QByteArray> TodayModel::roleNames() const
{
    return { { Key, "key" }, { Container, "container" }, { IconName, "iconName" }, { Title, "title" },
        { Note, "note" }, { Label, "label" }, { Verdict, "verdict" } };
}

} // namespace gw
