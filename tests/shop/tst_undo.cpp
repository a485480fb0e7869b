#include <QTest>

#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// Undoing reverses entries; the ledger keeps both.
class UndoTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void undo_ofAUse_givesBackAndSealsAgain_data() { addEngines(); }
    void undo_ofAUse_givesBackAndSealsAgain()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        const auto used = useSome(*bench.shop, pva, grams(80), {}, bench.on(2));
        GW_OK(used);
        GW_OK(undo(*bench.shop, used->entry, Workbench::day(3)));
        QCOMPARE(bench.left(pva), 500.0);
        // The use opened it in the same act; undoing the act undoes both.
        QVERIFY(!bench.page(pva).item.openedAt);
        // In between, it was as the shop then thought.
        QCOMPARE(bench.page(pva, 2.5).item.left.value(), 420.0);
        // Nothing is removed: arrival, opening, use; both of the latter marked.
        const auto entries = bench.page(pva).entries;
        QCOMPARE(entries.size(), std::size_t { 3 });
        QVERIFY(entries.at(0).undone && entries.at(1).undone && !entries.at(2).undone);
    }

    void undo_twice_isRefused_data() { addEngines(); }
    void undo_twice_isRefused()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        const auto used = useSome(*bench.shop, pva, grams(80), {}, bench.on(2));
        GW_OK(used);
        const auto undone = undo(*bench.shop, used->entry, Workbench::day(3));
        GW_OK(undone);
        GW_FAILS(undo(*bench.shop, used->entry, Workbench::day(4)), ErrorCode::Refused);
        GW_FAILS(undo(*bench.shop, undone->entry, Workbench::day(4)), ErrorCode::Refused);
        GW_FAILS(undo(*bench.shop, EntryId { "no-such-entry" }, Workbench::day(4)), ErrorCode::NotFound);
        QCOMPARE(bench.left(pva), 500.0);
    }

    void undo_ofAnArrival_waitsForWhatStandsOnIt_data() { addEngines(); }
    void undo_ofAnArrival_waitsForWhatStandsOnIt()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        const auto arrival = bench.page(pva).entries.back().entry;
        const auto used = useSome(*bench.shop, pva, grams(80), {}, bench.on(2));
        GW_OK(used);
        GW_FAILS(undo(*bench.shop, arrival, Workbench::day(3)), ErrorCode::Refused);
        GW_OK(undo(*bench.shop, used->entry, Workbench::day(3)));
        GW_OK(undo(*bench.shop, arrival, Workbench::day(4)));
        const auto standing = shelf(*bench.shop, { Workbench::day(5), {}, {}, {}, true });
        GW_OK(standing);
        QVERIFY(standing->empty());
        // What is not there cannot be used, and its page says so.
        GW_FAILS(useSome(*bench.shop, pva, grams(1), {}, bench.on(5)), ErrorCode::NotFound);
        GW_FAILS(containerPage(*bench.shop, pva, Workbench::day(5)), ErrorCode::NotFound);
    }

    void undo_ofAnOpening_waitsForItsUses_data() { addEngines(); }
    void undo_ofAnOpening_waitsForItsUses()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        const auto opened = openContainer(*bench.shop, pva, bench.on(1));
        GW_OK(opened);
        const auto used = useSome(*bench.shop, pva, grams(80), {}, bench.on(2));
        GW_OK(used);
        GW_FAILS(undo(*bench.shop, opened->entry, Workbench::day(3)), ErrorCode::Refused);
        GW_OK(undo(*bench.shop, used->entry, Workbench::day(3)));
        GW_OK(undo(*bench.shop, opened->entry, Workbench::day(4)));
        QVERIFY(!bench.page(pva).item.openedAt);
    }

    void undo_ofADecanting_returnsItAll_data() { addEngines(); }
    void undo_ofADecanting_returnsItAll()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto resin = bench.arrive("Thin resin", "epoxy_resin", "1 kg");
        const auto done = decant(*bench.shop, resin, grams(200), {}, bench.on(2));
        GW_OK(done);
        GW_OK(undo(*bench.shop, done->entry, Workbench::day(3)));
        QCOMPARE(bench.left(resin), 1000.0);
        GW_FAILS(
            containerPage(*bench.shop, done->containers.back().text, Workbench::day(4)), ErrorCode::NotFound);
    }

    void undo_neverLeavesLessThanNothing_data() { addEngines(); }
    void undo_neverLeavesLessThanNothing()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "100 g");
        const auto counted = countLeft(*bench.shop, pva, grams(150), bench.on(1));
        GW_OK(counted);
        GW_OK(useSome(*bench.shop, pva, grams(140), {}, bench.on(2)));
        GW_FAILS(undo(*bench.shop, counted->entry, Workbench::day(3)), ErrorCode::Refused);
        QCOMPARE(bench.left(pva), 10.0);
    }

    void undo_ofARetiringAndOfAHold_data() { addEngines(); }
    void undo_ofARetiringAndOfAHold()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive(
            "White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& draft) { draft.lot = "L9"; });
        const auto retired = retire(*bench.shop, pva, "spilt", bench.on(1));
        GW_OK(retired);
        QCOMPARE(bench.left(pva), 0.0);
        GW_OK(undo(*bench.shop, retired->entry, Workbench::day(2)));
        QCOMPARE(bench.left(pva), 500.0);
        QVERIFY(!bench.page(pva).item.retiredAt);

        const auto held = holdLot(*bench.shop, "L9", "why", bench.on(3));
        GW_OK(held);
        QVERIFY(bench.page(pva).item.onHold);
        GW_OK(undo(*bench.shop, held->entry, Workbench::day(4)));
        QVERIFY(!bench.page(pva).item.onHold);
        GW_FAILS(undo(*bench.shop, held->entry, Workbench::day(5)), ErrorCode::Refused);
    }
};

QTEST_GUILESS_MAIN(UndoTest)
#include "tst_undo.moc"
