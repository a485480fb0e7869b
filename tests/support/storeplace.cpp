#include "support/storeplace.h"

#include <libpq-fe.h>
#include <sqlite3.h>

#include <QFile>
#include <QFileInfo>
#include <QTest>

#include <unistd.h>

namespace gw::test {

namespace {

QString socketFolder()
{
    QFile record(QStringLiteral(GW_TEST_POSTGRES));
    if (!record.open(QIODevice::ReadOnly))
        qFatal("There is no PostgreSQL for the tests; run them by ctest, or start it first: "
               "tests/support/postgres.sh "
               "start %s",
            GW_TEST_POSTGRES);
    return QString::fromUtf8(record.readAll()).trimmed();
}

QString addressOf(const QString& user, const QString& database)
{
    return QStringLiteral("postgresql://%1@/%2?host=%3&port=5432").arg(user, database, socketFolder());
}

QString ask(const QString& database, const QString& sql)
{
    // A database that a test made read-only must be mended all the same.
    const QString address = addressOf(QStringLiteral("gluewright"), database)
        + QStringLiteral("&options=-c%20default_transaction_read_only%3Doff");
    PGconn* connection = PQconnectdb(address.toUtf8().constData());
    QString said = QString::fromUtf8(PQerrorMessage(connection));
    PQsetNoticeProcessor(connection, [](void*, const char*) { }, nullptr);
    if (PQstatus(connection) == CONNECTION_OK) {
        PGresult* result = PQexec(connection, sql.toUtf8().constData());
        const auto status = PQresultStatus(result);
        said = status == PGRES_COMMAND_OK || status == PGRES_TUPLES_OK
            ? QString()
            : QString::fromUtf8(PQresultErrorMessage(result));
        PQclear(result);
    }
    PQfinish(connection);
    return said;
}

void mustAsk(const QString& database, const QString& sql)
{
    const QString said = ask(database, sql);
    if (!said.isEmpty())
        qFatal("%s: %s", qPrintable(sql), qPrintable(said));
}

// Making a database takes a hundred times as long as emptying one, so a program hands its own on from test to
// test.
QStringList& emptiedDatabases()
{
    static QStringList names;
    return names;
}

} // namespace

StorePlace::StorePlace(bool postgres)
    : m_postgres(postgres)
{
    static int made = 0;
    if (!m_postgres)
        return;
    if (!emptiedDatabases().isEmpty()) {
        m_database = emptiedDatabases().takeLast();
        return;
    }
    m_database = QStringLiteral("gw_%1_%2").arg(QCoreApplication::applicationPid()).arg(++made);
    mustAsk(QStringLiteral("postgres"), QStringLiteral("CREATE DATABASE %1").arg(m_database));
}

StorePlace::~StorePlace()
{
    if (!m_postgres)
        return;
    mustAsk(m_database,
        QStringLiteral("SELECT pg_terminate_backend(pid, 5000) FROM pg_stat_activity"
                       " WHERE datname = current_database() AND pid <> pg_backend_pid()"));
    mustAsk(m_database,
        QStringLiteral(
            "DROP SCHEMA public CASCADE; CREATE SCHEMA public; GRANT USAGE ON SCHEMA public TO PUBLIC"));
    emptiedDatabases().append(m_database);
}

StoreLocation StorePlace::location() const
{
    if (m_postgres)
        return locationFor(QStringLiteral("gluewright"));
    return { file(QStringLiteral("shop.gluewright")) };
}

StoreLocation StorePlace::locationFor(const QString& user, const QString& password) const
{
    return { addressOf(password.isEmpty() ? user : user + u':' + password, m_database).toStdString() };
}

bool StorePlace::putOn(const QString& folder)
{
    const QString server = QStringLiteral("postgres"), space = m_database + QStringLiteral("_disk");
    const QString move = QStringLiteral("ALTER DATABASE %1 SET TABLESPACE %2");
    if (folder.isEmpty())
        return ask(server, move.arg(m_database, QStringLiteral("pg_default"))).isEmpty()
            && ask(server, QStringLiteral("DROP TABLESPACE %1").arg(space)).isEmpty();
    // The server runs as a user of its own and wants the folder for itself.
    const QFileInfo socket(socketFolder());
    for (QString up = folder; up != m_folder.path(); up = QFileInfo(up).path())
        QFile::setPermissions(QFileInfo(up).path(), QFile::Permissions(0x7755));
    return ::chown(QFile::encodeName(folder).constData(), socket.ownerId(), socket.groupId()) == 0
        && ask(server, QStringLiteral("CREATE TABLESPACE %1 LOCATION '%2'").arg(space, folder)).isEmpty()
        && ask(server, move.arg(m_database, space)).isEmpty();
}

QString StorePlace::asStranger(const QString& sql) const
{
    if (m_postgres)
        return ask(m_database, sql);
    sqlite3* connection = nullptr;
    char* words = nullptr;
    QString said;
    if (sqlite3_open_v2(location().where.c_str(), &connection, SQLITE_OPEN_READWRITE, nullptr) != SQLITE_OK
        || sqlite3_busy_timeout(connection, 1000) != SQLITE_OK
        || sqlite3_exec(connection, sql.toUtf8().constData(), nullptr, nullptr, &words) != SQLITE_OK)
        said = QString::fromUtf8(words ? words : sqlite3_errmsg(connection));
    sqlite3_free(words);
    sqlite3_close(connection);
    return said;
}

std::unique_ptr<Store> openAt(const StorePlace& place, Moment now)
{
    OpenOptions options;
    options.now = now;
    options.backupFolder = place.folder().toStdString();
    options.lockWaitMs = 300;
    auto store = Store::open(place.location(), options);
    if (!store)
        qFatal("%s", store.error().sentence.c_str());
    return std::move(*store);
}

void addEngines()
{
    QTest::addColumn<bool>("postgres");
    QTest::newRow("sqlite") << false;
    QTest::newRow("postgresql") << true;
}

} // namespace gw::test
