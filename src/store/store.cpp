#include "store/store.h"

#include "store/backup.h"
#include "store/migrator.h"
#include "store/postgres.h"

namespace gw {

bool StoreLocation::isPostgres() const
{
    return where.starts_with("postgresql://") || where.starts_with("postgres://");
}

std::string StoreLocation::shown() const { return isPostgres() ? shownPostgres(where) : where; }

Store::Store(std::unique_ptr<Database> database, StoreLocation location)
    : m_database(std::move(database))
    , m_location(std::move(location))
{
}

Store::~Store() = default;

Result<std::unique_ptr<Store>> Store::open(const StoreLocation& location, const OpenOptions& options)
{
    DatabaseOptions how;
    how.create = options.create;
    how.lockWaitMs = options.lockWaitMs;
    auto database = Database::open(location, how);
    if (!database)
        return tl::unexpected(database.error());
    const auto migrations = migrationsFor((*database)->engine());
    const auto present = schemaOf(**database, migrations);
    if (!present)
        return tl::unexpected(present.error());
    if (present->isNew() && !options.create)
        return fail(ErrorCode::NotFound,
            "There is no store in " + location.shown() + "; check the name, or make one there.");
    const auto before = migrate(**database, migrations, options.now,
        [&](int version) { return keepOlder(location, version, options); });
    if (!before)
        return tl::unexpected(before.error());
    std::unique_ptr<Store> store(new Store(std::move(*database), location));
    store->m_isNew = before->isNew();
    store->m_schemaVersion = migrations.back().version;
    return store;
}

const StoreLocation& Store::location() const { return m_location; }
bool Store::isNew() const { return m_isNew; }
int Store::schemaVersion() const { return m_schemaVersion; }

Result<void> Store::transact(const std::function<Result<void>()>& act)
{
    return m_database->transact(Database::Begin::Write, act);
}

Result<void> Store::readTogether(const std::function<Result<void>()>& act) const
{
    return m_database->inTransaction() ? act() : m_database->transact(Database::Begin::Snapshot, act);
}

} // namespace gw
