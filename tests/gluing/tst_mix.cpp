#include <QTest>

#include "gluing/mix.h"

using namespace gw;

/// Shares of dry glue and water, of resin and hardener.
class TestMix : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void dryAndWater_addUpToOne();
    void massRatio_givesSharesThatAddUp();
    void massRatio_outsideReason_isRefused();
    void volumes_outsideReason_areRefused();
    void swappedDensities_giveAnotherRatio();
    void finerScale_allowsSmallerBatch();
};

void TestMix::dryAndWater_addUpToOne()
{
    for (const double ratio : { 0.0, 0.55, 1.2, 1.8, 3.0, 4.0 }) {
        QCOMPARE(drySharePerUnit(ratio) + waterSharePerUnit(ratio), 1.0);
        QVERIFY(std::abs(waterSharePerUnit(ratio) - ratio * drySharePerUnit(ratio)) < 1e-12);
    }
    QCOMPARE(drySharePerUnit(0), 1.0);
}

void TestMix::massRatio_givesSharesThatAddUp()
{
    const auto even = sharesOfMassRatio(100);
    QVERIFY(even);
    QCOMPARE(even->resin, 0.5);
    QCOMPARE(even->hardener, 0.5);
    const auto quarter = sharesOfMassRatio(25);
    QCOMPARE(quarter->resin, 0.8);
    QCOMPARE(quarter->hardener, 0.2);
}

void TestMix::massRatio_outsideReason_isRefused()
{
    for (const double ratio : { 0.0, -41.3, 1001.0, std::nan(""), HUGE_VAL }) {
        const auto shares = sharesOfMassRatio(ratio);
        QVERIFY(!shares);
        QCOMPARE(shares.error().code, ErrorCode::BadInput);
        QVERIFY(shares.error().sentence.ends_with('.'));
    }
}

void TestMix::volumes_outsideReason_areRefused()
{
    const GramsPerMillilitre resin { 1.15 }, hardener { 0.95 };
    QVERIFY(!hardenerPer100ByVolume(0, 1, resin, hardener));
    QVERIFY(!hardenerPer100ByVolume(2, 0, resin, hardener));
    QVERIFY(!hardenerPer100ByVolume(-2, -1, resin, hardener));
    QVERIFY(!hardenerPer100ByVolume(std::nan(""), 1, resin, hardener));
    QVERIFY(!hardenerPer100ByVolume(2, 1, { 0 }, hardener));
    QVERIFY(!hardenerPer100ByVolume(2, 1, resin, { 1150 })); // kg/m3 typed for g/ml
    QVERIFY(hardenerPer100ByVolume(2, 1, resin, hardener));
}

void TestMix::swappedDensities_giveAnotherRatio()
{
    QVERIFY(*hardenerPer100ByVolume(2, 1, { 1.15 }, { 0.95 }) < 50);
    QVERIFY(*hardenerPer100ByVolume(2, 1, { 0.95 }, { 1.15 }) > 50);
    QCOMPARE(*hardenerPer100ByVolume(2, 1, { 1.1 }, { 1.1 }), 50.0);
}

void TestMix::finerScale_allowsSmallerBatch()
{
    QCOMPARE(smallestBatchGrams(0.5, 0.1, 0.02), 10.0);
    QCOMPARE(smallestBatchGrams(0.5, 0.01, 0.02), 1.0);
}

QTEST_APPLESS_MAIN(TestMix)
#include "tst_mix.moc"
