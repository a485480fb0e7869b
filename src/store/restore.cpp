#include <algorithm>

#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

#include "measure/quoted.h"
#include "store/backup.h"
#include "store/copytables.h"
#include "store/guards.h"
#include "store/inspection.h"
#include "store/migrator.h"
#include "store/sqlite.h"

namespace gw {

namespace {

Error unreadable(const std::string& file, const std::string& why)
{
    return { ErrorCode::FileUnreadable, "The backup " + file + " cannot be read: " + why + "." };
}

Result<void> mayBeRead(const QString& path, const std::string& file)
{
    const QFileInfo info(path);
    if (!info.exists())
        return tl::unexpected(unreadable(file, "there is no such file; check its name"));
    if (info.isDir() || !info.isReadable())
        return tl::unexpected(
            unreadable(file, "it is a folder or may not be read; check its name and its rights"));
    if (QFileInfo(path + QStringLiteral("-wal")).size() > 0)
        return tl::unexpected(unreadable(file, "it is a store in use; close it there, or back that one up"));
    if (!isOurSqliteFile(path))
        return fail(ErrorCode::StoreForeign,
            file + " is not a backup of Gluewright; nothing was changed, choose another file.");
    return {};
}

// The sentence names the file the person named, not the copy that was looked at.
Error named(Error error, const std::string& copy, const std::string& file)
{
    for (auto at = error.sentence.find(copy); at != std::string::npos;
        at = error.sentence.find(copy, at + file.size()))
        error.sentence.replace(at, copy.size(), file);
    return error;
}

// A copy of the backup, looked at and brought up to the present schema: the backup itself is never touched.
Result<std::unique_ptr<Database>> madeReady(const std::string& copy, const std::string& file)
{
    DatabaseOptions oneFile;
    oneFile.create = false;
    oneFile.wholeInOneFile = true;
    auto source = Database::open({ copy }, oneFile);
    if (!source)
        return tl::unexpected(named(source.error(), copy, file));
    const auto damaged = [&](const std::string& problem) {
        return fail(ErrorCode::StoreDamaged,
            "The backup " + file + " is damaged and was not restored, choose an earlier one: " + problem);
    };
    const auto pages = engineProblems(**source);
    if (!pages)
        return tl::unexpected(named(pages.error(), copy, file));
    if (!pages->empty())
        return damaged(pages->front());
    const auto migrated
        = migrate(**source, migrationsFor(Engine::Sqlite), {}, [](int) { return Result<void> {}; });
    if (!migrated)
        return tl::unexpected(named(migrated.error(), copy, file));
    const auto found = inspect(**source);
    if (!found)
        return tl::unexpected(named(found.error(), copy, file));
    if (found->broken)
        return damaged(found->report.problems.front());
    return source;
}

Result<void> empty(Database& database)
{
    auto tables = storeTables();
    if (database.engine() == Engine::Postgres) {
        // Waits for other tablets' acts, and lets none begin until this is over.
        std::string sql = "TRUNCATE ";
        for (const auto& table : tables)
            sql += (&table == &tables.front() ? "" : ", ") + table;
        return database.execute(sql);
    }
    std::reverse(tables.begin(), tables.end());
    for (const auto& table : tables) {
        if (auto done = database.execute("DELETE FROM " + table); !done)
            return done;
    }
    return {};
}

} // namespace

Result<StoreReport> Store::restore(const std::string& file, const std::string& keepFile)
{
    const QString path = QString::fromStdString(file);
    if (auto readable = mayBeRead(path, file); !readable)
        return tl::unexpected(readable.error());
    if (QFileInfo(path).canonicalFilePath() == QFileInfo(QString::fromStdString(keepFile)).absoluteFilePath())
        return fail(ErrorCode::BadInput,
            "What is in the store now would be kept over the backup itself; name another file for it.");
    const QTemporaryDir folder;
    const QString copy = folder.filePath(QStringLiteral("backup"));
    if (!folder.isValid() || !QFile::copy(path, copy))
        return tl::unexpected(
            unreadable(file, "there is no room for a copy of it in the folder for temporary files"));
    QFile::setPermissions(copy, QFile::ReadOwner | QFile::WriteOwner);
    auto source = madeReady(copy.toStdString(), file);
    if (!source)
        return tl::unexpected(source.error());
    if (auto kept = backup(keepFile); !kept)
        return tl::unexpected(kept.error());
    const auto done = transact([&]() -> Result<void> {
        if (auto dropped = dropGuards(*m_database); !dropped)
            return dropped;
        if (auto emptied = empty(*m_database); !emptied)
            return emptied;
        if (auto copied = copyTables(**source, *m_database); !copied)
            return copied;
        return raiseGuards(*m_database);
    });
    if (!done)
        return tl::unexpected(done.error());
    return verify();
}

} // namespace gw
