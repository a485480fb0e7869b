#include <QTest>

#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

/// Verify: a sound store passes, and each way of being unsound is found and told.
class VerifyTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void soundStore_passes_data() { addEngines(); }
    void soundStore_passes()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        QVERIFY(store->verify()->ok);
        stock(*store);
        const auto report = store->verify();
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
        QCOMPARE(report->engine, postgres ? "postgresql" : "sqlite");
        QCOMPARE(report->schemaVersion, store->schemaVersion());
        QCOMPARE(report->containers, 2);
        QCOMPARE(report->entries, 2);
    }

    void unsoundStore_isToldWhere_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<QString>("sql");
        QTest::addColumn<QString>("told");
        const auto row = [](const char* what, bool postgres, const char* sql, const char* told) {
            QTest::addRow("%s: %s", postgres ? "postgresql" : "sqlite", what)
                << postgres << QString::fromUtf8(sql) << QString::fromUtf8(told);
        };
        constexpr const char* guards = "guards that keep the ledger";
        row("guard gone", false, "DROP TRIGGER entry_never_goes", guards);
        row("guard altered", false,
            "DROP TRIGGER entry_never_changes; CREATE TRIGGER entry_never_changes BEFORE UPDATE ON entry "
            "BEGIN SELECT 1; END",
            guards);
        row("guard gone", true, "DROP TRIGGER entry_never_changes ON entry", guards);
        row("guard asleep", true, "ALTER TABLE entry DISABLE TRIGGER entry_never_changes", guards);
        row("guard of half the acts", true,
            "DROP TRIGGER entry_never_changes ON entry; CREATE TRIGGER entry_never_changes BEFORE UPDATE ON "
            "entry FOR EACH "
            "STATEMENT EXECUTE FUNCTION entry_refuse(); ALTER TABLE entry ENABLE ALWAYS TRIGGER "
            "entry_never_changes",
            guards);
        row("guard hollow", true,
            "CREATE OR REPLACE FUNCTION entry_refuse() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RETURN "
            "NULL; END $$",
            guards);
        row("guard of batches gone", false, "DROP TRIGGER batch_note_never_goes", guards);
        row("guard of batches gone", true, "DROP TRIGGER batch_part_never_changes ON batch_part", guards);
        for (const bool postgres : { false, true }) {
            const char* without
                = postgres ? "SET session_replication_role = replica; " : "PRAGMA foreign_keys = OFF; ";
            const QByteArray orphan = QByteArray(without) + "DELETE FROM container WHERE id = 'container-b'";
            row("entry of no container", postgres, orphan.constData(),
                "\"entry-b-arrived\" names a row of container");
            const QByteArray lost = QByteArray(without) + "DELETE FROM place";
            row("entry of no place", postgres, lost.constData(), "names a row of place");
            const QByteArray classless
                = QByteArray(without) + "DELETE FROM classes WHERE class_id = 'pva_white'";
            row("material of no class", postgres, classless.constData(),
                "\"White glue\" names a row of classes");
            const QByteArray reversal = QByteArray(without)
                + "INSERT INTO entry (id, act_id, kind, container_id, at_ms, recorded_ms, seq, delta_milli, "
                  "lot, grainy, note, "
                  "device, reverses) VALUES ('r', 'r', 'reversed', 'container-a', 1, 1, 1, 7, '', 0, '', '', "
                  "'gone')";
            row("reversal of nothing", postgres, reversal.constData(), "\"r\" names a row of entry");
            row("reversal of another amount", postgres,
                "INSERT INTO entry (id, act_id, kind, container_id, at_ms, recorded_ms, seq, delta_milli, "
                "lot, grainy, note, "
                "device, reverses) VALUES ('r', 'r', 'reversed', 'container-a', 1, 1, 1, -7, '', 0, '', '', "
                "'entry-a-arrived')",
                "\"r\" undoes another one but does not take back");
            row("reversal on another container", postgres,
                "INSERT INTO entry (id, act_id, kind, container_id, at_ms, recorded_ms, seq, delta_milli, "
                "lot, grainy, note, "
                "device, reverses) VALUES ('r', 'r', 'reversed', 'container-b', 1, 1, 1, -500000, '', 0, '', "
                "'', "
                "'entry-a-arrived')",
                "\"r\" undoes another one but does not take back");
            row("batch never mixed", postgres,
                "INSERT INTO batch (id, label, recipe_id, name, made_ms, amount_milli, dimension, who, "
                "created_ms) VALUES ('n', 'Gn', 'hot_hide', 'Glue', 1, 1, 'g', '', 1)",
                "\"Gn\" has no note of its mixing");
            row("label of a container on a batch", postgres,
                "INSERT INTO batch (id, label, recipe_id, name, made_ms, amount_milli, dimension, who, "
                "created_ms) VALUES ('n', 'Ga', 'hot_hide', 'Glue', 1, 1, 'g', '', 1)",
                "\"Ga\" is on two containers or batches");
            row("part that was never taken", postgres,
                "INSERT INTO batch (id, label, recipe_id, name, made_ms, amount_milli, dimension, who, "
                "created_ms) VALUES ('n', 'Gn', 'hot_hide', 'Glue', 1, 1, 'g', '', 1); INSERT INTO "
                "batch_part "
                "(batch_id, part, key, what, amount_milli, dimension, container_id, entry_id) VALUES ('n', "
                "1, "
                "'granules', 'Dry glue', 5, 'g', 'container-a', 'entry-a-arrived')",
                "\"Dry glue\" of a batch is not what the ledger took");
            row("less than nothing", postgres,
                "INSERT INTO entry (id, act_id, kind, container_id, at_ms, recorded_ms, seq, delta_milli, "
                "lot, grainy, note, "
                "device) VALUES ('u', 'u', 'used', 'container-a', 1, 1, 1, -500001, '', 0, '', '')",
                "\"Ga\" holds less than nothing");
            row("container without entries", postgres,
                "INSERT INTO container (id, label, material_id, lot, serial, printed_is_use_by, "
                "found_undated, capacity_milli, "
                "dimension, vessel, created_ms) VALUES ('n', 'Gn', 'material-white', '', '', 0, 0, 1, 'g', "
                "'', 1)",
                "\"Gn\" has no entry");
            row("date that is none", postgres,
                "UPDATE container SET made = '2026-02-30' WHERE id = 'container-a'", "\"2026-02-30\"");
            row("readings cut short", postgres, "UPDATE reading_month SET packed = substr(packed, 1, 20)",
                "The readings of \"Shelf\" for 2026-05 are damaged");
            row("a reading altered", postgres,
                postgres ? "UPDATE reading_month SET packed = set_byte(packed, 20, 7)"
                         : "UPDATE reading_month SET packed = CAST(substr(packed, 1, 20) || x'07' || "
                           "substr(packed, 22) AS BLOB)",
                "The readings of \"Shelf\" for 2026-05 are damaged");
            row("readings of another month", postgres, "UPDATE reading_month SET month = '2026-04'",
                "The readings of \"Shelf\" for 2026-04 are damaged");
            const QByteArray nowhere = QByteArray(without) + "UPDATE reading_month SET place_id = 'gone'";
            row("readings of no place", postgres, nowhere.constData(),
                "\"2026-05\" names a row of place that is not there");
            row("changed history", postgres, "UPDATE schema_migration SET checksum = 'x' WHERE version = 3",
                "step 3");
        }
        row("label twice", true,
            "ALTER TABLE container DROP CONSTRAINT container_label_key; UPDATE container SET label = 'Ga'",
            "\"Ga\" is on two containers");
        row("undone twice", true,
            "DROP INDEX entry_reversed_once; INSERT INTO entry (id, act_id, kind, container_id, at_ms, "
            "recorded_ms, seq, "
            "delta_milli, lot, grainy, note, device, reverses) SELECT 'r' || n, 'r', 'reversed', "
            "'container-a', 1, 1, n, "
            "-500000, '', 0, '', '', 'entry-a-arrived' FROM generate_series(1, 2) n",
            "\"entry-a-arrived\" was undone twice");
        row("index out of step", false,
            "PRAGMA writable_schema = ON; PRAGMA schema_version = 999; UPDATE sqlite_master SET sql = "
            "'CREATE INDEX entry_act ON entry "
            "(note)' WHERE name = "
            "'entry_act'",
            "The file is damaged");
        row("value no check would pass", false,
            "PRAGMA ignore_check_constraints = ON; UPDATE container SET printed_is_use_by = 7",
            "The file is damaged");
    }
    void unsoundStore_isToldWhere()
    {
        QFETCH(bool, postgres);
        QFETCH(QString, sql);
        QFETCH(QString, told);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        GW_OK(store->addReadings(shelf().id,
            std::vector { Reading { minute(1), Celsius { 18.25 }, 50.0 },
                Reading { minute(11), Celsius { 18.5 }, {} } }));
        QCOMPARE(place.asStranger(sql), QString());
        const auto report = store->verify();
        GW_OK(report);
        QVERIFY(!report->ok);
        QStringList problems;
        for (const auto& problem : report->problems) {
            problems.append(QString::fromStdString(problem));
            QVERIFY2(problem.ends_with('.'), problem.c_str());
        }
        QVERIFY2(problems.join(u'\n').contains(told), qPrintable(problems.join(u'\n')));
    }

    void manyOfAKind_areToldInShort()
    {
        StorePlace place(false);
        auto store = openAt(place);
        stock(*store);
        for (int i = 0; i < 12; ++i)
            GW_OK(store->addContainer(bottle(std::to_string(i))));
        const auto report = store->verify();
        GW_OK(report);
        QCOMPARE(report->problems.size(), 6U);
        QCOMPARE(report->problems.back(), "The same holds of 7 more.");
    }
};

QTEST_GUILESS_MAIN(VerifyTest)
#include "tst_verify.moc"
