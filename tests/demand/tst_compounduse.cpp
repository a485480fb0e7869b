#include <QTest>

#include <cmath>
#include <limits>
#include <vector>

#include <boost/math/distributions/negative_binomial.hpp>

#include "demand/compounduse.h"

using namespace gw;

/// Several kinds of use together, their numbers uncertain.
class TestCompoundUse : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void unitAmounts_giveNegativeBinomial_data();
    void unitAmounts_giveNegativeBinomial();
    void mixture_isWhatItsDefinitionSays();
    void severalStreams_areTheirConvolution();
    void firmBelief_isPoisson();
    void jobsThatTakeNothing_areThinnedOut();
    void plannedJobs_shiftAllByWhatTheyTake();
    void shortage_isWhatTheChancesSay();
    void meanAndSpread_areThoseOfTheModel();
    void noStreams_needNothing();
    void badInput_isRefusedWithASentence_data();
    void badInput_isRefusedWithASentence();
};

namespace {

UseStream mixed(double shape, double rate, double ahead, std::vector<AmountChance> amounts)
{
    UseStream stream;
    stream.amounts = std::move(amounts);
    stream.belief = GammaRate { shape, rate };
    stream.ahead = ahead;
    return stream;
}

UseStream poisson(double mean, std::vector<AmountChance> amounts)
{
    UseStream stream;
    stream.amounts = std::move(amounts);
    stream.mean = mean;
    return stream;
}

UseStream planned(std::vector<double> counts, std::vector<AmountChance> amounts)
{
    UseStream stream;
    stream.amounts = std::move(amounts);
    stream.counts = std::move(counts);
    return stream;
}

UseDistribution onOnes(const std::vector<UseStream>& streams)
{
    return compoundUseOnLattice(streams, 1).value();
}

double at(const std::vector<double>& chances, std::size_t index)
{
    return index < chances.size() ? chances[index] : 0;
}

} // namespace

