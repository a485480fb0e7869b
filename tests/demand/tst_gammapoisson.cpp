#include <QTest>

#include <cmath>
#include <limits>

#include "demand/gammapoisson.h"

using namespace gw;

/// Rates learned from counts. The figures are checked in tests/outside; here the edges.
class TestGammaPoisson : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void order_ofWhatWasSeenDoesNotMatter();
    void nothingSeen_leavesThePrior();
    void mean_liesBetweenPriorAndSeen();
    void quantile_isTheLeastThatSuffices();
    void longAhead_countsTowardsTheMean();
    void badInput_isRefusedWithASentence();
};

void TestGammaPoisson::order_ofWhatWasSeenDoesNotMatter()
{
    const auto once = posteriorRate({ 2, 1 }, { 6, 2, 2, 1 }).value();
    const auto again = posteriorRate(posteriorRate({ 2, 1 }, { 1, 2 }).value(), { 2, 6 }).value();
    QCOMPARE(once.shape, again.shape);
    QCOMPARE(once.rate, again.rate);
}

void TestGammaPoisson::nothingSeen_leavesThePrior()
{
    const auto belief = posteriorRate({ 2, 4 }, {}).value();
    QCOMPARE(belief.shape, 2.0);
    QCOMPARE(belief.rate, 4.0);
}

void TestGammaPoisson::mean_liesBetweenPriorAndSeen()
{
    const auto belief = posteriorRate({ 2, 1 }, { 8, 9, 7 }).value();
    QVERIFY(belief.mean() > 2 && belief.mean() < 8);
    QCOMPARE(meanAhead(belief, 3).value(), 3 * belief.mean());
}

void TestGammaPoisson::quantile_isTheLeastThatSuffices()
{
    for (const GammaRate belief : { GammaRate { 0.3, 2 }, GammaRate { 3.5, 6.1 }, GammaRate { 400, 2 } }) {
        std::uint64_t before = 0;
        for (double percent = 1; percent < 100; percent += 3.5) {
            const auto events = quantileAhead(belief, 1.3, percent).value();
            QVERIFY(cumulativeAhead(belief, 1.3, events).value() >= percent / 100);
            if (events > 0)
                QVERIFY(cumulativeAhead(belief, 1.3, events - 1).value() < percent / 100);
            QVERIFY(events >= before);
            before = events;
        }
    }
}

void TestGammaPoisson::longAhead_countsTowardsTheMean()
{
    const GammaRate sure { 1e6, 1e6 };
    const auto events = static_cast<double>(quantileAhead(sure, 10000, 50).value());
    QVERIFY(std::abs(events / 10000 - 1) < 0.01);
}

void TestGammaPoisson::badInput_isRefusedWithASentence()
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    const double endless = std::numeric_limits<double>::infinity();
    for (const GammaRate prior :
        { GammaRate { -1, 1 }, GammaRate { 1, -1 }, GammaRate { none, 1 }, GammaRate { 1, endless } })
        QVERIFY(!posteriorRate(prior, { 1 }));
    QVERIFY(!posteriorRate({ 0, 0 }, {}));
    QVERIFY(!posteriorRate({ 0, 0 }, { 0, 0 }));
    QVERIFY(!posteriorRate({ 1, 1 }, { -1 }));
    QVERIFY(!posteriorRate({ 1, 1 }, { 1.5 }));
    QVERIFY(!posteriorRate({ 1, 1 }, { none }));
    QVERIFY(!posteriorRate({ 1, 1 }, { 3 }, 0));
    QVERIFY(!posteriorRate({ 1, 1 }, { 3 }, -2));

    const GammaRate belief { 2, 1 };
    for (const double ahead : { 0.0, -1.0, none, endless }) {
        QVERIFY(!meanAhead(belief, ahead));
        QVERIFY(!cumulativeAhead(belief, ahead, 1));
        QVERIFY(!quantileAhead(belief, ahead, 95));
    }
    for (const double percent : { 0.0, 100.0, -3.0, none }) {
        QVERIFY(!quantileAhead(belief, 1, percent));
        QVERIFY(!rateQuantile(belief, percent));
    }
    QVERIFY(!chanceRateOver(belief, -1));
    QVERIFY(!rateQuantile({ 0, 0 }, 50));
    const auto refused = posteriorRate({ -1, 1 }, {});
    QCOMPARE(refused.error().code, ErrorCode::BadInput);
    QVERIFY(refused.error().sentence.ends_with('.'));
}

QTEST_APPLESS_MAIN(TestGammaPoisson)
#include "tst_gammapoisson.moc"
