#include <QTest>

#include "shop/setup.h"
#include "shop/waste.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// What goes off soon, what is past use, what was thrown away.
class WasteTest : public QObject {
    Q_OBJECT

private:
    static std::string arrivesPrinted(Workbench& bench, const char* name, const char* cls, const char* amount,
        Date printed, std::optional<Money> price = std::nullopt)
    {
        return bench.arrive(name, cls, amount, 1, [&](ArrivalDraft& draft) {
            draft.printed = printed;
            draft.price = price;
        });
    }

private Q_SLOTS:
    void soonGoingOff_isListedWithItsWorthAndUse_data() { addEngines(); }
    void soonGoingOff_isListedWithItsWorthAndUse()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        GW_OK(setJobRate(*bench.shop, "panel_edge", 2, Workbench::day(1)));
        const auto soon = arrivesPrinted(
            bench, "White glue", "pva_white", "500 g", dateIn2026(4, 20), Money { 1000, "EUR" });
        arrivesPrinted(bench, "White glue", "pva_white", "500 g", dateIn2026(9, 20), Money { 1000, "EUR" });
        arrivesPrinted(bench, "Fish glue", "fish_glue_liquid", "250 g", dateIn2026(4, 10));
        GW_OK(useSome(*bench.shop, soon, grams(125), {}, Workbench::on(2)));
        const auto list = expiringSoon(*bench.shop, 60, Workbench::day(5));
        GW_OK(list);
        QCOMPARE(list->items.size(), 2U);
        QCOMPARE(list->items[0].materialName, std::string("Fish glue"));
        QCOMPARE(list->items[1].label, soon);
        QCOMPARE(list->items[1].left, grams(375));
        // Three quarters of ten euros.
        QVERIFY(list->items[1].worth);
        QCOMPARE(*list->items[1].worth, (Money { 750, "EUR" }));
        QVERIFY(!list->items[1].useOn.empty());
        QVERIFY(!list->items[0].worth);
        QCOMPARE(list->unpriced, 1);
        QCOMPARE(list->worth.size(), 1U);
        QCOMPARE(list->worth[0], (Money { 750, "EUR" }));
        QVERIFY(expiringSoon(*bench.shop, 10, Workbench::day(5))->items.empty());
        GW_FAILS(expiringSoon(*bench.shop, 0, Workbench::day(5)), ErrorCode::BadInput);
        GW_FAILS(expiringSoon(*bench.shop, 10'000, Workbench::day(5)), ErrorCode::BadInput);
    }

    void pastUse_isGroupedByHandling_data() { addEngines(); }
    void pastUse_isGroupedByHandling()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        QVERIFY(disposalList(*bench.shop, Workbench::day(5))->empty());
        const auto resin = bench.arrive("Resin", "epoxy_resin", "500 g", 1);
        const auto hardener = bench.arrive("Hardener", "epoxy_hardener_slow", "200 g", 1);
        const auto white = bench.arrive("White glue", "pva_white", "500 g", 1);
        for (const auto& code : { resin, hardener, white })
            GW_OK(recordTest(*bench.shop, code, { false, {}, false, {} }, Workbench::on(2)));
        const auto groups = disposalList(*bench.shop, Workbench::day(5));
        GW_OK(groups);
        QCOMPARE(groups->size(), 2U);
        for (const DisposalGroup& group : *groups) {
            QVERIFY(!group.handling.empty());
            for (const ToDispose& item : group.items)
                QVERIFY(!item.why.empty());
        }
        QCOMPARE(groups->at(0).items.size() + groups->at(1).items.size(), 3U);
        QVERIFY(localRulesDecide().find("local rules decide") != std::string::npos);
    }

    void thrownAway_costsItsShare_data() { addEngines(); }
    void thrownAway_costsItsShare()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto code = arrivesPrinted(
            bench, "White glue", "pva_white", "500 g", dateIn2026(9, 20), Money { 1000, "EUR" });
        GW_OK(useSome(*bench.shop, code, grams(200), {}, Workbench::on(2)));
        QVERIFY(wasteOfYear(*bench.shop, Workbench::day(3))->items.empty());
        const auto gone = retire(*bench.shop, code, "froze", Workbench::on(4));
        GW_OK(gone);
        const auto waste = wasteOfYear(*bench.shop, Workbench::day(5));
        GW_OK(waste);
        QCOMPARE(waste->year, 2026);
        QCOMPARE(waste->items.size(), 1U);
        QCOMPARE(waste->items[0].amount, grams(300));
        QCOMPARE(waste->items[0].why, std::string("froze"));
        QCOMPARE(waste->cost[0], (Money { 600, "EUR" }));
        QCOMPARE(waste->usedCost[0], (Money { 400, "EUR" }));
        GW_OK(undo(*bench.shop, gone->entry, Workbench::day(6)));
        QVERIFY(wasteOfYear(*bench.shop, Workbench::day(7))->items.empty());
        // Next year's waste is another year's.
        QVERIFY(wasteOfYear(*bench.shop, Workbench::day(330))->items.empty());
    }
};

QTEST_GUILESS_MAIN(WasteTest)
#include "tst_waste.moc"
