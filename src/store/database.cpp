#include "store/database.h"

#include <atomic>

#include <QLoggingCategory>
#include <QRegularExpression>
#include <QSqlError>
#include <QSqlField>
#include <QSqlRecord>

#include "store/postgres.h"
#include "store/sqlite.h"

namespace gw {

namespace {

QString freshConnectionName()
{
    static std::atomic<int> made = 0;
    return QStringLiteral("gluewright-%1").arg(++made);
}

constexpr std::string_view beginOf(Engine engine, Database::Begin kind)
{
    if (kind == Database::Begin::Snapshot)
        return engine == Engine::Sqlite ? "BEGIN" : "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY";
    // Taking SQLite's write lock at once: a lock asked for later could find that somebody wrote meanwhile.
    return engine == Engine::Sqlite ? "BEGIN IMMEDIATE" : "BEGIN";
}

} // namespace

Database::Database(const StoreLocation& location, DatabaseOptions options)
    : m_engine(location.isPostgres() ? Engine::Postgres : Engine::Sqlite)
    , m_location(location)
    , m_options(options)
    , m_name(freshConnectionName())
{
}

Database::~Database() { disconnect(); }

Result<std::unique_ptr<Database>> Database::open(
    const StoreLocation& location, const DatabaseOptions& options)
{
    std::unique_ptr<Database> database(new Database(location, options));
    if (auto connected = database->connect(); !connected)
        return tl::unexpected(connected.error());
    return database;
}

Result<void> Database::connect()
{
    const bool postgres = m_engine == Engine::Postgres;
    const QString driver = postgres ? QStringLiteral("QPSQL") : QStringLiteral("QSQLITE");
    if (!QSqlDatabase::isDriverAvailable(driver))
        return fail(ErrorCode::StoreFailed,
            "Qt's database driver " + driver.toStdString()
                + " is not installed; install it (Debian: libqt6sql6-" + (postgres ? "psql" : "sqlite")
                + ").");
    m_connection = QSqlDatabase::addDatabase(driver, m_name);
    return postgres ? connectPostgres(m_connection, m_location, m_options)
                    : connectSqlite(m_connection, m_location, m_options);
}

void Database::disconnect()
{
    // Qt 6.4 warns of each kept statement that a server which is gone cannot free.
    const bool gone = m_engine == Engine::Postgres && !postgresAnswers(m_connection);
    QLoggingCategory* const category = QLoggingCategory::defaultCategory();
    const bool warns = category->isWarningEnabled();
    category->setEnabled(QtWarningMsg, warns && !gone);
    m_statements.clear();
    category->setEnabled(QtWarningMsg, warns);
    m_connection.close();
    m_connection = QSqlDatabase();
    QSqlDatabase::removeDatabase(m_name);
    m_inTransaction = false;
    m_spoiled.reset();
}

Result<void> Database::ensureConnected()
{
    if (m_engine == Engine::Sqlite || m_inTransaction || postgresAnswers(m_connection))
        return {};
    disconnect();
    return connect();
}

tl::unexpected<Error> Database::fault(const QSqlError& error)
{
    m_referenceFault = isReferenceFault(m_engine, error);
    return spoil(faultOf(m_engine, error, m_location.shown()));
}

tl::unexpected<Error> Database::spoil(Error error)
{
    if (m_inTransaction && !m_spoiled)
        m_spoiled = error;
    return tl::unexpected(std::move(error));
}

QString Database::inDialect(std::string_view sql) const
{
    QString text = QString::fromUtf8(sql.data(), static_cast<qsizetype>(sql.size()));
    static const QRegularExpression asKept(QStringLiteral("\\$([a-z_]+)"));
    return text.replace(
        asKept, m_engine == Engine::Sqlite ? QStringLiteral("CAST(\\1 AS BLOB)") : QStringLiteral("\\1"));
}

Result<QSqlQuery*> Database::prepared(std::string_view sql)
{
    if (const auto known = m_statements.find(sql); known != m_statements.end())
        return known->second.get();
    auto query = std::make_unique<QSqlQuery>(m_connection);
    // Without it the SQLite driver keeps every row it has passed. PostgreSQL's answer is whole in memory
    // anyway, and forward-only there means a round for each row.
    query->setForwardOnly(m_engine == Engine::Sqlite);
    if (!query->prepare(inDialect(sql)))
        return fault(query->lastError());
    return m_statements.emplace(sql, std::move(query)).first->second.get();
}

Result<QSqlQuery*> Database::perform(std::string_view sql, std::initializer_list<Parameter> values)
{
    return performWith(sql, values.begin(), values.size());
}

Result<QSqlQuery*> Database::performWith(std::string_view sql, const Parameter* values, std::size_t count)
{
    if (m_spoiled)
        return tl::unexpected(*m_spoiled);
    if (auto connected = ensureConnected(); !connected)
        return tl::unexpected(connected.error());
    auto query = prepared(sql);
    if (!query)
        return query;
    for (std::size_t i = 0; i < count; ++i) {
        if (values[i].fault)
            return spoil({ ErrorCode::BadInput, values[i].fault });
        (*query)->bindValue(static_cast<int>(i), values[i].value);
    }
    if (!(*query)->exec()) {
        const QSqlError error = (*query)->lastError();
        (*query)->finish();
        return fault(error);
    }
    return query;
}

Result<void> Database::finish(QSqlQuery& query)
{
    const QSqlError error = query.lastError();
    query.finish();
    if (error.type() != QSqlError::NoError)
        return fault(error);
    return {};
}

Result<std::int64_t> Database::runWith(std::string_view sql, const std::vector<Parameter>& values)
{
    auto query = performWith(sql, values.data(), values.size());
    if (!query)
        return tl::unexpected(query.error());
    const std::int64_t touched = (*query)->numRowsAffected();
    (*query)->finish();
    return touched;
}

Result<void> Database::visitWith(std::string_view sql, const std::function<Result<void>(Row&)>& visitor,
    const std::vector<Parameter>& values)
{
    auto query = performWith(sql, values.data(), values.size());
    if (!query)
        return tl::unexpected(query.error());
    while ((*query)->next()) {
        Row row(**query);
        if (auto visited = visitor(row); !visited) {
            (*query)->finish();
            return visited;
        }
    }
    return finish(**query);
}

Result<void> Database::execute(std::string_view sql)
{
    if (m_spoiled)
        return tl::unexpected(*m_spoiled);
    if (auto connected = ensureConnected(); !connected)
        return connected;
    QSqlQuery query(m_connection);
    if (!query.exec(QString::fromUtf8(sql.data(), static_cast<qsizetype>(sql.size()))))
        return fault(query.lastError());
    return {};
}

// Transactions begin and end by these; PostgreSQL does not prepare them.
Result<void> Database::control(std::string_view sql)
{
    if (m_engine == Engine::Postgres)
        return execute(sql);
    const auto done = run(sql);
    return done ? Result<void> {} : tl::unexpected(done.error());
}

Result<void> Database::transact(Begin kind, const std::function<Result<void>()>& act)
{
    if (m_inTransaction)
        return fail(ErrorCode::StoreFailed,
            "An act was begun inside another one; this is a fault of the program, tell its makers.");
    if (auto begun = begin(kind); !begun)
        return begun;
    m_inTransaction = true;
    Result<void> done;
    try {
        done = act();
    } catch (...) {
        end(kind, false);
        throw;
    }
    if (done && m_spoiled)
        done = tl::unexpected(*m_spoiled);
    m_spoiled.reset();
    const bool mayCommit = done.has_value();
    if (mayCommit)
        done = control("COMMIT");
    // A commit that SQLite refuses leaves the transaction open; PostgreSQL ends it.
    end(kind, done.has_value() || (mayCommit && m_engine == Engine::Postgres));
    return done;
}

Result<void> Database::begin(Begin kind)
{
    // PostgreSQL's snapshot is read-only by itself.
    if (kind == Begin::Snapshot && m_engine == Engine::Sqlite) {
        if (auto reading = control("PRAGMA query_only = ON"); !reading)
            return reading;
    }
    auto begun = control(beginOf(m_engine, kind));
    if (!begun)
        end(kind, true);
    return begun;
}

// Undoes what is still open, and leaves the connection as it was before.
void Database::end(Begin kind, bool isOver)
{
    m_spoiled.reset();
    // A server that is gone has nothing left to undo.
    if (!isOver && (m_engine == Engine::Sqlite || postgresAnswers(m_connection)))
        static_cast<void>(control("ROLLBACK"));
    if (kind == Begin::Snapshot && m_engine == Engine::Sqlite)
        static_cast<void>(control("PRAGMA query_only = OFF"));
    m_spoiled.reset();
    m_inTransaction = false;
}

Result<void> Database::write(const std::function<Result<void>()>& act)
{
    return m_inTransaction ? act() : transact(Begin::Write, act);
}

Result<bool> Database::attempt(const std::function<Result<void>()>& step)
{
    if (auto marked = control("SAVEPOINT attempt"); !marked)
        return tl::unexpected(marked.error());
    m_referenceFault = false;
    const auto done = step();
    if (!done) {
        if (!m_referenceFault)
            return tl::unexpected(done.error());
        m_spoiled.reset();
        if (auto undone = control("ROLLBACK TO SAVEPOINT attempt"); !undone)
            return tl::unexpected(undone.error());
    }
    if (auto released = control("RELEASE SAVEPOINT attempt"); !released)
        return tl::unexpected(released.error());
    return done.has_value();
}

QStringList Database::columnsOf(const QString& table) const
{
    QStringList columns;
    const QSqlRecord record = m_connection.record(table);
    for (int i = 0; i < record.count(); ++i)
        columns.append(record.fieldName(i));
    return columns;
}

} // namespace gw
