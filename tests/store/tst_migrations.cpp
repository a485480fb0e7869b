#include <array>
#include <atomic>
#include <thread>

#include <QDir>
#include <QRegularExpression>
#include <QTest>

#include "store/migrator.h"
#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

namespace {

std::unique_ptr<Database> connected(const StorePlace& place)
{
    auto database = Database::open(place.location(), {});
    if (!database)
        qFatal("%s", database.error().sentence.c_str());
    return std::move(*database);
}

Engine engineOf(bool postgres) { return postgres ? Engine::Postgres : Engine::Sqlite; }

Result<void> nothingToKeep(int) { return {}; }

// A store as an older program left it: the first steps only, and the rows that have a table by then.
void makeOlder(const StorePlace& place, int version)
{
    auto steps = migrationsFor(engineOf(place.isPostgres()));
    steps.resize(static_cast<std::size_t>(version));
    auto database = connected(place);
    const auto made = migrate(*database, steps, minute(0), nothingToKeep);
    if (!made)
        qFatal("%s", made.error().sentence.c_str());
    const auto put = [&](const char* sql) {
        if (auto done = database->execute(sql); !done)
            qFatal("%s: %s", sql, done.error().sentence.c_str());
    };
    put("INSERT INTO classes (class_id, name, counted_in) VALUES ('pva_white', 'White PVA', 'g')");
    if (version >= 2) {
        put("INSERT INTO material VALUES ('m', 'White glue', 'pva_white', '', NULL, '', '')");
        put("INSERT INTO place (id, name, assumed_low, assumed_high, note) VALUES ('p', 'Shelf', 10, 25.5, "
            "'')");
    }
    if (version >= 3) {
        put("INSERT INTO container (id, label, material_id, lot, serial, printed_is_use_by, found_undated, "
            "capacity_milli,"
            " dimension, vessel, created_ms) VALUES ('c', 'G1', 'm', 'L1', '', 0, 0, 500000, 'g', '', 1)");
        put("INSERT INTO entry (id, act_id, kind, container_id, at_ms, recorded_ms, seq, delta_milli, "
            "place_id, lot,"
            " grainy, note, device) VALUES ('e', 'a', 'arrived', 'c', 1, 1, 1, 500000, 'p', '', 0, '', '')");
    }
}

QStringList backupsIn(const StorePlace& place)
{
    return QDir(place.folder()).entryList({ QStringLiteral("*.backup") }, QDir::Files, QDir::Name);
}

std::int64_t count(const StorePlace& place, const char* sql)
{
    auto number = connected(place)->number(sql);
    if (!number)
        qFatal("%s: %s", sql, number.error().sentence.c_str());
    return *number;
}

OpenOptions optionsFor(const StorePlace& place)
{
    OpenOptions options;
    options.now = fromMilliseconds(1'750'000'000'000);
    options.backupFolder = place.folder().toStdString();
    options.lockWaitMs = 20'000;
    return options;
}

} // namespace

