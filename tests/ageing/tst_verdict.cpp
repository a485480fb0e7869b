#include <QTest>

#include <cmath>

#include "ageing/stock.h"

using namespace gw;
using namespace gw::test;

namespace {

/// A place with seasons: 20 C, but up to 30 C in June, July and August.
class SeasonClimate final : public Climate {
public:
    Exposure exposure(const PlaceId&, Moment from, Moment to, const Rate&) const override
    {
        const Days span = daysBetween(from, to);
        return { { span, span }, Days { 0 }, Celsius { 20 }, Celsius { 20 }, true };
    }
    std::optional<Range<Celsius>> usual(const PlaceId&, Moment moment) const override
    {
        const auto month = static_cast<unsigned>(dateOf(moment).month());
        return Range<Celsius> { { 20 }, { month >= 6 && month <= 8 ? 30.0 : 20.0 } };
    }
};

} // namespace

class TestVerdict : public QObject {
    Q_OBJECT

    const WatchedClimate m_climate = shopClimate();
    const LifeFigures m_figures = plainFigures();
    const Moment m_start = at("2025-01-01");

    Judgement judged(const History& history, double day) const
    {
        return judge(history, m_figures, m_climate, after(m_start, day));
    }
    Verdict verdict(const History& history, double day) const { return judged(history, day).verdict; }

private Q_SLOTS:
    void worst_ordersGoodTestNotKnownDoNot()
    {
        QCOMPARE(worst(Verdict::Good, Verdict::TestFirst), Verdict::TestFirst);
        QCOMPARE(worst(Verdict::NotKnown, Verdict::TestFirst), Verdict::NotKnown);
        QCOMPARE(worst(Verdict::NotKnown, Verdict::DoNotUse), Verdict::DoNotUse);
    }

    void words_readBack()
    {
        for (const Verdict v : { Verdict::Good, Verdict::TestFirst, Verdict::NotKnown, Verdict::DoNotUse })
            QCOMPARE(verdictOfWord(word(v)), std::optional(v));
        QCOMPARE(words(Verdict::DoNotUse), std::string("do_not_use"));
        QVERIFY(!verdictOfWord("splendid"));
    }

    void sealedClock_turnsAtBothEndsOfTheLife()
    {
        QCOMPARE(verdict(fresh(), 399), Verdict::Good);
        QCOMPARE(verdict(fresh(), 401), Verdict::TestFirst);
        QCOMPARE(verdict(fresh(), 799), Verdict::TestFirst);
        QCOMPARE(verdict(fresh(), 801), Verdict::DoNotUse);
        QVERIFY(says(judged(fresh(), 401), "sealed_life", Verdict::TestFirst));
    }

    void openedClock_turnsAtBothEndsOfTheLife()
    {
        History history = fresh();
        history.opened = after(m_start, 10);
        QCOMPARE(verdict(history, 209), Verdict::Good);
        QCOMPARE(verdict(history, 211), Verdict::TestFirst);
        QCOMPARE(verdict(history, 411), Verdict::DoNotUse);
        QVERIFY(says(judged(history, 411), "opened_life", Verdict::DoNotUse));
    }

    void sealedClock_runsOnAfterOpening()
    {
        History history = fresh();
        history.opened = after(m_start, 390);
        QCOMPARE(verdict(history, 401), Verdict::TestFirst);
        QVERIFY(says(judged(history, 401), "opened_life", Verdict::Good));
    }

    void used_isARangeOfBothRanges()
    {
        History history = fresh();
        history.stays = { { loft, m_start } }; // 1 to 4 times as fast
        history.opened = m_start;
        const Judgement j = judged(history, 40);
        QVERIFY(j.sealed.known && j.opened.known);
        QCOMPARE(j.sealed.used.low, 40.0 / 800);
        QCOMPARE(j.sealed.used.high, 160.0 / 400);
        QCOMPARE(j.opened.used.low, 40.0 / 400);
        QCOMPARE(j.opened.used.high, 160.0 / 200);
        QCOMPARE(j.opened.unwatched.count(), 40.0);
    }

    void stays_addUp()
    {
        History history = fresh();
        history.stays.push_back({ loft, after(m_start, 30) });
        history.stays.push_back({ steady, after(m_start, 50) });
        const Judgement j = judged(history, 100);
        QCOMPARE(j.sealed.used.high, (30 + 20 * 4 + 50) / 400.0);
        QCOMPARE(j.sealed.used.low, 100 / 800.0);
    }

    void timeBeforeArrival_countsFiveDegreesAroundTheReference()
    {
        History history = fresh();
        history.arrived = after(m_start, 60);
        history.stays = { { steady, history.arrived } };
        const Judgement j = judged(history, 100);
        QCOMPARE(j.sealed.used.high, (60 * std::sqrt(2.0) + 40) / 400);
        QCOMPARE(j.sealed.used.low, 100 / 800.0);
        QCOMPARE(j.sealed.unwatched.count(), 100.0);
    }

