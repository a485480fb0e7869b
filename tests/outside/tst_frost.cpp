#include <QTest>

#include <cmath>
#include <numbers>

#include "ageing/tonight.h"
#include "support/csvrows.h"

// What the lumped model of frost claims of the published and computed cases: cooling and warming without
// freezing, the time constants of containers, and Plank's freezing time as far as heat leaves through the
// surface. It does not claim the diameters and Biot numbers of metal spheres, nor the part of Plank's formula
// that is conduction inside (R a^2/k) with its limit for ice in one stroke of cold (Stefan): leaving
// conduction out, it freezes sooner.
using namespace gw;
using gw::test::CsvRow;
using gw::test::readCheckTable;

namespace {

const Moment start = *parseMoment("2026-01-01");
constexpr Celsius neverFreezes { -200 };

Moment hoursOn(double hours)
{
    return start + std::chrono::round<std::chrono::milliseconds>(Hours { hours });
}

Response plain(double tau) { return { Hours { tau }, Hours { tau }, 1, neverFreezes }; }

double number(const QString& text)
{
    bool ok = false;
    const double value = text.toDouble(&ok);
    if (!ok)
        qFatal("check table: \"%s\" is no number", qPrintable(text));
    return value;
}

/// Time constant in hours by the definition rho c V/(h A), figures as published.
double tau(double density, double heat, const Bulk& bulk, double h = 8)
{
    return density * heat * bulk.cubicMetres / (h * bulk.squareMetres) / 3600;
}

} // namespace

