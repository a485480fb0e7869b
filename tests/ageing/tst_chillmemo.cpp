#include <QTest>

#include <array>
#include <cmath>
#include <random>

#include "ageing/airwalk.h"
#include "ageing/chillmemo.h"
#include "ageing/stock.h"

using namespace gw;
using namespace gw::test;

namespace {

const Moment start = at("2023-10-01");
Moment hoursOn(double hours)
{
    return start + std::chrono::round<std::chrono::milliseconds>(Hours { hours });
}

struct Chance {
    std::mt19937 random;

    double real(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random); }
    bool oneIn(int n) { return std::uniform_int_distribution<int>(1, n)(random) == 1; }

    /// A year's air with its seasons, days, weather and gaps; every so many hours.
    Trace air(double days, double interval, double mean, bool gaps)
    {
        std::normal_distribution<double> step(0, 0.5);
        Trace trace;
        double weather = 0;
        for (double hour = 0; hour <= days * 24; hour += interval) {
            weather += step(random) * std::sqrt(interval) - 0.02 * weather * interval;
            const double season = 9 * std::cos((hour / 24 - 100) / 365 * 2 * M_PI);
            trace.append(
                { hoursOn(hour), { mean + weather - season + 4 * std::sin(hour / 24 * 2 * M_PI) }, {} });
            if (gaps && oneIn(200))
                hour += real(0, 90);
        }
        return trace;
    }
};

const std::array assumptions { AssumedRanges {}, AssumedRanges { Range<Celsius> { { 10 }, { 25 } }, {} },
    AssumedRanges { Range<Celsius> { { -9 }, { 30 } }, {} },
    AssumedRanges { Range<Celsius> { { 4 }, { 28 } }, { Range<Celsius> { { -4 }, { 12 } }, {}, {}, {} } } };

/// Both to the minute, which is far finer than the air is known.
void same(const Chill& a, const Chill& b, bool& ok)
{
    const auto close = [](const std::optional<Moment>& x, const std::optional<Moment>& y) {
        return x.has_value() == y.has_value()
            && (!x || std::chrono::abs(*x - *y) <= std::chrono::minutes { 1 });
    };
    ok = a.events.size() == b.events.size() && a.stillFrozen() == b.stillFrozen()
        && a.riskSince == b.riskSince && a.known == b.known
        && std::abs((a.unwatchedRisk - b.unwatchedRisk).count()) < 1e-6
        && a.end.temperature.has_value() == b.end.temperature.has_value()
        && close(a.end.frozenSince, b.end.frozenSince)
        && (!a.end.temperature || std::abs(a.end.temperature->value - b.end.temperature->value) < 0.02)
        && std::abs(a.end.frozenShare - b.end.frozenShare) < 1e-3;
    for (std::size_t i = 0; ok && i < a.events.size(); ++i)
        ok = close(a.events[i].from, b.events[i].from) && close(a.events[i].thawed, b.events[i].thawed);
}

std::string told(const Chill& c)
{
    std::string text = std::to_string(c.events.size()) + " events, risk "
        + std::to_string(c.unwatchedRisk.count()) + " since "
        + (c.riskSince ? formatMoment(*c.riskSince) : "-") + (c.known ? "" : " unknown") + ", end "
        + (c.end.temperature ? std::to_string(c.end.temperature->value) : "?") + " share "
        + std::to_string(c.end.frozenShare) + (c.stillFrozen() ? " frozen" : "");
    for (const FrostEvent& e : c.events)
        text += "\n  " + formatMoment(e.from) + " to " + (e.thawed ? formatMoment(*e.thawed) : "?");
    return text;
}

} // namespace

class TestChillMemo : public QObject {
    Q_OBJECT

    static Contents contents(Chance& chance)
    {
        Contents c;
        c.millilitres = std::array { 40.0, 250.0, 500.0, 5000.0 }[chance.random() % 4];
        c.waterShare = std::array { 0.0, 0.45, 0.55 }[chance.random() % 3];
        c.freezesAt = { chance.oneIn(3) ? -1.5 : 0.0 };
        return c;
    }

private Q_SLOTS:
    void kind_answersNoLaterAndIsItsOwn()
    {
        for (double ml = 20; ml < 20000; ml *= 1.07) {
            const Response response = responseOf({ ml, 0, Vessel::Jar, 1.1, 0.5, {} });
            const Response kind = ChillMemo::kindOf(response);
            QVERIFY(kind.thawed <= response.thawed && kind.latent <= response.latent);
            QVERIFY(kind.thawed > response.thawed * 0.83);
            QVERIFY(std::abs(ChillMemo::kindOf(kind).thawed / kind.thawed - 1) < 1e-6);
        }
    }

