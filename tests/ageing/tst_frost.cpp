#include <QTest>

#include <array>
#include <cmath>
#include <random>

#include "ageing/chill.h"
#include "ageing/stock.h"
#include "ageing/trace.h"

using namespace gw;
using namespace gw::test;

namespace {

const Moment start = at("2025-12-01");
const Contents bottle { 500, 0, Vessel::Bottle, 1.08, 0.5, { 0.0 } };
const AssumedRanges nothingAssumed {};
const AssumedRanges warm { Range<Celsius> { { 12 }, { 24 } }, {} };
const AssumedRanges cold { Range<Celsius> { { -8 }, { 30 } }, {} };

Moment hoursOn(double hours)
{
    return start + std::chrono::round<std::chrono::milliseconds>(Hours { hours });
}
double hoursOf(Moment moment) { return Hours(moment - start).count(); }

/// "0:5 10:-8": hour and temperature.
Trace readings(std::initializer_list<std::pair<double, double>> points)
{
    Trace trace;
    for (const auto& [hour, temperature] : points)
        trace.append({ hoursOn(hour), Celsius { temperature }, {} });
    return trace;
}

/// A winter's air, drawn at random: days and nights, cold spells and thaws.
Trace winter(std::mt19937& random, double days, double interval, double mean)
{
    std::normal_distribution<double> step(0, 0.4);
    Trace trace;
    double weather = 0;
    for (double hour = 0; hour <= days * 24; hour += interval) {
        weather += step(random) * std::sqrt(interval) - 0.02 * weather * interval;
        trace.append({ hoursOn(hour), Celsius { mean + weather + 4 * std::sin(hour / 24 * 2 * M_PI) }, {} });
    }
    return trace;
}

/// The same question by other means: heat content in small explicit steps of four seconds.
struct Reckoned {
    double temperature = 0;
    double share = 0;
    std::vector<std::pair<double, double>> events; ///< hours; an end below 0: still frozen
};
Reckoned reckon(const Trace& air, const Response& r, double hours, double first)
{
    constexpr double dt = 4.0 / 3600;
    const double freezes = r.freezesAt.value;
    double heat = (first - freezes) * r.thawed.count(); // degree-hours above the freezing point, all liquid
    bool inEvent = false;
    Reckoned answer;
    std::size_t i = 0;
    const auto temperature = [&] {
        if (heat >= 0)
            return freezes + heat / r.thawed.count();
        return heat <= -r.latent ? freezes + (heat + r.latent) / r.frozen.count() : freezes;
    };
    for (double hour = 0; hour < hours; hour += dt) {
        while (i + 2 < air.size() && hoursOf(air.at(i + 1)) <= hour)
            ++i;
        const double from = hoursOf(air.at(i));
        const double to = hoursOf(air.at(i + 1));
        const double a = air.temperature(i).value;
        const double b = air.temperature(i + 1).value;
        heat += (a + (b - a) * (hour + dt / 2 - from) / (to - from) - temperature()) * dt;
        const double share = std::clamp(-heat / r.latent, 0.0, 1.0);
        if (!inEvent && share > countedShare) {
            answer.events.push_back({ hour, -1 });
            inEvent = true;
        } else if (inEvent && share <= 0) {
            answer.events.back().second = hour;
            inEvent = false;
        }
    }
    answer.temperature = temperature();
    answer.share = std::clamp(-heat / r.latent, 0.0, 1.0);
    return answer;
}

std::size_t count(const Chill& chill) { return chill.events.size() + (chill.stillFrozen() ? 1 : 0); }

double frozenHours(const Chill& chill, Moment to)
{
    double hours = chill.stillFrozen() ? Hours(to - *chill.end.frozenSince).count() : 0;
    for (const FrostEvent& event : chill.events)
        hours += Hours(*event.thawed - event.from).count();
    return hours;
}

} // namespace