class TestFrostOutside : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void lumpedCooling_data()
    {
        QTest::addColumn<double>("from");
        QTest::addColumn<QString>("air");
        QTest::addColumn<double>("tau");
        QTest::addColumn<double>("hours");
        QTest::addColumn<double>("value");
        int rows = 0;
        for (const CsvRow& row : readCheckTable(QStringLiteral("freeze.csv"))) {
            const auto of = [&](const char* column) { return row.value(QString::fromLatin1(column)); };
            QTest::newRow(qPrintable(of("case"))) << number(of("start_c")) << of("air") << number(of("tau_h"))
                                                  << number(of("hours")) << number(of("value"));
            ++rows;
        }
        QCOMPARE(rows, 11);
    }
    void lumpedCooling()
    {
        QFETCH(double, from);
        QFETCH(QString, air);
        QFETCH(double, tau);
        QFETCH(double, hours);
        QFETCH(double, value);
        FrostWalk contents(plain(tau), start, { Celsius { from }, 0, {} });
        double reached = 0;
        const auto steps = air.split(QLatin1Char(' '));
        for (const QString& step : steps) {
            const auto parts = step.split(QLatin1Char(':'));
            const Celsius temperature { number(parts.first()) };
            reached = std::min(hours, reached + number(parts.last()));
            contents.pass(temperature, temperature, hoursOn(reached));
        }
        QVERIFY(std::abs(contents.warmth().temperature->value - value) < 2e-5);
    }

    // tau 5 h in air 8 sin(2 pi t/24 h) from 10 C: closed form, checked there with an ODE solver. The air is
    // given here minute by minute, linear between.
    void sineAir()
    {
        const auto air = [](int minute) {
            return Celsius { 8 * std::sin(2 * std::numbers::pi * minute / (24 * 60.0)) };
        };
        FrostWalk contents(plain(5), start, { Celsius { 10 }, 0, {} });
        double highest = -100;
        for (int minute = 0; minute < 240 * 60; ++minute) {
            contents.pass(air(minute), air(minute + 1), hoursOn((minute + 1) / 60.0));
            const double now = contents.warmth().temperature->value;
            const auto near = [&](double expected) { return std::abs(now - expected) < 1e-4; };
            if (minute + 1 == 6 * 60)
                QVERIFY(near(7.122577629));
            if (minute + 1 == 12 * 60)
                QVERIFY(near(5.11653476));
            if (minute + 1 == 24 * 60)
                QVERIFY(near(-3.745193665));
            if (minute + 1 == 96 * 60)
                QVERIFY(near(-3.859252));
            if (minute >= 216 * 60)
                highest = std::max(highest, now);
        }
        QVERIFY(std::abs(highest / 8 - 0.6070678715) < 1e-4);
    }

    // Time constants with h 8, densities and heats as given: 2.062359234, 1.535881194 and 3.247291667 h
    // (computed apart from this program).
    void containers()
    {
        QVERIFY(std::abs(tau(1000, 4186, cylinder(0.07, 0.15)) - 2.062359234) < 1e-8);
        QVERIFY(std::abs(tau(1090, 2860, cylinder(0.07, 0.15)) - 1.535881194) < 1e-8);
        QVERIFY(std::abs(tau(1090, 2860, cylinder(0.2, 0.15)) - 3.247291667) < 1e-8);

        // The same as this program comes to them, from millilitres and the water in them.
        Contents bottle { 0, 0, Vessel::Bottle, 1.0, 1.0, {} };
        bottle.millilitres = cylinder(0.07, 0.15).cubicMetres * 1e6;
        QVERIFY(std::abs(responseOf(bottle).thawed.count() - 2.062359234) < 1e-8);
        bottle.density = 1.09;
        bottle.waterShare = (2860.0 - 1500) / (4186 - 1500);
        QVERIFY(std::abs(responseOf(bottle).thawed.count() - 1.535881194) < 1e-8);
        bottle.waterShare = 0.5; // by mixture 2843 J/kgK, the table's 2860 is rounded up
        QVERIFY(std::abs(responseOf(bottle).thawed.count() / 1.535881194 - 1) < 0.01);
        Contents tub = bottle;
        tub.vessel = Vessel::Tin;
        tub.millilitres = cylinder(0.2, 0.15).cubicMetres * 1e6;
        tub.waterShare = (2860.0 - 1500) / (4186 - 1500);
        QVERIFY(std::abs(responseOf(tub).thawed.count() - 3.247291667) < 1e-8);
    }

    // Plank: t = rho L/(Tf - Ta) (P a/h + R a^2/k), a 50 % emulsion with rho 1090, L 0.5 x 333.6 kJ/kg, Tf
    // -1, k 1, h 8 (Encyclopaedia of Food Science for P and R; values computed apart from this program).
    void plank_data()
    {
        QTest::addColumn<double>("diameter");
        QTest::addColumn<double>("air");
        QTest::addColumn<double>("plank");
        QTest::newRow("7 cm, -5 C") << 0.07 << -5.0 << 31.48567188;
        QTest::newRow("7 cm, -10 C") << 0.07 << -10.0 << 13.99363194;
        QTest::newRow("7 cm, -18 C") << 0.07 << -18.0 << 7.408393382;
        QTest::newRow("20 cm, -10 C") << 0.2 << -10.0 << 49.10046296;
        QTest::newRow("20 cm, -18 C") << 0.2 << -18.0 << 25.99436275;
    }
    void plank()
    {
        QFETCH(double, diameter);
        QFETCH(double, air);
        QFETCH(double, plank);
        const double degrees = -1 - air;
        const double seconds = 1090 * 0.5 * 333.6e3 / degrees;
        const double surface = seconds * diameter / 4 / 8 / 3600;
        const double inside = seconds * diameter * diameter / 16 / 1.0 / 3600;
        QVERIFY(std::abs(surface + inside - plank) < 1e-6); // the row is what the formula says

        // A cylinder long enough that its ends do not count.
        const double heat = 0.5 * 4186 + 0.5 * 1500;
        const Response response
            = responseOf(Hours { tau(1090, heat, cylinder(diameter, 1e6)) }, 0.5, Celsius { -1 });
        FrostWalk contents(response, start, { Celsius { -1 }, 0, {} });
        contents.pass({ air }, { air }, hoursOn(surface * 0.9999));
        QVERIFY(contents.warmth().frozenShare < 1);
        QVERIFY(std::abs(contents.warmth().frozenShare - 0.9999) < 1e-5);
        contents.pass({ air }, { air }, hoursOn(surface * 1.0001));
        QCOMPARE(contents.warmth().frozenShare, 1.0);
        QVERIFY(surface < plank); // without conduction inside: sooner, never later
    }

    // The shop's own estimate: 0.5 l, 8 W/m2K, half water, from 20 C: about 1.5 h to 0 C at -10 C and about
    // 7 h more to freeze through; about a day at -3 C.
    void halfALitre()
    {
        const Contents contents { 500, 0, Vessel::Bottle, 1.0, 0.5, {} };
        const double through = responseOf(contents).latent;
        LifeFigures figures;
        figures.frost = Frost::Harms;
        const TonightRisk hard = tonightRisk(contents, { Celsius { 20 }, 0, {} }, { -10 }, figures);
        QVERIFY(std::abs(*hard.hoursToFreezing - 1.5) < 0.1);
        QVERIFY(std::abs(through / 10 - 7) < 1);
        QVERIFY(std::abs(through / 3 - 24) < 3);
    }

    // Rule of thumb (assumption of the trade file): air below -2 C for at least 4 h is a frost event. A night
    // of -5 C is such a one: half a litre standing at the freezing point counts after about four hours.
    void ruleOfThumb()
    {
        const Contents contents { 500, 0, Vessel::Bottle, 1.0, 0.5, {} };
        LifeFigures figures;
        figures.frost = Frost::Harms;
        const TonightRisk risk = tonightRisk(contents, { Celsius { 2 }, 0, {} }, { -5 }, figures);
        QVERIFY(*risk.hoursToEvent > 3 && *risk.hoursToEvent < 5);
    }
};

QTEST_APPLESS_MAIN(TestFrostOutside)
#include "tst_frost.moc"
