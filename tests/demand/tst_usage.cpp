#include <QTest>

#include <cmath>

#include <boost/math/distributions/negative_binomial.hpp>

#include "demand/usage.h"
#include "demands.h"

using namespace gw;
using namespace gw::test;

/// How much is expected to be used, and how unevenly.
class TestUsage : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void withoutAPlan_theMeanOfThreeMonthsCounts();
    void shortHistory_countsAsFarAsItGoes();
    void fewMonthsWithUse_areForecastAsNowAndThen();
    void planned_takesJobsTimesAmount();
    void planned_addsOnlyWhatNoJobExplains();
    void jobsOfNothing_areNoPlan();
    void noUse_hasNoNeed();
    void countThatFoundMore_isNoUse();
    void steadyUse_needsLittleMoreThanItsMean();
    void longerHistory_trustsSteadyUseMore();
    void oneUseEver_needsThatMuch();
    void oneKindOfJob_needsWholeJobs();
    void pieces_areNeededWhole();
    void severalKindsOfJobs_areOneDistribution();
    void jobsSeen_pullTheRate();
    void weighings_pullTheAmount();
    void jobsSeenWithoutBeingExpected_arePlanned();
};

namespace {

UseForecast forecastOf(std::vector<double> used)
{
    return forecastUse(material("glue", std::move(used), {}));
}

double need(const UseForecast& use, double days = 37, double service = 95)
{
    return needOf(useOver(use, Days { days }).value(), service, Dimension::Mass)->value();
}

} // namespace

// Source: shop arithmetic of the trade, "if no plan, mean of the last 3 months" (common practice, no source).
void TestUsage::withoutAPlan_theMeanOfThreeMonthsCounts()
{
    const auto use = forecastOf({ 900, 900, 150, 180, 210 });
    QCOMPARE(use.basis, UseBasis::RecentMonths);
    QCOMPARE(use.perMonth, 180.0);
    QCOMPARE(use.months, std::size_t { 3 });
    QCOMPARE(forecastOf({ 100, 0, 200 }).perMonth, 100.0);
}

void TestUsage::shortHistory_countsAsFarAsItGoes()
{
    QCOMPARE(forecastOf({ 80 }).perMonth, 80.0);
    QCOMPARE(forecastOf({ 80, 120 }).perMonth, 100.0);
}

void TestUsage::fewMonthsWithUse_areForecastAsNowAndThen()
{
    const auto use = forecastOf({ 0, 0, 60, 0, 0, 0, 60, 0, 0, 0 });
    QCOMPARE(use.basis, UseBasis::NowAndThen);
    // First use in the third month, then after four: p = 3 + 0.2 (4 - 3), z = 60, times 1 - 0.2 / 2.
    QVERIFY(std::abs(use.perMonth - 60 / 3.2 * 0.9) < 1e-12);
    QCOMPARE(use.otherLump, 60.0);
}

void TestUsage::planned_takesJobsTimesAmount()
{
    MaterialDemand demand = material("granules", { 500, 500, 500 }, {});
    demand.jobs = { { "Chair", 3, 13 }, { "Patch", 4, 6 } };
    const auto use = forecastUse(demand);
    QCOMPARE(use.basis, UseBasis::Jobs);
    QCOMPARE(use.perMonth, 3.0 * 13 + 4 * 6);
}

void TestUsage::planned_addsOnlyWhatNoJobExplains()
{
    MaterialDemand demand = material("granules", { 70, 80, 90 }, {});
    demand.jobs = { { "Chair", 3, 13 } };
    demand.otherUsePerMonth = { 20, 20, 20 };
    const auto use = forecastUse(demand);
    QCOMPARE(use.basis, UseBasis::JobsAndOther);
    QCOMPARE(use.perMonth, 39.0 + 20);
    QCOMPARE(use.otherPerMonth, 20.0);
}

void TestUsage::jobsOfNothing_areNoPlan()
{
    MaterialDemand demand = material("granules", { 70, 80, 90 }, {});
    demand.jobs = { { "Chair", 0, 13 }, { "Clean", 5, 0 } };
    QCOMPARE(forecastUse(demand).basis, UseBasis::RecentMonths);
}

void TestUsage::noUse_hasNoNeed()
{
    for (const auto& use : { forecastOf({}), forecastOf({ 0, 0, 0, 0 }) }) {
        QCOMPARE(use.basis, UseBasis::None);
        QCOMPARE(use.perMonth, 0.0);
        QCOMPARE(need(use), 0.0);
    }
}

void TestUsage::countThatFoundMore_isNoUse() { QCOMPARE(forecastOf({ 60, -45, 60 }).perMonth, 40.0); }

