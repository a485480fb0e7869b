#include <QTest>

#include "shop/arrivallot.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// The made date out of a lot code, and cases of inner packs: offered, chosen by a person, and remembered.
class ArrivalLotTest : public QObject {
    Q_OBJECT

private:
    static Result<ArrivalProposal> propose(const Workbench& bench, const std::string& text, double day = 100)
    {
        return proposeArrival(
            *bench.shop, readCode(text, {}, dateOf(Workbench::day(day))), Workbench::day(day));
    }
    // GS1 demonstration prefix 952; the case's number is the item's with indicator 1 and its own check digit
    // (GS1 General Specifications 2.1.7 and 7.9: 1952012345678 -> 5).
    static constexpr auto item = "9520123456788";
    static constexpr auto packedCase = "19520123456785";

    static void learn(Workbench& bench, const std::string& code, std::optional<std::size_t> lotDate)
    {
        auto first = propose(bench, code);
        GW_OK(first);
        first->draft.newName = "White PVA";
        first->draft.newClass = ClassId { "pva_white" };
        first->draft.amount = grams(500);
        first->draft.place = "Bench";
        if (first->draft.count == 0)
            first->draft.count = 6;
        if (lotDate) {
            QVERIFY(first->lotDates.size() > *lotDate);
            takeLotDate(first->draft, first->lotDates[*lotDate]);
        }
        GW_OK(bookIn(*bench.shop, first->draft, bench.on(100)));
    }

private Q_SLOTS:
    void lotCode_isOfferedButNeverTakenByItself_data() { addEngines(); }
    void lotCode_isOfferedButNeverTakenByItself()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto proposal = propose(bench, std::string("(01)0") + item + "(10)L26145A");
        GW_OK(proposal);
        QVERIFY(!proposal->lotDates.empty());
        QCOMPARE(proposal->lotDates.front().words, std::string("day 145 of 2026: 25 May 2026"));
        QVERIFY(!proposal->draft.made.has_value());
        QVERIFY(std::ranges::count(proposal->asks, "label_date") == 1);
        // A made date in the code leaves nothing to read.
        const auto dated = propose(bench, std::string("(01)0") + item + "(11)260520(10)L26145A");
        GW_OK(dated);
        QVERIFY(dated->lotDates.empty());
    }

    void choice_isUsedNextTime_andStillSaid_data() { addEngines(); }
    void choice_isUsedNextTime_andStillSaid()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string number = std::string("(01)0") + item;
        learn(bench, number + "(10)L26145A", 0);
        const auto all = bench.shop->store().containers();
        GW_OK(all);
        QVERIFY(all->front().made == dateIn2026(5, 25));

        const auto next = propose(bench, number + "(10)L26150B");
        GW_OK(next);
        QVERIFY(next->draft.made == dateIn2026(5, 30));
        QVERIFY(next->lotDates.front().asLastTime);
        QCOMPARE(lotDateManner(next->draft.lotReadAs), std::string("year and day of the year"));
        // What it does not fit is asked as before.
        const auto other = propose(bench, number + "(10)QX-A");
        GW_OK(other);
        QVERIFY(!other->draft.made && other->lotDates.empty());
        QVERIFY(std::ranges::count(other->asks, "label_date") == 1);
        // Nothing made tomorrow is read as last time either.
        const auto future = propose(bench, number + "(10)L26170B");
        GW_OK(future);
        QVERIFY(future->draft.made != dateIn2026(6, 19));
    }

    void choiceNotMade_isNotRemembered_data() { addEngines(); }
    void choiceNotMade_isNotRemembered()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string number = std::string("(01)0") + item;
        learn(bench, number + "(10)L26145A", {});
        const auto next = propose(bench, number + "(10)L26150B");
        GW_OK(next);
        QVERIFY(!next->draft.made.has_value());
        QVERIFY(!next->lotDates.empty() && !next->lotDates.front().asLastTime);
    }

    void case_asksHowManyOnce_data() { addEngines(); }
    void case_asksHowManyOnce()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        auto first = propose(bench, packedCase);
        GW_OK(first);
        QVERIFY(std::ranges::count(first->asks, "count") == 1);
        QCOMPARE(first->draft.gtin->digits14, std::string("0") + item);
        first->draft.newName = "White PVA";
        first->draft.newClass = ClassId { "pva_white" };
        first->draft.amount = grams(500);
        GW_FAILS(bookIn(*bench.shop, first->draft, bench.on(100)), ErrorCode::BadInput);
        QCOMPARE(bench.shop->store().containers()->size(), std::size_t { 0 });
        learn(bench, packedCase, {});
        QCOMPARE(bench.shop->store().containers()->size(), std::size_t { 6 });

        // The case is known with what is in it, and so is one bottle out of it.
        const auto again = propose(bench, packedCase);
        GW_OK(again);
        QCOMPARE(again->kind, ArrivalProposal::Kind::KnownProduct);
        QCOMPARE(again->draft.count, 6);
        QVERIFY(std::ranges::count(again->asks, "count") == 0);
        const auto bottle = propose(bench, item);
        GW_OK(bottle);
        QCOMPARE(bottle->kind, ArrivalProposal::Kind::KnownProduct);
        QCOMPARE(bottle->draft.count, 1);
        QVERIFY(bottle->draft.amount == grams(500));
    }

    void caseOfAKnownBottle_asksHowMany_data() { addEngines(); }
    void caseOfAKnownBottle_asksHowMany()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        learn(bench, item, {});
        const auto proposal = propose(bench, packedCase);
        GW_OK(proposal);
        QCOMPARE(proposal->kind, ArrivalProposal::Kind::KnownProduct);
        QCOMPARE(proposal->materialName, std::string("White PVA"));
        QCOMPARE(proposal->draft.count, 0);
        QVERIFY(std::ranges::count(proposal->asks, "count") == 1);
    }

    // AI 02 with 37: a logistic unit says itself how many are in it (GS1 General Specifications 3.3.3, 3.6).
    void countOnTheLabel_isTaken_andIsNoAmount_data() { addEngines(); }
    void countOnTheLabel_isTaken_andIsNoAmount()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        learn(bench, item, {});
        const auto proposal = propose(bench, std::string("(00)095201234567891235(02)0") + item + "(37)12");
        GW_OK(proposal);
        QVERIFY2(proposal->kind == ArrivalProposal::Kind::KnownProduct, proposal->say.c_str());
        QCOMPARE(proposal->draft.count, 12);
        QVERIFY(proposal->draft.amount == grams(500));
    }

    // Indicator 9: how much is in it is on each label, not in its number (GS1 General Specifications 2.1.7).
    void variableMeasure_asksHowMuchEachTime_data() { addEngines(); }
    void variableMeasure_asksHowMuchEachTime()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string variable = "(01)99520123456781"; // 9952012345678 -> 1
        learn(bench, variable + "(3103)000750", {});
        const auto without = propose(bench, variable);
        GW_OK(without);
        QCOMPARE(without->kind, ArrivalProposal::Kind::KnownProduct);
        QVERIFY(!without->draft.amount.has_value());
        const auto with = propose(bench, variable + "(3103)000420");
        GW_OK(with);
        QVERIFY(with->draft.amount == grams(420));
    }
};

QTEST_GUILESS_MAIN(ArrivalLotTest)
#include "tst_arrivallot.moc"
