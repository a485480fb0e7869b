#include "store/guards.h"

#include <algorithm>
#include <span>

namespace gw {

namespace {

constexpr std::string_view makesTrigger = "CREATE TRIGGER ", makesFunction = "CREATE FUNCTION ";

// Whether a table's trigger stands, wakes for all three, always, and does what it should.
constexpr std::string_view postgresGuards = R"(
    SELECT COUNT(*) FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_proc p ON p.oid = t.tgfoid
    WHERE c.relnamespace = current_schema()::regnamespace AND t.tgname = c.relname || '_never_changes'
        AND t.tgenabled = 'A' AND t.tgtype = 58 AND p.prosrc LIKE '%BEGIN RAISE EXCEPTION%')";

std::vector<std::string> guardStatements(std::span<const Migration> migrations)
{
    std::vector<std::string> statements;
    for (const auto& migration : migrations) {
        if (migration.topic.ends_with("guards"))
            statements.insert(statements.end(), migration.statements.begin(), migration.statements.end());
    }
    return statements;
}

/// What such a statement makes: the word behind its first two.
std::string nameMadeBy(const std::string& statement, std::string_view begin)
{
    const auto end = statement.find_first_of(" (\n", begin.size());
    return statement.substr(begin.size(), end - begin.size());
}

} // namespace

Result<void> dropGuards(Database& database)
{
    const bool postgres = database.engine() == Engine::Postgres;
    const std::string_view begin = postgres ? makesFunction : makesTrigger;
    for (const auto& statement : guardStatements(migrationsFor(database.engine()))) {
        if (!statement.starts_with(begin))
            continue;
        const std::string name = nameMadeBy(statement, begin);
        // On PostgreSQL the triggers go with their function.
        const std::string sql
            = postgres ? "DROP FUNCTION IF EXISTS " + name + "() CASCADE" : "DROP TRIGGER IF EXISTS " + name;
        if (auto dropped = database.execute(sql); !dropped)
            return dropped;
    }
    return {};
}

Result<void> raiseGuards(Database& database)
{
    // PostgreSQL alters no table while checks on it are still put off.
    if (database.engine() == Engine::Postgres) {
        if (auto checked = database.execute("SET CONSTRAINTS ALL IMMEDIATE"); !checked)
            return checked;
    }
    for (const auto& statement : guardStatements(migrationsFor(database.engine()))) {
        if (auto done = database.execute(statement); !done)
            return done;
    }
    return {};
}

Result<bool> guardsStand(Database& database, const std::vector<Migration>& migrations)
{
    auto statements = guardStatements(migrations);
    std::erase_if(
        statements, [](const std::string& statement) { return !statement.starts_with(makesTrigger); });
    if (database.engine() == Engine::Postgres) {
        const auto standing = database.number(postgresGuards);
        if (!standing)
            return tl::unexpected(standing.error());
        return *standing == static_cast<std::int64_t>(statements.size());
    }
    const auto standing = database.list(
        "SELECT sql FROM sqlite_master WHERE type = 'trigger'", [](Row& row) { return row.text(); });
    if (!standing)
        return tl::unexpected(standing.error());
    return std::ranges::all_of(statements, [&](const std::string& statement) {
        return std::ranges::find(*standing, statement) != standing->end();
    });
}

} // namespace gw
