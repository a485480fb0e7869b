#pragma once

#include "app/controller.h"
#include "app/rowsmodel.h"

namespace gw {

inline const QByteArrayList orderPlannedRoles { "title", "note", "value", "overdue" };

/// Work planned with a date, and the draft of one more.
class OrderPlannedController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::RowsModel* rows READ rows CONSTANT) ///< orderPlannedRoles, the next first; key: its id
    Q_PROPERTY(QList<QString> jobTypes READ jobTypes NOTIFY known)
    Q_PROPERTY(QString today READ today NOTIFY known) ///< 2026-12-05
    Q_PROPERTY(int jobType READ jobType WRITE setJobType NOTIFY draftChanged) ///< -1: not chosen
    Q_PROPERTY(QString day READ day WRITE setDay NOTIFY draftChanged)
    Q_PROPERTY(int pieces READ pieces WRITE setPieces NOTIFY draftChanged)
    Q_PROPERTY(QString piece READ piece WRITE setPiece NOTIFY draftChanged)
    Q_PROPERTY(bool canAdd READ canAdd NOTIFY draftChanged)

public:
    explicit OrderPlannedController(QObject* parent = nullptr);

    RowsModel* rows() { return &m_rows; }
    QStringList jobTypes() const { return m_names; }
    QString today() const;
    int jobType() const { return m_jobType; }
    void setJobType(int jobType);
    QString day() const { return m_day; }
    void setDay(const QString& day);
    int pieces() const { return m_pieces; }
    void setPieces(int pieces);
    QString piece() const { return m_piece; }
    void setPiece(const QString& piece);
    bool canAdd() const { return m_jobType >= 0 && !m_day.isEmpty(); }

    Q_INVOKABLE void add();
    Q_INVOKABLE void done(const QString& key);
    Q_INVOKABLE void drop(const QString& key);

Q_SIGNALS:
    void known();
    void draftChanged();
    void added();

protected:
    void begin() override;

private:
    void read();
    void set(const QString& key, bool done);

    RowsModel m_rows;
    QStringList m_names;
    std::vector<std::string> m_ids; ///< of the job types
    int m_jobType = -1;
    int m_pieces = 1;
    QString m_day, m_piece;
};

} // namespace gw
