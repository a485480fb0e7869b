#pragma once

#include <QDate>

#include "app/listmodel.h"
#include "shop/shop.h"

namespace gw {

/// A container that arrived lately, as a row shows it.
struct ArrivalRow {
    QString key; ///< the entry of its arrival
    QString container; ///< its id
    QString label;
    QString name;
    QString note; ///< "500 g · Bench shelf · Today 14:03"
    QString shape;
    QString contents;
    bool undoable = false; ///< it came lately enough to take it back from here

    friend bool operator==(const ArrivalRow&, const ArrivalRow&) = default;
};

/// The containers that arrived last, newest first; what was taken back is left out. Runs on the shop's
/// thread.
Result<std::vector<ArrivalRow>> latestArrivals(const Shop& shop, int count, Moment now);

/// The latest arrivals.
class ArrivalModel : public gw::ListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by ArrivalController")

public:
    enum Role { Key = Qt::UserRole, Container, Label, Name, Note, Shape, Contents, Undoable };
    Q_ENUM(Role)

    using ListModel::ListModel;
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QHash<int, QByteArray> roleNames() const override;

    void setRows(std::vector<ArrivalRow> rows) { takeOver(m_rows, std::move(rows)); }

private:
    std::vector<ArrivalRow> m_rows;
};

} // namespace gw
