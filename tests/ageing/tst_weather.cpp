#include <QTest>

#include "ageing/stock.h"

using namespace gw;
using namespace gw::test;

class TestWeather : public QObject {
    Q_OBJECT

    const WatchedClimate m_climate = shopClimate();
    const Moment m_start = at("2025-01-01");

    static LifeFigures figures(Frost frost, std::optional<Range<Celsius>> keep = {})
    {
        LifeFigures f = plainFigures();
        f.frost = frost;
        f.keepBetween = keep;
        return f;
    }
    Judgement judged(const PlaceId& place, const LifeFigures& f, double day = 1) const
    {
        History history = fresh();
        history.stays = { { place, m_start } };
        return judge(history, f, m_climate, after(m_start, day));
    }

private Q_SLOTS:
    void frostThatHarms_isNotKnownWhereItMayFreeze()
    {
        QVERIFY(says(judged(shed, figures(Frost::Harms)), "frost_not_known", Verdict::NotKnown));
        QVERIFY(!reason(judged(loft, figures(Frost::Harms)), "frost_not_known"));
        QVERIFY(!reason(judged(shed, figures(Frost::Never)), "frost_not_known"));
        QCOMPARE(judged(shed, figures(Frost::Harms), 0).verdict, Verdict::NotKnown); // it stands there now
    }

    void frostThatComesBack_isTestFirst()
    {
        const Judgement j = judged(shed, figures(Frost::Recoverable));
        QCOMPARE(j.verdict, Verdict::TestFirst);
        QVERIFY(says(j, "frost_not_known", Verdict::TestFirst));
    }

    void freezingPoint_itselfIsNotFrost()
    {
        const WatchedClimate zero = assumedClimate({ { bench, { { 0 }, { 20 } } } });
        History history = fresh();
        history.stays = { { bench, m_start } };
        QCOMPARE(judge(history, figures(Frost::Harms), zero, m_start).verdict, Verdict::Good);
    }

    void frostOfAnEarlierPlace_isRemembered()
    {
        History history = fresh();
        history.stays = { { shed, m_start }, { steady, after(m_start, 3) } };
        QCOMPARE(
            judge(history, figures(Frost::Harms), m_climate, after(m_start, 90)).verdict, Verdict::NotKnown);
        history.stays[1].from = m_start; // put right at once: it never stood in the shed
        QCOMPARE(judge(history, figures(Frost::Harms), m_climate, after(m_start, 90)).verdict, Verdict::Good);
    }

    void unknownPlace_mayHaveFrozen()
    {
        LifeFigures f = figures(Frost::Harms);
        f.rate.q10 = 1;
        QCOMPARE(judged(nowhere, f).verdict, Verdict::NotKnown);
        QVERIFY(says(judged(nowhere, f), "frost_not_known", Verdict::NotKnown));
        // Not even a shop without a single cold place makes it known.
        const WatchedClimate warm = assumedClimate({ { steady, { { 20 }, { 20 } } } });
        History history = fresh();
        history.stays = { { nowhere, m_start } };
        QVERIFY(says(judge(history, f, warm, m_start), "frost_not_known", Verdict::NotKnown));
        f.frost = Frost::Recoverable;
        QCOMPARE(judged(nowhere, f).verdict, Verdict::TestFirst);
    }

    void foundUndated_mayHaveFrozenBefore()
    {
        History history = fresh();
        history.foundUndated = true;
        history.stays = { { shed, m_start }, { steady, m_start } }; // found in the shed, taken in at once
        QCOMPARE(
            judge(history, figures(Frost::Harms), m_climate, after(m_start, 5)).verdict, Verdict::NotKnown);
        history.foundUndated = false;
        QCOMPARE(judge(history, figures(Frost::Harms), m_climate, after(m_start, 5)).verdict, Verdict::Good);
    }

    void heat_isLeftToTheClockUpToFiveDegreesOver()
    {
        QVERIFY(!reason(judged(shed, figures(Frost::Never, Range<Celsius> { { 5 }, { 34 } })), "too_hot"));
        QVERIFY(says(
            judged(shed, figures(Frost::Never, Range<Celsius> { { 5 }, { 30 } })), "too_hot", Verdict::Good));
        QVERIFY(says(judged(shed, figures(Frost::Never, Range<Celsius> { { 5 }, { 28 } })), "too_hot",
            Verdict::TestFirst));
        QCOMPARE(judged(shed, figures(Frost::Never, Range<Celsius> { { 5 }, { 20 } })).verdict,
            Verdict::TestFirst);
    }

    void passedBenchTest_settlesThePastAndItsDay()
    {
        History history = fresh();
        history.stays = { { shed, m_start } };
        history.tests = { { after(m_start, 20), true, 90.0, false } };
        const LifeFigures f = figures(Frost::Harms, Range<Celsius> { { 5 }, { 20 } });
        QCOMPARE(judge(history, f, m_climate, after(m_start, 19)).verdict, Verdict::NotKnown);
        const Judgement j = judge(history, f, m_climate, after(m_start, 20.5));
        QCOMPARE(j.verdict, Verdict::Good);
        QCOMPARE(j.goodUntil, std::optional(after(m_start, 21)));
        QCOMPARE(judge(history, f, m_climate, after(m_start, 22)).verdict, Verdict::NotKnown);

        history.stays.push_back({ steady, after(m_start, 20.5) }); // brought in the same day
        const Judgement in = judge(history, f, m_climate, after(m_start, 50));
        QCOMPARE(in.verdict, Verdict::Good);
        QVERIFY(!reason(in, "frost_not_known") && !reason(in, "too_hot"));
    }

    void settlingFrost_doesNotUseUpTheExtensionOfAge()
    {
        History history = fresh();
        history.opened = m_start;
        history.stays = { { shed, m_start }, { steady, after(m_start, 5) } };
        history.tests
            = { { after(m_start, 6), true, 90.0, false }, { after(m_start, 390), true, 90.0, false } };
        const LifeFigures f = figures(Frost::Harms);
        QCOMPARE(judge(history, f, m_climate, after(m_start, 100)).verdict, Verdict::Good);
        QCOMPARE(judge(history, f, m_climate, after(m_start, 395)).verdict, Verdict::Good);
    }
};

QTEST_APPLESS_MAIN(TestWeather)
#include "tst_weather.moc"
