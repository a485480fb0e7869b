#include "app/shopsettingscare.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QLocale>
#include <QTemporaryFile>

#include "app/words.h"

namespace gw {

namespace {

struct Says {
    Q_DECLARE_TR_FUNCTIONS(gw::ShopSettings)
};

constexpr auto folderSetting = "backup_folder";

/// "2026-05-25T14-03-00Z": a moment in a file's name.
QString stamp(Moment now) { return q(formatMoment(now)).replace(u':', u'-'); }

Result<void> make(const QString& folder)
{
    if (!QDir().mkpath(folder))
        return fail(ErrorCode::FileUnwritable,
            "The folder " + folder.toStdString() + " cannot be made; choose another.");
    return {};
}

} // namespace

Result<StoreFacts> storeFacts(const Shop& shop)
{
    const auto name = shop.store().setting("shop_name");
    if (!name)
        return tl::unexpected(name.error());
    const StoreLocation& location = shop.store().location();
    StoreFacts facts;
    facts.shopName = q(name->value_or(std::string()));
    facts.schemaVersion = shop.store().schemaVersion();
    if (location.isPostgres()) {
        facts.where = q(location.shown());
        facts.engine = Says::tr("PostgreSQL, on a server");
        return facts;
    }
    const QString path = QFileInfo(q(location.where)).absoluteFilePath();
    facts.where = QDir::toNativeSeparators(path);
    facts.engine = Says::tr("SQLite, one file");
    const qint64 size = QFileInfo(path).size() + QFileInfo(path + QStringLiteral("-wal")).size();
    facts.size = QLocale().formattedDataSize(size, 1, QLocale::DataSizeTraditionalFormat);
    return facts;
}

Result<BackupFacts> backupFacts(const Shop& shop)
{
    const auto chosen = shop.store().setting(folderSetting);
    if (!chosen)
        return tl::unexpected(chosen.error());
    BackupFacts facts;
    facts.chosen = *chosen && !(*chosen)->empty();
    facts.folder = q(facts.chosen ? **chosen : defaultBackupFolder(shop.store().location()));
    const auto files
        = QDir(facts.folder).entryInfoList({ QStringLiteral("*.backup") }, QDir::Files, QDir::Time);
    if (!files.isEmpty()) {
        facts.newest = files.first().fileName();
        facts.newestAt = fromMilliseconds(files.first().lastModified().toMSecsSinceEpoch());
    }
    return facts;
}

Result<void> chooseBackupFolder(Shop& shop, const QString& folder)
{
    if (!folder.isEmpty()) {
        if (auto made = make(folder); !made)
            return made;
        // Only writing tells whether one may write: rights, a full disk, a stick taken out.
        QTemporaryFile trial(QDir(folder).filePath(QStringLiteral("gluewright-trial-XXXXXX")));
        if (!trial.open())
            return fail(ErrorCode::FileUnwritable,
                "Nothing can be written into " + folder.toStdString() + "; choose another folder.");
    }
    return shop.store().setSetting(folderSetting, folder.toStdString());
}

Result<QString> backUpByHand(const Shop& shop, Moment now)
{
    const auto facts = backupFacts(shop);
    if (!facts)
        return tl::unexpected(facts.error());
    if (auto made = make(facts->folder); !made)
        return tl::unexpected(made.error());
    QString file = QDir(facts->folder).filePath(QStringLiteral("by-hand-%1.backup").arg(stamp(now)));
    const auto report = shop.store().backup(file.toStdString());
    if (!report)
        return tl::unexpected(report.error());
    return file;
}

Result<RestoredShop> restoreFrom(Shop& shop, const QString& file, Moment now)
{
    const auto facts = backupFacts(shop);
    if (!facts)
        return tl::unexpected(facts.error());
    auto restored = restoreBackup(shop, file.toStdString(), facts->folder.toStdString(), now);
    if (!restored)
        return restored;
    const std::string folder = facts->chosen ? facts->folder.toStdString() : std::string();
    if (auto set = shop.store().setSetting(folderSetting, folder); !set)
        return tl::unexpected(set.error());
    return restored;
}

} // namespace gw
