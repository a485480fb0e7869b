#include <QTest>

#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// Every act on a container: what it changes, what it refuses, and that a refusal writes nothing.
class ActsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void use_takesOutAndOpensASealedContainer_data() { addEngines(); }
    void use_takesOutAndOpensASealedContainer()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        QVERIFY(!bench.page(pva).item.openedAt);

        const auto done = useSome(*bench.shop, pva, grams(12.5), {}, bench.on(3));
        GW_OK(done);
        QCOMPARE(done->said, std::string("Used 12.5 g of White PVA."));
        QCOMPARE(bench.left(pva), 487.5);
        QVERIFY(bench.page(pva).item.openedAt == Workbench::day(3));
        // As of the day before, it was full and sealed.
        QCOMPARE(bench.page(pva, 2).item.left.value(), 500.0);
        QVERIFY(!bench.page(pva, 2).item.openedAt);
    }

    void use_ofMoreThanIsLeft_isRefusedAndWritesNothing_data() { addEngines(); }
    void use_ofMoreThanIsLeft_isRefusedAndWritesNothing()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        GW_FAILS(useSome(*bench.shop, pva, grams(500.001), {}, bench.on(1)), ErrorCode::Refused);
        QCOMPARE(bench.page(pva).entries.size(), std::size_t { 1 });
        GW_OK(useSome(*bench.shop, pva, grams(500), {}, bench.on(1)));
        QCOMPARE(bench.left(pva), 0.0);
    }

    void use_inTheOtherUnit_goesByTheDensity_data() { addEngines(); }
    void use_inTheOtherUnit_goesByTheDensity()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        // White PVA, 1.08 g/ml by the class (memory; see the reference data).
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        GW_OK(useSome(*bench.shop, pva, millilitres(100), {}, bench.on(1)));
        QCOMPARE(bench.left(pva), 392.0);
        // Pieces of a liquid mean nothing.
        GW_FAILS(useSome(*bench.shop, pva, pieces(1), {}, bench.on(1)), ErrorCode::BadInput);
    }

    void acts_refuseWhatCannotBe_data() { addEngines(); }
    void acts_refuseWhatCannotBe()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g", 5);
        GW_FAILS(useSome(*bench.shop, pva, grams(0), {}, bench.on(6)), ErrorCode::BadInput);
        GW_FAILS(useSome(*bench.shop, "GW-NOWHERE", grams(1), {}, bench.on(6)), ErrorCode::NotFound);
        GW_FAILS(useSome(*bench.shop, pva, grams(1), {}, { Workbench::day(4), Workbench::day(6) }),
            ErrorCode::Refused);
        GW_FAILS(useSome(*bench.shop, pva, grams(1), {}, { Workbench::day(7), Workbench::day(6) }),
            ErrorCode::BadInput);
        GW_FAILS(retire(*bench.shop, pva, "", bench.on(6)), ErrorCode::BadInput);
        GW_FAILS(moveTo(*bench.shop, pva, "", bench.on(6)), ErrorCode::BadInput);
        GW_FAILS(moveTo(*bench.shop, pva, "bench", bench.on(6)), ErrorCode::Refused);
        GW_FAILS(recordTest(*bench.shop, pva, { true, 140.0, false, {} }, bench.on(6)), ErrorCode::BadInput);
        GW_FAILS(recordTest(*bench.shop, pva, { true, {}, true, {} }, bench.on(6)), ErrorCode::BadInput);
        QCOMPARE(bench.page(pva).entries.size(), std::size_t { 1 });

        GW_OK(openContainer(*bench.shop, pva, bench.on(6)));
        GW_FAILS(openContainer(*bench.shop, pva, bench.on(7)), ErrorCode::Refused);
        GW_OK(retire(*bench.shop, pva, "gone off", bench.on(8)));
        GW_FAILS(useSome(*bench.shop, pva, grams(1), {}, bench.on(9)), ErrorCode::Refused);
    }

    void count_writesTheDifference_data() { addEngines(); }
    void count_writesTheDifference()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto pva = bench.arrive("White PVA", "pva_white", "500 g");
        GW_OK(useSome(*bench.shop, pva, grams(100), {}, bench.on(1)));
        GW_OK(countLeft(*bench.shop, pva, grams(380), bench.on(2)));
        QCOMPARE(bench.left(pva), 380.0);
        GW_OK(countLeft(*bench.shop, pva, grams(390), bench.on(3)));
        QCOMPARE(bench.left(pva), 390.0);
        GW_OK(countLeft(*bench.shop, pva, grams(0), bench.on(4)));
        QCOMPARE(bench.left(pva), 0.0);
    }

    void decant_inheritsDatesLotTestsAndHold_data() { addEngines(); }
    void decant_inheritsDatesLotTestsAndHold()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto resin = bench.arrive("Thin resin", "epoxy_resin", "1 kg", 0, [](ArrivalDraft& draft) {
            draft.lot = "R-77";
            draft.printed = dateIn2026(12, 31);
        });
        GW_OK(openContainer(*bench.shop, resin, bench.on(5)));
        const auto done = decant(*bench.shop, resin, grams(200), "Lean-to", bench.on(30));
        GW_OK(done);
        QCOMPARE(done->containers.size(), std::size_t { 2 });
        const auto child = bench.page(done->containers.back().text);
        QCOMPARE(bench.left(resin), 800.0);
        QCOMPARE(child.item.left.value(), 200.0);
        QCOMPARE(child.item.lot, std::string("R-77"));
        QCOMPARE(child.parentLabel, resin);
        QCOMPARE(child.item.placeName, std::string("Lean-to"));
        QVERIFY(child.item.made == bench.page(resin).item.made);
        QVERIFY(child.item.printed == dateIn2026(12, 31));
        QVERIFY(child.item.openedAt == Workbench::day(5));
        QVERIFY(child.item.label != resin);

        // A hold on the lot reaches what was poured out of it, before or after.
        GW_OK(holdLot(*bench.shop, "R-77", "maker's letter", bench.on(40)));
        QVERIFY(bench.says(child.item.label, 41, "lot_on_hold"));
        const auto later = decant(*bench.shop, resin, grams(50), {}, bench.on(42));
        GW_OK(later);
        QVERIFY(bench.says(later->containers.back().text, 43, "lot_on_hold"));
        QCOMPARE(bench.verdict(later->containers.back().text, 43), Verdict::DoNotUse);
    }

    void decant_isNeverYoungerThanItsParent_data() { addEngines(); }
    void decant_isNeverYoungerThanItsParent()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto glue = bench.arrive("Liquid hide glue", "liquid_hide_glue", "500 g");
        GW_OK(openContainer(*bench.shop, glue, bench.on(2)));
        const auto done = decant(*bench.shop, glue, grams(100), "Bench", bench.on(100));
        GW_OK(done);
        for (const double when : { 101.0, 200.0, 300.0, 400.0 }) {
            const auto parent = bench.page(glue, when).item.judgement;
            const auto child = bench.page(done->containers.back().text, when).item.judgement;
            QVERIFY(worst(parent.verdict, child.verdict) == child.verdict);
            QVERIFY(child.opened.used.high >= parent.opened.used.high - 1e-9);
            QVERIFY(child.sealed.used.low >= parent.sealed.used.low - 1e-9);
        }
    }

    void hold_stopsALotUntilReleased_data() { addEngines(); }
    void hold_stopsALotUntilReleased()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto withLot = [](ArrivalDraft& draft) { draft.lot = "L9"; };
        const auto a = bench.arrive("White PVA", "pva_white", "500 g", 0, withLot);
        const auto other = bench.arrive("White PVA", "pva_white", "500 g", 0);
        GW_FAILS(holdLot(*bench.shop, "L8", "", bench.on(1)), ErrorCode::NotFound);
        GW_FAILS(releaseLot(*bench.shop, "L9", bench.on(1)), ErrorCode::Refused);
        GW_OK(holdLot(*bench.shop, "L9", "smells wrong", bench.on(1)));
        GW_FAILS(holdLot(*bench.shop, "L9", "", bench.on(2)), ErrorCode::Refused);
        QCOMPARE(bench.verdict(a, 2), Verdict::DoNotUse);
        QCOMPARE(bench.verdict(other, 2), Verdict::Good);
        // One that comes later of the same lot is held from the start.
        const auto late = bench.arrive("White PVA", "pva_white", "500 g", 3, withLot);
        QCOMPARE(bench.verdict(late, 3), Verdict::DoNotUse);
        GW_OK(releaseLot(*bench.shop, "L9", bench.on(4)));
        QCOMPARE(bench.verdict(a, 5), Verdict::Good);
        QCOMPARE(bench.verdict(a, 2), Verdict::DoNotUse);
    }

    void test_movesTheVerdict_data() { addEngines(); }
    void test_movesTheVerdict()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto glue = bench.arrive("Liquid hide glue", "liquid_hide_glue", "500 g");
        GW_OK(openContainer(*bench.shop, glue, bench.on(1)));
        // Opened it keeps 6 to 12 months by its class: at 8 months only a test can tell.
        QCOMPARE(bench.verdict(glue, 245), Verdict::TestFirst);
        GW_OK(recordTest(*bench.shop, glue, { true, 90.0, false, "hair-fine strings" }, bench.on(245)));
        QCOMPARE(bench.verdict(glue, 246), Verdict::Good);
        // A quarter of the low six months, once.
        QVERIFY(bench.verdict(glue, 245 + 50) != Verdict::Good);
        GW_OK(recordTest(*bench.shop, glue, { false, {}, false, "rubbery" }, bench.on(300)));
        QCOMPARE(bench.verdict(glue, 301), Verdict::DoNotUse);
    }
};

QTEST_GUILESS_MAIN(ActsTest)
#include "tst_acts.moc"
