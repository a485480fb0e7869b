#include <QTest>

#include <cmath>
#include <limits>

#include <boost/math/distributions/poisson.hpp>

#include "demand/compoundpoisson.h"

using namespace gw;

/// The compound Poisson distribution beyond the printed tables (those are in tests/outside).
class TestCompoundPoisson : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void unitAmounts_givePoisson_data();
    void unitAmounts_givePoisson();
    void jobsThatTakeNothing_areThinnedOut();
    void largeNumbers_keepMeanAndSpread();
    void probabilities_areWhatWeighingEveryNumberOfJobsGives();
    void betweenLatticePoints_theMeanStays();
    void finerLattice_changesLittle();
    void unit_doesNotMatter();
    void commonStep_isTheGreatestCommonPart();
    void quantile_isTheLeastThatSuffices();
    void noJobs_needNothing();
    void badInput_isRefusedWithASentence_data();
    void badInput_isRefusedWithASentence();
    void level_mustLieBetweenNeverAndAlways();
};

namespace {

double meanOf(const CompoundPoisson& use)
{
    double mean = 0;
    for (std::size_t i = 0; i < use.probabilities().size(); ++i)
        mean += static_cast<double>(i) * use.step() * use.probabilities()[i];
    return mean;
}

double varianceOf(const CompoundPoisson& use)
{
    const double mean = meanOf(use);
    double variance = 0;
    for (std::size_t i = 0; i < use.probabilities().size(); ++i)
        variance += std::pow(static_cast<double>(i) * use.step() - mean, 2) * use.probabilities()[i];
    return variance;
}

} // namespace

void TestCompoundPoisson::unitAmounts_givePoisson_data()
{
    QTest::addColumn<double>("jobs");
    for (const double jobs : { 0.01, 1.0, 20.0, 700.0, 800.0, 5000.0, 60000.0 })
        QTest::addRow("%g jobs", jobs) << jobs;
}

// Source: the Poisson distribution of Boost.Math. From about 745 jobs on exp(-jobs) is no longer a double.
void TestCompoundPoisson::unitAmounts_givePoisson()
{
    QFETCH(double, jobs);
    const auto use = CompoundPoisson::of(jobs, { { 1, 1 } }).value();
    const boost::math::poisson poisson(jobs);
    const double spread = std::sqrt(jobs);
    for (double z = -5; z <= 5; z += 0.5) {
        const double amount = std::floor(jobs + z * spread);
        if (amount < 0)
            continue;
        QVERIFY(std::abs(use.cumulative(amount) - boost::math::cdf(poisson, amount)) < 1e-10);
    }
}

void TestCompoundPoisson::jobsThatTakeNothing_areThinnedOut()
{
    const auto all = CompoundPoisson::onLattice(5, { { 0, .4 }, { 1, .36 }, { 3, .24 } }, 1).value();
    const auto taking = CompoundPoisson::onLattice(3, { { 1, .6 }, { 3, .4 } }, 1).value();
    QCOMPARE(all.probabilities().size(), taking.probabilities().size());
    for (std::size_t i = 0; i < all.probabilities().size(); ++i)
        QVERIFY(std::abs(all.probabilities()[i] - taking.probabilities()[i]) < 1e-14);
    const auto nothing = CompoundPoisson::of(5, { { 0, 1 } }).value();
    QCOMPARE(nothing.quantile(99.9).value(), 0.0);
}

void TestCompoundPoisson::largeNumbers_keepMeanAndSpread()
{
    // Small and large jobs far apart: the scaled start must not lose the one for the other.
    const auto use = CompoundPoisson::onLattice(3000, { { 1, .7 }, { 40, .3 } }, 1).value();
    QVERIFY(std::abs(meanOf(use) / use.mean() - 1) < 1e-9);
    QVERIFY(std::abs(varianceOf(use) / use.variance() - 1) < 1e-8);
    double sum = 0;
    for (const double probability : use.probabilities()) {
        QVERIFY(std::isfinite(probability) && probability >= 0);
        sum += probability;
    }
    QVERIFY(std::abs(sum - 1) < 1e-9);
}

void TestCompoundPoisson::probabilities_areWhatWeighingEveryNumberOfJobsGives()
{
    // By definition: the sum over n of the chance of n jobs times the n-fold convolution of the amounts.
    const std::vector<double> severity { 0, .5, .2, 0, .3 };
    const double jobs = 2.7;
    std::vector<double> expected(30, 0);
    std::vector<double> fold(30, 0);
    fold[0] = 1;
    double chance = std::exp(-jobs);
    for (int n = 0; n < 40; ++n) {
        for (std::size_t i = 0; i < expected.size(); ++i)
            expected[i] += chance * fold[i];
        std::vector<double> next(30, 0);
        for (std::size_t i = 0; i < fold.size(); ++i)
            for (std::size_t y = 1; y < severity.size() && i + y < next.size(); ++y)
                next[i + y] += fold[i] * severity[y];
        fold = next;
        chance *= jobs / (n + 1);
    }
    const auto use = CompoundPoisson::onLattice(jobs, { { 1, .5 }, { 2, .2 }, { 4, .3 } }, 1).value();
    for (std::size_t i = 0; i < expected.size(); ++i)
        QVERIFY(std::abs(use.probabilities()[i] - expected[i]) < 1e-13);
}

void TestCompoundPoisson::betweenLatticePoints_theMeanStays()
{
    const auto use = CompoundPoisson::onLattice(4, { { 13.37, .5 }, { 36.9, .5 } }, 5).value();
    QVERIFY(std::abs(meanOf(use) - 4 * (13.37 + 36.9) / 2) < 1e-9);
    QVERIFY(varianceOf(use) >= use.variance());
}

