#pragma once

#include "app/listmodel.h"
#include "app/shelfrow.h"

namespace gw {

/// The containers the shelf shows, after search and filters.
class ShelfModel : public gw::ListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by ShelfController")

public:
    enum Role { Key = Qt::UserRole, Label, Name, Amount, Place, Verdict, Reason, Shape, Contents, Level };
    Q_ENUM(Role)

    using ListModel::ListModel;
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QHash<int, QByteArray> roleNames() const override;

    void setRows(std::vector<ShelfRow> rows) { takeOver(m_rows, std::move(rows)); }

private:
    std::vector<ShelfRow> m_rows;
};

} // namespace gw
