#pragma once

#include <array>
#include <functional>
#include <map>
#include <memory>
#include <string_view>

#include <QSqlDatabase>
#include <QSqlQuery>

#include "store/faults.h"
#include "store/parameters.h"
#include "store/store.h"

namespace gw {

struct DatabaseOptions {
    int lockWaitMs = 5000; ///< how long to wait for another writer before it is StoreLocked
    bool create = true; ///< make an SQLite file when there is none
    bool wholeInOneFile = false; ///< SQLite without a write-ahead log: backups
};

/// One connection to either engine: statements, transactions and faults. Kept on the thread that opened it.
/// It knows no tables. A server that went away is asked again by the next call outside a transaction. In a
/// SELECT, $name asks for a text column as the UTF-8 it is kept in: SQLite's driver would turn each text into
/// UTF-16 and back.
class Database {
public:
    static Result<std::unique_ptr<Database>> open(
        const StoreLocation& location, const DatabaseOptions& options);
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    Engine engine() const { return m_engine; }
    const StoreLocation& location() const { return m_location; }
    const DatabaseOptions& options() const { return m_options; }

    /// Runs one statement, prepared and kept for the next time; answers how many rows it touched.
    template <class... P> Result<std::int64_t> run(std::string_view sql, const P&... values)
    {
        auto query = perform(sql, { parameter(values)... });
        if (!query)
            return tl::unexpected(query.error());
        const std::int64_t touched = (*query)->numRowsAffected();
        (*query)->finish();
        return touched;
    }

    /// Every row of an answer through a mapper that takes a Row.
    template <class Map, class... P>
    auto list(std::string_view sql, Map map, const P&... values)
        -> Result<std::vector<decltype(map(std::declval<Row&>()))>>
    {
        std::vector<decltype(map(std::declval<Row&>()))> rows;
        auto query = perform(sql, { parameter(values)... });
        if (!query)
            return tl::unexpected(query.error());
        while ((*query)->next()) {
            Row row(**query);
            rows.push_back(map(row));
        }
        if (auto ended = finish(**query); !ended)
            return tl::unexpected(ended.error());
        return rows;
    }

    /// The first row, if there is one.
    template <class Map, class... P>
    auto first(std::string_view sql, Map map, const P&... values)
        -> Result<std::optional<decltype(map(std::declval<Row&>()))>>
    {
        auto rows = list(sql, map, values...);
        if (!rows)
            return tl::unexpected(rows.error());
        if (rows->empty())
            return std::nullopt;
        return std::optional(std::move(rows->front()));
    }

    /// One number; NULL and no row at all are 0.
    template <class... P> Result<std::int64_t> number(std::string_view sql, const P&... values)
    {
        auto found = first(sql, [](Row& row) { return row.integer(); }, values...);
        if (!found)
            return tl::unexpected(found.error());
        return found->value_or(0);
    }

    /// The same as run for parameters counted at run time.
    Result<std::int64_t> runWith(std::string_view sql, const std::vector<Parameter>& values);
    /// Walks the rows of a statement without keeping them; the visitor may stop it with an error.
    template <class... P>
    Result<void> visit(
        std::string_view sql, const std::function<Result<void>(Row&)>& visitor, const P&... values)
    {
        return visitWith(sql, visitor, { parameter(values)... });
    }
    Result<void> visitWith(std::string_view sql, const std::function<Result<void>(Row&)>& visitor,
        const std::vector<Parameter>& values);
    /// One statement that is not worth keeping: making tables, switches of the engine.
    Result<void> execute(std::string_view sql);

    enum class Begin { Write, Snapshot };
    bool inTransaction() const { return m_inTransaction; }
    /// Runs an act in a transaction. Any failed statement within fails the whole of it, on both engines
    /// alike, even where the act passes over the error. Not nested.
    Result<void> transact(Begin kind, const std::function<Result<void>()>& act);
    /// Joins the transaction that is running, or makes one of its own.
    Result<void> write(const std::function<Result<void>()>& act);
    /// A step within a transaction that may fail on a reference without failing the rest: true when it went
    /// through.
    Result<bool> attempt(const std::function<Result<void>()>& step);
    /// Fails the running transaction for a reason the engine does not know.
    tl::unexpected<Error> spoil(Error error);

    QStringList columnsOf(const QString& table) const;

private:
    Database(const StoreLocation& location, DatabaseOptions options);
    Result<void> connect();
    void disconnect();
    Result<void> ensureConnected();
    Result<QSqlQuery*> perform(std::string_view sql, std::initializer_list<Parameter> values);
    Result<QSqlQuery*> performWith(std::string_view sql, const Parameter* values, std::size_t count);
    Result<QSqlQuery*> prepared(std::string_view sql);
    QString inDialect(std::string_view sql) const;
    Result<void> control(std::string_view sql);
    Result<void> begin(Begin kind);
    void end(Begin kind, bool isOver);
    Result<void> finish(QSqlQuery& query);
    tl::unexpected<Error> fault(const QSqlError& error);

    Engine m_engine;
    StoreLocation m_location;
    DatabaseOptions m_options;
    QString m_name; ///< of the connection, unique in the process
    QSqlDatabase m_connection;
    std::map<std::string, std::unique_ptr<QSqlQuery>, std::less<>> m_statements;
    bool m_inTransaction = false;
    bool m_referenceFault = false; ///< the last fault was a foreign key's
    std::optional<Error> m_spoiled;
};

} // namespace gw
