#include <QTest>

#include "ageing/stock.h"

using namespace gw;
using namespace gw::test;

// Opened on day 0, opened life 200 to 400 days, a test grants a quarter of 200: 50 days.
class TestBenchTest : public QObject {
    Q_OBJECT

    const WatchedClimate m_climate = shopClimate();
    const LifeFigures m_figures = plainFigures();
    const Moment m_start = at("2025-01-01");

    History tested(std::initializer_list<double> passedOnDays) const
    {
        History history = fresh();
        history.opened = m_start;
        for (const double day : passedOnDays)
            history.tests.push_back({ after(m_start, day), true, 85.0, false });
        return history;
    }
    Judgement judged(const History& history, double day) const
    {
        return judge(history, m_figures, m_climate, after(m_start, day));
    }
    Verdict verdict(const History& history, double day) const { return judged(history, day).verdict; }

private Q_SLOTS:
    void failed_isDoNotUseForGood()
    {
        History history = tested({});
        history.tests = { { after(m_start, 20), false, 10.0, false } };
        QCOMPARE(verdict(history, 19), Verdict::Good);
        QVERIFY(says(judged(history, 20), "bench_test_failed", Verdict::DoNotUse));
        history.tests.push_back({ after(m_start, 30), true, 90.0, false });
        QCOMPARE(verdict(history, 31), Verdict::DoNotUse);
    }

    void grainyAfterFrost_isDoNotUseThoughItPassed()
    {
        History history = tested({});
        history.tests = { { after(m_start, 20), true, 90.0, true } };
        QCOMPARE(verdict(history, 21), Verdict::DoNotUse);
    }

    void passed_grantsAQuarterOfTheOpenedLowLife()
    {
        const History history = tested({ 210 });
        QCOMPARE(verdict(history, 209), Verdict::TestFirst);
        const Judgement j = judged(history, 211);
        QCOMPARE(j.verdict, Verdict::Good);
        QCOMPARE(j.reasons.front().code, std::string("bench_test_passed"));
        QCOMPARE(j.goodUntil, std::optional(after(m_start, 260)));
        QCOMPARE(verdict(history, 260), Verdict::Good);
        QCOMPARE(verdict(history, 261), Verdict::TestFirst);
        QVERIFY(judged(history, 261).reasons.front().text.find("was used up on 18 September 2025")
            != std::string::npos);
    }

    void passed_alsoLiftsDoNotUseByAgeAndNotKnown()
    {
        QCOMPARE(verdict(tested({ 500 }), 510), Verdict::Good);
        QCOMPARE(verdict(tested({ 500 }), 551), Verdict::DoNotUse);
        History history = tested({ 5 });
        history.stays.clear();
        QCOMPARE(verdict(history, 4), Verdict::NotKnown);
        QCOMPARE(verdict(history, 6), Verdict::Good);
        QCOMPARE(verdict(history, 56), Verdict::NotKnown);
    }

    void passed_movesTheVerdictPastTheLabelsDate()
    {
        History history = tested({ 100 });
        history.printed = on("2025-03-01");
        history.printedIsUseBy = true;
        QCOMPARE(verdict(history, 99), Verdict::DoNotUse);
        QCOMPARE(verdict(history, 101), Verdict::Good);
        QCOMPARE(verdict(history, 151), Verdict::DoNotUse);
    }

    void secondPass_grantsNothingMore()
    {
        const History history = tested({ 210, 255, 300 });
        QCOMPARE(verdict(history, 259), Verdict::Good);
        QCOMPARE(verdict(history, 261), Verdict::TestFirst);
        QCOMPARE(verdict(history, 301), Verdict::TestFirst);
    }

    void passThatWasNotNeeded_isNotUsedUp()
    {
        const History history = tested({ 50, 210 }); // the first ends on day 100, long before the need
        QCOMPARE(judged(history, 60).goodUntil, std::optional(after(m_start, 200)));
        QCOMPARE(verdict(history, 205), Verdict::TestFirst);
        QCOMPARE(verdict(history, 259), Verdict::Good);
    }

    void passShortlyBeforeTheNeed_carriesOver()
    {
        const History history = tested({ 190, 230 }); // until day 240, and that was the one extension
        QCOMPARE(judged(history, 195).goodUntil, std::optional(after(m_start, 240)));
        QCOMPARE(verdict(history, 239), Verdict::Good);
        QCOMPARE(verdict(history, 241), Verdict::TestFirst);
    }

    void grant_isTheClasssShareAndFallsBackToTheSealedLife()
    {
        LifeFigures figures = m_figures;
        figures.testGrant = 0.1;
        QCOMPARE(judge(tested({ 210 }), figures, m_climate, after(m_start, 211)).goodUntil,
            std::optional(after(m_start, 230)));
        figures = m_figures;
        figures.opened.kind = Life::Kind::DoesNotAge;
        QCOMPARE(judge(tested({ 410 }), figures, m_climate, after(m_start, 411)).goodUntil,
            std::optional(after(m_start, 510)));
    }

    void noLifeKnown_thereIsNothingToGrant()
    {
        LifeFigures figures = m_figures;
        figures.sealed = figures.opened = {};
        const Judgement j = judge(tested({ 10 }), figures, m_climate, after(m_start, 11));
        QCOMPARE(j.verdict, Verdict::NotKnown);
        QVERIFY(says(j, "bench_test_passed", Verdict::Good));
    }

    void passed_doesNotLiftAHoldOrRetirement()
    {
        History history = tested({ 210 });
        history.hold = Hold { after(m_start, 215), "asked back" };
        QCOMPARE(verdict(history, 214), Verdict::Good);
        QCOMPARE(verdict(history, 216), Verdict::DoNotUse);
        history.hold.reset();
        history.retired = after(m_start, 215);
        QCOMPARE(verdict(history, 216), Verdict::DoNotUse);
    }
};

QTEST_APPLESS_MAIN(TestBenchTest)
#include "tst_benchtest.moc"
