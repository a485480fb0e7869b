#pragma once

#include <QList>

#include "app/controller.h"

namespace gw {

/// The window itself: whether the store is open, and what waits behind each destination.
class WindowController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(State state READ state NOTIFY stateChanged)
    Q_PROPERTY(QString backupTrouble READ backupTrouble NOTIFY backupTroubleChanged)
    /// How much waits behind each destination; nought shows nothing.
    Q_PROPERTY(QList<int> attention READ attention NOTIFY attentionChanged)

public:
    enum State {
        Opening,
        FirstStart, ///< the store is open and nothing is in it
        Ready,
        Trouble, ///< the store could not be opened
    };
    Q_ENUM(State)

    explicit WindowController(QObject* parent = nullptr);

    State state() const { return m_state; }
    QString backupTrouble() const { return m_backupTrouble; }
    QList<int> attention() const { return m_attention; }

    Q_INVOKABLE void dismissBackupTrouble() { setBackupTrouble({}); }

Q_SIGNALS:
    void stateChanged();
    void backupTroubleChanged();
    void attentionChanged();

protected:
    void begin() override;

private:
    void setState(State state);
    void setBackupTrouble(const QString& sentence);
    void count();

    State m_state = Opening;
    QString m_backupTrouble;
    QList<int> m_attention;
};

} // namespace gw