class TestFrost : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void shortDip_doesNotCount()
    {
        const Trace air = readings({ { 0, 6 }, { 5, 6 }, { 6, -6 }, { 7, -6 }, { 8, 6 }, { 12, 6 } });
        const Chill chill = chillOf(air, nothingAssumed, hoursOn(0), hoursOn(12), bottle, {});
        QCOMPARE(count(chill), std::size_t(0));
        QVERIFY(!chill.riskSince && chill.known);
    }

    void longFrost_countsOnceAndEndsWhenThawedThrough()
    {
        const Trace air = readings({ { 0, 6 }, { 4, 6 }, { 5, -6 }, { 10, -6 }, { 15, -6 }, { 20, -6 },
            { 21, 15 }, { 26, 15 }, { 31, 15 }, { 36, 15 }, { 41, 15 } });
        const Chill chill = chillOf(air, nothingAssumed, hoursOn(0), hoursOn(41), bottle, {});
        QCOMPARE(chill.events.size(), std::size_t(1));
        QVERIFY(!chill.stillFrozen());
        const double from = hoursOf(chill.events[0].from);
        QVERIFY(from > 6 && from < 12);
        const double thawed = hoursOf(*chill.events[0].thawed);
        QVERIFY(thawed > 22 && thawed < 32);

        const Chill before = chillOf(air, nothingAssumed, hoursOn(0), hoursOn(18), bottle, {});
        QVERIFY(before.stillFrozen() && before.events.empty());
        QCOMPARE(*before.end.frozenSince, chill.events[0].from);
    }

    void refreezingBeforeItThawedThrough_isOneFrost()
    {
        const Trace air = readings(
            { { 0, -8 }, { 6, -8 }, { 12, -8 }, { 12.5, 4 }, { 14, 4 }, { 14.5, -8 }, { 20, -8 } });
        const Chill chill = chillOf(air, nothingAssumed, hoursOn(0), hoursOn(20), bottle, {});
        QCOMPARE(count(chill), std::size_t(1));
    }

    void smallBottle_freezesSoonerThanALargeOne()
    {
        Contents small = bottle;
        small.millilitres = 50;
        const Trace air = readings({ { 0, 3 }, { 1, -5 }, { 3, -5 }, { 4, 4 }, { 10, 4 } });
        QCOMPARE(count(chillOf(air, nothingAssumed, hoursOn(0), hoursOn(10), small, {})), std::size_t(1));
        QCOMPARE(count(chillOf(air, nothingAssumed, hoursOn(0), hoursOn(10), bottle, {})), std::size_t(0));
        Contents unknown = bottle;
        unknown.millilitres = 0; // not known: as the smallest usual
        QVERIFY(responseOf(unknown) == responseOf(small));
    }

    void halfEmptied_itFreezesSooner()
    {
        Contents half = bottle;
        half.capacity = 500;
        half.millilitres = 250;
        QVERIFY(responseOf(half).thawed < responseOf(bottle).thawed);
        QCOMPARE(levelOf(grams(499), grams(500)), 0.75);
        QCOMPARE(levelOf(grams(500), grams(500)), 1.0);
        QCOMPARE(levelOf(grams(1), grams(500)), 0.0625);
    }

    void contentsWithoutWater_setAsSoonAsTheyAreCold()
    {
        Contents solvent = bottle;
        solvent.waterShare = 0;
        const Trace air = readings({ { 0, 0 }, { 1, -6 }, { 4, -6 }, { 5, 6 }, { 10, 6 } });
        const Chill chill = chillOf(air, nothingAssumed, hoursOn(0), hoursOn(10), solvent, {});
        QCOMPARE(chill.events.size(), std::size_t(1));
        QVERIFY(hoursOf(chill.events[0].from) < 0.2);
    }

    void unwatched_isNotKnownWhereItMayFreeze()
    {
        const Trace air = readings({ { 0, 8 }, { 1, 8 }, { 2, 8 }, { 40, 8 }, { 41, 8 }, { 42, 8 } });
        const Chill risky = chillOf(air, cold, hoursOn(0), hoursOn(42), bottle, {});
        QCOMPARE(risky.riskSince, std::optional(hoursOn(2)));
        QVERIFY(std::abs(Hours(risky.unwatchedRisk).count() - 38) < 1e-6);
        QVERIFY(risky.known);
        const Chill sure = chillOf(air, warm, hoursOn(0), hoursOn(42), bottle, {});
        QVERIFY(!sure.riskSince && count(sure) == 0);
        const Chill unknown = chillOf(air, nothingAssumed, hoursOn(0), hoursOn(42), bottle, {});
        QVERIFY(unknown.riskSince && !unknown.known);

        // Beyond the readings too; and for an empty span, for there it stands now.
        QVERIFY(!chillOf(air, cold, hoursOn(40), hoursOn(48), bottle, {}).riskSince);
        QCOMPARE(
            chillOf(air, cold, hoursOn(40), hoursOn(60), bottle, {}).riskSince, std::optional(hoursOn(48)));
        QVERIFY(chillOf(air, cold, hoursOn(20), hoursOn(20), bottle, {}).riskSince);
        QVERIFY(!chillOf(air, cold, hoursOn(1), hoursOn(1), bottle, {}).riskSince);
        QVERIFY(chillOf({}, cold, start, start, bottle, {}).riskSince);
    }

    void gapEndingBelowFreezing_isNoWarmPlace()
    {
        const Trace air = readings({ { 0, 8 }, { 1, 8 }, { 2, 8 }, { 40, -1 }, { 41, 8 }, { 42, 8 } });
        QVERIFY(chillOf(air, warm, hoursOn(0), hoursOn(42), bottle, {}).riskSince);
    }

    void assumedSeasons_countByTheirQuarter()
    {
        AssumedRanges seasons = warm;
        seasons.quarters[AssumedRanges::quarterOf(at("2026-01-15"))] = Range<Celsius> { { -2 }, { 15 } };
        const Chill year = chillOf({}, seasons, at("2025-06-01"), at("2026-06-01"), bottle, {});
        QCOMPARE(year.riskSince, std::optional(at("2025-12-01")));
        QVERIFY(std::abs(year.unwatchedRisk.count() - 90) < 1e-9);
        QVERIFY(!chillOf({}, seasons, at("2026-03-01"), at("2026-11-30"), bottle, {}).riskSince);
    }

    void frozenWhenTheReadingsStop_endsNobodyKnowsWhen()
    {
        const Trace air = readings({ { 0, -9 }, { 5, -9 }, { 10, -9 }, { 15, -9 } });
        const Chill lost = chillOf(air, cold, hoursOn(0), hoursOn(100), bottle, {});
        QCOMPARE(lost.events.size(), std::size_t(1));
        QVERIFY(!lost.events[0].thawed && !lost.stillFrozen() && !lost.end.temperature);
        const Chill thawed = chillOf(air, warm, hoursOn(0), hoursOn(100), bottle, {});
        QVERIFY(thawed.events.size() == 1 && thawed.events[0].thawed);
        QVERIFY(*thawed.events[0].thawed > hoursOn(21));
    }

    void arrivedInTheCold_isNotFrozenByAFrostNobodySaw()
    {
        const Trace air = readings({ { 0, -9 }, { 5, -9 }, { 10, -9 } });
        const Chill brief = chillOf(air, nothingAssumed, hoursOn(1), hoursOn(2), bottle, {});
        QCOMPARE(count(brief), std::size_t(0));
        QCOMPARE(brief.end.temperature, std::optional(Celsius { 0 }));
        QVERIFY(brief.end.frozenShare > 0);
    }

    void closedForm_isWhatFineStepsComeTo()
    {
        std::mt19937 random(1);
        std::size_t events = 0;
        for (int i = 0; i < 24; ++i) {
            const Trace air = winter(random, 14, i % 2 ? 1.0 : 1.0 / 6, 1 - i % 5);
            Contents contents = bottle;
            contents.millilitres = std::array { 60.0, 500.0, 5000.0 }[static_cast<std::size_t>(i % 3)];
            contents.freezesAt = { i % 4 == 0 ? -1.5 : 0.0 };
            const Moment end = air.at(air.size() - 1);
            const Chill chill = chillOf(air, nothingAssumed, start, end, contents, { Celsius { 10 }, 0, {} });
            const Reckoned fine = reckon(air, responseOf(contents), hoursOf(end), 10);
            QVERIFY(std::abs(chill.end.temperature->value - fine.temperature) < 0.01);
            QVERIFY(std::abs(chill.end.frozenShare - fine.share) < 0.002);
            QCOMPARE(count(chill), fine.events.size());
            for (std::size_t e = 0; e < chill.events.size(); ++e) {
                QVERIFY(std::abs(hoursOf(chill.events[e].from) - fine.events[e].first) < 0.05);
                QVERIFY(std::abs(hoursOf(*chill.events[e].thawed) - fine.events[e].second) < 0.05);
            }
            events += fine.events.size();
        }
        QVERIFY(events > 30);
    }

    void splittingASpan_changesNothing()
    {
        std::mt19937 random(2);
        std::uniform_real_distribution<double> hour(0, 20 * 24);
        for (int i = 0; i < 200; ++i) {
            const Trace air = winter(random, 18, 1, -1);
            const AssumedRanges& assumed = i % 3 == 0 ? warm : i % 3 == 1 ? cold : nothingAssumed;
            const Moment end = hoursOn(20 * 24);
            const Moment middle = hoursOn(hour(random));
            const Chill whole = chillOf(air, assumed, start, end, bottle, {});
            Chill parts = chillOf(air, assumed, start, middle, bottle, {});
            parts.add(chillOf(air, assumed, middle, end, bottle, parts.end));
            QCOMPARE(parts.events.size(), whole.events.size());
            for (std::size_t e = 0; e < whole.events.size(); ++e) {
                QVERIFY(std::abs(hoursOf(whole.events[e].from) - hoursOf(parts.events[e].from)) < 1e-5);
                QCOMPARE(parts.events[e].thawed.has_value(), whole.events[e].thawed.has_value());
            }
            QCOMPARE(parts.stillFrozen(), whole.stillFrozen());
            QCOMPARE(parts.riskSince, whole.riskSince);
            QVERIFY(std::abs((parts.unwatchedRisk - whole.unwatchedRisk).count()) < 1e-9);
            QCOMPARE(parts.end.temperature.has_value(), whole.end.temperature.has_value());
            if (whole.end.temperature) {
                QVERIFY(std::abs(parts.end.temperature->value - whole.end.temperature->value) < 1e-7);
                QVERIFY(std::abs(parts.end.frozenShare - whole.end.frozenShare) < 1e-7);
            }
        }
    }

    void colder_isNeverFrozenForFewerHours()
    {
        std::mt19937 random(3);
        int longer = 0;
        for (int i = 0; i < 200; ++i) {
            const Trace air = winter(random, 14, 1, 2);
            Trace colder;
            for (std::size_t r = 0; r < air.size(); ++r)
                colder.append({ air.at(r), { air.temperature(r).value - 0.5 * (i % 5) }, {} });
            const Moment end = air.at(air.size() - 1);
            const double mild = frozenHours(chillOf(air, nothingAssumed, start, end, bottle, {}), end);
            const double hard = frozenHours(chillOf(colder, nothingAssumed, start, end, bottle, {}), end);
            QVERIFY(hard >= mild - 1e-5);
            longer += hard > mild;
        }
        QVERIFY(longer > 50);
    }

    void timeBelow_isWhatTheLinesSay()
    {
        const Trace air = readings({ { 0, 12 }, { 2, 8 }, { 4, 12 }, { 6, 12 }, { 40, 12 }, { 41, 9 } });
        const Below seen = belowOf(air, warm, hoursOn(0), hoursOn(6), { 10 });
        QVERIFY(std::abs(Hours(seen.watched).count() - 2) < 1e-9);
        QVERIFY(!seen.riskSince);
        const Below all = belowOf(air, cold, hoursOn(0), hoursOn(41), { 10 });
        QVERIFY(std::abs(Hours(all.watched).count() - (2 + 1.0 / 3)) < 1e-9);
        QCOMPARE(all.riskSince, std::optional(hoursOn(6)));
    }
};

QTEST_APPLESS_MAIN(TestFrost)
#include "tst_frost.moc"
