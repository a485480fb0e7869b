#pragma once

#include <QStringList>

#include "app/controller.h"
#include "app/todaymodel.h"

namespace gw {

/// What the shop looks like today, and what wants doing. Turns over at midnight by itself.
class TodayController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(gw::TodayModel* model READ model CONSTANT)
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(QString day READ day NOTIFY shown) ///< "Monday, 25 May"
    Q_PROPERTY(int containers READ containers NOTIFY shown)
    Q_PROPERTY(QList<QString> verdicts READ verdicts CONSTANT) ///< words, best first
    Q_PROPERTY(QList<int> counts READ counts NOTIFY shown) ///< one for each of verdicts

public:
    explicit TodayController(QObject* parent = nullptr);

    TodayModel* model() { return &m_model; }
    bool loaded() const { return m_loaded; }
    QString day() const { return m_day; }
    int containers() const { return m_containers; }
    QStringList verdicts() const;
    QList<int> counts() const { return m_counts; }

Q_SIGNALS:
    void shown();

protected:
    void begin() override;

private:
    void read();
    void show(const Today& today);

    TodayModel m_model;
    bool m_loaded = false;
    QString m_day;
    int m_containers = 0;
    QList<int> m_counts;
};

} // namespace gw
