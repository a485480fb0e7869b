#include <QTest>

#include <cmath>

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include "ageing/life.h"

using namespace gw;

namespace {

/// The mean over a stretch by adaptive Gauss-Kronrod quadrature: a way to it that shares nothing with the
/// closed form.
template <class Speed> double sampledMean(double a, double b, Speed speed)
{
    return boost::math::quadrature::gauss_kronrod<double, 31>::integrate(
               [&](double t) { return speed(Celsius { t }); }, a, b, 12, 1e-13)
        / (b - a);
}

bool near(double found, double expected, double share)
{
    return std::abs(found - expected) <= share * std::abs(expected);
}

} // namespace

class TestLife : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void speed_isOneAtReference()
    {
        QCOMPARE(speedAt(Celsius { 18 }, Rate { { 18 }, 3, {}, false }), 1.0);
        QCOMPARE(speedAt(Celsius { 18 }, Rate { { 18 }, 3, 83.144, true }), 1.0);
    }

    void q10_multipliesPerTenDegrees()
    {
        const Rate rate { { 20 }, 2.5, {}, false };
        QCOMPARE(speedAt(Celsius { 30 }, rate), 2.5);
        QCOMPARE(speedAt(Celsius { 40 }, rate), 6.25);
    }

    void cold_givesNoCreditUnlessTheClassSaysSo()
    {
        QCOMPARE(speedAt(Celsius { 5 }, Rate { { 20 }, 2, {}, false }), 1.0);
        QCOMPARE(speedAt(Celsius { 10 }, Rate { { 20 }, 2, {}, true }), 0.5);
        QCOMPARE(rawSpeedAt(Celsius { 10 }, Rate { { 20 }, 2, {}, false }), 0.5);
    }

    void activationEnergy_replacesQ10()
    {
        const Rate both { { 20 }, 2, 60.0, false };
        const Rate energyOnly { { 20 }, 1, 60.0, false };
        QCOMPARE(speedAt(Celsius { 35 }, both), speedAt(Celsius { 35 }, energyOnly));
        QVERIFY(speedAt(Celsius { 35 }, both) > speedAt(Celsius { 35 }, Rate { { 20 }, 2, {}, false }));
    }

    void hotter_isNeverSlower()
    {
        for (const Rate& rate :
            { Rate { { 20 }, 2, {}, false }, Rate { { 20 }, 1, {}, false }, Rate { { 15 }, 3, {}, true },
                Rate { { 20 }, 1, 83.144, false }, Rate { { 20 }, 1, 50.0, true } }) {
            for (double t = -40; t < 80; t += 0.5)
                QVERIFY(speedAt(Celsius { t + 0.5 }, rate) >= speedAt(Celsius { t }, rate));
        }
    }

    void q10BelowOne_countsAsOne()
    {
        QCOMPARE(speedAt(Celsius { 40 }, Rate { { 20 }, 0.5, {}, false }), 1.0);
        QCOMPARE(speedAt(Celsius { 0 }, Rate { { 20 }, 0.5, {}, true }), 1.0);
    }

    void meanOfARise_isWhatQuadratureFinds_data()
    {
        QTest::addColumn<double>("q10");
        QTest::addColumn<double>("energy"); // kJ/mol; 0: by q10
        for (const double q10 : { 1.001, 1.5, 2.0, 3.0, 10.0 })
            QTest::addRow("q10 %g", q10) << q10 << 0.0;
        // 330 and more go by the asymptotic series of the exponential integral, less by the function itself.
        for (const double energy : { 0.1, 30.0, 50.0, 83.144, 96.0, 104.0, 120.0, 330.0, 900.0 })
            QTest::addRow("energy %g", energy) << 1.0 << energy;
    }
    void meanOfARise_isWhatQuadratureFinds()
    {
        QFETCH(double, q10);
        QFETCH(double, energy);
        Rate rate { { 20 }, q10, {}, false };
        if (energy > 0)
            rate.activationEnergy = energy;
        for (double a = -35; a < 55; a += 14.3) {
            for (const double rise : { 0.001, 0.01, 0.08, 0.3, 1.0, 4.5, 20.0, 60.0 }) {
                const Celsius from { a };
                const Celsius to { a + rise };
                const double raw = sampledMean(a, to.value, [&](Celsius t) { return rawSpeedAt(t, rate); });
                QVERIFY2(near(meanRawSpeed(from, to, rate), raw, 3e-12),
                    qPrintable(QStringLiteral("%1 to %2").arg(a).arg(to.value)));
                QCOMPARE(meanRawSpeed(to, from, rate), meanRawSpeed(from, to, rate));
                // Without cold credit the curve has a kink, which quadrature must be told of.
                const double kink = std::clamp(20.0, a, to.value);
                double floored = 0;
                if (kink > a)
                    floored += (kink - a) / rise;
                if (kink < to.value)
                    floored += (to.value - kink) / rise
                        * sampledMean(kink, to.value, [&](Celsius t) { return speedAt(t, rate); });
                QVERIFY(near(meanSpeed(from, to, rate), floored, 3e-12));
                QCOMPARE(meanSpeed(to, from, rate), meanSpeed(from, to, rate));
            }
        }
    }

    void meanOfNoRise_isTheSpeedThere()
    {
        for (const Rate& rate : { Rate { { 20 }, 2, {}, false }, Rate { { 20 }, 2, {}, true },
                 Rate { { 20 }, 1, 83.144, false }, Rate { { 20 }, 1, 83.144, true }, Rate {} }) {
            for (double t = -30; t < 60; t += 2.5) {
                QVERIFY(near(meanSpeed({ t }, { t }, rate), speedAt({ t }, rate), 1e-14));
                QVERIFY(near(meanSpeed({ t }, { t + 1e-9 }, rate), speedAt({ t }, rate), 1e-9));
                QVERIFY(near(meanRawSpeed({ t }, { t }, rate), rawSpeedAt({ t }, rate), 1e-14));
            }
        }
    }

    void meanAcrossTheSmallPieceSwitch_isSmooth()
    {
        // The Taylor series for small pieces and the two integrals must meet.
        const Rate rate { { 20 }, 1, 83.144, true };
        double before = meanRawSpeed({ 25 }, { 25.001 }, rate);
        for (double rise = 0.002; rise < 0.5; rise += 0.001) {
            const double now = meanRawSpeed({ 25 }, { 25 + rise }, rate);
            QVERIFY(now > before);
            QVERIFY(near(now, before, 7e-5));
            before = now;
        }
    }

    void splittingARise_changesNothing()
    {
        for (const Rate& rate : { Rate { { 20 }, 2.5, {}, false }, Rate { { 20 }, 1, 83.144, true } }) {
            const double whole = 30 * meanSpeed({ 5 }, { 35 }, rate);
            QVERIFY(near(
                whole, 11 * meanSpeed({ 5 }, { 16 }, rate) + 19 * meanSpeed({ 16 }, { 35 }, rate), 1e-13));
        }
    }

    void agesByTemperature_needsQ10OverOneOrAnEnergy()
    {
        QVERIFY(!agesByTemperature(Rate {}));
        QVERIFY(agesByTemperature(Rate { { 20 }, 1.5, {}, false }));
        QVERIFY(agesByTemperature(Rate { { 20 }, 1, 50.0, false }));
        QVERIFY(!agesByTemperature(Rate { { 20 }, 2, 0.0, false }));
    }
};

QTEST_APPLESS_MAIN(TestLife)
#include "tst_life.moc"
