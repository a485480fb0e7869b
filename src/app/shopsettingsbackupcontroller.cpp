#include "app/shopsettingsbackupcontroller.h"

#include <QDir>

#include "app/words.h"

namespace gw {

ShopSettingsBackupController::ShopSettingsBackupController(QObject* parent)
    : Controller(parent)
{
}

void ShopSettingsBackupController::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &ShopSettingsBackupController::read);
    connect(&services()->shop(), &ShopThread::opened, this, &ShopSettingsBackupController::read);
    connect(&services()->shop(), &ShopThread::backupDone, this, &ShopSettingsBackupController::read);
    connect(&services()->clock(), &Clock::dayChanged, this, &ShopSettingsBackupController::shown);
    read();
}

void ShopSettingsBackupController::read()
{
    take(services()->shop().run(backupFacts), [this](BackupFacts facts) {
        m_facts = std::move(facts);
        Q_EMIT shown();
    });
}

QString ShopSettingsBackupController::last() const
{
    return m_facts.newestAt ? momentText(*m_facts.newestAt, services()->clock().today()) : QString();
}

void ShopSettingsBackupController::backUpNow()
{
    setError(QString());
    const Moment now = services()->clock().now();
    take(services()->shop().run([now](const Shop& shop) { return backUpByHand(shop, now); }),
        [this](const QString& file) {
            services()->say(tr("Backed up to %1.").arg(QDir::toNativeSeparators(file)));
            read();
        });
}

void ShopSettingsBackupController::chooseFolder(const QUrl& folder)
{
    setError(QString());
    take(services()->shop().change(
             [path = folder.toLocalFile()](Shop& shop) { return chooseBackupFolder(shop, path); }),
        [this] { read(); });
}

void ShopSettingsBackupController::propose(const QUrl& file)
{
    m_candidate = QDir::toNativeSeparators(file.toLocalFile());
    setError(QString());
    Q_EMIT shown();
}

void ShopSettingsBackupController::restore()
{
    if (!m_candidate.isEmpty())
        restoreFile(m_candidate);
}

void ShopSettingsBackupController::putBack()
{
    if (!m_kept.isEmpty())
        restoreFile(m_kept);
}

void ShopSettingsBackupController::restoreFile(const QString& file)
{
    setError(QString());
    const Moment now = services()->clock().now();
    take(services()->shop().run([file, now](Shop& shop) { return restoreFrom(shop, file, now); }),
        [this](const RestoredShop& done) {
            m_candidate.clear();
            m_kept = QDir::toNativeSeparators(q(done.kept));
            m_restoredText
                = tr("Restored: %1, and a ledger of %2 entries.")
                      .arg(tr("%n container(s)", nullptr, static_cast<int>(done.report.containers)))
                      .arg(done.report.entries);
            // Opened anew, so that reference data and every screen follow.
            services()->shop().reopen();
            Q_EMIT shown();
            Q_EMIT restored();
        });
}

} // namespace gw
