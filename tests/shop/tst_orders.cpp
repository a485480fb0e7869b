#include <QTest>

#include "shop/doorstep.h"
#include "shop/orders.h"
#include "shop/plannedwork.h"
#include "shop/setup.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// Order lists that are kept: ordered, come, late; jobs with a date; what the ledger teaches.
class OrdersTest : public QObject {
    Q_OBJECT

private:
    static constexpr int made = 20;

    /// A shop that needs hide glue in April, with the list for it kept on day 20.
    static std::string keptList(Workbench& bench)
    {
        bench.arrive("Hide glue", "hide_granules_192", "10 g", 1);
        auto pack = savePackOffered(*bench.shop, { "Hide glue", "250 g", "", "9.00 EUR", "Harbour Lane", 5 });
        if (!pack || !setJobRate(*bench.shop, "chair_full", 30, Workbench::day(2)))
            qFatal("no pack or rate");
        const OrderAsked asked { dateIn2026(4, 1), 95 };
        const auto plan = orderForMonth(*bench.shop, asked, Workbench::day(made));
        if (!plan || plan->lines.empty())
            qFatal("no plan");
        const auto list = keepOrderList(*bench.shop, *plan, asked, Workbench::day(made));
        if (!list)
            qFatal("%s", list.error().sentence.c_str());
        return list->text;
    }
    static KeptOrderLine line(Workbench& bench, double day)
    {
        const auto lists = keptOrderLists(*bench.shop, Workbench::day(day));
        if (!lists || lists->size() != 1 || lists->front().lines.size() != 1)
            qFatal("not one line");
        return lists->front().lines.front();
    }
    static Result<void> say(
        Workbench& bench, OrderEventKind kind, double day, std::optional<int> pieces = std::nullopt)
    {
        return changeOrder(*bench.shop, { line(bench, day).record.id }, kind, pieces, Workbench::on(day));
    }
    static void comes(Workbench& bench, const char* amount, double day)
    {
        bench.arrive("Hide glue", "hide_granules_192", amount, day);
    }

private Q_SLOTS:
    void list_isOrderedAndComes_data() { addEngines(); }
    void list_isOrderedAndComes()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        keptList(bench);
        QCOMPARE(line(bench, 20).state, OrderState::Made);
        const int wanted = line(bench, 20).wanted;
        QVERIFY(wanted >= 2);
        // What comes before it is ordered has nothing to do with it.
        comes(bench, "250 g", 20.1);
        QCOMPARE(line(bench, 20.2).arrived, 0);
        GW_OK(say(bench, OrderEventKind::Ordered, 21));
        QCOMPARE(line(bench, 21).state, OrderState::Ordered);
        QCOMPARE(*line(bench, 21).due, dateOf(Workbench::day(26)));
        comes(bench, "250 g", 24);
        QCOMPARE(line(bench, 24).state, OrderState::PartArrived);
        QCOMPARE(line(bench, 24).arrived, 1);
        // Another size is another pack.
        comes(bench, "500 g", 24);
        QCOMPARE(line(bench, 24.5).arrived, 1);
        QCOMPARE(line(bench, 28).state, OrderState::Late);
        QCOMPARE(line(bench, 28).lateDays, 2);
        for (int i = 1; i < wanted; ++i)
            comes(bench, "250 g", 29);
        QCOMPARE(line(bench, 29).state, OrderState::Arrived);
        // As of then it was late still.
        QCOMPARE(line(bench, 28).state, OrderState::Late);
    }

    void arrivalUndone_isOutstandingAgain_data() { addEngines(); }
    void arrivalUndone_isOutstandingAgain()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        keptList(bench);
        GW_OK(say(bench, OrderEventKind::Counted, 20, 1));
        GW_OK(say(bench, OrderEventKind::Ordered, 20));
        const auto code = bench.arrive("Hide glue", "hide_granules_192", "250 g", 22);
        QCOMPARE(line(bench, 23).state, OrderState::Arrived);
        const auto page = bench.page(code, 23);
        GW_OK(undo(*bench.shop, page.entries.front().entry, Workbench::day(23)));
        QCOMPARE(line(bench, 24).state, OrderState::Ordered);
    }

    void whatIsOrdered_isNotOrderedAgain_data() { addEngines(); }
    void whatIsOrdered_isNotOrderedAgain()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        keptList(bench);
        const OrderAsked asked { dateIn2026(4, 1), 95 };
        const auto bought = [&](double day) {
            const auto plan = orderForMonth(*bench.shop, asked, Workbench::day(day));
            return plan && !plan->lines.empty() ? plan->lines.front().ordered.value() : 0.0;
        };
        const double before = bought(21);
        QVERIFY(before >= 500);
        GW_OK(say(bench, OrderEventKind::Ordered, 21));
        // What is used until the month begins is all that may be missing still.
        QVERIFY(bought(21) <= 250);
        GW_OK(say(bench, OrderEventKind::Recalled, 21.5));
        QCOMPARE(bought(21.5), before);
    }

    void whatDoesNotFollow_isRefused_data() { addEngines(); }
    void whatDoesNotFollow_isRefused()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string list = keptList(bench);
        GW_FAILS(say(bench, OrderEventKind::Recalled, 20), ErrorCode::Refused);
        GW_FAILS(say(bench, OrderEventKind::Closed, 20), ErrorCode::Refused);
        GW_FAILS(say(bench, OrderEventKind::Counted, 20, -1), ErrorCode::BadInput);
        GW_FAILS(say(bench, OrderEventKind::Counted, 20), ErrorCode::BadInput);
        GW_OK(say(bench, OrderEventKind::Counted, 20, 0));
        QCOMPARE(line(bench, 20).state, OrderState::TakenOff);
        GW_FAILS(say(bench, OrderEventKind::Ordered, 20), ErrorCode::Refused);
        GW_OK(say(bench, OrderEventKind::Counted, 20, 2));
        GW_OK(say(bench, OrderEventKind::Ordered, 20));
        GW_FAILS(say(bench, OrderEventKind::Ordered, 20), ErrorCode::Refused);
        GW_FAILS(say(bench, OrderEventKind::Counted, 20, 3), ErrorCode::Refused);
        comes(bench, "250 g", 22);
        GW_FAILS(say(bench, OrderEventKind::Recalled, 22), ErrorCode::Refused);
        GW_OK(say(bench, OrderEventKind::Closed, 40));
        QCOMPARE(line(bench, 40).state, OrderState::Closed);
        QCOMPARE(orderLinesOf(*bench.shop, "2026-04", "Harbour Lane", Workbench::day(40))->size(), 1U);
        QCOMPARE(orderLinesOf(*bench.shop, list, "", Workbench::day(40))->size(), 1U);
        GW_FAILS(orderLinesOf(*bench.shop, "2026-04", "Nobody", Workbench::day(40)), ErrorCode::NotFound);
        GW_FAILS(orderLinesOf(*bench.shop, "", "", Workbench::day(40)), ErrorCode::NotFound);
        GW_FAILS(changeOrder(
                     *bench.shop, { OrderLineId { "none" } }, OrderEventKind::Ordered, {}, Workbench::on(40)),
            ErrorCode::NotFound);
        GW_FAILS(
            keepOrderList(*bench.shop, {}, { dateIn2026(4, 1) }, Workbench::day(40)), ErrorCode::Refused);
    }

    void list_isHeldAgainstWhatHappened_data() { addEngines(); }
    void list_isHeldAgainstWhatHappened()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        keptList(bench);
        GW_OK(say(bench, OrderEventKind::Ordered, 21));
        const auto code = bench.arrive("Hide glue", "hide_granules_192", "250 g", 25);
        GW_OK(useSome(*bench.shop, code, grams(40), {}, Workbench::on(33)));
        GW_OK(useSome(*bench.shop, code, grams(15), {}, Workbench::on(65)));
        const auto lists = keptOrderLists(*bench.shop, Workbench::day(70));
        GW_OK(lists);
        const auto happened = whatHappened(*bench.shop, lists->front(), Workbench::day(70));
        GW_OK(happened);
        QCOMPARE(happened->size(), 1U);
        // Day 33 is the 3rd of April; what was used in May is not April's.
        QCOMPARE(happened->front().used, grams(40));
        QCOMPARE(happened->front().arrived, 1);
        QVERIFY(happened->front().text.find("40 g was used") != std::string::npos);
    }

    void written_isNeverChanged_data() { addEngines(); }
    void written_isNeverChanged()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        keptList(bench);
        GW_OK(say(bench, OrderEventKind::Ordered, 21));
        const auto before = bench.shop->store().orderEvents();
        GW_OK(before);
        QCOMPARE(before->size(), 1U);
        // Sent again it is the same.
        GW_OK(bench.shop->store().appendOrderEvents(*before));
        QCOMPARE(bench.shop->store().orderEvents()->size(), 1U);
        const auto report = bench.shop->store().verify();
        GW_OK(report);
        QVERIFY2(report->ok, report->problems.empty() ? "" : report->problems.front().c_str());
    }

    void plannedJobs_areNeeded_data() { addEngines(); }
    void plannedJobs_areNeeded()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        bench.arrive("Hide glue", "hide_granules_192", "1 g", 1);
        GW_OK(savePackOffered(*bench.shop, { "Hide glue", "5 g", "", "1.00 EUR", "Harbour Lane", 5 }));
        const OrderAsked asked { dateIn2026(4, 1), 95 };
        QVERIFY(orderForMonth(*bench.shop, asked, Workbench::day(20))->lines.empty());
        const auto job
            = planJob(*bench.shop, { "chair_full", dateIn2026(4, 10), 2, "Two chairs" }, Workbench::day(20));
        GW_OK(job);
        const auto plan = orderForMonth(*bench.shop, asked, Workbench::day(20));
        GW_OK(plan);
        QCOMPARE(plan->lines.size(), 1U);
        QVERIFY(!plan->lines[0].packs.empty());
        QVERIFY2(plan->lines[0].why.find("2 planned with a date") != std::string::npos,
            plan->lines[0].why.c_str());
        GW_OK(setPlanned(
            *bench.shop, job->record.id.text.substr(0, 8), PlannedState::Done, Workbench::day(21)));
        QVERIFY(orderForMonth(*bench.shop, asked, Workbench::day(21))->lines.empty());
        QVERIFY(plannedWork(*bench.shop, Workbench::day(21))->empty());
        QCOMPARE(plannedWork(*bench.shop, Workbench::day(21), true)->size(), 1U);
        GW_FAILS(planJob(*bench.shop, { "chair_full", dateIn2026(3, 1), 1 }, Workbench::day(20)),
            ErrorCode::BadInput);
        GW_FAILS(planJob(*bench.shop, { "chair_full", dateIn2026(4, 1), 0 }, Workbench::day(20)),
            ErrorCode::BadInput);
        GW_FAILS(planJob(*bench.shop, { "no such work", dateIn2026(4, 1), 1 }, Workbench::day(20)),
            ErrorCode::NotFound);
        GW_FAILS(setPlanned(*bench.shop, "zzz", PlannedState::Done, Workbench::day(21)), ErrorCode::NotFound);
    }

    void weighings_areLearned_data() { addEngines(); }
    void weighings_areLearned()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto code = bench.arrive("Hide glue", "hide_granules_192", "1 kg", 1);
        GW_OK(savePackOffered(*bench.shop, { "Hide glue", "5 kg", "", "50.00 EUR", "Harbour Lane", 5 }));
        GW_OK(setJobRate(*bench.shop, "chair_full", 60, Workbench::day(2)));
        JobRecord job { JobId { "job-1" }, JobTypeId { "chair_full" }, "Chair", "Chair", Workbench::day(10) };
        GW_OK(bench.shop->store().saveJob(job));
        GW_OK(useSome(*bench.shop, code, grams(100), job.id, Workbench::on(10)));
        const auto plan = orderForMonth(*bench.shop, { dateIn2026(4, 1), 95 }, Workbench::day(20));
        GW_OK(plan);
        QCOMPARE(plan->lines.size(), 1U);
        QVERIFY2(plan->lines[0].why.find("from 1 job") != std::string::npos, plan->lines[0].why.c_str());
    }

    void doorstep_isKeptAndKnown_data() { addEngines(); }
    void doorstep_isKeptAndKnown()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        QCOMPARE(*doorstepName(*bench.shop), std::string());
        GW_OK(setDoorstep(*bench.shop, "Lean-to"));
        QCOMPARE(*doorstepName(*bench.shop), std::string("Lean-to"));
        const auto catalogue = bench.shop->catalogue();
        GW_OK(catalogue);
        const auto doorstep = doorstepOf(*bench.shop, *catalogue, "Lean-to", Workbench::day(20));
        GW_OK(doorstep);
        QCOMPARE(doorstep->low(dateIn2026(1, 15))->value, -8.0);
        GW_FAILS(setDoorstep(*bench.shop, "Nowhere"), ErrorCode::NotFound);
        GW_OK(setDoorstep(*bench.shop, ""));
        QCOMPARE(*doorstepName(*bench.shop), std::string());
    }
};

QTEST_GUILESS_MAIN(OrdersTest)
#include "tst_orders.moc"