void TestUsage::steadyUse_needsLittleMoreThanItsMean()
{
    const auto use = forecastOf(std::vector<double>(12, 180));
    const double mean = 180 * 37 / meanMonth.count();
    QVERIFY(need(use) > mean);
    QVERIFY(need(use) < 1.6 * mean);
    QVERIFY(need(use, 37, 50) < 1.1 * mean);
}

void TestUsage::longerHistory_trustsSteadyUseMore()
{
    double before = HUGE_VAL;
    for (const std::size_t count : { 1U, 2U, 3U, 6U, 12U }) {
        const double now = need(forecastOf(std::vector<double>(count, 180)));
        QVERIFY(now <= before);
        before = now;
    }
}

void TestUsage::oneUseEver_needsThatMuch()
{
    const auto use = forecastOf({ 0, 0, 0, 0, 37 });
    QVERIFY(use.perMonth > 0 && use.perMonth < 37.0 / 5 + 1e-9);
    // Within half a lattice step of the one lump.
    QVERIFY(std::abs(need(use) - 37) < 0.1);
}

// Source: the negative binomial distribution of Boost.Math. Nothing was seen yet: what the shop expects
// counts for three months.
void TestUsage::oneKindOfJob_needsWholeJobs()
{
    MaterialDemand demand = material("granules", {}, {});
    demand.jobs = { { "Chair", 3, 13 } };
    const double days = 7 + 30.436875;
    const boost::math::negative_binomial jobs(9, 3 / (3 + days / 30.436875));
    for (const double service : { 50.0, 80.0, 95.0, 99.0 }) {
        double count = 0;
        while (boost::math::cdf(jobs, count) < service / 100)
            count += 1;
        QCOMPARE(need(forecastUse(demand), days, service), 13 * count);
    }
}

void TestUsage::pieces_areNeededWhole()
{
    MaterialDemand demand = material("gloves", {}, {});
    demand.dimension = Dimension::Count;
    demand.jobs = { { "Chair", 3, 1.5 }, { "Patch", 4, 0.4 } };
    const auto pieces
        = needOf(useOver(forecastUse(demand), Days { 37 }).value(), 95, Dimension::Count).value();
    QCOMPARE(pieces.milli % 1000, std::int64_t { 0 });
    QVERIFY(pieces.milli > 0);
}

void TestUsage::severalKindsOfJobs_areOneDistribution()
{
    MaterialDemand together = material("granules", {}, {});
    together.jobs = { { "Chair", 3, 13 }, { "Frame", 2, 40 } };
    MaterialDemand chairs = together;
    chairs.jobs.pop_back();
    MaterialDemand frames = together;
    frames.jobs.erase(frames.jobs.begin());
    // Not all kinds run high in one month: the whole needs less than the sum of its parts, but more than
    // each.
    const double whole = need(forecastUse(together));
    QVERIFY(whole < need(forecastUse(chairs)) + need(forecastUse(frames)));
    QVERIFY(whole > need(forecastUse(frames)));
}

void TestUsage::jobsSeen_pullTheRate()
{
    MaterialDemand demand = material("granules", {}, {});
    demand.jobs = { { "Chair", 2, 10, 27, 9 } };
    // Two a month for three months and 27 in nine: 33 in twelve.
    QCOMPARE(forecastUse(demand).perMonth, 33.0 / 12 * 10);
    const double known = useOver(forecastUse(demand), Days { 37 })->variance();
    demand.jobs = { { "Chair", 33.0 / 12, 10 } };
    // As many expected, but on less: it may be more, or fewer.
    QVERIFY(useOver(forecastUse(demand), Days { 37 })->variance() > known);
}

void TestUsage::weighings_pullTheAmount()
{
    MaterialDemand demand = material("granules", {}, {});
    demand.jobs = { { "Chair", 3, 13, 0, 0, { 20 } } };
    const auto use = forecastUse(demand);
    QCOMPARE(use.jobs.front().amount.mean, 13 + 0.3 * 7);
    QCOMPARE(use.jobs.front().amount.jobs, std::size_t { 1 });
    QVERIFY(need(use) > need(forecastUse([&] {
        demand.jobs.front().weighed.clear();
        return demand;
    }())));
}

void TestUsage::jobsSeenWithoutBeingExpected_arePlanned()
{
    MaterialDemand demand = material("granules", {}, {});
    demand.jobs = { { "Chair", 0, 13, 4, 8 } };
    QCOMPARE(forecastUse(demand).basis, UseBasis::Jobs);
    QCOMPARE(forecastUse(demand).perMonth, 6.5);
}

QTEST_APPLESS_MAIN(TestUsage)
#include "tst_usage.moc"
