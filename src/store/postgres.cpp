#include "store/postgres.h"

#include <libpq-fe.h>

#include <algorithm>
#include <array>
#include <map>
#include <memory>

#include <QSqlDatabase>
#include <QSqlDriver>
#include <QSqlError>
#include <QSqlQuery>

#include "store/database.h"

namespace gw {

namespace {

using Settings = std::map<std::string, std::string>;

struct FreeConninfo {
    void operator()(PQconninfoOption* options) const { PQconninfoFree(options); }
};
struct FinishConnection {
    void operator()(PGconn* connection) const { PQfinish(connection); }
};

Error unreadable(const std::string& what)
{
    return { ErrorCode::BadInput,
        "The address of the PostgreSQL store cannot be read: " + what
            + "; write it as postgresql://user@host:port/database." };
}

// What the address itself says, keyword by keyword.
Result<Settings> parsed(const std::string& address)
{
    char* words = nullptr;
    const std::unique_ptr<PQconninfoOption, FreeConninfo> options(PQconninfoParse(address.c_str(), &words));
    if (!options) {
        // libpq repeats the address in what it says, password and all.
        const bool percent = words && std::string_view(words).find("percent") != std::string_view::npos;
        PQfreemem(words);
        return tl::unexpected(
            unreadable(percent ? "a character after % is wrong" : "a part of it is wrong or unknown"));
    }
    Settings settings;
    for (const auto* option = options.get(); option->keyword; ++option) {
        if (option->val)
            settings.emplace(option->keyword, option->val);
    }
    // Several hosts may have several ports. libpq would only find out while connecting.
    if (settings.contains("port") && settings["port"].find_first_not_of("0123456789,") != std::string::npos)
        return tl::unexpected(unreadable("the port is no number"));
    return settings;
}

// A server that is switched off, or a network that drops, must not hang the tablet for hours, as TCP alone
// would. Whoever names a service has said it all there.
void addPatience(Settings& settings)
{
    if (settings.contains("service") || qEnvironmentVariableIsSet("PGSERVICE"))
        return;
    if (!qEnvironmentVariableIsSet("PGCONNECT_TIMEOUT"))
        settings.emplace("connect_timeout", "10"); // seconds, as the next three
    settings.emplace("keepalives_idle", "15");
    settings.emplace("keepalives_interval", "5");
    settings.emplace("keepalives_count", "3");
    settings.emplace("tcp_user_timeout", "30000"); // milliseconds
}

QString take(Settings& settings, const std::string& key)
{
    const auto node = settings.extract(key);
    return node ? QString::fromStdString(node.mapped()) : QString();
}

QString quotedSetting(const std::string& value)
{
    QString text = QString::fromStdString(value);
    text.replace(u'\\', QStringLiteral("\\\\")).replace(u'\'', QStringLiteral("\\'"));
    return u'\'' + text + u'\'';
}

constexpr const char* passwordRefused = "28P01";
constexpr const char* noConnection = "08001";

// The SQLSTATE at the end of "connection to server ... failed: FATAL:  28P01", or none.
std::string stateIn(std::string_view said)
{
    while (!said.empty() && (said.back() == '\n' || said.back() == ' '))
        said.remove_suffix(1);
    const std::string_view last = said.substr(said.find_last_of(" :") + 1);
    const bool isState = last.size() == 5
        && std::ranges::all_of(last, [](char c) { return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z'); });
    return isState ? std::string(last) : std::string();
}

// Why the server refused: asked once more with only SQLSTATE for an answer, as its words come in its own
// language.
Error refusal(const std::string& address, const std::string& words, const std::string& shown)
{
    // What stands later in the list counts; a server that is not there at all was waited for already.
    constexpr std::array<const char*, 3> keywords { "dbname", "connect_timeout", nullptr };
    const std::array<const char*, 3> values { address.c_str(), "3", nullptr };
    const std::unique_ptr<PGconn, FinishConnection> connection(
        PQconnectStartParams(keywords.data(), values.data(), 1));
    std::string state;
    if (connection && PQstatus(connection.get()) != CONNECTION_BAD) {
        PQsetErrorVerbosity(connection.get(), PQERRORS_SQLSTATE);
        // Blocks until the server has answered or the connection failed.
        PQreset(connection.get());
        state = PQconnectionNeedsPassword(connection.get()) ? passwordRefused
                                                            : stateIn(PQerrorMessage(connection.get()));
    }
    return faultOf(Engine::Postgres, state.empty() ? noConnection : state, words, shown);
}

} // namespace

std::string shownPostgres(const std::string& address)
{
    auto settings = parsed(address);
    if (!settings)
        return "the PostgreSQL server";
    std::string shown = "postgresql://" + (*settings)["host"];
    if (const std::string port = (*settings)["port"]; !port.empty())
        shown += ":" + port;
    return shown + "/" + (*settings)["dbname"];
}

bool postgresAnswers(const QSqlDatabase& connection)
{
    const QVariant handle = connection.isOpen() ? connection.driver()->handle() : QVariant();
    // Qt's manual calls the type PGconn*; its meta type may name the struct behind that.
    const QByteArrayView type(handle.typeName());
    if (type != "PGconn*" && type != "pg_conn*")
        return false;
    return PQstatus(*static_cast<PGconn* const*>(handle.constData())) == CONNECTION_OK;
}

Result<void> connectPostgres(
    QSqlDatabase& connection, const StoreLocation& location, const DatabaseOptions& options)
{
    auto settings = parsed(location.where);
    if (!settings)
        return tl::unexpected(settings.error());
    addPatience(*settings);
    connection.setHostName(take(*settings, "host"));
    connection.setDatabaseName(take(*settings, "dbname"));
    connection.setUserName(take(*settings, "user"));
    connection.setPassword(take(*settings, "password"));
    QStringList rest;
    for (const auto& [key, value] : *settings) {
        // Qt would turn it into a blank.
        if (value.find(';') != std::string::npos)
            return fail(ErrorCode::BadInput,
                "The address of the PostgreSQL store holds a semicolon in " + key
                    + "; set that on the server instead.");
        rest.append(QString::fromStdString(key) + u'=' + quotedSetting(value));
    }
    connection.setConnectOptions(rest.join(u';'));

    const std::string shown = location.shown();
    if (!connection.open())
        return tl::unexpected(
            refusal(location.where, connection.lastError().databaseText().toStdString(), shown));
    // A tablet that leaves the network in the middle of an act must not hold the others up for ever.
    for (const QString& sql : { QStringLiteral("SET lock_timeout = %1").arg(options.lockWaitMs),
             QStringLiteral("SET idle_in_transaction_session_timeout = 60000"),
             QStringLiteral("SET client_min_messages = warning") }) {
        QSqlQuery query(connection);
        if (!query.exec(sql))
            return tl::unexpected(faultOf(Engine::Postgres, query.lastError(), shown));
    }
    return {};
}

} // namespace gw