void TestCompoundPoisson::finerLattice_changesLittle()
{
    const std::vector<AmountChance> severity { { 13, .4 }, { 17.2, .35 }, { 68.4, .25 } };
    const double exact = CompoundPoisson::of(6, severity)->quantile(95).value();
    const auto coarse = CompoundPoisson::of(6, severity, 4096).value();
    QVERIFY(std::abs(coarse.quantile(95).value() - exact) <= coarse.step() + 0.2);
}

void TestCompoundPoisson::unit_doesNotMatter()
{
    const auto inGrams = CompoundPoisson::of(3, { { 15.4, .5 }, { 6.4, .5 } }).value();
    const auto inKilograms = CompoundPoisson::onLattice(3, { { .0154, .5 }, { .0064, .5 } }, .0002).value();
    for (const double level : { 50.0, 90.0, 95.0, 99.0 })
        QVERIFY(
            std::abs(inGrams.quantile(level).value() - 1000 * inKilograms.quantile(level).value()) < 1e-9);
}

void TestCompoundPoisson::commonStep_isTheGreatestCommonPart()
{
    QCOMPARE(commonStep({ { 2, .5 }, { 3, .5 } }), 1.0);
    QCOMPARE(commonStep({ { 20, .5 }, { 45, .5 } }), 5.0);
    QCOMPARE(commonStep({ { 15.4, .5 }, { 6.4, .5 } }), 0.2);
    QCOMPARE(commonStep({ { 0, 1 } }), 1.0);
    QCOMPARE(commonStep({ { 12, .5 }, { 0.5, 0 }, { 18, .5 } }), 6.0);
    QCOMPARE(commonStep({ { 0.0001, 1 } }), 0.001);
}

void TestCompoundPoisson::quantile_isTheLeastThatSuffices()
{
    const auto use = CompoundPoisson::of(3.3, { { 2, .3 }, { 5, .7 } }).value();
    double before = -1;
    for (double percent = 1; percent < 100; percent += 1) {
        const double level = use.quantile(percent).value();
        QVERIFY(use.cumulative(level) >= percent / 100 - 1e-12);
        if (level > 0)
            QVERIFY(use.cumulative(level - 0.5) < percent / 100);
        QVERIFY(level >= before);
        before = level;
    }
    QCOMPARE(use.cumulative(-1), 0.0);
    QVERIFY(std::abs(use.cumulative(1e12) - 1) < 1e-12);
}

void TestCompoundPoisson::noJobs_needNothing()
{
    const auto use = CompoundPoisson::of(0, { { 37, 1 } }).value();
    QCOMPARE(use.mean(), 0.0);
    QCOMPARE(use.quantile(99).value(), 0.0);
    QCOMPARE(use.cumulative(0), 1.0);
}

void TestCompoundPoisson::badInput_isRefusedWithASentence_data()
{
    QTest::addColumn<double>("jobs");
    QTest::addColumn<QList<double>>("figures");
    QTest::addColumn<double>("step");
    const double none = std::numeric_limits<double>::quiet_NaN();
    const double endless = std::numeric_limits<double>::infinity();
    QTest::newRow("negative jobs") << -1.0 << QList<double> { 1, 1 } << 1.0;
    QTest::newRow("endless jobs") << endless << QList<double> { 1, 1 } << 1.0;
    QTest::newRow("jobs that are no number") << none << QList<double> { 1, 1 } << 1.0;
    QTest::newRow("no amounts") << 1.0 << QList<double> {} << 1.0;
    QTest::newRow("negative amount") << 1.0 << QList<double> { -1, 1 } << 1.0;
    QTest::newRow("negative probability") << 1.0 << QList<double> { 1, 1.2, 2, -.2 } << 1.0;
    QTest::newRow("probability that is no number") << 1.0 << QList<double> { 1, none } << 1.0;
    QTest::newRow("probabilities short of 1") << 1.0 << QList<double> { 1, .5, 2, .4 } << 1.0;
    QTest::newRow("probabilities over 1") << 1.0 << QList<double> { 1, .5, 2, .6 } << 1.0;
    QTest::newRow("step of zero") << 1.0 << QList<double> { 1, 1 } << 0.0;
    QTest::newRow("step that is no number") << 1.0 << QList<double> { 1, 1 } << none;
    QTest::newRow("step too fine") << 1.0 << QList<double> { 1000, 1 } << 1e-5;
    QTest::newRow("amount past counting") << 1e300 << QList<double> { 1e300, 1 } << 1.0;
}

void TestCompoundPoisson::badInput_isRefusedWithASentence()
{
    QFETCH(double, jobs);
    QFETCH(QList<double>, figures);
    QFETCH(double, step);
    std::vector<AmountChance> severity;
    for (qsizetype i = 0; i + 1 < figures.size(); i += 2)
        severity.push_back({ figures[i], figures[i + 1] });
    const auto use = CompoundPoisson::onLattice(jobs, severity, step);
    QVERIFY(!use);
    QCOMPARE(use.error().code, ErrorCode::BadInput);
    QVERIFY(use.error().sentence.ends_with('.'));
}

void TestCompoundPoisson::level_mustLieBetweenNeverAndAlways()
{
    const auto use = CompoundPoisson::of(2, { { 1, 1 } }).value();
    for (const double level : { 0.0, -5.0, 100.0, 120.0, std::numeric_limits<double>::quiet_NaN() })
        QVERIFY(!use.quantile(level));
    QVERIFY(use.quantile(99.999999).value() > use.quantile(0.0001).value());
}

QTEST_APPLESS_MAIN(TestCompoundPoisson)
#include "tst_compoundpoisson.moc"
