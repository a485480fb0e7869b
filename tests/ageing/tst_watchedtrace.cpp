#include <QTest>

#include <cmath>

#include "ageing/stock.h"
#include "ageing/traces.h"
#include "ageing/watchedtrace.h"

using namespace gw;
using namespace gw::test;
using namespace std::chrono_literals;

namespace {

const Moment start = at("2025-02-01T06:00:00Z");
const Rate byQ10 { { 20 }, 2, {}, false };
const Rate byEnergy { { 18 }, 1, 83.144, true };

bool near(double found, double expected)
{
    return std::abs(found - expected) <= 1e-9 * (1 + std::abs(expected));
}

/// What one walk over every reading finds, piece by piece, with nothing kept.
struct Walked {
    Days watched { 0 };
    Days equivalent { 0 };
    Days above { 0 };
    std::optional<Moment> firstAbove;
    std::optional<Range<Celsius>> extremes;
};

Walked walk(const Trace& trace, Moment from, Moment to, const Rate& rate, double warmer, Celsius limit)
{
    Walked walked;
    const auto see = [&](double t) {
        if (!walked.extremes)
            walked.extremes = Range<Celsius> { { t }, { t } };
        walked.extremes->low = std::min(walked.extremes->low, Celsius { t });
        walked.extremes->high = std::max(walked.extremes->high, Celsius { t });
    };
    for (std::size_t i = 0; i < trace.size(); ++i) {
        if (trace.at(i) >= from && trace.at(i) <= to)
            see(trace.temperature(i).value);
        if (i + 1 == trace.size() || trace.at(i + 1) - trace.at(i) > trace.longestWatched())
            continue;
        const Moment begin = std::max(from, trace.at(i));
        const Moment end = std::min(to, trace.at(i + 1));
        if (begin > end)
            continue;
        const double a = trace.temperature(i).value;
        const double b = trace.temperature(i + 1).value;
        const Days step = trace.at(i + 1) - trace.at(i);
        const double c = a + (b - a) * (daysBetween(trace.at(i), begin) / step);
        const double d = a + (b - a) * (daysBetween(trace.at(i), end) / step);
        see(c);
        see(d);
        const Days span = end - begin;
        walked.watched += span;
        walked.equivalent += span * meanSpeed({ c + warmer }, { d + warmer }, rate);
        if (std::max(c, d) > limit.value && begin < end) {
            const double share
                = c == d ? 1 : (std::max(c, d) - std::max(limit.value, std::min(c, d))) / std::abs(c - d);
            walked.above += span * share;
            if (!walked.firstAbove)
                walked.firstAbove = c > limit.value ? begin : later(begin, span * (1 - share));
        }
    }
    return walked;
}

} // namespace