/// Migrations: their files, and bringing older stores up to date.
class MigrationsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void statements_endWhereALineEndsWithASemicolon_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QStringList>("statements");
        const auto list = [](std::initializer_list<const char*> texts) {
            QStringList out;
            for (const char* text : texts)
                out.append(QString::fromUtf8(text));
            return out;
        };
        QTest::newRow("none") << QByteArray("-- nothing here;\n\n  -- nor here;\n") << QStringList();
        QTest::newRow("two") << QByteArray("CREATE\n  a;\n\nDROP b;\n") << list({ "CREATE\n  a", "DROP b" });
        QTest::newRow("semicolon within a line")
            << QByteArray("T BEGIN x; END;\nU;\n") << list({ "T BEGIN x; END", "U" });
        QTest::newRow("comment within") << QByteArray("A\n-- why;\n  b;") << list({ "A\n  b" });
        QTest::newRow("blanks and returns at line ends")
            << QByteArray("A;  \r\nB;\r\n") << list({ "A", "B" });
        QTest::newRow("no end") << QByteArray("A;\nB\n") << list({ "A", "B\n" });
    }
    void statements_endWhereALineEndsWithASemicolon()
    {
        QFETCH(QByteArray, text);
        QFETCH(QStringList, statements);
        QStringList found;
        for (const auto& statement : statementsOf(text.toStdString()))
            found.append(QString::fromStdString(statement));
        QCOMPARE(found, statements);
    }

    void files_areNumberedAndWhole()
    {
        const QDir folder(QStringLiteral(GW_SOURCE_DIR "/db/migrations"));
        const QStringList names = folder.entryList({ QStringLiteral("*.sql") }, QDir::Files, QDir::Name);
        QVERIFY(names.size() >= 2);
        QFile resources(folder.filePath(QStringLiteral("migrations.qrc")));
        QVERIFY(resources.open(QIODevice::ReadOnly));
        const QString listed = QString::fromUtf8(resources.readAll());
        static const QRegularExpression pattern(
            QStringLiteral(R"(^\d{4}_[a-z_]+(\.sqlite|\.postgres)?\.sql$)"));
        for (const QString& name : names) {
            QVERIFY2(pattern.match(name).hasMatch(), qPrintable(name));
            QVERIFY2(
                listed.contains(u'>' + name + u'<'), qPrintable(name + QStringLiteral(" is not built in")));
            QFile file(folder.filePath(name));
            QVERIFY(file.open(QIODevice::ReadOnly));
            for (const auto& statement : statementsOf(file.readAll().toStdString()))
                QVERIFY2(!statement.ends_with('\n'),
                    qPrintable(name + QStringLiteral(" ends without a semicolon")));
        }
        for (const bool postgres : { false, true }) {
            const auto steps = migrationsFor(engineOf(postgres));
            for (std::size_t i = 0; i < steps.size(); ++i) {
                QCOMPARE(steps[i].version, static_cast<int>(i) + 1);
                QCOMPARE(steps[i].checksum.size(), 64U);
                QVERIFY(!steps[i].statements.empty());
            }
        }
        QCOMPARE(migrationsFor(Engine::Sqlite).size(), migrationsFor(Engine::Postgres).size());
    }

    void bothEngines_shareThePortableSteps()
    {
        const auto sqlite = migrationsFor(Engine::Sqlite), postgres = migrationsFor(Engine::Postgres);
        for (std::size_t i = 0; i < sqlite.size(); ++i)
            QCOMPARE(sqlite[i].checksum == postgres[i].checksum, !sqlite[i].topic.ends_with("guards"));
    }

    void newStore_isMadeWholeAndNotBackedUp_data() { addEngines(); }
    void newStore_isMadeWholeAndNotBackedUp()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        const auto latest = static_cast<int>(migrationsFor(engineOf(postgres)).size());
        {
            auto store = openAt(place);
            QVERIFY(store->isNew());
            QCOMPARE(store->schemaVersion(), latest);
        }
        auto store = openAt(place);
        QVERIFY(!store->isNew());
        QCOMPARE(store->schemaVersion(), latest);
        QVERIFY(backupsIn(place).isEmpty());
        QCOMPARE(count(place, "SELECT COUNT(*) FROM schema_migration"), latest);
        QCOMPARE(count(place, "SELECT MIN(applied_ms) FROM schema_migration"), 1'750'000'000'000);
        QVERIFY(store->verify()->ok);
    }

    void olderStore_isBackedUpThenBroughtUpToDate_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<int>("version");
        for (const bool postgres : { false, true }) {
            for (int version = 1; version < static_cast<int>(migrationsFor(engineOf(postgres)).size());
                ++version)
                QTest::addRow("%s from %d", postgres ? "postgresql" : "sqlite", version)
                    << postgres << version;
        }
    }
    void olderStore_isBackedUpThenBroughtUpToDate()
    {
        QFETCH(bool, postgres);
        QFETCH(int, version);
        StorePlace place(postgres);
        makeOlder(place, version);
        auto store = openAt(place);
        QVERIFY(!store->isNew());
        QCOMPARE(store->schemaVersion(), static_cast<int>(migrationsFor(engineOf(postgres)).size()));
        QCOMPARE(store->classes()->front().name, "White PVA");
        QCOMPARE(store->places()->size(), version >= 2 ? 1U : 0U);
        QCOMPARE(store->entriesUpTo(minute(0))->size(), version >= 3 ? 1U : 0U);
        const auto report = store->verify();
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());

        const QStringList backups = backupsIn(place);
        QCOMPARE(backups.size(), 1);
        QVERIFY2(backups.front().contains(QStringLiteral("schema%1-20250615T").arg(version)),
            qPrintable(backups.front()));
        auto kept = Database::open({ place.file(backups.front()) }, {});
        GW_OK(kept);
        QCOMPARE((*kept)->number("SELECT MAX(version) FROM schema_migration").value(), version);
        QCOMPARE((*kept)->number("SELECT COUNT(*) FROM classes").value(), 1);
        if (version >= 3)
            QCOMPARE((*kept)->number("SELECT SUM(delta_milli) FROM entry").value(), 500'000);
        // The old program's backup is a store that opens like any older one.
        kept->reset();
        OpenOptions options = optionsFor(place);
        auto opened = Store::open({ place.file(backups.front()) }, options);
        GW_OK(opened);
        QVERIFY((*opened)->verify()->ok);
    }

    void olderStore_thatCannotBeBackedUp_isLeftAsItIs_data() { addEngines(); }
    void olderStore_thatCannotBeBackedUp_isLeftAsItIs()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        makeOlder(place, 2);
        OpenOptions options = optionsFor(place);
        options.backupFolder = place.file(QStringLiteral("no-such-folder"));
        GW_FAILS(Store::open(place.location(), options), ErrorCode::FileUnwritable);
        QCOMPARE(count(place, "SELECT MAX(version) FROM schema_migration"), 2);
        options.backupFolder.clear();
        if (postgres) {
            GW_FAILS(Store::open(place.location(), options), ErrorCode::BadInput);
        } else {
            // A file has a folder to stand beside it in.
            GW_OK(Store::open(place.location(), options));
            QCOMPARE(backupsIn(place).size(), 1);
        }
    }

    void stepThatFails_leavesTheStoreAsItWas_data() { addEngines(); }
    void stepThatFails_leavesTheStoreAsItWas()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        makeOlder(place, 2);
        auto steps = migrationsFor(engineOf(postgres));
        auto broken = steps;
        broken[3].statements = { "CREATE TABLE left_over (id TEXT)", "CREATE TABLE entry (id TEXT)" };
        auto database = connected(place);
        const auto failed = migrate(*database, broken, minute(1), nothingToKeep);
        QVERIFY(!failed.has_value());
        QVERIFY2(failed.error().sentence.find("Step 4 (guards)") != std::string::npos,
            failed.error().sentence.c_str());
        QCOMPARE(count(place, "SELECT COUNT(*) FROM schema_migration"), 2);
        QVERIFY(!database->number("SELECT COUNT(*) FROM left_over").has_value());
        QVERIFY(!database->number("SELECT COUNT(*) FROM container").has_value());
        // The right steps go through on the same connection.
        GW_OK(migrate(*database, steps, minute(2), nothingToKeep));
        QCOMPARE(count(place, "SELECT COUNT(*) FROM schema_migration"), static_cast<int>(steps.size()));
        QCOMPARE(count(place, "SELECT COUNT(*) FROM place"), 1);
    }

    void strangeHistory_isRefused_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<QString>("sql");
        QTest::addColumn<int>("code");
        for (const bool postgres : { false, true }) {
            const auto row = [&](const char* what, const char* sql, ErrorCode code) {
                QTest::addRow("%s: %s", postgres ? "postgresql" : "sqlite", what)
                    << postgres << QString::fromUtf8(sql) << static_cast<int>(code);
            };
            row("newer",
                "INSERT INTO schema_migration SELECT MAX(version) + 1, 'x', 1, '9.9.9' FROM schema_migration",
                ErrorCode::StoreNewer);
            row("much newer",
                "INSERT INTO schema_migration SELECT MAX(version) + 7, 'x', 1, '9.9.9' FROM schema_migration",
                ErrorCode::StoreNewer);
            row("changed step", "UPDATE schema_migration SET checksum = 'abc' WHERE version = 2",
                ErrorCode::StoreDamaged);
            row("missing step", "DELETE FROM schema_migration WHERE version = 2", ErrorCode::StoreDamaged);
            row("other columns", "ALTER TABLE schema_migration RENAME COLUMN checksum TO sum",
                ErrorCode::StoreForeign);
        }
    }
    void strangeHistory_isRefused()
    {
        QFETCH(bool, postgres);
        QFETCH(QString, sql);
        QFETCH(int, code);
        StorePlace place(postgres);
        stock(*openAt(place));
        QCOMPARE(place.asStranger(sql), QString());
        const auto refused = Store::open(place.location(), optionsFor(place));
        GW_FAILS(refused, static_cast<ErrorCode>(code));
        if (code == static_cast<int>(ErrorCode::StoreNewer))
            QVERIFY2(refused.error().sentence.find("9.9.9") != std::string::npos,
                refused.error().sentence.c_str());
        QVERIFY(backupsIn(place).isEmpty());
        QCOMPARE(count(place, "SELECT COUNT(*) FROM entry"), 2);
    }

    void severalAtOnce_makeOneStore_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<int>("older");
        QTest::newRow("sqlite, new") << false << 0;
        QTest::newRow("sqlite, older") << false << 2;
        QTest::newRow("postgresql, new") << true << 0;
        QTest::newRow("postgresql, older") << true << 2;
    }
    void severalAtOnce_makeOneStore()
    {
        QFETCH(bool, postgres);
        QFETCH(int, older);
        StorePlace place(postgres);
        if (older > 0)
            makeOlder(place, older);
        constexpr int tablets = 4;
        std::array<std::string, tablets> faults;
        std::atomic<int> made = 0;
        std::vector<std::thread> threads;
        for (std::string& fault : faults) {
            threads.emplace_back([&] {
                auto store = Store::open(place.location(), optionsFor(place));
                if (!store)
                    fault = store.error().sentence;
                else
                    made += (*store)->isNew() ? 1 : 0;
            });
        }
        for (auto& thread : threads)
            thread.join();
        for (const auto& fault : faults)
            QCOMPARE(fault, "");
        QCOMPARE(made.load(), older == 0 ? 1 : 0);
        QCOMPARE(backupsIn(place).size(), older == 0 ? 0 : 1);
        QCOMPARE(count(place, "SELECT COUNT(*) FROM schema_migration"),
            static_cast<std::int64_t>(migrationsFor(engineOf(postgres)).size()));
        QVERIFY(openAt(place)->verify()->ok);
    }
};

QTEST_GUILESS_MAIN(MigrationsTest)
#include "tst_migrations.moc"
