#pragma once

#include <atomic>
#include <memory>

#include <QTimer>
#include <QUrl>

#include "app/controller.h"
#include "app/rowsmodel.h"
#include "shop/stockplan.h"

namespace gw {

inline const QByteArrayList stockNoteRoles { "where", "text", "refused" };

/// Stock as a table: taking it out, and bringing one in, with a look at what it would do first.
class StockFileController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(Stage stage READ stage NOTIFY stageChanged)
    Q_PROPERTY(QString fileName READ fileName NOTIFY stageChanged)
    Q_PROPERTY(QString said READ said NOTIFY stageChanged) ///< what it would do, or did
    Q_PROPERTY(bool refused READ refused NOTIFY stageChanged) ///< some line cannot be: nothing comes in
    Q_PROPERTY(bool canStart READ canStart NOTIFY stageChanged)
    Q_PROPERTY(gw::RowsModel* notes READ notes CONSTANT) ///< stockNoteRoles: refusals, else what differs
    Q_PROPERTY(int notListed READ notListed NOTIFY stageChanged) ///< notes besides the first hundred
    Q_PROPERTY(int lines READ lines NOTIFY stageChanged) ///< of the file
    Q_PROPERTY(int done READ done NOTIFY progressed) ///< of them while it runs
    Q_PROPERTY(QString columns READ columns CONSTANT) ///< the columns of a file, a line each
    Q_PROPERTY(QUrl folder READ folder CONSTANT)
    Q_PROPERTY(QUrl suggestedFile READ suggestedFile NOTIFY stageChanged)

public:
    enum Stage { Choosing, Looked, Running, Done };
    Q_ENUM(Stage)

    explicit StockFileController(QObject* parent = nullptr);

    Stage stage() const { return m_stage; }
    QString fileName() const { return QString::fromStdString(m_plan.file); }
    QString said() const { return m_said; }
    bool refused() const { return !m_plan.refusals.empty(); }
    bool canStart() const;
    RowsModel* notes() { return &m_notes; }
    int notListed() const { return m_notListed; }
    int lines() const { return static_cast<int>(m_plan.rows.size()); }
    int done() const { return m_done; }
    QString columns() const;
    QUrl folder() const;
    QUrl suggestedFile() const;

    Q_INVOKABLE void takeOut(const QUrl& file);
    Q_INVOKABLE void look(const QUrl& file);
    Q_INVOKABLE void start();
    /// Back to choosing a file.
    Q_INVOKABLE void reset();

Q_SIGNALS:
    void stageChanged();
    void progressed();

protected:
    void begin() override { }

private:
    void show(StockPlan plan);
    void setStage(Stage stage);

    Stage m_stage = Choosing;
    std::shared_ptr<const CsvTable> m_table;
    StockPlan m_plan;
    QString m_said;
    RowsModel m_notes;
    int m_notListed = 0;
    /// What the shop's thread counts up while it runs.
    std::shared_ptr<std::atomic<int>> m_counter;
    QTimer m_poll;
    int m_done = 0;
};

} // namespace gw
