#include <QTest>

#include <cmath>
#include <limits>

#include "demand/newsvendor.h"

using namespace gw;

/// Levels that balance running short against too much. The figures are checked in tests/outside; here the
/// edges.
class TestNewsvendor : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void evenCosts_keepTheMean();
    void dearerShortage_keepsMore();
    void level_isNeverBelowZero();
    void level_costsNoMoreThanItsNeighbours();
    void lead_countsInMeanAndSpread();
    void badInput_isRefusedWithASentence();
};

void TestNewsvendor::evenCosts_keepTheMean()
{
    QVERIFY(std::abs(newsvendorLevel({ 120, 30 }, 4, 4).value() - 120) < 1e-12);
    QCOMPARE(newsvendorLevel({ 120, 0 }, 9, 1).value(), 120.0);
}

void TestNewsvendor::dearerShortage_keepsMore()
{
    double before = 0;
    for (double shortage = 0.5; shortage < 100; shortage *= 2) {
        const double level = newsvendorLevel({ 100, 20 }, shortage, 5).value();
        QVERIFY(level > before);
        before = level;
    }
}

void TestNewsvendor::level_isNeverBelowZero()
{
    QCOMPARE(newsvendorLevel({ 10, 30 }, 1, 9).value(), 0.0);
    QCOMPARE(orderUpToLevel({ 1, 30 }, 1, 0, 5).value(), 0.0);
}

void TestNewsvendor::level_costsNoMoreThanItsNeighbours()
{
    // Expected cost of any level S by the loss function: short x loss above + over x (S - mean + loss above).
    const NormalUse use { 50, 8 };
    const auto cost = [&](double level) {
        const double loss = use.spread * normalLoss((level - use.mean) / use.spread);
        return 0.70 * loss + 0.18 * (level - use.mean + loss);
    };
    const double best = newsvendorLevel(use, 0.70, 0.18).value();
    QVERIFY(std::abs(cost(best) - newsvendorCost(use, 0.70, 0.18).value()) < 1e-12);
    QVERIFY(cost(best) < cost(best + 0.5));
    QVERIFY(cost(best) < cost(best - 0.5));
}

void TestNewsvendor::lead_countsInMeanAndSpread()
{
    const double without = orderUpToLevel({ 10, 3 }, 30, 0, 98).value();
    const double with = orderUpToLevel({ 10, 3 }, 30, 14, 98).value();
    QVERIFY(with - without > 14 * 10);
    QVERIFY(std::abs(orderUpToLevel({ 10, 3 }, 30, 14, 50).value() - 440) < 1e-9);
}

void TestNewsvendor::badInput_isRefusedWithASentence()
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    const double endless = std::numeric_limits<double>::infinity();
    QVERIFY(!criticalRatio(-1, 2));
    QVERIFY(!criticalRatio(1, none));
    QVERIFY(!criticalRatio(0, 0));
    QVERIFY(!criticalRatio(1e308, 1e308));
    QVERIFY(!newsvendorLevel({ 10, 1 }, 0, 2));
    QVERIFY(!newsvendorLevel({ 10, 1 }, 2, 0));
    QVERIFY(!newsvendorLevel({ -10, 1 }, 1, 2));
    QVERIFY(!newsvendorLevel({ 10, -1 }, 1, 2));
    QVERIFY(!newsvendorLevel({ none, 1 }, 1, 2));
    QVERIFY(!newsvendorCost({ 10, endless }, 1, 2));
    QVERIFY(!orderUpToLevel({ 10, 1 }, 0, 0, 95));
    QVERIFY(!orderUpToLevel({ 10, 1 }, -1, 5, 95));
    for (const double level : { 0.0, 100.0, -1.0, 101.0, none }) {
        QVERIFY(!orderUpToLevel({ 10, 1 }, 30, 7, level));
        QVERIFY(!poissonLevel(4, level));
    }
    QVERIFY(!poissonLevel(-4, 95));
    QVERIFY(std::isfinite(orderUpToLevel({ 10, 1 }, 30, 7, 1e-300).value_or(0)));
    QVERIFY(newsvendorLevel({ 10, 1 }, 0, 2).error().sentence.ends_with('.'));
}

QTEST_APPLESS_MAIN(TestNewsvendor)
#include "tst_newsvendor.moc"