    void remembered_isWhatGoingThroughItAllGives_data()
    {
        QTest::addColumn<int>("seed");
        QTest::addColumn<double>("mean");
        QTest::addColumn<bool>("gaps");
        QTest::newRow("mild") << 1 << 10.0 << false;
        QTest::newRow("mild with gaps") << 2 << 10.0 << true;
        QTest::newRow("cold") << 3 << 5.0 << false;
        QTest::newRow("cold with gaps") << 4 << 5.0 << true;
        QTest::newRow("always cold") << 5 << -6.0 << false;
        QTest::newRow("always cold with gaps") << 6 << -6.0 << true;
        QTest::newRow("warm") << 7 << 25.0 << true;
    }
    void remembered_isWhatGoingThroughItAllGives()
    {
        QFETCH(int, seed);
        QFETCH(double, mean);
        QFETCH(bool, gaps);
        Chance chance { std::mt19937(static_cast<unsigned>(seed)) };
        std::size_t events = 0;
        for (int place = 0; place < 4; ++place) {
            const double days = 300;
            const Trace trace = chance.air(days, place % 2 ? 1 : 0.5, mean, gaps);
            const Trace none;
            const Air air { &trace, assumptions[static_cast<std::size_t>(place) % 4] };
            ChillMemo memo;
            for (int i = 0; i < 40; ++i) {
                const Moment from = hoursOn(chance.real(-40 * 24, days * 24));
                const Moment to
                    = later(from, Days { chance.oneIn(2) ? chance.real(0, 3) : chance.real(0, 300) });
                Warmth warmth;
                if (chance.oneIn(2))
                    warmth.temperature = Celsius { chance.real(0, 25) };
                if (chance.oneIn(5))
                    warmth = { Celsius { -3 }, 1, from };
                const Contents c = contents(chance);
                const Chill fast = memo.chill(air, from, to, c, warmth);
                const Chill slow = chillAlong(air, from, to, ChillMemo::kindOf(responseOf(c)), warmth);
                bool ok = false;
                same(fast, slow, ok);
                QVERIFY2(ok,
                    qPrintable(QString::fromStdString("place " + std::to_string(place) + " case "
                        + std::to_string(i) + " from " + formatMoment(from) + " to " + formatMoment(to) + "\n"
                        + told(fast) + "\n" + told(slow))));
                events += slow.events.size();
            }
        }
        QVERIFY(mean > 20 || mean < 0 || events > 100);
    }

    void grownReadingByReading_isWhatAllAtOnceGives()
    {
        Chance chance { std::mt19937(20) };
        for (int place = 0; place < 4; ++place) {
            const Trace all = chance.air(150, 1, 5, place % 2);
            Trace trace;
            const Air air { &trace, assumptions[static_cast<std::size_t>(place) % 4] };
            ChillMemo memo;
            const Contents c = contents(chance);
            for (std::size_t i = 0; i < all.size(); ++i) {
                trace.append(all.reading(i));
                if (!chance.oneIn(i < 30 ? 2 : 60))
                    continue;
                const Moment to = later(trace.at(i), Days { chance.oneIn(2) ? 0 : chance.real(0, 2) });
                const Moment from = later(start, Days { chance.real(-1, 10) });
                if (from > to)
                    continue;
                const Chill grown = memo.chill(air, from, to, c, {});
                const Chill slow = chillAlong(air, from, to, ChillMemo::kindOf(responseOf(c)), {});
                bool ok = false;
                same(grown, slow, ok);
                QVERIFY2(ok, qPrintable(QString::fromStdString(told(grown) + "\n" + told(slow))));
            }
        }
    }

    void followedPlace_isSureOnlyWhereItsColdestIsWarmEnough()
    {
        Trace yard;
        for (int hour = 0; hour <= 200; ++hour)
            yard.append({ hoursOn(hour), { hour < 100 ? 6.0 : 1.5 }, {} });
        const Trace none;
        const Air air { &none, AssumedRanges {}, &yard, 2 };
        const Contents c { 500, 0, Vessel::Bottle, 1.1, 0.5, {} };
        ChillMemo memo;
        const Chill sure = memo.chill(air, hoursOn(0), hoursOn(98), c, {});
        QVERIFY(!sure.riskSince && sure.known && sure.events.empty());
        const Chill risky = memo.chill(air, hoursOn(0), hoursOn(150), c, {});
        QCOMPARE(risky.riskSince, std::optional(hoursOn(99)));
        QVERIFY(std::abs(Hours(risky.unwatchedRisk).count() - 51) < 1e-6);
        QVERIFY(risky.known);
        QVERIFY(!memo.chill(air, hoursOn(0), hoursOn(300), c, {}).known);
    }
};

QTEST_APPLESS_MAIN(TestChillMemo)
#include "tst_chillmemo.moc"
