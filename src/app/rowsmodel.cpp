#include "app/rowsmodel.h"

#include <algorithm>

namespace gw {

namespace {

constexpr int keyRole = Qt::UserRole;
constexpr int firstRole = keyRole + 1;

} // namespace

RowsModel::RowsModel(QByteArrayList roles, QObject* parent)
    : ListModel(parent)
    , m_roles(std::move(roles))
{
}

int RowsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant RowsModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const ShownRow& row = m_rows[static_cast<std::size_t>(index.row())];
    if (role == keyRole)
        return row.key;
    return row.values.value(role - firstRole);
}

QHash<int, QByteArray> RowsModel::roleNames() const
{
    QHash<int, QByteArray> names { { keyRole, "key" } };
    for (qsizetype i = 0; i < m_roles.size(); ++i)
        names.insert(firstRole + static_cast<int>(i), m_roles.at(i));
    return names;
}

const ShownRow* RowsModel::find(const QString& key) const
{
    const auto found
        = std::find_if(m_rows.begin(), m_rows.end(), [&key](const ShownRow& row) { return row.key == key; });
    return found == m_rows.end() ? nullptr : &*found;
}

QVariant RowsModel::value(const QString& key, const QByteArray& role) const
{
    const ShownRow* row = find(key);
    return row ? row->values.value(m_roles.indexOf(role)) : QVariant();
}

} // namespace gw
