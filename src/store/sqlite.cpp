#include "store/sqlite.h"

#include <QFile>
#include <QFileInfo>
#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>
#include <QtEndian>

#include "store/database.h"

namespace gw {

namespace {

// Section 1.3.1 of sqlite.org/fileformat2.html; the zero at its end belongs to it.
const QByteArray sqliteMagic("SQLite format 3\0", 16);

Error notOurs(const std::string& shown)
{
    return { ErrorCode::StoreForeign,
        shown + " is not a Gluewright store; it was left as it is, choose another file." };
}

// What the file system says, before SQLite would make a file or say less clearly what is wrong.
Result<void> lookAt(const QString& path, const std::string& shown, bool create)
{
    const QFileInfo file(path);
    const QFileInfo folder(file.absolutePath());
    if (path.isEmpty())
        return fail(ErrorCode::BadInput, "No store was named; name a file.");
    if (file.isDir())
        return fail(ErrorCode::BadInput, shown + " is a folder; name a file in it.");
    if (!folder.exists())
        return fail(ErrorCode::NotFound,
            "There is no folder " + folder.filePath().toStdString()
                + " for the store; make it, or choose another.");
    if (!create && (!file.exists() || file.size() == 0))
        return fail(
            ErrorCode::NotFound, "There is no store at " + shown + "; check the path, or make one there.");
    if (!folder.isWritable())
        return fail(ErrorCode::StoreReadOnly,
            "The folder " + folder.filePath().toStdString()
                + " may not be written, and a store needs it; give the right to write, or choose another "
                  "folder.");
    if (!file.exists())
        return {};
    if (!file.isReadable() || !file.isWritable())
        return fail(ErrorCode::StoreReadOnly,
            "The store " + shown
                + " may not be written; give the right to write to it, or choose another file.");
    QFile head(path);
    if (!head.open(QIODevice::ReadOnly))
        return fail(
            ErrorCode::StoreReadOnly, "The store " + shown + " cannot be read; give the right to read it.");
    const QByteArray magic = head.read(sqliteMagic.size());
    if (!magic.isEmpty() && magic != sqliteMagic)
        return tl::unexpected(notOurs(shown));
    return {};
}

} // namespace

bool isOurSqliteFile(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return false;
    // Section 1.3 of sqlite.org/fileformat2.html: the application id stands at byte 68, the high byte first.
    const QByteArray head = file.read(100);
    return head.size() == 100 && head.startsWith(sqliteMagic)
        && qFromBigEndian<qint32>(head.constData() + 68) == sqliteApplicationId;
}

Result<void> connectSqlite(
    QSqlDatabase& connection, const StoreLocation& location, const DatabaseOptions& options)
{
    const QString path = QString::fromStdString(location.where);
    const std::string shown = location.shown();
    if (auto looked = lookAt(path, shown, options.create); !looked)
        return looked;
    connection.setDatabaseName(path);
    connection.setConnectOptions(QStringLiteral("QSQLITE_BUSY_TIMEOUT=%1").arg(options.lockWaitMs));
    if (!connection.open())
        return tl::unexpected(faultOf(Engine::Sqlite, connection.lastError(), shown));

    QSqlQuery query(connection);
    const auto ask = [&](const QString& sql) -> Result<int> {
        if (!query.exec(sql))
            return tl::unexpected(faultOf(Engine::Sqlite, query.lastError(), shown));
        const int answer = query.next() ? query.value(0).toInt() : 0;
        query.finish();
        return answer;
    };
    const auto application = ask(QStringLiteral("PRAGMA application_id"));
    if (!application)
        return tl::unexpected(application.error());
    const auto things = ask(QStringLiteral("SELECT COUNT(*) FROM sqlite_master"));
    if (!things)
        return tl::unexpected(things.error());
    const bool empty = *application == 0 && *things == 0;
    if (*application != sqliteApplicationId && !empty)
        return tl::unexpected(notOurs(shown));
    // FULL: what was answered as written stays written when the power fails. A write-ahead log lets others
    // read on.
    const QString journal = options.wholeInOneFile ? QStringLiteral("DELETE") : QStringLiteral("WAL");
    for (const QString& sql : { QStringLiteral("PRAGMA journal_mode = ") + journal,
             QStringLiteral("PRAGMA synchronous = FULL"), QStringLiteral("PRAGMA foreign_keys = ON") }) {
        if (auto set = ask(sql); !set)
            return tl::unexpected(set.error());
    }
    return {};
}

} // namespace gw
