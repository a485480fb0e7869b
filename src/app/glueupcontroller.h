#pragma once

#include <QTimer>

#include "app/controller.h"
#include "app/glueupcondition.h"
#include "app/glueupmore.h"
#include "app/glueupshown.h"

namespace gw {

/// The check before a glue-up: what is asked, the answer that follows it as it changes, and recording what
/// was used. Until an answer to what is asked now has come, nothing of an older one is shown as though it
/// were.
class GlueUpController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    /// Only an active controller asks the store; one that becomes active again catches up.
    Q_PROPERTY(bool active READ active WRITE setActive NOTIFY activeChanged)
    Q_PROPERTY(gw::RowsModel* jobs READ jobs CONSTANT) ///< what the search leaves; glueUpJobRoles
    Q_PROPERTY(QString search READ search WRITE setSearch NOTIFY searchChanged)
    Q_PROPERTY(QString jobType READ jobType WRITE setJobType NOTIFY askedChanged) ///< key; empty: not chosen
    Q_PROPERTY(QString jobName READ jobName NOTIFY askedChanged)
    Q_PROPERTY(QString jobNote READ jobNote NOTIFY askedChanged)
    Q_PROPERTY(int pieces READ pieces WRITE setPieces NOTIFY askedChanged)
    Q_PROPERTY(gw::GlueUpCondition* air READ air CONSTANT)
    Q_PROPERTY(gw::GlueUpCondition* wood READ wood CONSTANT)
    Q_PROPERTY(gw::GlueUpCondition* humidity READ humidity CONSTANT)
    Q_PROPERTY(gw::GlueUpCondition* woodMoisture READ woodMoisture CONSTANT)
    Q_PROPERTY(gw::GlueUpCondition* gap READ gap CONSTANT)
    Q_PROPERTY(gw::GlueUpMore* more READ more CONSTANT)
    Q_PROPERTY(gw::RowsModel* glues READ glues CONSTANT) ///< which glue, best first; glueUpGlueRoles
    Q_PROPERTY(QString gluesNote READ gluesNote NOTIFY gluesShown)
    Q_PROPERTY(
        QString typingError READ typingError NOTIFY askedChanged) ///< what of the conditions cannot be read
    Q_PROPERTY(bool fresh READ fresh NOTIFY shown) ///< the answer is to what is asked now
    Q_PROPERTY(QString verdict READ verdict NOTIFY shown) ///< the sign for the answer
    Q_PROPERTY(QString answer READ answer NOTIFY shown) ///< in words; empty while there is none
    Q_PROPERTY(QString firstFix READ firstFix NOTIFY shown)
    Q_PROPERTY(gw::RowsModel* gates READ gates CONSTANT)
    Q_PROPERTY(gw::RowsModel* uses READ uses CONSTANT)
    Q_PROPERTY(gw::RowsModel* weigh READ weigh CONSTANT)
    Q_PROPERTY(gw::RowsModel* clocks READ clocks CONSTANT)
    Q_PROPERTY(QString clockNote READ clockNote NOTIFY shown)
    Q_PROPERTY(QString comesApart READ comesApart NOTIFY shown)
    Q_PROPERTY(QString hazard READ hazard NOTIFY shown)
    Q_PROPERTY(QList<QString> cautions READ cautions NOTIFY shown)
    Q_PROPERTY(QString piece READ piece WRITE setPiece NOTIFY pieceChanged)
    Q_PROPERTY(bool canRecord READ canRecord NOTIFY shown)

public:
    explicit GlueUpController(QObject* parent = nullptr);

    bool active() const { return m_active; }
    void setActive(bool active);
    RowsModel* jobs() { return &m_jobs; }
    QString search() const { return m_search; }
    void setSearch(const QString& search);
    QString jobType() const { return m_jobType; }
    void setJobType(const QString& key);
    QString jobName() const;
    QString jobNote() const;
    int pieces() const { return m_pieces; }
    void setPieces(int pieces);
    GlueUpCondition* air() { return &m_air; }
    GlueUpCondition* wood() { return &m_wood; }
    GlueUpCondition* humidity() { return &m_humidity; }
    GlueUpCondition* woodMoisture() { return &m_woodMoisture; }
    GlueUpCondition* gap() { return &m_gap; }
    GlueUpMore* more() { return &m_more; }
    RowsModel* glues() { return &m_glues; }
    QString gluesNote() const { return m_gluesNote; }
    QString typingError() const;
    bool fresh() const { return m_turnShown == m_turn; }
    QString verdict() const;
    QString answer() const;
    QString firstFix() const;
    RowsModel* gates() { return &m_gates; }
    RowsModel* uses() { return &m_uses; }
    RowsModel* weigh() { return &m_weigh; }
    RowsModel* clocks() { return &m_clocks; }
    QString clockNote() const { return m_shown.clockNote; }
    QString comesApart() const { return m_shown.comesApart; }
    QString hazard() const { return m_shown.hazard; }
    QStringList cautions() const { return m_shown.cautions; }
    QString piece() const { return m_piece; }
    void setPiece(const QString& piece);
    bool canRecord() const { return fresh() && !(m_shown.takings.empty() && m_shown.fromBatches.empty()); }

    /// Writes what the answer says to use, for this piece, in one act that can be undone.
    Q_INVOKABLE void record();
    /// Ranks the families for what is said now.
    Q_INVOKABLE void findGlues();

Q_SIGNALS:
    void activeChanged();
    void searchChanged();
    void askedChanged();
    void shown();
    void pieceChanged();
    void recorded();
    void gluesShown();

protected:
    void begin() override;

private:
    void readJobs();
    void showJobs();
    void ask();
    void check();
    void show(GlueUpShown shown);
    Conditions conditions() const;

    bool m_active = true;
    bool m_checkFailed = false;
    std::vector<ShownRow> m_allJobs;
    QString m_search, m_jobType, m_piece;
    int m_pieces = 1;
    GlueUpCondition m_air, m_wood, m_humidity, m_woodMoisture, m_gap;
    GlueUpMore m_more;
    QString m_gluesNote;
    QTimer m_pause; // while a person is still stepping or typing
    int m_turn = 0, m_turnShown = 0; // of what is asked
    GlueUpShown m_shown;
    RowsModel m_jobs, m_gates, m_uses, m_weigh, m_clocks, m_glues;
};

} // namespace gw
