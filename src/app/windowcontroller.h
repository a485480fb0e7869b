#pragma once

#include <QList>
#include <QUrl>

#include "app/controller.h"

namespace gw {

/// The window itself: whether the store is open, what stands in the way and what can be done about it.
class WindowController : public Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(State state READ state NOTIFY stateChanged)
    Q_PROPERTY(QString trouble READ trouble NOTIFY stateChanged) ///< why the store is not open
    Q_PROPERTY(QString advice READ advice NOTIFY stateChanged) ///< what to do about it
    Q_PROPERTY(bool retryHelps READ retryHelps NOTIFY stateChanged)
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
    QString trouble() const { return QString::fromStdString(m_trouble.sentence); }
    QString advice() const;
    bool retryHelps() const;
    QString backupTrouble() const { return m_backupTrouble; }
    QList<int> attention() const { return m_attention; }

    Q_INVOKABLE void retry();
    /// Opens another store, and that one from now on; made when there is none of that name and make is set.
    Q_INVOKABLE void openStore(const QUrl& file, bool make);
    Q_INVOKABLE void dismissBackupTrouble() { setBackupTrouble({}); }
    /// The first start is over.
    Q_INVOKABLE void started() { setState(Ready); }

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
    Error m_trouble;
    QString m_backupTrouble;
    QList<int> m_attention;
};

} // namespace gw
