#include <QTest>

#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

/// What was mixed, and what was noted of it: kept whole, only ever added to, the same on both engines.
class BatchesTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void addBatch_keepsEveryField_data() { addEngines(); }
    void addBatch_keepsEveryField()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const BatchRecord pot = potOf("a", "1");
        GW_OK(mix(*store, pot));
        BatchNote heat = noteOn(pot, BatchNoteKind::HeatOn, "heat", minute(20));
        heat.temperature = Celsius { 61.5 };
        heat.weightMilli = 312'400;
        heat.place = shelf().id;
        heat.note = "für den Stuhl: 'half' \"quoted\" \\ %1 ?";
        BatchNote undone = noteOn(pot, BatchNoteKind::Reversed, "undone", minute(21));
        undone.reverses = heat.id;
        GW_OK(store->appendNotes({ heat, undone }));
        store.reset();
        store = openAt(place);
        for (const auto& read : { store->batch(pot.id), store->batchByLabel(pot.label) }) {
            GW_OK(read);
            QVERIFY(read->has_value());
            const BatchRecord& there = **read;
            QCOMPARE(there.label, pot.label);
            QCOMPARE(there.recipe, pot.recipe);
            QCOMPARE(there.name, pot.name);
            QVERIFY(there.made == pot.made && there.created == pot.created && there.amount == pot.amount);
            QVERIFY(there.place == pot.place && there.who == pot.who);
            QVERIFY(there.parts == pot.parts);
            QVERIFY(there.figures == pot.figures);
        }
        const auto notes = store->batchNotes(pot.id, minute(100));
        GW_OK(notes);
        QCOMPARE(notes->size(), 3U);
        QVERIFY(notes->at(1) == heat);
        QVERIFY(notes->at(2) == undone);
        QCOMPARE(store->batchNotes(pot.id, minute(20))->size(), 2U);
        QCOMPARE(store->batchNotesOfAct(heat.act)->size(), 1U);
        QVERIFY(store->batchNote(heat.id)->value() == heat);
        QVERIFY(!store->batchNote(EntryId { "none" })->has_value());
        const auto report = store->verify();
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
    }

    void batches_leavesOutWhatIsGone_asOfTheMoment_data() { addEngines(); }
    void batches_leavesOutWhatIsGone_asOfTheMoment()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const BatchRecord first = potOf("a", "1"), second = potOf("b", "2");
        GW_OK(mix(*store, first));
        GW_OK(mix(*store, second));
        BatchNote thrown = noteOn(first, BatchNoteKind::ThrownAway, "thrown", minute(30));
        thrown.deltaMilli = -50'000;
        GW_OK(store->appendNotes({ thrown }));
        BatchNote unmixed = noteOn(second, BatchNoteKind::Reversed, "unmixed", minute(40));
        unmixed.deltaMilli = -50'000;
        unmixed.reverses = EntryId { "note-2-mixed" };
        GW_OK(store->appendNotes({ unmixed }));
        const auto standing = [&](int at, bool all) {
            std::size_t count = 0;
            if (const auto batches = store->batches(minute(at), all ? minute(0) : minute(at)))
                count = batches->size();
            return count;
        };
        QCOMPARE(standing(9, false), 0U);
        QCOMPARE(standing(29, false), 2U);
        QCOMPARE(standing(30, false), 1U);
        QCOMPARE(standing(40, false), 0U);
        QCOMPARE(standing(40, true), 2U);
        QCOMPARE(store->batches(minute(40), minute(35))->size(), 1U); // gone since
        BatchNote back = noteOn(first, BatchNoteKind::Reversed, "back", minute(50));
        back.deltaMilli = 50'000;
        back.reverses = thrown.id;
        GW_OK(store->appendNotes({ back }));
        QCOMPARE(standing(50, false), 1U);
        QCOMPARE(standing(49, false), 0U);
    }

    void sentAgain_isTheSame_andOtherContentIsConflict_data() { addEngines(); }
    void sentAgain_isTheSame_andOtherContentIsConflict()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const BatchRecord pot = potOf("a", "1");
        GW_OK(mix(*store, pot));
        GW_OK(store->addBatch(pot));
        BatchNote used = noteOn(pot, BatchNoteKind::Used, "used", minute(20));
        used.deltaMilli = -5'000;
        GW_OK(store->appendNotes({ used }));
        GW_OK(store->appendNotes({ used, used }));
        QCOMPARE(store->batchNotes(pot.id, minute(100))->size(), 2U);
        used.deltaMilli = -6'000;
        GW_FAILS(store->appendNotes({ used }), ErrorCode::Conflict);
        BatchRecord other = pot;
        other.name = "Another glue";
        GW_FAILS(store->addBatch(other), ErrorCode::Conflict);
        other.id = BatchId { "batch-other" };
        other.parts.clear();
        GW_FAILS(store->addBatch(other), ErrorCode::Conflict); // the label
        other.label = bottle("a").label;
        GW_FAILS(store->addBatch(other), ErrorCode::Conflict); // a container's
        BatchNote undone = noteOn(pot, BatchNoteKind::Reversed, "undone", minute(21));
        undone.deltaMilli = 5'000;
        undone.reverses = used.id;
        GW_OK(store->appendNotes({ undone }));
        undone.id = EntryId { "note-undone-twice" };
        GW_FAILS(store->appendNotes({ undone }), ErrorCode::Refused);
        GW_OK(store->lockBatch(pot.id));
        GW_FAILS(store->lockBatch(BatchId { "none" }), ErrorCode::NotFound);
        QCOMPARE(store->batchNotes(pot.id, minute(100))->size(), 3U);
    }

    void theEngine_refusesChanges_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<QString>("sql");
        for (const bool postgres : { false, true }) {
            for (const char* sql : { "UPDATE batch_note SET note = 'x'", "DELETE FROM batch_note",
                     "UPDATE batch_part SET amount_milli = 1", "DELETE FROM batch_part",
                     "UPDATE batch_figure SET low = 0, high = 0", "DELETE FROM batch_figure" })
                QTest::addRow("%s: %s", postgres ? "postgresql" : "sqlite", sql)
                    << postgres << QString::fromUtf8(sql);
        }
        QTest::newRow("postgresql: truncate") << true << QStringLiteral("TRUNCATE batch_note CASCADE");
    }
    void theEngine_refusesChanges()
    {
        QFETCH(bool, postgres);
        QFETCH(QString, sql);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        GW_OK(mix(*store, potOf("a", "1")));
        QVERIFY2(!place.asStranger(sql).isEmpty(), "the engine must refuse it");
        QCOMPARE(store->batch(potOf("a", "1").id)->value().parts.size(), 2U);
    }

    // INSERT OR REPLACE removes a row without waking a trigger on removal (sqlite.org/lang_conflict.html).
    void sqlite_replacesNothing()
    {
        StorePlace place(false);
        auto store = openAt(place);
        stock(*store);
        const BatchRecord pot = potOf("a", "1");
        GW_OK(mix(*store, pot));
        place.asStranger(
            QStringLiteral("INSERT OR REPLACE INTO batch_note SELECT id, batch_id, act_id, kind, at_ms, "
                           "recorded_ms, seq, delta_milli + 1, temperature, weight_milli, place_id, job_id, "
                           "reverses, note, who, device FROM batch_note"));
        place.asStranger(
            QStringLiteral("INSERT OR REPLACE INTO batch_part SELECT batch_id, part, key, what, "
                           "amount_milli + 1, dimension, container_id, entry_id FROM batch_part"));
        place.asStranger(QStringLiteral("INSERT OR REPLACE INTO batch_figure SELECT batch_id, figure, low, "
                                        "high, 'x', unit FROM batch_figure"));
        QVERIFY(store->batch(pot.id)->value().parts == pot.parts);
        QVERIFY(store->batch(pot.id)->value().figures == pot.figures);
        QCOMPARE(store->batchNotes(pot.id, minute(100))->front().deltaMilli, 50'000);
    }

    void aBatchOfNoRecipe_isRefused_data() { addEngines(); }
    void aBatchOfNoRecipe_isRefused()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        BatchRecord pot = potOf("a", "1");
        pot.recipe = "no such recipe";
        QVERIFY(!mix(*store, pot));
        QVERIFY(!store->batch(pot.id)->has_value());
        QCOMPARE(store->entriesOf(bottle("a").id, minute(100))->size(), 1U);
    }
};

QTEST_GUILESS_MAIN(BatchesTest)
#include "tst_batches.moc"
