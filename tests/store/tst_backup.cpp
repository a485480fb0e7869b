#include <atomic>
#include <functional>
#include <map>
#include <set>
#include <thread>

#include <QDir>
#include <QFile>
#include <QTest>

#include "store/copytables.h"
#include "store/migrator.h"
#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

namespace {

std::string worded(const QVariant& cell)
{
    if (cell.isNull())
        return "NULL";
    if (cell.typeId() == QMetaType::Double)
        return QString::number(cell.toDouble(), 'g', 17).toStdString();
    return cell.toString().toStdString();
}

// Everything in a store as text, table by table, whatever engine it is on.
std::map<std::string, std::multiset<std::string>> contentOf(const StoreLocation& location)
{
    auto database = Database::open(location, {});
    if (!database)
        qFatal("%s", database.error().sentence.c_str());
    std::map<std::string, std::multiset<std::string>> content;
    for (const auto& table : storeTables()) {
        const auto columns = (*database)->columnsOf(QString::fromStdString(table));
        auto& rows = content[table];
        const auto sql = QStringLiteral("SELECT \"%1\" FROM %2")
                             .arg(columns.join(QStringLiteral("\", \"")), QString::fromStdString(table));
        const auto read = (*database)->visit(sql.toStdString(), [&](Row& row) -> Result<void> {
            std::string line;
            for (const QString& column : columns) {
                const QVariant cell = row.any();
                line += column.toStdString() + "=" + worded(cell) + "\n";
            }
            rows.insert(line);
            return {};
        });
        if (!read)
            qFatal("%s", read.error().sentence.c_str());
    }
    return content;
}

QByteArray bytesOf(const std::string& file)
{
    QFile in(QString::fromStdString(file));
    return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
}

void fill(Store& store)
{
    stock(store);
    // Every table has a row, every kind of column a value that is easily lost on the way.
    MaterialRecord hardener;
    hardener.id = { "material-hardener" };
    hardener.name = "Härter 'schnell' \\ \"B\"";
    hardener.partner = whiteGlue().id;
    PackRecord pack { { "pack-1" }, whiteGlue().id, "09521234543213", grams(500), Money { 1250, "EUR" }, "x",
        1.0 / 3 };
    Entry used = entryOn("a", EntryKind::Used, -12'345, "used", minute(10));
    used.job = JobId { "job-1" };
    used.note = "Zeile\nzwei\t\xE2\x9C\x93";
    Entry undone = entryOn("a", EntryKind::Reversed, 12'345, "undone", minute(11));
    undone.reverses = used.id;
    PlaceRecord cellar;
    cellar.id = { "place-cellar" };
    cellar.name = "Cellar";
    cellar.assumed.quarters[3] = Range<Celsius> { Celsius { -1.0 / 3 }, Celsius { 12 } };
    cellar.follows = Follow { shelf().id, -2.5, 0.1 };
    std::vector<Reading> readings;
    for (int i = 0; i < 256; ++i)
        readings.push_back({ minute(i * 7), Celsius { (i - 128) * 0.61 }, i / 2.56 });
    ContainerRecord jar = bottle("jar");
    jar.parent = bottle("a").id;
    jar.pack = pack.id;
    const auto done = store.transact([&]() -> Result<void> {
        for (const auto& step : std::initializer_list<std::function<Result<void>()>> {
                 [&] { return store.saveMaterial(hardener); }, [&] { return store.savePack(pack); },
                 [&] { return store.saveJob({ { "job-1" }, { "chair" }, "Reglue", "Chair", minute(9) }); },
                 [&] { return store.addContainer(jar); },
                 [&] {
                     return store.append(
                         { used, undone, entryOn("jar", EntryKind::Decanted, 1, "jar", minute(12)) });
                 },
                 [&] { return store.setClassFigure({ "pva_white" }, "density", 1.25, {}, {}, minute(3)); },
                 [&] { return store.saveCase({ "19521234543210", pack.id, 6 }); },
                 [&] { return store.setLotDateReading(hardener.id, "YYJJJ@1"); },
                 [&] {
                     return store.saveLabelPhoto(hardener.id, { minute(2), std::string("\0\xff'\\\x80", 5) });
                 },
                 [&] { return store.addGlueUp(gluedChair(), { std::string("\xff\xd8\0'", 4) }); },
                 [&] { return store.undoGlueUp(gluedChair().id, { "act-undone" }, minute(12), "bench"); },
                 [&] { return store.setSetting("currency", "EUR"); }, [&] { return store.savePlace(cellar); },
                 [&]() -> Result<void> {
                     const auto added = store.addReadings(cellar.id, readings);
                     return added ? Result<void> {} : tl::unexpected(added.error());
                 } }) {
            if (auto stepped = step(); !stepped)
                return stepped;
        }
        return {};
    });
    if (!done)
        qFatal("%s", done.error().sentence.c_str());
    if (const auto mixed = mix(store, potOf("b", "1")); !mixed)
        qFatal("%s", mixed.error().sentence.c_str());
}

} // namespace

/// Backups: whole, consistent, readable on either engine, and restored in one piece or not at all.
class BackupTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void storeTables_nameEveryTable_data() { addEngines(); }
    void storeTables_nameEveryTable()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        openAt(place);
        auto database = Database::open(place.location(), {});
        GW_OK(database);
        const auto there = (*database)->list(postgres
                ? "SELECT table_name FROM information_schema.tables WHERE table_schema = 'public'"
                : "SELECT name FROM sqlite_master WHERE type = 'table'",
            [](Row& row) { return row.text(); });
        GW_OK(there);
        std::set<std::string> expected(there->begin(), there->end());
        QVERIFY(expected.erase("schema_migration") == 1);
        const auto tables = storeTables();
        QVERIFY(std::set<std::string>(tables.begin(), tables.end()) == expected);
    }

