#pragma once

#include <QStringList>

#include "app/controller.h"
#include "app/shelfmodel.h"

namespace gw {

/// The shelf: every container, narrowed by what is typed, a place and a verdict, with counts for each.
class ShelfController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::ShelfModel* model READ model CONSTANT)
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown) ///< the store has answered at least once
    Q_PROPERTY(int total READ total NOTIFY shown) ///< containers before any narrowing
    Q_PROPERTY(QString summary READ summary NOTIFY shown) ///< "31 containers, 4 want attention"
    Q_PROPERTY(QString text READ text WRITE setText NOTIFY shown)
    Q_PROPERTY(QString verdict READ verdict WRITE setVerdict NOTIFY shown) ///< word; empty: all
    Q_PROPERTY(int place READ place WRITE setPlace NOTIFY shown) ///< index in places; 0: all
    Q_PROPERTY(QList<QString> places READ places NOTIFY shown) ///< names, the first says "all"
    Q_PROPERTY(QList<QString> placeNotes READ placeNotes NOTIFY
            shown) ///< how many are there, within text and verdict
    Q_PROPERTY(QList<QString> verdicts READ verdicts CONSTANT) ///< words, worst first
    Q_PROPERTY(QList<int> verdictCounts READ verdictCounts NOTIFY shown) ///< within text and place
    Q_PROPERTY(bool narrowed READ narrowed NOTIFY shown)

public:
    explicit ShelfController(QObject* parent = nullptr);

    ShelfModel* model() { return &m_model; }
    bool loaded() const { return m_loaded; }
    int total() const { return static_cast<int>(m_all.size()); }
    QString summary() const;
    QString text() const { return m_text; }
    void setText(const QString& text);
    QString verdict() const { return m_verdict; }
    void setVerdict(const QString& verdict);
    int place() const;
    void setPlace(int place);
    QStringList places() const { return m_placeNames; }
    QStringList placeNotes() const;
    QStringList verdicts() const;
    QList<int> verdictCounts() const { return m_verdictCounts; }
    bool narrowed() const;

    Q_INVOKABLE void showAll();

Q_SIGNALS:
    void shown();

protected:
    void begin() override;

private:
    void read();
    void show();

    ShelfModel m_model;
    std::vector<ShelfRow> m_all;
    bool m_loaded = false;
    QString m_text, m_verdict, m_placeId;
    QStringList m_placeNames, m_placeIds;
    QList<int> m_placeCounts, m_verdictCounts;
};

} // namespace gw
