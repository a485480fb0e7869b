#include "cli/context.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

#include "cli/commandline.h"
#include "shop/care.h"

namespace gw {

Moment clockNow() { return std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now()); }

std::string defaultStore()
{
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
    return QDir(folder).filePath(QStringLiteral("shop.gluewright")).toStdString();
}

Result<Moment> CommandContext::asOf() const
{
    return asOfText.empty() ? Result<Moment>(now) : parseMoment(asOfText);
}

Result<Shop*> CommandContext::shop()
{
    if (m_shop)
        return m_shop.get();
    StoreLocation location { storeWhere.empty() ? defaultStore() : storeWhere };
    if (storeWhere.empty())
        QDir().mkpath(QFileInfo(QString::fromStdString(location.where)).absolutePath());
    OpenOptions options;
    options.now = now;
    options.backupFolder = defaultBackupFolder(location);
    auto opened = Shop::open(location, options);
    if (!opened)
        return tl::unexpected(opened.error());
    m_shop = std::move(*opened);
    m_shop->setUnits(units());
    return m_shop.get();
}

} // namespace gw
