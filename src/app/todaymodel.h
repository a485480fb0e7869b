#pragma once

#include "app/listmodel.h"
#include "shop/shelf.h"

namespace gw {

/// One thing that wants doing today, as a row shows it.
struct TodayRow {
    QString key; ///< unlike any other's: a container may want two things
    QString container; ///< id
    QString title;
    QString note;
    QString label;
    QString verdict;
    QString icon; ///< in place of the verdict's sign; empty: the sign

    friend bool operator==(const TodayRow&, const TodayRow&) = default;
};

/// What wants doing today, most pressing first.
class TodayModel : public gw::ListModel {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by TodayController")

public:
    enum Role { Key = Qt::UserRole, Container, Title, Note, Label, Verdict, IconName };
    Q_ENUM(Role)

    using ListModel::ListModel;
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QHash<int, QByteArray> roleNames() const override;

    void setRows(std::vector<TodayRow> rows) { takeOver(m_rows, std::move(rows)); }

private:
    std::vector<TodayRow> m_rows;
};

} // namespace gw
