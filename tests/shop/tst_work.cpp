#include <QTest>

#include "shop/setup.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// The check before a glue-up, the order list and the record of a piece, from a real store.
class WorkTest : public QObject {
    Q_OBJECT

private:
    static Conditions warmRoom()
    {
        Conditions conditions;
        conditions.air = Celsius { 24 };
        conditions.wood = Celsius { 24 };
        conditions.humidity = 50;
        conditions.woodMoisture = 9;
        conditions.gapMm = 0.05;
        return conditions;
    }
    static const OrderLine* line(const OrderPlan& plan, std::string_view name)
    {
        for (const OrderLine& l : plan.lines) {
            if (l.name == name)
                return &l;
        }
        return nullptr;
    }

private Q_SLOTS:
    void check_usesTheFirstToGoOffThatIsFit_data() { addEngines(); }
    void check_usesTheFirstToGoOffThatIsFit()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        bench.arrive("Hide glue", "hide_granules_192", "1 kg", 2);
        const auto sooner = bench.arrive("Hide glue", "hide_granules_192", "1 kg", 1,
            [](ArrivalDraft& d) { d.printed = dateIn2026(12, 1); });
        const auto answer = checkJob(*bench.shop, "chair_full", 1, warmRoom(), Workbench::day(10));
        GW_OK(answer);
        QCOMPARE(answer->answer, GlueUpVerdict::Go);
        QCOMPARE(answer->use.size(), std::size_t { 1 });
        QCOMPARE(answer->use.front().label, sooner);
        // A full chair takes 37.4 g of wet glue, of which at 1.8 : 1 13.4 g are granules and 24 g water
        // (worked example of the estimates; common practice).
        QVERIFY(std::abs(answer->need.value() - 37.4) < 0.1);
        QVERIFY(std::abs(answer->use.front().amount.value() - 13.4) < 0.1);
    }

    void check_namesWhatToFixFirst_data() { addEngines(); }
    void check_namesWhatToFixFirst()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        // Nothing at all on the shelf.
        auto answer = checkJob(*bench.shop, "chair_full", 1, warmRoom(), Workbench::day(10));
        GW_OK(answer);
        QVERIFY(answer->answer == GlueUpVerdict::Stop || answer->answer == GlueUpVerdict::FixFirst);
        QVERIFY(!answer->firstFix.empty());

        bench.arrive("Hide glue", "hide_granules_192", "1 kg", 1);
        Conditions cold = warmRoom();
        cold.air = Celsius { 12 };
        answer = checkJob(*bench.shop, "chair_full", 1, cold, Workbench::day(10));
        GW_OK(answer);
        QCOMPARE(answer->answer, GlueUpVerdict::FixFirst);
        QVERIFY2(answer->firstFix.find("12") != std::string::npos, answer->firstFix.c_str());

        Conditions unsaid = warmRoom();
        unsaid.air.reset();
        answer = checkJob(*bench.shop, "Chair, full reglue", 1, unsaid, Workbench::day(10));
        GW_OK(answer);
        QCOMPARE(answer->answer, GlueUpVerdict::NotKnown);

        GW_FAILS(checkJob(*bench.shop, "no such job", 1, {}, Workbench::day(10)), ErrorCode::NotFound);
        GW_FAILS(checkJob(*bench.shop, "chair_full", 0, {}, Workbench::day(10)), ErrorCode::BadInput);
    }

    void check_ofATwoPartGlue_wantsThePartner_data() { addEngines(); }
    void check_ofATwoPartGlue_wantsThePartner()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        bench.arrive("Thin resin", "epoxy_resin", "1 kg", 1);
        auto answer = checkJob(*bench.shop, "leg_shatter", 1, warmRoom(), Workbench::day(10));
        GW_OK(answer);
        QVERIFY(answer->answer == GlueUpVerdict::Stop || answer->answer == GlueUpVerdict::FixFirst);

        bench.arrive("Slow hardener", "epoxy_hardener_slow", "500 g", 1);
        auto materials = bench.shop->store().materials();
        GW_OK(materials);
        QCOMPARE(materials->size(), std::size_t { 2 });
        for (std::size_t i = 0; i < 2; ++i) {
            materials->at(i).partner = materials->at(1 - i).id;
            GW_OK(bench.shop->store().saveMaterial(materials->at(i)));
        }
        Conditions loose = warmRoom();
        loose.gapMm = 1.0;
        answer = checkJob(*bench.shop, "leg_shatter", 1, loose, Workbench::day(10));
        GW_OK(answer);
        QCOMPARE(answer->answer, GlueUpVerdict::Go);
        QCOMPARE(answer->use.size(), std::size_t { 2 });
        // 21.7 g mixed at 100 : 41.3 by mass is 15.4 g of resin and 6.4 g of hardener (worked example;
        // arithmetic).
        QVERIFY(std::abs(answer->use.at(0).amount.value() - 15.4) < 0.1);
        QVERIFY(std::abs(answer->use.at(1).amount.value() - 6.35) < 0.1);
    }

    void order_coversTheMonthAndCountsWhatIsThere_data() { addEngines(); }
    void order_coversTheMonthAndCountsWhatIsThere()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto first = bench.arrive("Hide glue", "hide_granules_192", "50 g", 1);
        GW_OK(savePackOffered(*bench.shop, { "Hide glue", "500 g", "", "14.00 EUR", "Harbour Lane", 5 }));
        GW_OK(setJobRate(*bench.shop, "chair_full", 6, Workbench::day(2)));
        const Date april = dateIn2026(4, 1);
        auto plan = orderForMonth(*bench.shop, { april, 95 }, Workbench::day(20));
        GW_OK(plan);
        const OrderLine* hide = line(*plan, "Hide glue");
        QVERIFY(hide);
        QCOMPARE(hide->packs.size(), std::size_t { 1 });
        QCOMPARE(hide->packs.front().count, 1);
        QVERIFY(!hide->why.empty());
        // Some of the 50 g is used up before the month begins; what is left then counts.
        QVERIFY(hide->usable.value() > 0 && hide->usable.value() < 50);
        // What came in changes the list: with a kilogram more nothing is needed.
        bench.arrive("Hide glue", "hide_granules_192", "1 kg", 21);
        plan = orderForMonth(*bench.shop, { april, 95 }, Workbench::day(22));
        GW_OK(plan);
        QVERIFY(!line(*plan, "Hide glue") || line(*plan, "Hide glue")->packs.empty());
        // Stock on hold or failed does not count.
        GW_OK(recordTest(*bench.shop, first, { false, {}, false, {} }, bench.on(23)));
        GW_FAILS(
            orderForMonth(*bench.shop, { dateIn2026(1, 1), 95 }, Workbench::day(22)), ErrorCode::BadInput);
        GW_FAILS(orderForMonth(*bench.shop, { april, 0 }, Workbench::day(22)), ErrorCode::BadInput);
        GW_FAILS(setJobRate(*bench.shop, "chair_full", -1, Workbench::day(2)), ErrorCode::BadInput);
    }
};

QTEST_GUILESS_MAIN(WorkTest)
#include "tst_work.moc"
