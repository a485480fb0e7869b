#include <QTest>

#include <cmath>
#include <random>

#include "ageing/frosts.h"
#include "ageing/stock.h"
#include "ageing/watched.h"

using namespace gw;
using namespace gw::test;

namespace {

const Moment begin = at("2026-01-01");
const PlaceId logged { "logged" };
const PlaceId warmRoom { "warm room" };

Moment hoursOn(double hours)
{
    return begin + std::chrono::round<std::chrono::milliseconds>(Hours { hours });
}

/// Hourly readings: 8 C, but -8 C through the hours named.
Trace spells(double days, std::initializer_list<std::pair<int, int>> cold)
{
    Trace trace;
    for (int hour = 0; hour <= days * 24; ++hour) {
        double temperature = 8;
        for (const auto& [from, to] : cold) {
            if (hour >= from && hour < to)
                temperature = -8;
        }
        trace.append({ hoursOn(hour), { temperature }, {} });
    }
    return trace;
}

AssumedRanges range(double low, double high) { return { Range<Celsius> { { low }, { high } }, {} }; }

WatchedClimate climateOf(Trace trace, AssumedRanges assumed = range(-10, 30))
{
    return WatchedClimate(
        { { logged, { std::move(trace), assumed, {} } }, { warmRoom, { {}, range(18, 22), {} } } });
}

LifeFigures emulsion(std::optional<int> stands = {})
{
    LifeFigures figures = plainFigures();
    figures.frost = Frost::Harms;
    figures.waterShare = 0.5;
    figures.freezeTolerance = stands;
    return figures;
}

/// Half a litre, here since the first reading.
History bottle()
{
    History history;
    history.made = on("2026-01-01");
    history.arrived = begin;
    history.stays = { { logged, begin } };
    history.fillings = { { begin, 1, millilitres(500), Vessel::Bottle } };
    return history;
}

Judgement judged(const History& history, const LifeFigures& figures, const Climate& climate, double day)
{
    return judge(history, figures, climate, hoursOn(day * 24));
}

} // namespace

class TestFrostVerdict : public QObject {
    Q_OBJECT

    /// Frozen through for a day each, on the 3rd, the 8th and the 13th.
    const WatchedClimate m_climate = climateOf(spells(30, { { 48, 72 }, { 168, 192 }, { 288, 312 } }));

private Q_SLOTS:
    void watchedAndNotFrozen_isGoodWithNoFrost()
    {
        const WatchedClimate mild = climateOf(spells(30, { { 48, 50 } })); // a short dip
        const Judgement j = judged(bottle(), emulsion(), mild, 20);
        QCOMPARE(j.verdict, Verdict::Good);
        QCOMPARE(j.frostEvents, std::optional(0));
        QVERIFY(!reason(j, "frozen") && !says(j, "frost_not_known", Verdict::NotKnown));
        QCOMPARE(j.goodUntil, std::optional(at("2026-02-01"))); // what February brings nobody knows
    }

    void frozenEmulsion_isTestFirstWithCountAndDates()
    {
        const Judgement j = judged(bottle(), emulsion(), m_climate, 10);
        QCOMPARE(j.verdict, Verdict::TestFirst);
        QVERIFY(says(j, "frozen", Verdict::TestFirst));
        QCOMPARE(j.frostEvents, std::optional(2));
        QCOMPARE(j.frosts.size(), std::size_t(2));
        QVERIFY(!j.frozenNow && j.frosts[1].thawed);
        QCOMPARE(reason(j, "frozen")->text,
            std::string("It froze twice, on 3 January 2026 and 8 January 2026. Frost can spoil it for good: "
                        "test it first, and leave it if it is grainy or stringy."));
        QVERIFY(reason(judged(bottle(), emulsion(), m_climate, 20), "frozen")
                ->text.starts_with("It froze 3 times, first on 3 January 2026 and last on 13 January 2026."));
    }

    void whatTheLabelVouchesFor_hasNoWeight()
    {
        const Judgement stands = judged(bottle(), emulsion(3), m_climate, 20);
        QVERIFY(says(stands, "frozen", Verdict::Good));
        QCOMPARE(stands.verdict, Verdict::Good);
        QVERIFY(says(judged(bottle(), emulsion(2), m_climate, 20), "frozen", Verdict::TestFirst));
        QVERIFY(says(judged(bottle(), emulsion(2), m_climate, 10), "frozen", Verdict::Good));
    }