    void noMadeDate_countsTheTimeInTradeAsARange()
    {
        History history = fresh();
        history.made.reset();
        const Judgement j = judged(history, 50);
        QVERIFY(j.sealed.known);
        QCOMPARE(j.sealed.used.low, 50 / 800.0);
        QCOMPARE(j.sealed.used.high, (50 + 100 * std::sqrt(2.0)) / 400);
        QCOMPARE(j.verdict, Verdict::Good);
    }

    void noMadeDateAndNoTimeInTrade_isNotKnown()
    {
        History history = fresh();
        history.made.reset();
        LifeFigures figures = m_figures;
        figures.timeInTrade = {};
        const Judgement j = judge(history, figures, m_climate, after(m_start, 50));
        QCOMPARE(j.verdict, Verdict::NotKnown);
        QVERIFY(says(j, "age_not_known", Verdict::NotKnown));
        QVERIFY(!j.sealed.known && j.sealed.applies);
    }

    void foundUndated_isNotKnownUntilItIsCertainlyPast()
    {
        History history = fresh();
        history.made.reset();
        history.foundUndated = true;
        QVERIFY(says(judged(history, 1), "age_not_known", Verdict::NotKnown));
        QCOMPARE(verdict(history, 1), Verdict::NotKnown);
        QVERIFY(!judged(history, 1).sealed.known);
        QVERIFY(!judged(history, 1).goodUntil);
        QCOMPARE(verdict(history, 801), Verdict::DoNotUse);
    }

    void foundUndatedYetWithAMadeDate_stoodWhereItWasFound()
    {
        History history = fresh();
        history.arrived = after(m_start, 100);
        history.stays = { { loft, history.arrived } };
        QCOMPARE(verdict(history, 100), Verdict::Good);
        QCOMPARE(judged(history, 100).sealed.used.high, 100 * std::sqrt(2.0) / 400);
        history.foundUndated = true;
        QCOMPARE(judged(history, 101).sealed.used.high, 101 * 4 / 400.0);
        QCOMPARE(verdict(history, 101), Verdict::TestFirst);
    }

    void foundOpen_isNotKnown()
    {
        History history = fresh();
        history.foundOpen = true;
        const Judgement j = judged(history, 1);
        QCOMPARE(j.verdict, Verdict::NotKnown);
        QVERIFY(says(j, "age_not_known", Verdict::NotKnown));
        QVERIFY(j.opened.applies && !j.opened.known);
    }

    void placeNotKnown_isNotKnownWhereTemperatureMatters()
    {
        History history = fresh();
        history.stays.clear();
        QCOMPARE(verdict(history, 10), Verdict::NotKnown);
        QVERIFY(says(judged(history, 10), "place_not_known", Verdict::NotKnown));
        history.stays
            = { { steady, m_start }, { nowhere, after(m_start, 10) }, { steady, after(m_start, 11) } };
        QCOMPARE(verdict(history, 9), Verdict::Good);
        QCOMPARE(verdict(history, 20), Verdict::NotKnown);
        QCOMPARE(reason(judged(history, 20), "place_not_known")->when, std::optional(after(m_start, 10)));
    }

    void placeNotKnown_isDoNotUseWhereTheWorstPlaceWouldBePast()
    {
        History history = fresh();
        history.stays = { { nowhere, m_start } };
        QCOMPARE(verdict(history, 199), Verdict::NotKnown);
        QCOMPARE(verdict(history, 201), Verdict::DoNotUse); // the loft: 4 times as fast
    }

    void placeNotKnown_isPlainTimeWhereTemperatureDoesNotMatter()
    {
        History history = fresh();
        history.stays.clear();
        LifeFigures figures = m_figures;
        figures.rate.q10 = 1;
        const Judgement j = judge(history, figures, m_climate, after(m_start, 100));
        QCOMPARE(j.verdict, Verdict::Good);
        QVERIFY(j.sealed.known);
        QCOMPARE(j.goodUntil, std::optional(after(m_start, 400)));
    }

    void lifeNotKnown_isNotKnown()
    {
        LifeFigures figures = m_figures;
        figures.sealed = {};
        QVERIFY(says(judge(fresh(), figures, m_climate, m_start), "life_not_known", Verdict::NotKnown));
        figures = m_figures;
        figures.opened = { Life::Kind::Ages, {} }; // a life without a length
        QCOMPARE(judge(fresh(), figures, m_climate, m_start).verdict, Verdict::Good);
        History opened = fresh();
        opened.opened = m_start;
        QCOMPARE(judge(opened, figures, m_climate, m_start).verdict, Verdict::NotKnown);
    }

    void whatDoesNotAge_isGoodAndSaysWhy()
    {
        LifeFigures figures;
        figures.sealed.kind = figures.opened.kind = Life::Kind::DoesNotAge;
        History history;
        history.arrived = m_start;
        const Judgement j = judge(history, figures, m_climate, after(m_start, 5000));
        QCOMPARE(j.verdict, Verdict::Good);
        QVERIFY(says(j, "does_not_age", Verdict::Good));
        QVERIFY(!j.sealed.applies && !j.opened.applies && !j.goodUntil);
    }

