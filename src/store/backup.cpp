#include "store/backup.h"

#include <filesystem>

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include <fcntl.h>
#include <unistd.h>

#include "store/copytables.h"
#include "store/inspection.h"
#include "store/migrator.h"
#include "store/sqlite.h"

namespace gw {

namespace {

Error unwritable(const std::string& file, const std::string& why)
{
    return { ErrorCode::FileUnwritable, "The backup " + file + " cannot be written: " + why + "." };
}

// A fault in the copy is one of the place it goes to, not of the store.
Error faultOfCopy(const Error& error, const std::string& file)
{
    switch (error.code) {
    case ErrorCode::StoreFull:
        return { ErrorCode::StoreFull,
            "The disk for the backup " + file
                + " is full; no backup was made, choose another place or make room." };
    case ErrorCode::StoreReadOnly:
    case ErrorCode::StoreForeign:
    case ErrorCode::NotFound:
    case ErrorCode::BadInput:
        return unwritable(file, "its folder may not be written; choose another place");
    default:
        return error;
    }
}

// What must not be written over, whoever asks for it.
Result<void> mayStandAt(const QString& path, const StoreLocation& from)
{
    const std::string file = path.toStdString();
    const QFileInfo target(path), folder(target.absolutePath());
    if (path.isEmpty())
        return fail(ErrorCode::BadInput, "No file was named for the backup; name one.");
    if (target.isDir())
        return tl::unexpected(unwritable(file, "it is a folder; name a file in it"));
    if (!folder.exists())
        return tl::unexpected(unwritable(file, "there is no such folder; make it, or choose another"));
    if (!folder.isWritable())
        return tl::unexpected(unwritable(file, "its folder may not be written; choose another place"));
    const QFileInfo store(QString::fromStdString(from.where));
    if (!target.exists())
        return {};
    if (!from.isPostgres() && target.canonicalFilePath() == store.canonicalFilePath())
        return tl::unexpected(unwritable(file, "it is the store itself; choose another name"));
    if (QFileInfo::exists(path + QStringLiteral("-wal")))
        return tl::unexpected(unwritable(file, "it is a store in use; choose another name"));
    if (target.size() > 0 && !isOurSqliteFile(path))
        return tl::unexpected(unwritable(file, "another file of that name is there; choose another name"));
    return {};
}

Result<void> flushToDisk(const QString& path, const std::string& file)
{
    const int handle = ::open(QFile::encodeName(path).constData(), O_RDONLY | O_CLOEXEC);
    const bool flushed = handle >= 0 && ::fsync(handle) == 0;
    if (handle >= 0)
        ::close(handle);
    return flushed ? Result<void> {}
                   : tl::unexpected(unwritable(file, "the disk did not take it; choose another place"));
}

// SQLite copies itself; a reader in the middle of it sees one moment, and nobody waits.
Result<void> copySqlite(const StoreLocation& from, const StoreLocation& to)
{
    DatabaseOptions asItIs;
    asItIs.create = false;
    auto source = Database::open(from, asItIs);
    if (!source)
        return tl::unexpected(source.error());
    const auto done = (*source)->run("VACUUM INTO ?", to.where);
    return done ? Result<void> {} : tl::unexpected(faultOfCopy(done.error(), to.where));
}

Result<void> copyPostgres(const StoreLocation& from, int schemaVersion, const StoreLocation& to)
{
    auto source = Database::open(from, {});
    if (!source)
        return tl::unexpected(source.error());
    DatabaseOptions oneFile;
    oneFile.wholeInOneFile = true;
    auto copy = Database::open(to, oneFile);
    if (!copy)
        return tl::unexpected(faultOfCopy(copy.error(), to.where));
    auto migrations = migrationsFor(Engine::Sqlite);
    migrations.resize(static_cast<std::size_t>(schemaVersion));
    return (*source)->transact(Database::Begin::Snapshot, [&]() -> Result<void> {
        const auto when = (*source)->number("SELECT MAX(applied_ms) FROM schema_migration");
        if (!when)
            return tl::unexpected(when.error());
        const auto made
            = migrate(**copy, migrations, fromMilliseconds(*when), [](int) { return Result<void> {}; });
        if (!made)
            return tl::unexpected(faultOfCopy(made.error(), to.where));
        return (*copy)->transact(Database::Begin::Write, [&] { return copyTables(**source, **copy); });
    });
}

Result<void> checkCopy(const StoreLocation& at, const std::function<Result<void>(Database&)>& check)
{
    DatabaseOptions oneFile;
    oneFile.create = false;
    oneFile.wholeInOneFile = true;
    auto copy = Database::open(at, oneFile);
    if (!copy)
        return tl::unexpected(faultOfCopy(copy.error(), at.where));
    return check(**copy);
}

} // namespace

Result<void> writeBackup(const StoreLocation& from, int schemaVersion, const std::string& file,
    const std::function<Result<void>(Database& copy)>& check)
{
    const QString path = QString::fromStdString(file);
    if (auto free = mayStandAt(path, from); !free)
        return free;
    const QString part = path + QStringLiteral(".part%1").arg(::getpid());
    const StoreLocation at { part.toStdString() };
    QFile::remove(part);
    auto done = from.isPostgres() ? copyPostgres(from, schemaVersion, at) : copySqlite(from, at);
    if (done)
        done = checkCopy(at, check);
    if (done)
        done = flushToDisk(part, file);
    if (done) {
        std::error_code fault;
        std::filesystem::rename(at.where, file, fault);
        if (fault)
            done = tl::unexpected(
                unwritable(file, "the disk says " + fault.message() + "; choose another place"));
        else
            done = flushToDisk(QFileInfo(path).absolutePath(), file);
    }
    if (!done) {
        QFile::remove(part);
        QFile::remove(part + QStringLiteral("-journal"));
    }
    return done;
}

Result<void> keepOlder(const StoreLocation& location, int schemaVersion, const OpenOptions& options)
{
    const QFileInfo store(QString::fromStdString(location.where));
    QString folder = QString::fromStdString(options.backupFolder);
    if (folder.isEmpty() && location.isPostgres())
        return fail(ErrorCode::BadInput,
            "The store " + location.shown()
                + " is older than this Gluewright and is backed up before it is changed; name a folder for "
                  "backups.");
    if (folder.isEmpty())
        folder = store.absolutePath();
    const QString name = location.isPostgres() ? QStringLiteral("gluewright") : store.completeBaseName();
    QString moment = QString::fromStdString(formatMoment(options.now));
    moment.remove(u'-').remove(u':').remove(u'.');
    QString file;
    for (int n = 1; file.isEmpty() || QFileInfo::exists(file); ++n)
        file = QDir(folder).filePath(QStringLiteral("%1-schema%2-%3%4.backup")
                .arg(name)
                .arg(schemaVersion)
                .arg(moment, n == 1 ? QString() : QStringLiteral("-%1").arg(n)));
    return writeBackup(location, schemaVersion, file.toStdString(), [&](Database& copy) -> Result<void> {
        auto broken = engineProblems(copy);
        if (!broken)
            return tl::unexpected(broken.error());
        if (!broken->empty())
            return fail(ErrorCode::StoreDamaged,
                "The store " + location.shown()
                    + " is damaged and was not brought up to date: " + broken->front());
        return {};
    });
}

Result<StoreReport> Store::backup(const std::string& file) const
{
    StoreReport report;
    const auto done = writeBackup(m_location, m_schemaVersion, file, [&](Database& copy) -> Result<void> {
        auto looked = inspect(copy);
        if (!looked)
            return tl::unexpected(looked.error());
        report = looked->report;
        return {};
    });
    if (!done)
        return tl::unexpected(done.error());
    report.engine = word(m_database->engine());
    return report;
}

Result<StoreReport> Store::verify() const
{
    auto looked = inspect(*m_database);
    if (!looked)
        return tl::unexpected(looked.error());
    return std::move(looked->report);
}

} // namespace gw
