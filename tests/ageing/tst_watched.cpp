#include <QTest>

#include <cmath>

#include "ageing/stock.h"
#include "ageing/traces.h"
#include "ageing/watched.h"

using namespace gw;
using namespace gw::test;
using namespace std::chrono_literals;

namespace {

const Moment start = at("2025-06-02");
const Rate byQ10 { { 20 }, 2, {}, false };
const Rate byEnergy { { 20 }, 1, 83.144, true };
const PlaceId yard { "yard" };
const PlaceId leanTo { "lean-to" };
const PlaceId cellar { "cellar" };

bool near(double found, double expected)
{
    return std::abs(found - expected) <= 1e-9 * (1 + std::abs(expected));
}
bool near(const Range<Days>& a, const Range<Days>& b)
{
    return near(a.low.count(), b.low.count()) && near(a.high.count(), b.high.count());
}

/// The same temperature every hour for so many hours, both ends included.
std::vector<Reading> steadily(Moment from, int hours, double temperature)
{
    std::vector<Reading> readings;
    for (int i = 0; i <= hours; ++i)
        readings.push_back({ from + i * 1h, { temperature }, {} });
    return readings;
}

std::vector<Reading> sine(Moment from, int days, double mean, double swing)
{
    std::vector<Reading> readings;
    for (int i = 0; i <= days * 24; ++i)
        readings.push_back({ from + i * 1h, { mean + swing * std::sin(i * 6.283185307179586 / 24) }, {} });
    return readings;
}

AssumedRanges allYear(double low, double high) { return { Range<Celsius> { { low }, { high } }, {} }; }

WatchedPlace read(std::vector<Reading> readings, AssumedRanges assumed = {})
{
    return { Trace(std::move(readings)), assumed, {} };
}
WatchedPlace following(const PlaceId& place, double warmer = 0, double damped = 0, AssumedRanges assumed = {})
{
    return { {}, assumed, Follow { place, warmer, damped } };
}

/// A bit of everything: two places with readings and gaps, one that follows, one only assumed.
std::map<PlaceId, WatchedPlace> places(Weathermaker& made)
{
    AssumedRanges seasons = allYear(-5, 40);
    seasons.quarters[2] = Range<Celsius> { { 8 }, { 45 } };
    return {
        { yard,
            read(made.readings(later(start, Days { made.real(0, 40) }), made.real(20, 150), 100), seasons) },
        { bench, read(made.readings(start, 90, 200)) }, { leanTo, following(yard, 1.5, 0.4) },
        { cellar, { {}, allYear(10, 16), {} } }
    };
}

} // namespace

