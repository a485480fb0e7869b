#include <QTest>

#include "measure/moistair.h"

using namespace gw;

/// Wood moisture and dew point: what may be asked, and which way the answers lean. The figures themselves are
/// checked against the handbook's table in tests/outside.
class TestMoistAir : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void damperAir_makesDamperWood();
    void dryAir_leavesDryWood();
    void dewPoint_isNeverAboveTheAir();
    void dewPoint_saturatesAtItself();
    void impossibleAir_isRefused();
    void handbookRange_isTold();
};

void TestMoistAir::damperAir_makesDamperWood()
{
    for (double t = -40; t <= 132.5; t += 2.5) {
        double before = -1;
        for (double rh = 0; rh <= 100; rh += 0.5) {
            const auto emc = equilibriumMoisture({ t }, { rh });
            QVERIFY(emc.has_value());
            QVERIFY(std::isfinite(emc->percent) && emc->percent > before);
            before = emc->percent;
        }
    }
}

void TestMoistAir::dryAir_leavesDryWood() { QCOMPARE(equilibriumMoisture({ 20 }, { 0 })->percent, 0.0); }

void TestMoistAir::dewPoint_isNeverAboveTheAir()
{
    for (double t = -40; t <= 60; t += 1) {
        double before = -1000;
        for (double rh = 0.5; rh <= 100; rh += 0.5) {
            const auto dew = dewPoint({ t }, { rh });
            QVERIFY(dew.has_value());
            QVERIFY(dew->value > before && dew->value <= t + 1e-9);
            before = dew->value;
        }
    }
}

void TestMoistAir::dewPoint_saturatesAtItself()
{
    // By its meaning: the pressure of the water in the air is the saturation pressure at the dew point.
    for (double t = -20; t <= 50; t += 5) {
        for (double rh = 5; rh <= 100; rh += 5) {
            const double atDew = saturationPressurePascal(*dewPoint({ t }, { rh }));
            QVERIFY(std::abs(atDew / (saturationPressurePascal({ t }) * rh / 100) - 1) < 1e-9);
        }
    }
}

void TestMoistAir::impossibleAir_isRefused()
{
    for (const double rh : { -0.1, 100.1, qQNaN(), qInf() }) {
        QVERIFY(!equilibriumMoisture({ 20 }, { rh }));
        QVERIFY(!dewPoint({ 20 }, { rh }));
    }
    for (const double t : { -40.1, 132.6, qQNaN(), -qInf() })
        QVERIFY(!equilibriumMoisture({ t }, { 50 }));
    for (const double t : { -40.1, 60.1, qQNaN() })
        QVERIFY(!dewPoint({ t }, { 50 }));
    QVERIFY(!dewPoint({ 20 }, { 0 }));
    QVERIFY(dewPoint({ 20 }, { 0 }).error().sentence.ends_with('.'));
}

void TestMoistAir::handbookRange_isTold()
{
    QVERIFY(inHandbookTable({ 20 }, { 50 }));
    QVERIFY(inHandbookTable({ -1.1 }, { 5 }));
    QVERIFY(!inHandbookTable({ -5 }, { 50 }));
    QVERIFY(!inHandbookTable({ 20 }, { 98 }));
    QVERIFY(!inHandbookTable({ qQNaN() }, { 50 }));
}

QTEST_APPLESS_MAIN(TestMoistAir)
#include "tst_moistair.moc"
