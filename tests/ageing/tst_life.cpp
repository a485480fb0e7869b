#include <QTest>

#include "ageing/life.h"

using namespace gw;

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