    void backup_restoresOnEitherEngine_data()
    {
        QTest::addColumn<bool>("from");
        QTest::addColumn<bool>("to");
        QTest::newRow("sqlite to sqlite") << false << false;
        QTest::newRow("sqlite to postgresql") << false << true;
        QTest::newRow("postgresql to sqlite") << true << false;
        QTest::newRow("postgresql to postgresql") << true << true;
    }
    void backup_restoresOnEitherEngine()
    {
        QFETCH(bool, from);
        QFETCH(bool, to);
        StorePlace source(from), target(to);
        const std::string file = source.file(QStringLiteral("shop.backup"));
        const std::string kept = target.file(QStringLiteral("kept.backup"));
        {
            auto store = openAt(source);
            fill(*store);
            const auto report = store->backup(file);
            GW_OK(report);
            QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
            QCOMPARE(report->engine, from ? "postgresql" : "sqlite");
            QCOMPARE(report->containers, 3);
            QCOMPARE(report->entries, 6);
            QCOMPARE(report->schemaVersion, store->schemaVersion());
        }
        QCOMPARE(QDir(source.folder()).entryList({ QStringLiteral("*backup*") }, QDir::Files).size(), 1);
        const QByteArray bytes = bytesOf(file);
        auto store = openAt(target);
        // What is there before is replaced, and kept.
        stock(*store);
        GW_OK(store->setSetting("before", "yes"));
        const auto before = contentOf(target.location());
        const auto report = store->restore(file, kept);
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
        QCOMPARE(report->engine, to ? "postgresql" : "sqlite");
        QCOMPARE(report->containers, 3);
        QVERIFY(contentOf(target.location()) == contentOf(source.location()));
        QVERIFY(contentOf({ kept }) == before);
        QVERIFY2(bytesOf(file) == bytes, "restoring changed the backup");

        // The store is of use afterwards, guarded, and what was kept goes back in.
        GW_OK(store->append({ entryOn("a", EntryKind::Used, -1, "after", minute(20)) }));
        QVERIFY(!target.asStranger(QStringLiteral("DELETE FROM entry")).isEmpty());
        QVERIFY(!target.asStranger(QStringLiteral("UPDATE entry SET note = 'x'")).isEmpty());
        QVERIFY(!target.asStranger(QStringLiteral("UPDATE batch_note SET note = 'x'")).isEmpty());
        QVERIFY(!target.asStranger(QStringLiteral("DELETE FROM glue_up_undone")).isEmpty());
        GW_OK(store->restore(kept, target.file(QStringLiteral("kept-again.backup"))));
        QVERIFY(contentOf(target.location()) == before);
        QCOMPARE(store->setting("before")->value(), "yes");
        store.reset();
        QVERIFY(!openAt(target)->isNew());
    }