    void frozenNow_isTestFirstWhateverIsVouchedFor()
    {
        const Judgement j = judged(bottle(), emulsion(5), m_climate, 2.9);
        QVERIFY(j.frozenNow);
        QCOMPARE(j.frostEvents, std::optional(1));
        QVERIFY(says(j, "frozen", Verdict::TestFirst));
        QVERIFY(reason(j, "frozen")->text.find("not thawed yet") != std::string::npos);
        QVERIFY(!j.frosts.back().thawed);
    }

    void whatComesBack_countsItsOwnTolerance()
    {
        LifeFigures figures = emulsion(1);
        figures.frost = Frost::Recoverable;
        QVERIFY(says(judged(bottle(), figures, m_climate, 5), "frozen", Verdict::Good));
        QVERIFY(says(judged(bottle(), figures, m_climate, 10), "frozen", Verdict::TestFirst));
        figures.freezeTolerance.reset(); // no count limits it
        QVERIFY(says(judged(bottle(), figures, m_climate, 20), "frozen", Verdict::Good));
        QVERIFY(says(judged(bottle(), figures, m_climate, 2.9), "frozen", Verdict::TestFirst));
        figures.frost = Frost::Never;
        QVERIFY(!reason(judged(bottle(), figures, m_climate, 20), "frozen"));
        QVERIFY(!judged(bottle(), figures, m_climate, 20).frostEvents);
    }

    void passedTest_settlesTheFrostBeforeIt_andTheNextCountsOnTop()
    {
        History history = bottle();
        history.tests = { { hoursOn(9 * 24), true, 90.0, false } };
        const Judgement settled = judged(history, emulsion(2), m_climate, 11);
        QCOMPARE(settled.verdict, Verdict::Good);
        QVERIFY(!reason(settled, "frozen"));
        QCOMPARE(settled.frostEvents, std::optional(2)); // it froze all the same
        QVERIFY(says(judged(history, emulsion(2), m_climate, 20), "frozen", Verdict::TestFirst));
        history.tests.push_back({ hoursOn(21 * 24), false, {}, true });
        QCOMPARE(judged(history, emulsion(2), m_climate, 25).verdict, Verdict::DoNotUse);
    }

    void unwatchedTime_isNotKnownWhereItMayFreeze()
    {
        const Judgement late = judged(bottle(), emulsion(), climateOf(spells(5, {})), 20);
        QVERIFY(says(late, "frost_not_known", Verdict::NotKnown));
        QCOMPARE(reason(late, "frost_not_known")->when, std::optional(hoursOn(5 * 24 + 6)));
        QVERIFY(!late.frostEvents);
        const Judgement heated = judged(bottle(), emulsion(), climateOf(spells(5, {}), range(12, 30)), 20);
        QCOMPARE(heated.verdict, Verdict::Good);
        QCOMPARE(heated.frostEvents, std::optional(0));
        // Frozen for certain, and perhaps again: both are said, and the worse stands.
        const Judgement both = judged(bottle(), emulsion(), climateOf(spells(5, { { 48, 72 } })), 20);
        QVERIFY(says(both, "frozen", Verdict::TestFirst));
        QCOMPARE(both.verdict, Verdict::NotKnown);
    }

    void broughtIn_theBottleLagsAndThaws()
    {
        History history = bottle();
        history.stays.push_back({ warmRoom, hoursOn(50) }); // after two hours of cold: nothing yet
        QCOMPARE(judged(history, emulsion(), m_climate, 20).frostEvents, std::optional(0));
        history.stays.back().from = hoursOn(66);
        const Judgement j = judged(history, emulsion(), m_climate, 20);
        QCOMPARE(j.frostEvents, std::optional(1));
        QVERIFY(j.frosts[0].thawed && *j.frosts[0].thawed > hoursOn(67) && *j.frosts[0].thawed < hoursOn(90));
    }

