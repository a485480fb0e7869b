#include "store/migrator.h"

#include "store/sqlite.h"

namespace gw {

namespace {

constexpr std::string_view createTable = R"(
    CREATE TABLE IF NOT EXISTS schema_migration (
        version BIGINT NOT NULL PRIMARY KEY,
        checksum TEXT NOT NULL,
        applied_ms BIGINT NOT NULL,
        by_version TEXT NOT NULL
    ))";

// Any fixed number will do that others in the same database are unlikely to take.
constexpr std::int64_t advisoryLock = 0x476c7565'77726974;

struct Applied {
    std::int64_t version = 0;
    std::string checksum;
    std::string by;
};

// Tables in the place where ours would be made.
Result<std::int64_t> tablesThere(Database& database, bool onlyOurs)
{
    const bool sqlite = database.engine() == Engine::Sqlite;
    std::string sql = sqlite
        ? "SELECT COUNT(*) FROM sqlite_master WHERE type = 'table'"
        : "SELECT COUNT(*) FROM information_schema.tables WHERE table_schema = current_schema()";
    if (onlyOurs)
        sql += sqlite ? " AND name = 'schema_migration'" : " AND table_name = 'schema_migration'";
    return database.number(sql);
}

Result<void> apply(Database& database, const Migration& migration, Moment now)
{
    if (auto made = database.execute(createTable); !made)
        return made;
    if (migration.version == 1 && database.engine() == Engine::Sqlite) {
        if (auto marked = database.execute("PRAGMA application_id = " + std::to_string(sqliteApplicationId));
            !marked)
            return marked;
    }
    for (const std::string& statement : migration.statements) {
        if (auto done = database.execute(statement); !done)
            return done;
    }
    auto noted = database.run(
        "INSERT INTO schema_migration (version, checksum, applied_ms, by_version) VALUES (?, ?, ?, ?)",
        migration.version, migration.checksum, now, std::string(GW_VERSION));
    return noted ? Result<void> {} : tl::unexpected(noted.error());
}

Error stepFailed(const Migration& migration, const Error& error)
{
    // What the disk, the lock or the server did has its own sentence already.
    if (error.code != ErrorCode::StoreFailed && error.code != ErrorCode::BadInput)
        return error;
    return { error.code,
        "Step " + std::to_string(migration.version) + " (" + migration.topic
            + ") of bringing the store up to date failed, and it stays as it was: " + error.sentence };
}

} // namespace

Result<SchemaState> schemaOf(Database& database, const std::vector<Migration>& known)
{
    const std::string shown = database.location().shown();
    const auto ours = tablesThere(database, true);
    if (!ours)
        return tl::unexpected(ours.error());
    if (*ours == 0) {
        const auto others = tablesThere(database, false);
        if (!others)
            return tl::unexpected(others.error());
        if (*others > 0)
            return fail(ErrorCode::StoreForeign,
                shown
                    + " holds the tables of another program; it was left as it is, choose an empty "
                      "database.");
        return SchemaState {};
    }
    const auto rows = database.list(
        "SELECT version, checksum, by_version FROM schema_migration ORDER BY version", [](Row& row) {
            Applied applied;
            applied.version = row.integer();
            applied.checksum = row.text();
            applied.by = row.text();
            return applied;
        });
    if (!rows) {
        // A table of that name with other columns belongs to another program.
        if (rows.error().code == ErrorCode::StoreFailed)
            return fail(ErrorCode::StoreForeign,
                shown + " holds the tables of another program; it was left as it is, choose another.");
        return tl::unexpected(rows.error());
    }
    std::size_t step = 0;
    for (const Applied& applied : *rows) {
        if (step == known.size() && applied.version > static_cast<std::int64_t>(step))
            return fail(ErrorCode::StoreNewer,
                "The store " + shown + " was written by a newer Gluewright (" + rows->back().by
                    + "); update this one, " GW_VERSION ", to open it.");
        if (applied.version != static_cast<std::int64_t>(step) + 1
            || applied.checksum != known[step].checksum)
            return fail(ErrorCode::StoreDamaged,
                "The store " + shown + " was made by step " + std::to_string(applied.version)
                    + " of a schema this Gluewright does not know; restore a backup, or use the program that "
                      "made it.");
        ++step;
    }
    return SchemaState { static_cast<int>(step) };
}

Result<SchemaState> migrate(Database& database, const std::vector<Migration>& migrations, Moment now,
    const std::function<Result<void>(int olderVersion)>& keep)
{
    auto before = schemaOf(database, migrations);
    if (!before || before->version == migrations.back().version)
        return before;
    const bool postgres = database.engine() == Engine::Postgres;
    if (postgres) {
        if (auto held = database.execute("SELECT pg_advisory_lock(" + std::to_string(advisoryLock) + ")");
            !held)
            return tl::unexpected(held.error());
    }
    const auto done = database.transact(Database::Begin::Write, [&]() -> Result<void> {
        // Whoever held the lock before may have done it meanwhile.
        before = schemaOf(database, migrations);
        if (!before)
            return tl::unexpected(before.error());
        if (before->version == migrations.back().version)
            return {};
        if (!before->isNew()) {
            if (auto kept = keep(before->version); !kept)
                return kept;
        }
        for (const Migration& migration : migrations) {
            if (migration.version <= before->version)
                continue;
            if (auto applied = apply(database, migration, now); !applied)
                return tl::unexpected(stepFailed(migration, applied.error()));
        }
        return {};
    });
    if (postgres)
        static_cast<void>(
            database.execute("SELECT pg_advisory_unlock(" + std::to_string(advisoryLock) + ")"));
    return done ? before : tl::unexpected(done.error());
}

} // namespace gw