    void backup_replacesAnEarlierOneOnly_data() { addEngines(); }
    void backup_replacesAnEarlierOneOnly()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const std::string file = place.file(QStringLiteral("daily.backup"));
        GW_OK(store->backup(file));
        GW_OK(store->append({ entryOn("a", EntryKind::Used, -1, "later", minute(20)) }));
        GW_OK(store->backup(file));
        QCOMPARE(contentOf({ file }).at("entry").size(), 3U);

        const std::string letter = place.file(QStringLiteral("letter.txt"));
        QFile out(QString::fromStdString(letter));
        QVERIFY(out.open(QIODevice::WriteOnly) && out.write("Dear client") > 0);
        out.close();
        GW_FAILS(store->backup(letter), ErrorCode::FileUnwritable);
        QCOMPARE(bytesOf(letter), QByteArray("Dear client"));
        GW_FAILS(store->backup(place.folder().toStdString()), ErrorCode::FileUnwritable);
        GW_FAILS(
            store->backup(place.file(QStringLiteral("no/such/folder.backup"))), ErrorCode::FileUnwritable);
        GW_FAILS(store->backup(""), ErrorCode::BadInput);
        if (!postgres) {
            GW_FAILS(store->backup(place.location().where), ErrorCode::FileUnwritable);
            StorePlace other(false);
            auto inUse = openAt(other);
            stock(*inUse);
            GW_FAILS(store->backup(other.location().where), ErrorCode::FileUnwritable);
            QVERIFY(inUse->verify()->ok);
        }
    }

    void backup_isAWholeStoreWhileOthersWrite_data() { addEngines(); }
    void backup_isAWholeStoreWhileOthersWrite()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        stock(*openAt(place));
        std::atomic<bool> stop = false;
        std::atomic<int> written = 0;
        std::string fault;
        // Each act pours one gram from a to b: at any one moment both together hold 1000 g.
        std::thread writer([&] {
            OpenOptions options;
            options.lockWaitMs = 20'000;
            auto store = Store::open(place.location(), options);
            for (int i = 0; store && !stop; ++i) {
                const std::string n = std::to_string(i);
                const auto done = (*store)->append({ entryOn("a", EntryKind::Used, -1, "out" + n, minute(10)),
                    entryOn("b", EntryKind::Counted, 1, "in" + n, minute(10)) });
                if (!done)
                    fault = done.error().sentence;
                ++written;
            }
        });
        auto store = openAt(place);
        QVERIFY(QTest::qWaitFor([&] { return written > 5; }, 10'000));
        for (int i = 0; i < 3; ++i) {
            const int before = written;
            const std::string file = place.file(QStringLiteral("busy%1.backup").arg(i));
            const auto report = store->backup(file);
            QVERIFY2(report && report->ok, report ? "problems" : report.error().sentence.c_str());
            auto copy = Database::open({ file }, {});
            GW_OK(copy);
            QCOMPARE((*copy)->number("SELECT SUM(delta_milli) FROM entry").value(), 1'000'000);
            QVERIFY(QTest::qWaitFor([&] { return written > before; }, 10'000));
        }
        stop = true;
        writer.join();
        QCOMPARE(fault, "");
        QVERIFY(store->verify()->ok);
    }

    // A backup may be asked for while an act of another tablet is open; it shows the moment before that act.
    void backup_doesNotSeeAnActThatIsNotDone_data() { addEngines(); }
    void backup_doesNotSeeAnActThatIsNotDone()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto one = openAt(place), two = openAt(place);
        stock(*one);
        const std::string file = place.file(QStringLiteral("during.backup"));
        GW_OK(one->transact([&]() -> Result<void> {
            if (auto done = one->append({ entryOn("a", EntryKind::Used, -1, "open-act", minute(10)) }); !done)
                return done;
            const auto report = two->backup(file);
            return report ? Result<void> {} : tl::unexpected(report.error());
        }));
        QCOMPARE(contentOf({ file }).at("entry").size(), 2U);
    }

    void restore_ofWhatIsNoBackup_changesNothing_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<QString>("what");
        QTest::addColumn<int>("code");
        for (const bool postgres : { false, true }) {
            const auto row = [&](const char* what, ErrorCode code) {
                QTest::addRow("%s: %s", postgres ? "postgresql" : "sqlite", what)
                    << postgres << QString::fromUtf8(what) << static_cast<int>(code);
            };
            row("missing", ErrorCode::FileUnreadable);
            row("a folder", ErrorCode::FileUnreadable);
            row("empty", ErrorCode::StoreForeign);
            row("text", ErrorCode::StoreForeign);
            row("somebody's database", ErrorCode::StoreForeign);
            row("newer", ErrorCode::StoreNewer);
            row("cut off", ErrorCode::StoreDamaged);
            row("pages overwritten", ErrorCode::StoreDamaged);
            row("entry of no container", ErrorCode::StoreDamaged);
            row("changed history", ErrorCode::StoreDamaged);
            row("kept over itself", ErrorCode::BadInput);
            row("nowhere to keep", ErrorCode::FileUnwritable);
        }
    }
    void restore_ofWhatIsNoBackup_changesNothing()
    {
        QFETCH(bool, postgres);
        QFETCH(QString, what);
        QFETCH(int, code);
        StorePlace place(postgres), other(false);
        std::string file = other.location().where;
        std::string keep = place.file(QStringLiteral("kept.backup"));
        const auto write = [&](const QByteArray& content) {
            QFile out(QString::fromStdString(file));
            QVERIFY(out.open(QIODevice::WriteOnly) && out.write(content) == content.size());
        };
        const auto spoil
            = [&](const char* sql) { QCOMPARE(other.asStranger(QString::fromUtf8(sql)), QString()); };
        if (what != QStringLiteral("missing") && what != QStringLiteral("somebody's database"))
            fill(*openAt(other));
        const std::map<QString, std::function<void()>> wrong {
            { QStringLiteral("missing"), [] {} },
            { QStringLiteral("a folder"), [&] { file = other.folder().toStdString(); } },
            { QStringLiteral("empty"), [&] { write({}); } },
            { QStringLiteral("text"), [&] { write(QByteArray(4096, 'x')); } },
            { QStringLiteral("somebody's database"),
                [&] {
                    write({});
                    spoil("CREATE TABLE entry (id TEXT)");
                } },
            { QStringLiteral("newer"),
                [&] { spoil("INSERT INTO schema_migration VALUES (99, 'x', 1, '9.9')"); } },
            { QStringLiteral("cut off"),
                [&] { QVERIFY(QFile::resize(QString::fromStdString(file), 40'000)); } },
            { QStringLiteral("pages overwritten"),
                [&] {
                    QByteArray bytes = bytesOf(file);
                    for (qsizetype at = 8192; at + 4096 <= bytes.size(); at += 4096)
                        bytes.replace(at, 2000, QByteArray(2000, '\x55'));
                    write(bytes);
                } },
            { QStringLiteral("entry of no container"),
                [&] { spoil("PRAGMA foreign_keys = OFF; DELETE FROM container WHERE id = 'container-b'"); } },
            { QStringLiteral("changed history"),
                [&] { spoil("UPDATE schema_migration SET checksum = 'x'"); } },
            { QStringLiteral("kept over itself"), [&] { keep = file; } },
            { QStringLiteral("nowhere to keep"),
                [&] { keep = place.file(QStringLiteral("no/folder/kept")); } },
        };
        wrong.at(what)();
        auto store = openAt(place);
        stock(*store);
        const auto before = contentOf(place.location());
        const auto restored = store->restore(file, keep);
        GW_FAILS(restored, static_cast<ErrorCode>(code));
        QVERIFY2(code == static_cast<int>(ErrorCode::BadInput)
                || restored.error().sentence.find(what == QStringLiteral("nowhere to keep") ? keep : file)
                    != std::string::npos,
            restored.error().sentence.c_str());
        QVERIFY(contentOf(place.location()) == before);
        QVERIFY(store->verify()->ok);
    }

    void restore_ofAnOlderBackup_bringsItUpToDate_data() { addEngines(); }
    void restore_ofAnOlderBackup_bringsItUpToDate()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres), old(false);
        auto steps = migrationsFor(Engine::Sqlite);
        steps.resize(2);
        {
            auto database = Database::open(old.location(), {});
            GW_OK(database);
            GW_OK(migrate(**database, steps, minute(0), [](int) { return Result<void> {}; }));
            GW_OK((*database)->execute("INSERT INTO place VALUES ('p', 'Cellar', NULL, NULL, '')"));
        }
        auto store = openAt(place);
        const auto report = store->restore(old.location().where, place.file(QStringLiteral("kept.backup")));
        GW_OK(report);
        QVERIFY(report->ok);
        QCOMPARE(store->places()->front().name, "Cellar");
        // The backup itself is as old as it was.
        auto again = Database::open(old.location(), {});
        GW_OK(again);
        QCOMPARE((*again)->number("SELECT MAX(version) FROM schema_migration").value(), 2);
    }

    void restore_ofAStoreInUse_isRefused()
    {
        StorePlace place(false), other(false);
        auto inUse = openAt(other);
        stock(*inUse);
        auto store = openAt(place);
        GW_FAILS(store->restore(other.location().where, place.file(QStringLiteral("kept.backup"))),
            ErrorCode::FileUnreadable);
    }

    // A backup with an odd sum is still the best there is: it goes in, and the report says what is odd.
    void restore_tellsWhatIsOdd()
    {
        StorePlace place(false), other(false);
        auto source = openAt(other);
        stock(*source);
        GW_OK(source->append({ entryOn("a", EntryKind::Used, -600'000, "too much", minute(10)) }));
        const std::string file = other.file(QStringLiteral("odd.backup"));
        const auto made = source->backup(file);
        GW_OK(made);
        QVERIFY(!made->ok);
        auto store = openAt(place);
        const auto report = store->restore(file, place.file(QStringLiteral("kept.backup")));
        GW_OK(report);
        QVERIFY(!report->ok);
        QCOMPARE(report->entries, 3);
        QCOMPARE(report->problems.size(), 1U);
        QVERIFY(report->problems.front().find("\"Ga\"") != std::string::npos);
    }

    void restore_withinAnAct_isRefused_data() { addEngines(); }
    void restore_withinAnAct_isRefused()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const std::string file = place.file(QStringLiteral("a.backup"));
        GW_OK(store->backup(file));
        GW_FAILS(store->transact([&]() -> Result<void> {
            const auto restored = store->restore(file, place.file(QStringLiteral("kept.backup")));
            return restored ? Result<void> {} : tl::unexpected(restored.error());
        }),
            ErrorCode::StoreFailed);
        QVERIFY(store->verify()->ok);
    }
};

QTEST_GUILESS_MAIN(BackupTest)
#include "tst_backup.moc"