void TestCompoundUse::unitAmounts_giveNegativeBinomial_data()
{
    QTest::addColumn<double>("shape");
    QTest::addColumn<double>("rate");
    for (const double shape : { 0.3, 1.0, 7.5, 60.0, 4000.0, 60'000.0 })
        for (const double rate : { 0.5, 3.0, 15.0 })
            QTest::addRow("Gamma(%g, %g)", shape, rate) << shape << rate;
}

// Source: the negative binomial distribution of Boost.Math. With many jobs the chance of none is no longer a
// double.
void TestCompoundUse::unitAmounts_giveNegativeBinomial()
{
    QFETCH(double, shape);
    QFETCH(double, rate);
    const auto use = onOnes({ mixed(shape, rate, 1.3, { { 1, 1 } }) });
    const boost::math::negative_binomial number(shape, rate / (rate + 1.3));
    const double spread = std::sqrt(use.variance());
    for (double z = -5; z <= 8; z += 0.5) {
        const double amount = std::floor(use.mean() + z * spread);
        if (amount >= 0)
            QVERIFY(std::abs(use.cumulative(amount) - boost::math::cdf(number, amount)) < 1e-9);
    }
}

void TestCompoundUse::mixture_isWhatItsDefinitionSays()
{
    // The sum over n of the chance of n jobs (Boost.Math) times the n-fold convolution of the amounts.
    const std::vector<double> amounts { .1, .4, .2, 0, .3 };
    const boost::math::negative_binomial number(2.5, 1.5 / (1.5 + 0.8));
    std::vector<double> expected(40, 0);
    std::vector<double> fold(40, 0);
    fold[0] = 1;
    for (int n = 0; n < 120; ++n) {
        for (std::size_t i = 0; i < expected.size(); ++i)
            expected[i] += boost::math::pdf(number, n) * fold[i];
        std::vector<double> next(40, 0);
        for (std::size_t i = 0; i < fold.size(); ++i)
            for (std::size_t y = 0; y < amounts.size() && i + y < next.size(); ++y)
                next[i + y] += fold[i] * amounts[y];
        fold = next;
    }
    const auto use = onOnes({ mixed(2.5, 1.5, 0.8, { { 0, .1 }, { 1, .4 }, { 2, .2 }, { 4, .3 } }) });
    for (std::size_t i = 0; i < expected.size(); ++i)
        QVERIFY(std::abs(at(use.probabilities(), i) - expected[i]) < 1e-12);
}

void TestCompoundUse::severalStreams_areTheirConvolution()
{
    const std::vector<UseStream> streams { mixed(4, 3, 1.2, { { 2, .5 }, { 5, .5 } }),
        mixed(0.7, 9, 1.2, { { 7, 1 } }), poisson(1.1, { { 1, .8 }, { 3, .2 } }),
        planned({ .1, .6, .3 }, { { 3, .5 }, { 4, .5 } }) };
    std::vector<double> together { 1 };
    double mean = 0;
    for (const UseStream& stream : streams) {
        const auto one = onOnes({ stream });
        mean += one.mean();
        std::vector<double> sum(together.size() + one.probabilities().size(), 0);
        for (std::size_t i = 0; i < together.size(); ++i)
            for (std::size_t k = 0; k < one.probabilities().size(); ++k)
                sum[i + k] += together[i] * one.probabilities()[k];
        together = sum;
    }
    const auto use = onOnes(streams);
    QVERIFY(std::abs(use.mean() - mean) < 1e-12);
    for (std::size_t i = 0; i < together.size(); ++i)
        QVERIFY(std::abs(at(use.probabilities(), i) - together[i]) < 1e-12);
}

void TestCompoundUse::firmBelief_isPoisson()
{
    const auto firm = onOnes({ mixed(3e9, 1e9, 1, { { 1, .5 }, { 4, .5 } }) });
    const auto sure = onOnes({ poisson(3, { { 1, .5 }, { 4, .5 } }) });
    for (std::size_t i = 0; i < sure.probabilities().size(); ++i)
        QVERIFY(std::abs(at(firm.probabilities(), i) - sure.probabilities()[i]) < 1e-8);
    // What is less sure needs more to be as sure.
    const auto loose = onOnes({ mixed(3, 1, 1, { { 1, .5 }, { 4, .5 } }) });
    QVERIFY(loose.quantile(95).value() > sure.quantile(95).value());
    QVERIFY(std::abs(loose.mean() - sure.mean()) < 1e-12);
}

void TestCompoundUse::jobsThatTakeNothing_areThinnedOut()
{
    const auto all = onOnes({ mixed(5, 2, 1, { { 0, .4 }, { 1, .36 }, { 3, .24 } }) });
    // Thinning a gamma rate scales its rate.
    const auto taking = onOnes({ mixed(5, 2 / .6, 1, { { 1, .6 }, { 3, .4 } }) });
    for (std::size_t i = 0; i < 60; ++i)
        QVERIFY(std::abs(at(all.probabilities(), i) - at(taking.probabilities(), i)) < 1e-13);
}

void TestCompoundUse::plannedJobs_shiftAllByWhatTheyTake()
{
    const auto others = onOnes({ poisson(1.5, { { 2, 1 } }) });
    const auto with = onOnes({ poisson(1.5, { { 2, 1 } }), planned({ 0, 0, 1 }, { { 5, 1 } }) });
    QVERIFY(std::abs(with.mean() - others.mean() - 10) < 1e-12);
    QCOMPARE(with.variance(), others.variance());
    for (std::size_t i = 0; i < others.probabilities().size(); ++i)
        QVERIFY(std::abs(at(with.probabilities(), i + 10) - others.probabilities()[i]) < 1e-15);
    QCOMPARE(with.cumulative(9), 0.0);
}

void TestCompoundUse::shortage_isWhatTheChancesSay()
{
    const auto use = compoundUse({ mixed(4, 3, 1.2, { { 2.5, .5 }, { 6, .5 } }) }).value();
    for (double amount = -3; amount < 60; amount += 0.7) {
        double expected = 0;
        for (std::size_t i = 0; i < use.probabilities().size(); ++i)
            expected += std::max(0.0, static_cast<double>(i) * use.step() - amount) * use.probabilities()[i];
        QVERIFY(std::abs(use.expectedShort(amount) - expected) < 1e-9);
    }
    QCOMPARE(use.expectedShort(1e9), 0.0);
    QVERIFY(std::abs(use.expectedShort(0) - use.mean()) < 1e-9);
}

void TestCompoundUse::meanAndSpread_areThoseOfTheModel()
{
    const auto use
        = compoundUse({ mixed(400, 3, 1.2, { { 13, .7 }, { 40, .3 } }), poisson(90, { { 7, 1 } }) }).value();
    double mean = 0;
    double squares = 0;
    double sum = 0;
    for (std::size_t i = 0; i < use.probabilities().size(); ++i) {
        const double amount = static_cast<double>(i) * use.step();
        sum += use.probabilities()[i];
        mean += amount * use.probabilities()[i];
        squares += amount * amount * use.probabilities()[i];
    }
    QVERIFY(std::abs(sum - 1) < 1e-10);
    QVERIFY(std::abs(mean / use.mean() - 1) < 1e-9);
    QVERIFY(std::abs((squares - mean * mean) / use.variance() - 1) < 1e-7);
}

void TestCompoundUse::noStreams_needNothing()
{
    for (const auto& use :
        { onOnes({}), onOnes({ poisson(0, { { 3, 1 } }) }), onOnes({ planned({ 1 }, { { 3, 1 } }) }) }) {
        QCOMPARE(use.quantile(99.9).value(), 0.0);
        QCOMPARE(use.expectedShort(0), 0.0);
    }
}

void TestCompoundUse::badInput_isRefusedWithASentence_data()
{
    QTest::addColumn<double>("shape");
    QTest::addColumn<double>("rate");
    QTest::addColumn<double>("ahead");
    QTest::addColumn<QList<double>>("counts");
    const double none = std::numeric_limits<double>::quiet_NaN();
    const double endless = std::numeric_limits<double>::infinity();
    QTest::newRow("shape of nothing") << 0.0 << 1.0 << 1.0 << QList<double> {};
    QTest::newRow("rate of nothing") << 1.0 << 0.0 << 1.0 << QList<double> {};
    QTest::newRow("no time ahead") << 1.0 << 1.0 << 0.0 << QList<double> {};
    QTest::newRow("shape that is no number") << none << 1.0 << 1.0 << QList<double> {};
    QTest::newRow("endless shape") << endless << 1.0 << 1.0 << QList<double> {};
    QTest::newRow("more jobs than can be reckoned") << 1e9 << 1.0 << 1.0 << QList<double> {};
    QTest::newRow("counts short of 1") << -1.0 << 1.0 << 1.0 << QList<double> { .5, .4 };
    QTest::newRow("negative count") << -1.0 << 1.0 << 1.0 << QList<double> { 1.5, -.5 };
}

void TestCompoundUse::badInput_isRefusedWithASentence()
{
    QFETCH(double, shape);
    QFETCH(double, rate);
    QFETCH(double, ahead);
    QFETCH(QList<double>, counts);
    const UseStream stream = counts.isEmpty()
        ? mixed(shape, rate, ahead, { { 1, 1 } })
        : planned(std::vector<double>(counts.begin(), counts.end()), { { 1, 1 } });
    const auto use = compoundUseOnLattice({ stream }, 1);
    QVERIFY(!use);
    QCOMPARE(use.error().code, ErrorCode::BadInput);
    QVERIFY(use.error().sentence.ends_with('.'));
}

QTEST_APPLESS_MAIN(TestCompoundUse)
#include "tst_compounduse.moc"