    void retiredAndHeld_areDoNotUse()
    {
        History history = fresh();
        history.retired = after(m_start, 20);
        QCOMPARE(verdict(history, 19), Verdict::Good);
        QVERIFY(says(judged(history, 21), "retired", Verdict::DoNotUse));
        history = fresh();
        history.hold = Hold { after(m_start, 20), "the maker asks for it back" };
        QCOMPARE(verdict(history, 19), Verdict::Good);
        QVERIFY(says(judged(history, 21), "lot_on_hold", Verdict::DoNotUse));
        QVERIFY(
            reason(judged(history, 21), "lot_on_hold")->text.find("asks for it back") != std::string::npos);
    }

    void whatHappensLater_isNotSeen()
    {
        History history = fresh();
        const Judgement before = judged(history, 100);
        history.opened = history.retired = after(m_start, 101);
        history.hold = Hold { after(m_start, 101), "later" };
        history.tests = { { after(m_start, 101), false, {}, false } };
        history.stays.push_back({ nowhere, after(m_start, 101) });
        const Judgement after = judged(history, 100);
        QCOMPARE(after.verdict, before.verdict);
        QCOMPARE(after.goodUntil, before.goodUntil);
        QCOMPARE(after.reasons.size(), before.reasons.size());
        QCOMPARE(after.reasons.front().text, before.reasons.front().text);
    }

    void goodUntil_isWhereTestFirstBegins()
    {
        QCOMPARE(judged(fresh(), 100).goodUntil, std::optional(after(m_start, 400)));
        QVERIFY(!judged(fresh(), 401).goodUntil);
        History history = fresh();
        history.stays.push_back({ loft, after(m_start, 100) }); // 300 days left, 4 times as fast
        QCOMPARE(judged(history, 100).goodUntil, std::optional(after(m_start, 175)));
        history.opened = after(m_start, 150); // 200 opened days would be 50, but the sealed clock is first
        QCOMPARE(judged(history, 150).goodUntil, std::optional(after(m_start, 175)));
    }

    void goodUntil_followsTheSeasonsToCome()
    {
        History history = fresh();
        history.made = on("2025-05-22"); // 10 days to June, then 92 summer days at twice the speed, then 6
        history.arrived = at("2025-05-22");
        history.stays = { { bench, history.arrived } };
        LifeFigures figures = m_figures;
        figures.sealed.span = { Days { 10 + 2 * 92 + 6 }, Days { 500 } };
        QCOMPARE(judge(history, figures, SeasonClimate {}, history.arrived).goodUntil,
            std::optional(at("2025-09-07")));
        figures.sealed.span.low = Days { 10 + 2 * 30 }; // used up within the summer
        QCOMPARE(judge(history, figures, SeasonClimate {}, history.arrived).goodUntil,
            std::optional(at("2025-07-01")));
    }

    void goodUntilIfOpened_startsTheOpenedClock()
    {
        QCOMPARE(goodUntilIfOpened(fresh(), m_figures, m_climate, after(m_start, 50)),
            std::optional(after(m_start, 250)));
        QCOMPARE(goodUntilIfOpened(fresh(), m_figures, m_climate, after(m_start, 300)),
            std::optional(after(m_start, 400)));
        QVERIFY(!goodUntilIfOpened(fresh(), m_figures, m_climate, after(m_start, 401)));
        History opened = fresh();
        opened.opened = after(m_start, 20); // opening it again does not make it younger
        QCOMPARE(goodUntilIfOpened(opened, m_figures, m_climate, after(m_start, 50)),
            std::optional(after(m_start, 220)));
    }

    void reasons_areWorstFirstAndReadAloud()
    {
        History history = fresh();
        history.opened = after(m_start, 10);
        history.hold = Hold { after(m_start, 11), "smells" };
        const Judgement j = judged(history, 300);
        QCOMPARE(j.reasons.front().code, std::string("lot_on_hold"));
        QCOMPARE(
            j.reasons.front().text, std::string("Its lot has been on hold since 12 January 2025: smells."));
        for (std::size_t i = 1; i < j.reasons.size(); ++i)
            QVERIFY(j.reasons[i - 1].verdict >= j.reasons[i].verdict);
    }

    void goodReason_beginsWithItsDate()
    {
        LifeFigures figures = m_figures;
        figures.opened.span = { 6 * meanMonth, 12 * meanMonth };
        History history = fresh();
        history.opened = m_start;
        const Judgement j = judge(history, figures, m_climate, after(m_start, 91));
        QCOMPARE(j.reasons.front().text,
            std::string("Good until 2 July 2025: opened 2 months ago, on 1 January 2025; opened it keeps 6 "
                        "to 12 months "
                        "at 20 °C, and 24 to 50 % of that is used. No readings cover 2 months of it."));
    }
};

QTEST_APPLESS_MAIN(TestVerdict)
#include "tst_verdict.moc"
