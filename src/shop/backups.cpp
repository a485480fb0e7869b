#include "shop/care.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

namespace gw {

namespace {

constexpr int backupsKept = 14;
constexpr auto namePattern = "gluewright-*.backup";

Result<QDir> madeFolder(const std::string& folder)
{
    QDir dir(QString::fromStdString(folder));
    if (!QDir().mkpath(dir.path()))
        return fail(ErrorCode::FileUnwritable,
            "The backup folder " + folder + " cannot be made; choose another under Shop.");
    return dir;
}

} // namespace

std::string defaultBackupFolder(const StoreLocation& location)
{
    if (location.isPostgres()) {
        const QString data = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
        return QDir(data).filePath(QStringLiteral("backups")).toStdString();
    }
    const QFileInfo file(QString::fromStdString(location.where));
    return file.absoluteDir().filePath(QStringLiteral("backups")).toStdString();
}

Result<std::string> dailyBackup(const Shop& shop, const std::string& folder, Moment now)
{
    auto made = madeFolder(folder);
    if (!made)
        return tl::unexpected(made.error());
    const QDir& dir = *made;

    const QString name
        = QStringLiteral("gluewright-%1.backup").arg(QString::fromStdString(formatDate(dateOf(now))));
    if (dir.exists(name))
        return std::string();
    auto report = shop.store().backup(dir.filePath(name).toStdString());
    if (!report)
        return tl::unexpected(report.error());

    // Only files this program named itself are ever removed.
    const QStringList kept
        = dir.entryList({ QLatin1String(namePattern) }, QDir::Files, QDir::Name | QDir::Reversed);
    for (qsizetype i = backupsKept; i < kept.size(); ++i)
        QFile::remove(dir.filePath(kept.at(i)));
    return dir.filePath(name).toStdString();
}

Result<RestoredShop> restoreBackup(Shop& shop, const std::string& file, const std::string& folder, Moment now)
{
    auto made = madeFolder(folder);
    if (!made)
        return tl::unexpected(made.error());
    const QString stamp = QString::fromStdString(formatMoment(now)).replace(u':', u'-');
    RestoredShop restored;
    restored.kept = made->filePath(QStringLiteral("before-restore-%1.backup").arg(stamp)).toStdString();
    auto report = shop.store().restore(file, restored.kept);
    if (!report)
        return tl::unexpected(report.error());
    restored.report = std::move(*report);
    // The backup may carry an older edition of what the trade knows.
    if (auto refreshed = shop.refreshReference(); !refreshed)
        return tl::unexpected(refreshed.error());
    return restored;
}

Result<bool> isEmpty(const Shop& shop)
{
    auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    auto materials = shop.store().materials();
    if (!materials)
        return tl::unexpected(materials.error());
    auto places = shop.store().places();
    if (!places)
        return tl::unexpected(places.error());
    return containers->empty() && materials->empty() && places->empty();
}

} // namespace gw