    void resin_isLookedAtAfterDaysInTheCold_neverThrownAway()
    {
        LifeFigures resin = emulsion();
        resin.frost = Frost::Recoverable;
        resin.crystallisesBetween = Range<Celsius> { { 0 }, { 15 } };
        resin.keepBetween = Range<Celsius> { { 10 }, { 35 } };
        const Judgement brief = judged(bottle(), resin, m_climate, 2);
        QVERIFY(says(brief, "may_have_crystallised", Verdict::Good));
        const Judgement days = judged(bottle(), resin, m_climate, 20);
        QVERIFY(says(days, "may_have_crystallised", Verdict::TestFirst));
        QCOMPARE(days.verdict, Verdict::TestFirst);
        QVERIFY(!reason(days, "frozen") && !reason(days, "frost_not_known"));
        History indoors = bottle();
        indoors.stays = { { warmRoom, begin } };
        QVERIFY(!reason(judged(indoors, resin, m_climate, 20), "may_have_crystallised"));
        QVERIFY(
            says(judged(bottle(), resin, climateOf({}), 20), "may_have_crystallised", Verdict::TestFirst));
    }

    void decanted_neverHasFewerFrostsThanItsParentHadAtPouring()
    {
        std::mt19937 random(1);
        const auto real = [&](double low, double high) {
            return std::uniform_real_distribution<double>(low, high)(random);
        };
        int frozen = 0;
        for (int i = 0; i < 60; ++i) {
            Trace trace;
            for (int hour = 0; hour <= 40 * 24; ++hour)
                trace.append({ hoursOn(hour),
                    { 2 + 5 * std::sin(hour / 50.0 + i) + 4 * std::sin(hour / 24.0 * 2 * M_PI) }, {} });
            const WatchedClimate climate = climateOf(std::move(trace));
            History parent = bottle();
            for (double hour = real(0, 100); hour < 900; hour += real(20, 300))
                parent.stays.push_back({ real(0, 1) < 0.5 ? logged : warmRoom, hoursOn(hour) });
            parent.fillings.push_back({ hoursOn(real(0, 900)), 0.5, millilitres(500), Vessel::Bottle });
            const double pours = real(0, 900);
            History child = parent;
            std::erase_if(child.stays, [&](const Stay& s) { return s.from > hoursOn(pours); });
            std::erase_if(child.fillings, [&](const Filling& f) { return f.from > hoursOn(pours); });
            child.stays.push_back({ logged, hoursOn(pours) });
            child.fillings.push_back({ hoursOn(pours), 1, millilitres(100), Vessel::Jar });
            const auto had = judge(parent, emulsion(), climate, hoursOn(pours)).frosts.size();
            const auto has = judge(child, emulsion(), climate, hoursOn(real(pours, 950))).frosts.size();
            QVERIFY(has >= had);
            frozen += had > 0;
        }
        QVERIFY(frozen > 20);
    }

    void droppedReadings_neverMakeABetterVerdict()
    {
        std::mt19937 random(2);
        const auto real = [&](double low, double high) {
            return std::uniform_real_distribution<double>(low, high)(random);
        };
        int worse = 0;
        for (int i = 0; i < 80; ++i) {
            Trace all;
            Trace less;
            const double gone = real(0, 800);
            const double back = gone + real(7, 300); // a shorter step is bridged
            for (int hour = 0; hour <= 40 * 24; ++hour) {
                const Reading reading { hoursOn(hour),
                    { 4 + 4 * std::sin(hour / 50.0 + i) + 4 * std::sin(hour / 24.0 * 2 * M_PI) }, {} };
                all.append(reading);
                if (hour < gone || hour > back)
                    less.append(reading);
            }
            const AssumedRanges assumed = i % 2 ? range(-10, 30) : AssumedRanges {};
            LifeFigures figures = emulsion(i % 3);
            figures.frost = i % 5 ? Frost::Harms : Frost::Recoverable;
            const Moment asOf = hoursOn(real(0, 960));
            const Verdict known = judge(bottle(), figures, climateOf(std::move(all), assumed), asOf).verdict;
            const Verdict lessKnown
                = judge(bottle(), figures, climateOf(std::move(less), assumed), asOf).verdict;
            QVERIFY(lessKnown >= known);
            worse += lessKnown > known;
        }
        QVERIFY(worse > 10);
    }
};

QTEST_APPLESS_MAIN(TestFrostVerdict)
#include "tst_frostverdict.moc"
