#include <cmath>
#include <new>

#include <QTest>

#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

/// The ledger: what it takes, keeps and refuses, the same on both engines.
class LedgerTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void append_keepsEveryFieldOfAnEntry_data() { addEngines(); }
    void append_keepsEveryFieldOfAnEntry()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        JobRecord job { { "job-1" }, { "chair" }, "Reglue", "Chair of the mill", minute(5) };
        GW_OK(store->saveJob(job));
        Entry used = entryOn("a", EntryKind::Used, -12'345, "used", minute(10));
        used.recorded = minute(11);
        used.job = job.id;
        used.note = "für den Stuhl: 'half' \"quoted\" \\ %1 ? :x\n\xE2\x9C\x93";
        Entry tested = entryOn("a", EntryKind::Tested, 0, "tested", minute(12));
        tested.passed = false;
        tested.woodFailurePercent = 62.5;
        tested.grainy = true;
        Entry decanted = entryOn("b", EntryKind::Decanted, -100'000, "decanted", minute(13));
        decanted.other = bottle("a").id;
        decanted.place = shelf().id;
        Entry held;
        held.id = { "entry-held" };
        held.act = { "act-held" };
        held.kind = EntryKind::Held;
        held.at = held.recorded = minute(14);
        held.lotMaterial = whiteGlue().id;
        held.lot = "L1";
        Entry reversed = entryOn("a", EntryKind::Reversed, 12'345, "reversed", minute(15));
        reversed.reverses = used.id;
        const std::vector<Entry> written { used, tested, decanted, held, reversed };
        GW_OK(store->append(written));
        for (const Entry& entry : written) {
            const auto read = store->entry(entry.id);
            GW_OK(read);
            QVERIFY(read->has_value());
            QVERIFY2(sameEntry(**read, entry), entry.id.text.c_str());
        }
        // Again through a new connection: nothing was kept only in memory.
        store.reset();
        store = openAt(place);
        const auto read = store->entry(used.id);
        GW_OK(read);
        QVERIFY(sameEntry(read->value(), used));
    }

    void append_ofTheSameEntryAgain_changesNothing_data() { addEngines(); }
    void append_ofTheSameEntryAgain_changesNothing()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const Entry used = entryOn("a", EntryKind::Used, -10'000, "used", minute(10));
        GW_OK(store->append({ used }));
        GW_OK(store->append({ used, used }));
        const auto entries = store->entriesOf(bottle("a").id, minute(100));
        GW_OK(entries);
        QCOMPARE(entries->size(), 2U);
    }

    void append_ofAKnownIdWithOtherContent_isConflict_data() { addEngines(); }
    void append_ofAKnownIdWithOtherContent_isConflict()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        Entry used = entryOn("a", EntryKind::Used, -10'000, "used", minute(10));
        GW_OK(store->append({ used }));
        const Entry fresh = entryOn("a", EntryKind::Opened, 0, "opened", minute(10));
        used.deltaMilli = -20'000;
        GW_FAILS(store->append({ fresh, used }), ErrorCode::Conflict);
        const auto read = store->entry(fresh.id);
        GW_OK(read);
        QVERIFY2(!read->has_value(), "an entry of a refused call must not stay");
        // An act that passes over the refusal is refused as a whole, or half of the call would be kept.
        GW_FAILS(store->transact([&]() -> Result<void> {
            static_cast<void>(store->append({ fresh, used }));
            return {};
        }),
            ErrorCode::Conflict);
        QVERIFY(!store->entry(fresh.id)->has_value());
    }

    void entry_isNeverChangedOrRemoved_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<QString>("sql");
        for (const bool postgres : { false, true }) {
            const char* engine = postgres ? "postgresql" : "sqlite";
            const auto row = [&](const char* what, const char* sql) {
                QTest::addRow("%s: %s", engine, what) << postgres << QString::fromUtf8(sql);
            };
            row("update", "UPDATE entry SET delta_milli = 1");
            row("update of one", "UPDATE entry SET note = 'x' WHERE id = 'entry-a-arrived'");
            row("delete", "DELETE FROM entry");
            row("delete of one", "DELETE FROM entry WHERE id = 'entry-a-arrived'");
            row("removing its container", "DELETE FROM container WHERE id = 'container-a'");
        }
        QTest::newRow("postgresql: truncate") << true << QStringLiteral("TRUNCATE entry CASCADE");
        QTest::newRow("postgresql: as a replica")
            << true << QStringLiteral("SET session_replication_role = replica; DELETE FROM entry");
        QTest::newRow("sqlite: without foreign keys")
            << false << QStringLiteral("PRAGMA foreign_keys = OFF; DELETE FROM entry");
    }
    void entry_isNeverChangedOrRemoved()
    {
        QFETCH(bool, postgres);
        QFETCH(QString, sql);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const auto before = store->entriesUpTo(minute(100));
        GW_OK(before);
        // SQLite leaves foreign keys off unless asked.
        if (!postgres && sql.contains(QStringLiteral("container")))
            sql.prepend(QStringLiteral("PRAGMA foreign_keys = ON; "));
        QVERIFY2(!place.asStranger(sql).isEmpty(), "the engine must refuse it");
        const auto after = store->entriesUpTo(minute(100));
        GW_OK(after);
        QVERIFY(std::ranges::equal(*before, *after, sameEntry));
    }

    // INSERT OR REPLACE takes rows out without a delete trigger hearing of it
    // (sqlite.org/lang_conflict.html).
    void entry_isNeverReplaced_data()
    {
        QTest::addColumn<QString>("head");
        QTest::newRow("by id") << QStringLiteral(
            "(id, act_id, kind, container_id, at_ms, recorded_ms, seq, delta_milli, "
            "lot, grainy, note, device) VALUES ('entry-a-arrived'");
        QTest::newRow("by row number")
            << QStringLiteral("(rowid, id, act_id, kind, container_id, at_ms, recorded_ms, seq, delta_milli, "
                              "lot, grainy, note, device) VALUES (1, 'entry-new'");
    }
    void entry_isNeverReplaced()
    {
        QFETCH(QString, head);
        StorePlace place(false);
        auto store = openAt(place);
        stock(*store);
        static_cast<void>(place.asStranger(QStringLiteral("INSERT OR REPLACE INTO entry ") + head
            + QStringLiteral(", 'x', 'arrived', 'container-a', 1, 1, 1, 999, '', 0, '', '')")));
        const auto entries = store->entriesUpTo(minute(100));
        GW_OK(entries);
        QCOMPARE(entries->size(), 2U);
        QCOMPARE(entries->front().deltaMilli, 500'000);
        QCOMPARE(entries->front().id.text, "entry-a-arrived");
    }

    void reversal_happensOnce_data() { addEngines(); }
    void reversal_happensOnce()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const Entry used = entryOn("a", EntryKind::Used, -10'000, "used", minute(10));
        Entry first = entryOn("a", EntryKind::Reversed, 10'000, "undo", minute(11));
        first.reverses = used.id;
        Entry second = entryOn("a", EntryKind::Reversed, 10'000, "undo-again", minute(12));
        second.reverses = used.id;
        GW_OK(store->append({ used, first }));
        GW_OK(store->append({ first }));
        GW_FAILS(store->append({ second }), ErrorCode::Refused);
        const auto entries = store->entriesOf(bottle("a").id, minute(100));
        GW_OK(entries);
        QCOMPARE(entries->size(), 3U);
    }

    void append_ofAnImpossibleEntry_isRefused_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<QString>("what");
        for (const bool postgres : { false, true }) {
            for (const char* what :
                { "used more than nothing", "arrived with less than nothing", "moved some away",
                    "tested without a result", "wood failure over 100 %", "reversed nothing",
                    "reverses without saying so", "no container and no lot", "held by container", "no id",
                    "unknown container", "unknown place", "reverses an unknown entry", "a zero byte",
                    "broken UTF-8", "broken UTF-8 within", "no number" })
                QTest::addRow("%s: %s", postgres ? "postgresql" : "sqlite", what)
                    << postgres << QString::fromUtf8(what);
        }
    }
    void append_ofAnImpossibleEntry_isRefused()
    {
        QFETCH(bool, postgres);
        QFETCH(QString, what);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        Entry entry = entryOn("a", EntryKind::Used, -1, "wrong", minute(10));
        ErrorCode expected = ErrorCode::BadInput;
        const std::map<QString, std::function<void()>> wrong {
            { QStringLiteral("used more than nothing"), [&] { entry.deltaMilli = 1; } },
            { QStringLiteral("arrived with less than nothing"), [&] { entry.kind = EntryKind::Arrived; } },
            { QStringLiteral("moved some away"), [&] { entry.kind = EntryKind::Moved; } },
            { QStringLiteral("tested without a result"), [&] { entry.kind = EntryKind::Tested; } },
            { QStringLiteral("wood failure over 100 %"), [&] { entry.woodFailurePercent = 100.5; } },
            { QStringLiteral("reversed nothing"), [&] { entry.kind = EntryKind::Reversed; } },
            { QStringLiteral("reverses without saying so"),
                [&] { entry.reverses = EntryId { "entry-a-arrived" }; } },
            { QStringLiteral("no container and no lot"), [&] { entry.container.reset(); } },
            { QStringLiteral("held by container"), [&] { entry.kind = EntryKind::Held; } },
            { QStringLiteral("no id"), [&] { entry.id = {}; } },
            { QStringLiteral("unknown container"),
                [&] {
                    entry.container = ContainerId { "nobody" };
                    expected = ErrorCode::NotFound;
                } },
            { QStringLiteral("unknown place"),
                [&] {
                    entry.place = PlaceId { "nowhere" };
                    expected = ErrorCode::NotFound;
                } },
            { QStringLiteral("reverses an unknown entry"),
                [&] {
                    entry.kind = EntryKind::Reversed;
                    entry.reverses = EntryId { "never" };
                    expected = ErrorCode::NotFound;
                } },
            { QStringLiteral("broken UTF-8"), [&] { entry.note = "caf\xe9"; } },
            { QStringLiteral("broken UTF-8 within"), [&] { entry.note = "caf\xe9 au lait"; } },
            { QStringLiteral("no number"), [&] { entry.woodFailurePercent = std::nan(""); } },
            { QStringLiteral("a zero byte"), [&] { entry.note = std::string("a\0b", 3); } },
        };
        wrong.at(what)();
        const Entry fine = entryOn("a", EntryKind::Opened, 0, "fine", minute(9));
        GW_FAILS(store->append({ fine, entry }), expected);
        const auto entries = store->entriesUpTo(minute(100));
        GW_OK(entries);
        QCOMPARE(entries->size(), 2U);
        // The connection is of use afterwards.
        GW_OK(store->append({ fine }));
    }

    void entries_comeInOrder_data() { addEngines(); }
    void entries_comeInOrder()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        // Four at one moment: as recorded, and within one millisecond as appended, whatever their ids say.
        Entry late = entryOn("a", EntryKind::Used, -1, "late", minute(10));
        late.recorded = minute(30);
        const Entry z = entryOn("a", EntryKind::Opened, 0, "z", minute(10));
        const Entry m = entryOn("a", EntryKind::Used, -2, "m", minute(10));
        const Entry c = entryOn("a", EntryKind::Used, -3, "c", minute(10));
        const Entry early = entryOn("a", EntryKind::Moved, 0, "early", minute(5));
        Entry held = entryOn("a", EntryKind::Held, 0, "held", minute(2));
        held.container.reset();
        held.lotMaterial = whiteGlue().id;
        held.lot = "L1";
        Entry otherLot = held;
        otherLot.id = { "entry-other-lot" };
        otherLot.lot = "L2";
        const Entry after = entryOn("a", EntryKind::Used, -4, "after", minute(50));
        GW_OK(store->append({ late, z }));
        GW_OK(store->append({ m }));
        GW_OK(store->append({ c, early, held, otherLot, after }));
        const auto names = [](const std::vector<Entry>& entries) {
            std::string out;
            for (const Entry& entry : entries)
                out += (out.empty() ? "" : " ") + entry.id.text.substr(6);
            return out;
        };
        QCOMPARE(names(store->entriesUpTo(minute(49)).value()),
            "a-arrived early z m c late b-arrived held other-lot");
        QCOMPARE(
            names(store->entriesOf(bottle("a").id, minute(49)).value()), "a-arrived held early z m c late");
        QCOMPARE(names(store->entriesOf(bottle("a").id, minute(1)).value()), "a-arrived");
        QCOMPARE(names(store->latestEntries(3).value()), "after late c");
        QCOMPARE(names(store->entriesOfAct(late.act).value()), "late");
        QCOMPARE(names(store->entriesUpTo(minute(0)).value()), "");
    }

    void lockContainer_holdsTheContainerForTheAct_data() { addEngines(); }
    void lockContainer_holdsTheContainerForTheAct()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto one = openAt(place), two = openAt(place);
        stock(*one);
        GW_OK(one->transact([&]() -> Result<void> {
            if (auto taken = one->lockContainer(bottle("a").id); !taken)
                return taken;
            const auto blocked = two->transact([&] { return two->lockContainer(bottle("a").id); });
            if (blocked)
                return fail(ErrorCode::Refused, "two tablets hold one container.");
            return blocked.error().code == ErrorCode::StoreLocked ? Result<void> {} : blocked;
        }));
        GW_OK(two->transact([&] { return two->lockContainer(bottle("a").id); }));
        GW_FAILS(two->lockContainer({ "nobody" }), ErrorCode::NotFound);
    }

    void act_thatFails_leavesNothing_data() { addEngines(); }
    void act_thatFails_leavesNothing()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        const auto act = [&](bool breaks, const std::function<Result<void>()>& last) {
            return store->transact([&]() -> Result<void> {
                if (auto added = store->addContainer(bottle("c")); !added)
                    return added;
                if (auto done = store->append({ entryOn("c", EntryKind::Arrived, 1, "c", minute(3)) }); !done)
                    return done;
                if (auto saved = store->setSetting("touched", "yes"); !saved)
                    return saved;
                return breaks ? last() : Result<void> {};
            });
        };
        GW_FAILS(act(true, [] { return fail(ErrorCode::Refused, "The act thought better of it."); }),
            ErrorCode::Refused);
        GW_FAILS(act(true, [&] { return store->transact([]() -> Result<void> { return {}; }); }),
            ErrorCode::StoreFailed);
        QCOMPARE(store->containers().value().size(), 2U);
        QCOMPARE(store->entriesUpTo(minute(100)).value().size(), 2U);
        QVERIFY(!store->setting("touched").value().has_value());
        GW_OK(act(false, {}));
        QCOMPARE(store->containers().value().size(), 3U);
    }

    void act_thatPassesOverAFault_isUndoneAllTheSame_data() { addEngines(); }
    void act_thatPassesOverAFault_isUndoneAllTheSame()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        GW_FAILS(store->transact([&]() -> Result<void> {
            ContainerRecord taken = bottle("c");
            taken.label = bottle("a").label;
            static_cast<void>(store->addContainer(taken));
            return store->setSetting("touched", "yes");
        }),
            ErrorCode::Conflict);
        QVERIFY(!store->setting("touched").value().has_value());
        GW_OK(store->setSetting("touched", "now"));
    }

    void act_thatThrows_leavesNothing_data() { addEngines(); }
    void act_thatThrows_leavesNothing()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        bool thrown = false;
        try {
            static_cast<void>(store->transact([&]() -> Result<void> {
                static_cast<void>(store->setSetting("touched", "yes"));
                throw std::bad_alloc();
            }));
        } catch (const std::bad_alloc&) {
            thrown = true;
        }
        QVERIFY(thrown);
        QVERIFY(!store->setting("touched").value().has_value());
        GW_OK(store->transact([&] { return store->setSetting("touched", "now"); }));
    }

    void readTogether_doesNotWrite_data() { addEngines(); }
    void readTogether_doesNotWrite()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_FAILS(store->readTogether([&] { return store->setSetting("touched", "yes"); }),
            ErrorCode::StoreReadOnly);
        QVERIFY(!store->setting("touched").value().has_value());
        GW_OK(store->setSetting("touched", "now"));
    }

    void readTogether_seesOneMoment_data() { addEngines(); }
    void readTogether_seesOneMoment()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto one = openAt(place), two = openAt(place);
        stock(*one);
        GW_OK(one->readTogether([&]() -> Result<void> {
            const auto before = one->entriesUpTo(minute(100));
            const auto written = two->append({ entryOn("a", EntryKind::Used, -1, "meanwhile", minute(10)) });
            const auto after = one->entriesUpTo(minute(100));
            if (!before || !written || !after)
                return fail(ErrorCode::StoreFailed, "a read or the write in between failed.");
            return before->size() == 2 && after->size() == 2
                ? Result<void> {}
                : fail(ErrorCode::Refused, "two moments were seen.");
        }));
        QCOMPARE(one->entriesUpTo(minute(100)).value().size(), 3U);
    }

    void kindWords_goBothWays()
    {
        for (int i = 0; i <= static_cast<int>(EntryKind::Reversed); ++i) {
            const auto kind = static_cast<EntryKind>(i);
            QCOMPARE(entryKindOfWord(word(kind)), std::optional(kind));
        }
        QCOMPARE(entryKindOfWord("stolen"), std::nullopt);
    }
};

QTEST_GUILESS_MAIN(LedgerTest)
#include "tst_ledger.moc"
