#include <QTest>

#include "gluing/mix.h"

using namespace gw;

/// Two-part ratios and water ratios against tables worked out by hand: arithmetic on stated densities and
/// ratios.
class TestMixRatios : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void volumeRatio_becomesMassRatio_data();
    void volumeRatio_becomesMassRatio();
    void volumesOnAScale_areTooMuchHardener();
    void hideGlueSolids_followTheWaterRatio_data();
    void hideGlueSolids_followTheWaterRatio();
    void batchesOfFiftyGrams_splitAsWorkedOut_data();
    void batchesOfFiftyGrams_splitAsWorkedOut();
};

// Source: arithmetic. Mass ratio = (volume x density) : (volume x density); densities are typical ones, from
// memory.
void TestMixRatios::volumeRatio_becomesMassRatio_data()
{
    QTest::addColumn<double>("resinVolumes");
    QTest::addColumn<double>("resinDensity");
    QTest::addColumn<double>("hardenerDensity");
    QTest::addColumn<double>("hardenerPer100");
    QTest::addColumn<double>("hardenerPercent");
    QTest::addColumn<double>("smallestBatch"); // grams, hardener within 2 % on a scale of 0.1 g
    QTest::newRow("2:1 slow") << 2.0 << 1.15 << 0.95 << 41.3 << 29.2 << 17.0;
    QTest::newRow("2:1 fast") << 2.0 << 1.15 << 1.00 << 43.5 << 30.3 << 16.0;
    QTest::newRow("3:1") << 3.0 << 1.15 << 0.95 << 27.5 << 21.6 << 23.0;
    QTest::newRow("4:1") << 4.0 << 1.15 << 0.98 << 21.3 << 17.6 << 28.0;
    QTest::newRow("5:1") << 5.0 << 1.15 << 0.95 << 16.5 << 14.2 << 35.0;
    QTest::newRow("1:1 five-minute") << 1.0 << 1.17 << 1.12 << 95.7 << 48.9 << 10.0;
}

void TestMixRatios::volumeRatio_becomesMassRatio()
{
    QFETCH(double, resinVolumes);
    QFETCH(double, resinDensity);
    QFETCH(double, hardenerDensity);
    QFETCH(double, hardenerPer100);
    QFETCH(double, hardenerPercent);
    QFETCH(double, smallestBatch);
    const auto ratio = hardenerPer100ByVolume(resinVolumes, 1, { resinDensity }, { hardenerDensity });
    QVERIFY(ratio);
    QVERIFY2(std::abs(*ratio - hardenerPer100) <= 0.0501, qPrintable(QString::number(*ratio)));
    const auto shares = sharesOfMassRatio(*ratio);
    QVERIFY(shares);
    QCOMPARE(shares->resin + shares->hardener, 1.0);
    QVERIFY2(std::abs(shares->hardener * 100 - hardenerPercent) <= 0.0501,
        qPrintable(QString::number(shares->hardener)));
    const double smallest = smallestBatchGrams(shares->hardener, 0.1, 0.02);
    QVERIFY2(std::abs(smallest - smallestBatch) <= 0.501, qPrintable(QString::number(smallest)));
}

// Source: arithmetic. "2:1" read as a mass ratio is 50 g to 100 g where 41.3 g is right: 21 % too much.
void TestMixRatios::volumesOnAScale_areTooMuchHardener()
{
    const double right = *hardenerPer100ByVolume(2, 1, { 1.15 }, { 0.95 });
    QVERIFY(std::abs(50 / right - 1.21) < 0.005);
}

// Source: arithmetic on common water ratios, common practice; solids in percent as a hide glue table gives
// them.
void TestMixRatios::hideGlueSolids_followTheWaterRatio_data()
{
    QTest::addColumn<double>("ratio");
    QTest::addColumn<double>("solids");
    const std::pair<double, double> rows[] { { 1.2, 45 }, { 1.4, 42 }, { 1.5, 40 }, { 1.8, 36 }, { 1.9, 34 },
        { 2.0, 33 }, { 2.2, 31 }, { 2.4, 29 }, { 3.0, 25 } };
    for (const auto& [ratio, solids] : rows)
        QTest::addRow("%.1f : 1", ratio) << ratio << solids;
}

void TestMixRatios::hideGlueSolids_followTheWaterRatio()
{
    QFETCH(double, ratio);
    QFETCH(double, solids);
    QVERIFY(std::abs(drySharePerUnit(ratio) * 100 - solids) <= 0.5);
}

// Source: worked examples, arithmetic; each to a tenth of a gram.
void TestMixRatios::batchesOfFiftyGrams_splitAsWorkedOut_data()
{
    QTest::addColumn<double>("ratio");
    QTest::addColumn<double>("dry");
    QTest::addColumn<double>("water");
    QTest::newRow("hide glue 192 g") << 1.8 << 17.9 << 32.1;
    QTest::newRow("hide glue 251 g") << 2.0 << 16.7 << 33.3;
    QTest::newRow("casein") << 2.0 << 16.7 << 33.3;
    QTest::newRow("urea resin") << 0.55 << 32.3 << 17.7;
}

void TestMixRatios::batchesOfFiftyGrams_splitAsWorkedOut()
{
    QFETCH(double, ratio);
    QFETCH(double, dry);
    QFETCH(double, water);
    QVERIFY(std::abs(50 * drySharePerUnit(ratio) - dry) <= 0.05);
    QVERIFY(std::abs(50 * waterSharePerUnit(ratio) - water) <= 0.05);
}

QTEST_APPLESS_MAIN(TestMixRatios)
#include "tst_mixratios.moc"