class TestWatched : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void watchedTime_goesByTheReadings()
    {
        const WatchedClimate climate({ { yard, read(steadily(start, 48, 30), allYear(-10, 40)) } });
        const Exposure e = climate.exposure(yard, start + 6h, start + 30h, byQ10);
        QVERIFY(near(e.equivalent, { Days { 2 }, Days { 2 } }));
        QCOMPARE(e.unwatched.count(), 0.0);
        QVERIFY(e.known);
        QCOMPARE(e.hottest->value, 30.0);
        QCOMPARE(e.coldest->value, 30.0);
    }

    void beforeAndAfter_goByTheAssumedRange()
    {
        const WatchedClimate climate({ { yard, read(steadily(start, 48, 30), allYear(10, 40)) } });
        const Exposure e = climate.exposure(yard, start - 24h, start + 72h, byQ10);
        QVERIFY(near(e.equivalent, { Days { 1 + 4 + 1 }, Days { 4 + 4 + 4 } }));
        QCOMPARE(e.unwatched.count(), 2.0);
        QCOMPARE(e.coldest->value, 10.0);
    }

    void asOfAMoment_laterReadingsBoundNoGap()
    {
        auto readings = steadily(start, 48, 20);
        const auto cold = steadily(after(start, 10), 48, -20);
        const Moment then = after(start, 5);
        std::map<PlaceId, WatchedPlace> before;
        before.emplace(yard, read(readings, allYear(10, 30)));
        readings.insert(readings.end(), cold.begin(), cold.end());
        std::map<PlaceId, WatchedPlace> since;
        since.emplace(yard, read(readings, allYear(10, 30)));
        const WatchedClimate known(std::move(before));
        const WatchedClimate all(std::move(since));
        QVERIFY(!known.asOf(then));
        const auto asOf = all.asOf(then);
        QVERIFY(asOf);
        const Exposure told = all.exposure(yard, start, then, byQ10);
        const Exposure thought = asOf->exposure(yard, start, then, byQ10);
        const Exposure expected = known.exposure(yard, start, then, byQ10);
        QCOMPARE(told.coldest->value, -20.0);
        QCOMPARE(thought.coldest->value, 10.0);
        QVERIFY(near(thought.equivalent, expected.equivalent));
        QCOMPARE(thought.unwatched.count(), expected.unwatched.count());
    }

    void gap_isWidenedNotBridged()
    {
        auto readings = steadily(start, 24, 30);
        const auto more = steadily(start + 48h, 24, 30);
        readings.insert(readings.end(), more.begin(), more.end());
        const WatchedClimate narrow({ { yard, read(readings, allYear(18, 22)) } });
        // Nothing says it stayed at 30 between; nothing says it did not, either.
        const Exposure e = narrow.exposure(yard, start, start + 72h, byEnergy);
        const double at30 = speedAt({ 30 }, byEnergy);
        QVERIFY(near(e.equivalent, { Days { 2 * at30 + speedAt({ 18 }, byEnergy) }, Days { 3 * at30 } }));
        QCOMPARE(e.unwatched.count(), 1.0);
        QCOMPARE(e.coldest->value, 18.0);
        // Six hours are bridged.
        const WatchedClimate short_(
            { { yard, read({ { start, { 10 }, {} }, { start + 6h, { 30 }, {} } }) } });
        QCOMPARE(short_.exposure(yard, start, start + 6h, byQ10).unwatched.count(), 0.0);
    }

    void seasons_takeTheirOwnRange()
    {
        AssumedRanges seasons = allYear(0, 20);
        seasons.quarters[2] = Range<Celsius> { { 20 }, { 30 } }; // June to August
        const WatchedClimate climate({ { yard, { {}, seasons, {} } } });
        const Exposure e = climate.exposure(yard, at("2025-05-27"), at("2025-06-03"), byQ10);
        QVERIFY(near(e.equivalent, { Days { 7 }, Days { 5 + 2 * 2 } }));
        QCOMPARE(climate.usual(yard, at("2025-08-31"))->high.value, 30.0);
        QCOMPARE(climate.usual(yard, at("2025-09-01"))->high.value, 20.0);
    }

    void assumedOnly_isUnwatched()
    {
        const WatchedClimate climate(
            { { loft, { {}, allYear(10, 40), {} } }, { shed, { {}, allYear(-5, 34), {} } } });
        const Exposure e = climate.exposure(loft, start, after(start, 30), byQ10);
        QVERIFY(near(e.equivalent, { Days { 30 }, Days { 120 } }));
        QCOMPARE(e.unwatched.count(), 30.0);
        const Exposure unknown = climate.exposure(nowhere, start, after(start, 10), byQ10);
        QVERIFY(!unknown.known);
        QVERIFY(near(unknown.equivalent, { Days { 10 }, Days { 40 } }));
        QCOMPARE(unknown.coldest->value, -5.0);
        QCOMPARE(unknown.unwatched.count(), 10.0);
        QVERIFY(!climate.usual(nowhere, start));
        const Exposure nothing = WatchedClimate().exposure(loft, start, after(start, 10), byQ10);
        QVERIFY(!nothing.known && !nothing.hottest);
        QCOMPARE(nothing.equivalent.high.count(), 10.0);
    }

    void unwatchedWithNothingAssumed_isNotKnown()
    {
        const WatchedClimate climate(
            { { yard, read(steadily(start, 24, 30)) }, { cellar, { {}, allYear(12, 40), {} } } });
        QVERIFY(climate.exposure(yard, start, start + 24h, byQ10).known);
        const Exposure e = climate.exposure(yard, start, start + 48h, byQ10);
        QVERIFY(!e.known);
        QVERIFY(near(e.equivalent, { Days { 3 }, Days { 2 + 4 } }));
        QVERIFY(!climate.usual(yard, start));
    }

    void ownReadingsOfTheSeason_standInForAnAssumption()
    {
        const WatchedClimate climate({ { yard, read(sine(start, 60, 15, 10)) } });
        QCOMPARE(climate.usual(yard, at("2026-07-01"))->low.value, 5.0);
        QCOMPARE(climate.usual(yard, at("2026-07-01"))->high.value, 25.0);
        QVERIFY(!climate.usual(yard, at("2026-01-01"))); // a winter nobody saw
        QVERIFY(climate.exposure(yard, at("2026-07-01"), at("2026-07-08"), byQ10).known);
        QVERIFY(!climate.exposure(yard, at("2026-01-01"), at("2026-01-08"), byQ10).known);
        const WatchedClimate weeks({ { yard, read(sine(start, 14, 15, 10)) } });
        QVERIFY(!weeks.usual(yard, at("2026-07-01"))); // two weeks are no season
    }

    void following_isWarmerAndWithinTwoDegrees()
    {
        const WatchedClimate climate(
            { { yard, read(steadily(start, 96, 25)) }, { leanTo, following(yard, 3) } });
        const Exposure e = climate.exposure(leanTo, start + 24h, start + 48h, byQ10);
        QVERIFY(near(e.equivalent, { Days { speedAt({ 26 }, byQ10) }, Days { speedAt({ 30 }, byQ10) } }));
        QCOMPARE(e.unwatched.count(), 1.0); // nobody watched there
        QVERIFY(e.known);
        QCOMPARE(e.coldest->value, 26.0);
        QCOMPARE(e.hottest->value, 30.0);
        QVERIFY(!climate.exposure(leanTo, start - 24h, start, byQ10).known);
        QCOMPARE(climate.heat(leanTo, start, start + 48h, { 20 }).above.count(), 0.0); // nor seen heat
    }

    void dampedFollowing_swingsLessAboutTheSameMean()
    {
        const WatchedClimate climate(
            { { yard, read(sine(start, 20, 15, 10)) }, { leanTo, following(yard, 0, 0.6) } });
        const Exposure e = climate.exposure(leanTo, start + 5 * 24h, start + 15 * 24h, byQ10);
        QVERIFY(std::abs(e.hottest->value - (15 + 4 + 2)) < 0.02);
        QVERIFY(std::abs(e.coldest->value - (15 - 4 - 2)) < 0.02);
        // As though a sine of 4 C had been read, 2 C either way.
        const WatchedTrace damped(Trace(sine(start, 20, 15, 4)));
        for (const Rate& rate : { byQ10, byEnergy }) {
            const Exposure found = climate.exposure(leanTo, start + 5 * 24h, start + 15 * 24h, rate);
            const Days low = damped.equivalent(start + 5 * 24h, start + 15 * 24h, rate, -2);
            const Days high = damped.equivalent(start + 5 * 24h, start + 15 * 24h, rate, 2);
            QVERIFY(std::abs(found.equivalent.low / low - 1) < 1e-3);
            QVERIFY(std::abs(found.equivalent.high / high - 1) < 1e-3);
        }
    }

    void ownReadings_goBeforeThoseFollowed()
    {
        WatchedPlace own = following(yard, 0, 0, allYear(0, 40));
        own.readings = Trace(steadily(start + 24h, 24, 20));
        const WatchedClimate climate({ { yard, read(steadily(start, 72, 35)) }, { leanTo, own } });
        const Exposure e = climate.exposure(leanTo, start, start + 72h, byQ10);
        QCOMPARE(e.unwatched.count(), 2.0);
        QVERIFY(near(e.equivalent,
            { Days { 1 + 2 * speedAt({ 33 }, byQ10) }, Days { 1 + 2 * speedAt({ 37 }, byQ10) } }));
        // Where the place followed has no readings either, the own assumption speaks.
        const Exposure before = climate.exposure(leanTo, start - 24h, start, byQ10);
        QVERIFY(near(before.equivalent, { Days { 1 }, Days { 4 } }));
    }

    void chain_addsUp_andCircleIsNoFollowing()
    {
        const WatchedClimate chain({ { yard, read(steadily(start, 96, 20)) }, { leanTo, following(yard, 3) },
            { cellar, following(leanTo, -1) } });
        const Exposure e = chain.exposure(cellar, start, start + 24h, byQ10);
        QCOMPARE(e.coldest->value, 20.0 + 2 - 4);
        QCOMPARE(e.hottest->value, 20.0 + 2 + 4);

        const WatchedClimate circle({ { leanTo, following(cellar, 1) }, { cellar, following(leanTo, 1) },
            { loft, following(loft, 5) }, { shed, following(nowhere) } });
        for (const PlaceId& place : { leanTo, cellar, loft, shed }) {
            QVERIFY(!circle.exposure(place, start, start + 24h, byQ10).known);
            QVERIFY(!circle.usual(place, start));
        }
        // What is known of one place in a circle still reaches the others, once.
        const WatchedClimate one(
            { { leanTo, following(cellar, 1) }, { cellar, following(leanTo, 1, 0, allYear(10, 12)) } });
        QVERIFY(one.usual(leanTo, start) == (Range<Celsius> { { 9 }, { 15 } }));
        QVERIFY(one.usual(cellar, start) == (Range<Celsius> { { 10 }, { 12 } }));
    }

    void heat_saysSinceWhenAndHowLong()
    {
        auto readings = steadily(start, 10, 20);
        readings.push_back({ start + 12h, { 40 }, {} }); // 30 C at 11 h
        readings.push_back({ start + 14h, { 20 }, {} }); // and at 13 h
        const WatchedClimate climate({ { yard, read(readings, allYear(0, 45)) } });
        const Heat heat = climate.heat(yard, start - 24h, start + 48h, { 30 });
        QVERIFY(near(heat.above.count() * 24, 2));
        QCOMPARE(heat.first, std::optional(start + 11h));
        QCOMPARE(heat.hottest->value, 40.0);
        const Heat late = climate.heat(yard, start + 12h, start + 48h, { 30 });
        QVERIFY(near(late.above.count() * 24, 1));
        QCOMPARE(late.first, std::optional(start + 12h));
        const Heat none = climate.heat(yard, start, start + 11h, { 30 });
        QVERIFY(none.above.count() == 0 && !none.first);
        QCOMPARE(none.hottest->value, 30.0);
        QVERIFY(!climate.heat(yard, start + 20h, start + 48h, { 30 }).hottest);
        QVERIFY(!climate.heat(nowhere, start, start + 48h, { 30 }).hottest);
    }

    void summary_isOfTheReadingsInTheSpan()
    {
        const WatchedClimate climate({ { yard, read(steadily(start, 24, 18)) } });
        const auto all = climate.summary(yard, start - 12h, start + 36h);
        QVERIFY(all);
        QCOMPARE(all->count, 25u);
        QCOMPARE(all->from, start);
        QCOMPARE(all->to, start + 24h);
        QVERIFY(near(all->kinetic.value, 18));
        QVERIFY(near(all->unwatched.count(), 1));
        QCOMPARE(climate.summary(yard, start + 30min, start + 150min)->count, 2u);
        QVERIFY(!climate.summary(yard, start - 12h, start - 1h));
        QVERIFY(!climate.summary(nowhere, start, start + 36h));
    }

    void splittingASpan_changesNothing()
    {
        Weathermaker made { std::mt19937(21) };
        for (int round = 0; round < 20; ++round) {
            const WatchedClimate climate(places(made));
            for (int i = 0; i < 40; ++i) {
                const PlaceId place
                    = std::array { yard, bench, leanTo, cellar, nowhere }[static_cast<std::size_t>(i % 5)];
                const Moment from = later(start, Days { made.real(-20, 150) });
                const Moment to = later(from, Days { made.real(0, 100) });
                const Moment middle = later(from, daysBetween(from, to) * made.real(0, 1));
                const Rate& rate = i % 2 == 0 ? byQ10 : byEnergy;
                const Exposure whole = climate.exposure(place, from, to, rate);
                const Exposure a = climate.exposure(place, from, middle, rate);
                const Exposure b = climate.exposure(place, middle, to, rate);
                QVERIFY(near(whole.equivalent,
                    { a.equivalent.low + b.equivalent.low, a.equivalent.high + b.equivalent.high }));
                QVERIFY(near(whole.unwatched.count(), (a.unwatched + b.unwatched).count()));
                QVERIFY(near(whole.hottest->value, std::max(a.hottest, b.hottest)->value));
                QVERIFY(near(whole.coldest->value, std::min(a.coldest, b.coldest)->value));
                QCOMPARE(whole.known, a.known && b.known);
                const Heat heat = climate.heat(place, from, to, { 22 });
                const Heat first = climate.heat(place, from, middle, { 22 });
                const Heat second = climate.heat(place, middle, to, { 22 });
                QVERIFY(near(heat.above.count(), (first.above + second.above).count()));
                QCOMPARE(heat.first.has_value(), first.first || second.first);
                if (first.first)
                    QCOMPARE(heat.first, first.first);
            }
        }
    }

    void hotter_neverCountsLess()
    {
        Weathermaker made { std::mt19937(22) };
        for (int round = 0; round < 30; ++round) {
            auto cool = places(made);
            auto warm = cool;
            std::vector<Reading> readings;
            for (std::size_t i = 0; i < cool[yard].readings.size(); ++i) {
                readings.push_back(cool[yard].readings.reading(i));
                readings.back().temperature.value += made.real(0, 4);
            }
            warm[yard].readings = Trace(readings);
            warm[cellar].assumed = allYear(10, 16 + made.real(0, 10));
            const WatchedClimate a(std::move(cool));
            const WatchedClimate b(std::move(warm));
            for (int i = 0; i < 20; ++i) {
                const Moment from = later(start, Days { made.real(-20, 150) });
                const Moment to = later(from, Days { made.real(0, 100) });
                for (const PlaceId& place : { yard, bench, cellar, nowhere }) {
                    for (const Rate& rate : { byQ10, byEnergy }) {
                        const Exposure cooler = a.exposure(place, from, to, rate);
                        const Exposure warmer = b.exposure(place, from, to, rate);
                        QVERIFY(warmer.equivalent.low >= cooler.equivalent.low - Days { 1e-9 });
                        QVERIFY(warmer.equivalent.high >= cooler.equivalent.high - Days { 1e-9 });
                    }
                }
            }
        }
    }

    void knowingLess_neverNarrows()
    {
        Weathermaker made { std::mt19937(23) };
        int wider = 0;
        for (int round = 0; round < 40; ++round) {
            // The readings keep within what is assumed, as those who assumed it meant.
            auto readings = made.readings(start, 80, 200);
            for (Reading& reading : readings)
                reading.temperature.value = std::clamp(reading.temperature.value, -5.0, 40.0);
            const Moment from = later(start, Days { made.real(0, 40) });
            const Moment to = later(from, Days { made.real(0.5, 30) });
            auto fewer = readings;
            std::erase_if(fewer, [&](const Reading& r) { return r.at > from && r.at < to; });
            const WatchedClimate known({ { yard, read(readings, allYear(-5, 40)) } });
            const WatchedClimate less({ { yard, read(fewer, allYear(-5, 40)) } });
            const WatchedClimate wide({ { yard, read(readings, allYear(-9, 47)) } });
            for (int i = 0; i < 20; ++i) {
                const Moment begin = later(start, Days { made.real(-10, 80) });
                const Moment end = later(begin, Days { made.real(0, 60) });
                for (const Rate& rate : { byQ10, byEnergy }) {
                    const Exposure all = known.exposure(yard, begin, end, rate);
                    for (const WatchedClimate* climate : { &less, &wide }) {
                        const Exposure part = climate->exposure(yard, begin, end, rate);
                        QVERIFY(part.equivalent.low <= all.equivalent.low + Days { 1e-9 });
                        QVERIFY(part.equivalent.high >= all.equivalent.high - Days { 1e-9 });
                        QVERIFY(part.coldest->value <= all.coldest->value + 1e-9);
                        QVERIFY(part.hottest->value >= all.hottest->value - 1e-9);
                        QVERIFY(part.unwatched >= all.unwatched - Days { 1e-9 });
                        wider += part.equivalent.high > all.equivalent.high + Days { 0.1 };
                    }
                }
            }
        }
        QVERIFY(wider > 200);
    }

    void append_isAsIfBuiltAnew()
    {
        Weathermaker made { std::mt19937(24) };
        auto all = places(made);
        const Trace rest = all[yard].readings;
        for (const std::size_t begin : { std::size_t { 0 }, std::size_t { 1 }, rest.size() / 2 }) {
            auto some = all;
            some[yard].readings = Trace();
            for (std::size_t i = 0; i < begin; ++i)
                some[yard].readings.append(rest.reading(i));
            WatchedClimate grown(some);
            for (std::size_t i = begin; i < rest.size(); ++i) {
                // Asked all along, so that something is there to be kept up.
                if (i % 501 == 0)
                    grown.exposure(nowhere, start, after(start, 50), byQ10);
                if (i % 101 == 0)
                    grown.exposure(leanTo, start, after(start, 50), byEnergy);
                QVERIFY(grown.append(yard, rest.reading(i)));
            }
            QVERIFY(!grown.append(yard, rest.reading(0)) && !grown.append(nowhere, rest.reading(0)));
            const WatchedClimate fresh(all);
            for (const PlaceId& place : { yard, bench, leanTo, cellar, nowhere }) {
                for (const Rate& rate : { byQ10, byEnergy }) {
                    const Exposure a = grown.exposure(place, start, after(start, 170), rate);
                    const Exposure b = fresh.exposure(place, start, after(start, 170), rate);
                    QVERIFY(near(a.equivalent, b.equivalent));
                    QVERIFY(
                        near(a.hottest->value, b.hottest->value) && near(a.coldest->value, b.coldest->value));
                    QCOMPARE(a.known, b.known);
                }
                QVERIFY(grown.usual(place, start) == fresh.usual(place, start));
            }
        }
    }
};

QTEST_APPLESS_MAIN(TestWatched)
#include "tst_watched.moc"
