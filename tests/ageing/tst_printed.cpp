#include <QTest>

#include <cmath>

#include "ageing/stock.h"

using namespace gw;
using namespace gw::test;

class TestPrinted : public QObject {
    Q_OBJECT

    const WatchedClimate m_climate = shopClimate();
    const LifeFigures m_figures = plainFigures();

    static History labelled(std::string_view printed, const PlaceId& place = steady)
    {
        History history = fresh();
        history.printed = on(printed);
        history.stays = { { place, history.arrived } };
        return history;
    }
    Judgement judged(const History& history, std::string_view moment) const
    {
        return judge(history, m_figures, m_climate, at(moment));
    }

private Q_SLOTS:
    void printedDay_isGoodToItsEnd()
    {
        const History history = labelled("2025-06-30");
        QCOMPARE(judged(history, "2025-06-30T23:59:59Z").verdict, Verdict::Good);
        QCOMPARE(judged(history, "2025-07-01").verdict, Verdict::TestFirst);
        QCOMPARE(judged(history, "2025-03-01").goodUntil, std::optional(endOf(on("2025-06-30"))));
    }

    void useByGoneBy_isDoNotUse()
    {
        History history = labelled("2025-06-30");
        history.printedIsUseBy = true;
        QVERIFY(says(judged(history, "2025-07-01"), "printed_date", Verdict::DoNotUse));
        QCOMPARE(judged(history, "2025-06-29").verdict, Verdict::Good);
    }

    void dateToCome_beatsTheClassesSealedLife()
    {
        // The class says 400 to 800 days; the label two and a half years, and the place is as cool as it
        // should be.
        const History history = labelled("2027-06-30");
        const Judgement j = judged(history, "2027-04-01"); // 820 days
        QCOMPARE(j.verdict, Verdict::Good);
        QVERIFY(says(j, "sealed_life", Verdict::Good));
        QVERIFY(j.sealed.used.low > 1); // still told
        QCOMPARE(judged(history, "2027-07-01").verdict,
            Verdict::DoNotUse); // gone by: the class's life counts again
    }

    void dateToCome_isShorterThanTheClassesLife()
    {
        QCOMPARE(judged(labelled("2025-02-01"), "2025-02-02").verdict, Verdict::TestFirst);
    }

    void warmth_bringsTheDateForwardToTestFirst()
    {
        const History history = labelled("2026-01-31", loft); // 396 days, up to 4 times as fast: 99
        QCOMPARE(judged(history, "2025-04-09").verdict, Verdict::Good);
        QVERIFY(says(judged(history, "2025-04-11"), "printed_date", Verdict::TestFirst));
        QCOMPARE(judged(history, "2025-12-31").verdict, Verdict::TestFirst); // warns, never condemns
        const auto until = judged(history, "2025-02-01").goodUntil;
        QVERIFY(until && std::abs(daysBetween(*until, at("2025-04-10")).count()) < 1e-6);
    }

    void cold_doesNotPutTheDateOff()
    {
        LifeFigures figures = m_figures;
        figures.rate.coldCredit = true;
        figures.rate.reference = Celsius { 30 }; // the steady place is 10 C colder: half as fast
        const Judgement j = judge(labelled("2025-06-30"), figures, m_climate, at("2025-02-01"));
        QCOMPARE(j.goodUntil, std::optional(endOf(on("2025-06-30"))));
    }

    void opened_theOpenedClockCountsBesides()
    {
        History history = labelled("2027-06-30");
        history.opened = at("2025-02-01");
        QCOMPARE(judged(history, "2025-08-19").verdict, Verdict::Good);
        QCOMPARE(judged(history, "2025-08-22").verdict, Verdict::TestFirst); // 200 days
        QCOMPARE(judged(history, "2026-03-10").verdict, Verdict::DoNotUse);
        QCOMPARE(judged(history, "2025-03-01").goodUntil, std::optional(at("2025-08-20")));
    }

    void foundUndated_theLabelGovernsAndSaysSo()
    {
        History history = labelled("2025-12-31");
        history.made.reset();
        history.foundUndated = true;
        const Judgement j = judged(history, "2025-02-01");
        QCOMPARE(j.verdict, Verdict::Good);
        QVERIFY(!j.sealed.known);
        QVERIFY(reason(j, "printed_date")->text.find("Nothing but that date tells how old it is.")
            != std::string::npos);
    }

    void madeBeforeThePrintedDate_isTheLeastAge()
    {
        // Found five years after its best-before: it is at least that old, whatever the usual time in the
        // trade.
        History history = labelled("2020-01-01");
        history.made.reset();
        QCOMPARE(judged(history, "2025-01-02").verdict, Verdict::DoNotUse);
    }

    void lifeNotKnown_theLabelWillDo()
    {
        LifeFigures figures = m_figures;
        figures.sealed = {};
        QCOMPARE(judge(labelled("2025-12-31"), figures, m_climate, at("2025-02-01")).verdict, Verdict::Good);
        QCOMPARE(
            judge(labelled("2025-12-31"), figures, m_climate, at("2026-02-01")).verdict, Verdict::TestFirst);
    }

    void placeNotKnown_isStillNotKnown()
    {
        const Judgement j = judged(labelled("2027-06-30", nowhere), "2025-01-20");
        QCOMPARE(j.verdict, Verdict::NotKnown);
        QVERIFY(says(j, "place_not_known", Verdict::NotKnown));
    }
};

QTEST_APPLESS_MAIN(TestPrinted)
#include "tst_printed.moc"