class TestWatchedTrace : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void anySpan_isWhatAWalkOverItFinds()
    {
        Weathermaker made { std::mt19937(7) };
        int gaps = 0;
        for (int round = 0; round < 12; ++round) {
            const Trace trace(made.readings(start, made.real(0.2, 120)));
            const WatchedTrace watched { trace };
            const Days whole = trace.at(trace.size() - 1) - trace.at(0);
            gaps += watched.watched(trace.at(0), trace.at(trace.size() - 1)) < whole;
            for (int i = 0; i < 40; ++i) {
                Moment from = later(start, whole * made.real(-0.1, 1.1));
                Moment to = i % 5 == 0 ? later(from, Days { made.real(0, 0.02) })
                                       : later(start, whole * made.real(-0.1, 1.1));
                if (i % 7 == 0)
                    from = trace.at(
                        static_cast<std::size_t>(made.whole(0, static_cast<int>(trace.size()) - 1)));
                if (to < from)
                    std::swap(from, to);
                const Rate& rate = i % 2 == 0 ? byQ10 : byEnergy;
                const double warmer = i % 3 == 0 ? 0 : made.real(-3, 3);
                const Celsius limit { made.whole(10, 30) / 1.0 + (i % 4 == 0 ? 0.003 : 0) };
                const Walked expected = walk(trace, from, to, rate, warmer, limit);
                QVERIFY(near(watched.watched(from, to).count(), expected.watched.count()));
                QVERIFY(
                    near(watched.equivalent(from, to, rate, warmer).count(), expected.equivalent.count()));
                QVERIFY(near(watched.above(from, to, limit).count(), expected.above.count()));
                const auto first = watched.firstAbove(from, to, limit);
                QCOMPARE(first.has_value(), expected.firstAbove.has_value());
                if (first)
                    QVERIFY(std::abs((*first - *expected.firstAbove).count()) <= 2);
                const auto extremes = watched.extremes(from, to);
                QCOMPARE(extremes.has_value(), expected.extremes.has_value());
                if (extremes) {
                    QVERIFY(near(extremes->low.value, expected.extremes->low.value));
                    QVERIFY(near(extremes->high.value, expected.extremes->high.value));
                }
            }
        }
        QVERIFY(gaps > 5);
    }

    void unwatchedAndWatched_areTheWholeSpan()
    {
        Weathermaker made { std::mt19937(8) };
        const WatchedTrace watched { Trace(made.readings(start, 60, 60)) };
        for (int i = 0; i < 200; ++i) {
            const Moment from = later(start, Days { made.real(-5, 60) });
            const Moment to = later(from, Days { made.real(0, 20) });
            Days sum = watched.watched(from, to);
            Moment last = from;
            for (const auto& stretch : watched.unwatched(from, to)) {
                QVERIFY(stretch.from >= last && stretch.to > stretch.from && stretch.to <= to);
                QVERIFY(near(watched.watched(stretch.from, stretch.to).count(), 0));
                sum += daysBetween(stretch.from, stretch.to);
                last = stretch.to;
            }
            QVERIFY(near(sum.count(), daysBetween(from, to).count()));
        }
    }

    void gap_saysItsEnds_butBeforeAndAfterSayNone()
    {
        WatchedTrace watched { Trace({ { start, { 4 }, {} }, { start + 1h, { 6 }, {} },
            { start + 9h, { 2 }, {} }, { start + 10h, { 3 }, {} } }) };
        const auto stretches = watched.unwatched(start - 1h, start + 11h);
        QCOMPARE(stretches.size(), 3u);
        QVERIFY(!stretches[0].ends && !stretches[2].ends);
        QCOMPARE(stretches[1].from, start + 1h);
        QCOMPARE(stretches[1].to, start + 9h);
        QVERIFY(stretches[1].ends == (Range<Celsius> { { 2 }, { 6 } }));
        QCOMPARE(watched.unwatched(start + 2h, start + 2h).size(), 1u);
        QCOMPARE(watched.unwatched(start + 1h, start + 1h).size(), 0u);
        QVERIFY(!watched.extremes(start + 2h, start + 3h));
        QCOMPARE(watched.extremes(start + 30min, start + 30min)->low.value, 5.0);
        QCOMPARE(watched.watched(start - 1h, start + 11h).count() * 24, 2.0);
    }

    void append_isAsIfBuiltAnew_data()
    {
        QTest::addColumn<int>("oneGapIn");
        QTest::newRow("few gaps") << 300;
        QTest::newRow("many gaps, so that what counts as one changes") << 2;
    }
    void append_isAsIfBuiltAnew()
    {
        QFETCH(int, oneGapIn);
        Weathermaker made { std::mt19937(9) };
        const auto readings = made.readings(start, oneGapIn > 2 ? 40 : 300, oneGapIn);
        WatchedTrace grown;
        std::vector<Reading> soFar;
        for (std::size_t i = 0; i < readings.size(); ++i) {
            // One day so hot that the tables made before do not reach it.
            Reading reading = readings[i];
            if (i == readings.size() / 2)
                reading.temperature = { 71.4 };
            soFar.push_back(reading);
            QVERIFY(grown.append(reading));
            if (i % 97 != 0 && i + 1 != readings.size() && i > 4)
                continue;
            const WatchedTrace fresh { Trace(soFar) };
            const Moment from = start + 7h;
            const Moment to = reading.at + 3h;
            for (const Rate& rate : { byQ10, byEnergy })
                QVERIFY(
                    near(grown.equivalent(from, to, rate).count(), fresh.equivalent(from, to, rate).count()));
            QVERIFY(near(grown.watched(from, to).count(), fresh.watched(from, to).count()));
            QVERIFY(near(grown.above(from, to, { 15 }).count(), fresh.above(from, to, { 15 }).count()));
            QVERIFY(grown.extremes(from, to) == fresh.extremes(from, to));
            QVERIFY(grown.firstAbove(from, to, { 30 }) == fresh.firstAbove(from, to, { 30 }));
            QCOMPARE(grown.unwatched(from, to).size(), fresh.unwatched(from, to).size());
            QVERIFY(grown.quarter(1) == fresh.quarter(1));
            const auto a = grown.mean(from, to);
            const auto b = fresh.mean(from, to);
            QVERIFY(a.has_value() == b.has_value() && (!a || near(a->value, b->value)));
        }
        QVERIFY(!grown.append({ start, { 1 }, {} }));
    }

    void oneReading_isAMomentWatched()
    {
        const WatchedTrace one { Trace({ { start, { 12 }, {} } }) };
        QCOMPARE(one.watched(start - 1h, start + 1h).count(), 0.0);
        QCOMPARE(one.equivalent(start - 1h, start + 1h, byQ10).count(), 0.0);
        QVERIFY(one.extremes(start, start) == (Range<Celsius> { { 12 }, { 12 } }));
        QCOMPARE(one.unwatched(start - 1h, start + 1h).size(), 2u);
        QVERIFY(!one.mean(start - 1h, start + 1h));
        const WatchedTrace none;
        QCOMPARE(none.unwatched(start, start + 1h).size(), 1u);
        QVERIFY(!none.extremes(start, start + 1h) && !none.firstAbove(start, start + 1h, { 0 }));
    }

    void quarter_needsHalfASeasonWatched()
    {
        Weathermaker made { std::mt19937(10) };
        const Moment winter = at("2025-12-10");
        const WatchedTrace month { Trace(made.readings(winter, 30, 100000)) };
        QVERIFY(!month.quarter(0) && !month.quarter(1));
        const Trace long_(made.readings(winter, 120, 100000));
        const WatchedTrace half { long_ };
        const auto range = half.quarter(0); // December to February
        QVERIFY(range && !half.quarter(1));
        const auto seen = half.extremes(winter, at("2026-03-01"));
        QVERIFY(range == seen);
    }
};

QTEST_APPLESS_MAIN(TestWatchedTrace)
#include "tst_watchedtrace.moc"
