#pragma once

#include <QByteArrayList>
#include <QVariantList>

#include "app/listmodel.h"

namespace gw {

/// A row of a RowsModel: its key, unique in the list, and a value for each of the model's roles.
struct ShownRow {
    QString key;
    QVariantList values;

    friend bool operator==(const ShownRow&, const ShownRow&) = default;
};

/// A list that is only read: its controller makes the rows ready to show, most often on the shop's thread.
/// The roles are "key" and those it is made with.
class RowsModel : public gw::ListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the controllers")

public:
    explicit RowsModel(QByteArrayList roles, QObject* parent = nullptr);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QHash<int, QByteArray> roleNames() const override;

    const std::vector<ShownRow>& rows() const { return m_rows; }
    void setRows(std::vector<ShownRow> rows) { takeOver(m_rows, std::move(rows)); }
    /// The row of a key; null when there is none.
    const ShownRow* find(const QString& key) const;
    /// A value by its role's name; invalid for a row or role there is not.
    QVariant value(const QString& key, const QByteArray& role) const;

private:
    QByteArrayList m_roles;
    std::vector<ShownRow> m_rows;
};

} // namespace gw
