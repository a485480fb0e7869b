#pragma once

#include "app/controller.h"
#include "app/rowsmodel.h"
#include "store/orderrecords.h"

namespace gw {

/// One row for each kept list (heading), its lines below it, and of a month that has begun what happened.
/// `kind` is "list", "line" or "happened"; the rest are texts ready to show.
inline const QByteArrayList orderKeptRoles { "kind", "title", "note", "value", "standing", "canOrder",
    "canCount", "canRecall", "canClose" };

/// The order lists that are kept: what is ordered, what came and what is late.
class OrderKeptController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::RowsModel* rows READ rows CONSTANT) ///< orderKeptRoles; key: the list's or the line's id
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)

public:
    explicit OrderKeptController(QObject* parent = nullptr);

    RowsModel* rows() { return &m_rows; }
    bool loaded() const { return m_loaded; }

    /// A line, or all of a list that can be.
    Q_INVOKABLE void ordered(const QString& key);
    Q_INVOKABLE void recall(const QString& key);
    Q_INVOKABLE void close(const QString& key);
    /// One pack more or fewer of a line that is not ordered yet.
    Q_INVOKABLE void count(const QString& key, int direction);

Q_SIGNALS:
    void shown();

protected:
    void begin() override;

private:
    void read();
    void change(const QString& key, OrderEventKind kind, int direction = 0);

    bool m_loaded = false;
    RowsModel m_rows;
};

} // namespace gw
