#pragma once

#include <QSet>
#include <QStringList>
#include <QTimer>

#include "app/controller.h"
#include "app/potsshown.h"
#include "app/ticksound.h"

namespace gw {

/// Tells when something mixed is due: a banner over every screen and a bell. Worked out of the notes and the
/// moment, so what fell due while the program was closed or the machine slept is told as soon as it looks
/// again. What was put away stays away on this device until something new is noted of that batch.
class PotAlarms : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString text READ text NOTIFY told) ///< the latest that is due; empty: nothing
    Q_PROPERTY(int more READ more NOTIFY told) ///< how many besides it

public:
    explicit PotAlarms(QObject* parent = nullptr);

    QString text() const { return m_due.empty() ? QString() : m_due.back().text; }
    int more() const { return m_due.empty() ? 0 : static_cast<int>(m_due.size()) - 1; }

    /// Puts away all that is told now.
    Q_INVOKABLE void putAway();

Q_SIGNALS:
    void told();
    void rang(); ///< something is due that was not told before

protected:
    void begin() override;

private:
    void look();
    void tell(std::vector<PotAlarm> alarms, Moment now);

    std::vector<PotAlarm> m_due;
    QSet<QString> m_told; ///< rang for, since the program began
    QTimer m_next;
    TickSound m_bell;
};

} // namespace gw
