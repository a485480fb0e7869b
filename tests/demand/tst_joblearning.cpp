#include <QTest>

#include <cmath>

#include "demand/joblearning.h"

using namespace gw;

/// What a job takes and how many come, learned from the shop's own entries. The weights are our own
/// assumption.
class TestJobLearning : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void withoutWeighings_theEstimateStands();
    void eachWeighing_pullsThreeTenths();
    void fiveWeighings_spreadTheAmount();
    void manyWeighings_forgetTheEstimate();
    void withoutEstimate_theFirstWeighingStarts();
    void rate_isExpectedForThreeMonthsAndSeen();
};

void TestJobLearning::withoutWeighings_theEstimateStands()
{
    const auto learned = learnAmount(13, {});
    QCOMPARE(learned.mean, 13.0);
    QCOMPARE(learned.jobs, std::size_t { 0 });
    QCOMPARE(learned.chances.size(), std::size_t { 1 });
}

void TestJobLearning::eachWeighing_pullsThreeTenths()
{
    QVERIFY(std::abs(learnAmount(10, { 20 }).mean - 13) < 1e-12);
    QVERIFY(std::abs(learnAmount(10, { 20, 20 }).mean - 15.1) < 1e-12);
    // The later one counts for more.
    QVERIFY(learnAmount(10, { 5, 20 }).mean > learnAmount(10, { 20, 5 }).mean);
    QCOMPARE(learnAmount(10, { 20, 20 }).jobs, std::size_t { 2 });
}

void TestJobLearning::fiveWeighings_spreadTheAmount()
{
    QCOMPARE(learnAmount(10, { 8, 12, 9, 15 }).chances.size(), std::size_t { 1 });
    const auto learned = learnAmount(10, { 8, 12, 9, 15, 11 });
    QCOMPARE(learned.chances.size(), std::size_t { 6 });
    const auto moments = momentsOf(learned.chances);
    QVERIFY(std::abs(moments.first - learned.mean) < 1e-12);
    QVERIFY(moments.variance() > 1);
    double total = 0;
    for (const auto& chance : learned.chances)
        total += chance.probability;
    QVERIFY(std::abs(total - 1) < 1e-12);
}

void TestJobLearning::manyWeighings_forgetTheEstimate()
{
    QVERIFY(std::abs(learnAmount(100, std::vector<double>(20, 8)).mean - 8) < 0.1);
}

void TestJobLearning::withoutEstimate_theFirstWeighingStarts()
{
    QCOMPARE(learnAmount(0, { 12 }).mean, 12.0);
    QCOMPARE(learnAmount(0, {}).mean, 0.0);
}

void TestJobLearning::rate_isExpectedForThreeMonthsAndSeen()
{
    QCOMPARE(learnRate(2, 0, 0).mean(), 2.0);
    QCOMPARE(learnRate(2, 14, 7).mean(), 2.0);
    QCOMPARE(learnRate(2, 0, 9).mean(), 0.5);
    QCOMPARE(learnRate(0, 6, 12).mean(), 0.5);
    QCOMPARE(learnRate(0, 0, 12).shape, 0.0);
}

QTEST_APPLESS_MAIN(TestJobLearning)
#include "tst_joblearning.moc"
