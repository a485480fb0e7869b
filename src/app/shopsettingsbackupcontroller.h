#pragma once

#include <QUrl>

#include "app/controller.h"
#include "app/shopsettingscare.h"

namespace gw {

/// Backups: where they go, when the last one was, making one now, and putting one back.
class ShopSettingsBackupController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString folder READ folder NOTIFY shown)
    Q_PROPERTY(QUrl folderUrl READ folderUrl NOTIFY shown)
    Q_PROPERTY(bool chosen READ chosen NOTIFY shown) ///< by a person; else the usual folder
    Q_PROPERTY(QString last READ last NOTIFY shown) ///< "Today 14:03"; empty when there is none
    Q_PROPERTY(QString candidate READ candidate NOTIFY shown) ///< the file to restore, until it is or is not
    Q_PROPERTY(QString kept READ kept NOTIFY shown) ///< after restoring: file with what was there before
    Q_PROPERTY(QString restoredText READ restoredText NOTIFY shown) ///< after restoring: what is there now

public:
    explicit ShopSettingsBackupController(QObject* parent = nullptr);

    QString folder() const { return m_facts.folder; }
    QUrl folderUrl() const { return QUrl::fromLocalFile(m_facts.folder); }
    bool chosen() const { return m_facts.chosen; }
    QString last() const;
    QString candidate() const { return m_candidate; }
    QString kept() const { return m_kept; }
    QString restoredText() const { return m_restoredText; }

    Q_INVOKABLE void backUpNow();
    Q_INVOKABLE void chooseFolder(const QUrl& folder);
    Q_INVOKABLE void useUsualFolder() { chooseFolder({}); }
    /// Names the file to restore; nothing happens yet.
    Q_INVOKABLE void propose(const QUrl& file);
    /// Restores the proposed file, after what is there now went to a file of its own.
    Q_INVOKABLE void restore();
    /// Takes the last restoring back: puts in again what was there before it.
    Q_INVOKABLE void putBack();

Q_SIGNALS:
    void shown();
    void restored();

protected:
    void begin() override;

private:
    void read();
    void restoreFile(const QString& file);

    BackupFacts m_facts;
    QString m_candidate, m_kept, m_restoredText;
};

} // namespace gw
