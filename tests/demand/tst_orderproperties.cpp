#include <QRandomGenerator>
#include <QTest>

#include <algorithm>
#include <cmath>

#include "demand/orderplan.h"
#include "demand/packchoice.h"
#include "demands.h"

using namespace gw;
using namespace gw::test;

/// What must hold of every order list, over many made-up shops.
class TestOrderProperties : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void moreStock_neverOrdersMore();
    void higherService_neverOrdersLess();
    void figures_areNeverNegativeNorSilly();
    void order_coversTheNeedOrSaysWhyNot();
    void sameQuestion_hasTheSameAnswer();
};

namespace {

constexpr int shops = 200;

double between(QRandomGenerator& random, double low, double high)
{
    return low + (high - low) * random.generateDouble();
}

UsableLot someLot(QRandomGenerator& random)
{
    UsableLot some
        = lot(std::round(between(random, 0, 900)), between(random, -5, 500), random.bounded(2) == 1);
    if (random.bounded(5) == 0)
        some.usableUntil.reset();
    return some;
}

MaterialDemand someMaterial(QRandomGenerator& random, const std::string& name)
{
    MaterialDemand demand = material(name, {}, {});
    for (int i = random.bounded(4); i > 0; --i)
        demand.jobs.push_back({ "Job", between(random, 0, 6), std::round(between(random, 0, 80)) });
    for (int i = random.bounded(14); i > 0; --i) {
        const double used = random.bounded(3) == 0 ? 0 : std::round(between(random, -20, 400));
        demand.usedPerMonth.push_back(used);
        demand.otherUsePerMonth.push_back(random.bounded(2) == 0 ? 0 : used / 4);
    }
    for (int i = random.bounded(5); i > 0; --i) {
        const int size = 1 + random.bounded(60);
        const int price = random.bounded(6) == 0 ? -1 : size * (20 + random.bounded(60));
        demand.packs.push_back(
            offer("pack " + std::to_string(i), grams(size * 20), price, random.bounded(4) == 0 ? 40 : 5));
    }
    for (int i = random.bounded(4); i > 0; --i)
        demand.stock.push_back(someLot(random));
    if (random.bounded(2) == 1)
        demand.sealedLife = months(between(random, 0.2, 12), 24);
    if (random.bounded(2) == 1)
        demand.openedLife = months(between(random, 0.2, 6), 24);
    return demand;
}

OrderLine lineFor(const MaterialDemand& demand, const PlanRequest& request)
{
    const auto plan = planOrder(request, { demand });
    if (!plan)
        qFatal("%s", plan.error().sentence.c_str());
    return plan->lines.empty() ? OrderLine {} : plan->lines.front();
}

PlanRequest someRequest(QRandomGenerator& random)
{
    auto request = juneList(between(random, 40, 99.5));
    if (random.bounded(4) == 0)
        request.monthStart = Date { std::chrono::July / 1 / 2026 };
    return request;
}

} // namespace

void TestOrderProperties::moreStock_neverOrdersMore()
{
    QRandomGenerator random(1);
    int changed = 0;
    for (int i = 0; i < shops; ++i) {
        auto demand = someMaterial(random, "glue");
        const auto request = someRequest(random);
        auto before = lineFor(demand, request);
        for (int more = 0; more < 4; ++more) {
            if (!demand.stock.empty() && random.bounded(2) == 0)
                demand.stock[0].left.milli += 1000 * random.bounded(200);
            else
                demand.stock.push_back(someLot(random));
            const auto after = lineFor(demand, request);
            QVERIFY2(after.ordered.milli <= before.ordered.milli, after.why.c_str());
            changed += after.ordered != before.ordered;
            before = after;
        }
    }
    QVERIFY2(changed > shops / 8, qPrintable(QString::number(changed)));
}

void TestOrderProperties::higherService_neverOrdersLess()
{
    QRandomGenerator random(2);
    int changed = 0;
    for (int i = 0; i < shops; ++i) {
        const auto demand = someMaterial(random, "glue");
        auto request = someRequest(random);
        OrderLine before;
        for (const double service : { 30.0, 60.0, 80.0, 90.0, 95.0, 98.0, 99.9 }) {
            request.servicePercent = service;
            const auto after = lineFor(demand, request);
            QVERIFY2(after.ordered.milli >= before.ordered.milli, after.why.c_str());
            QVERIFY(after.need.milli >= before.need.milli);
            changed += after.ordered != before.ordered;
            before = after;
        }
    }
    QVERIFY2(changed > shops / 8, qPrintable(QString::number(changed)));
}

void TestOrderProperties::figures_areNeverNegativeNorSilly()
{
    QRandomGenerator random(3);
    for (int i = 0; i < shops; ++i) {
        std::vector<MaterialDemand> materials;
        for (int m = 0; m < 4; ++m)
            materials.push_back(someMaterial(random, "glue " + std::to_string(m)));
        materials[0].partner = materials[1].material;
        materials[0].partnerPerUnit = between(random, 0, 3);
        materials[2].partner = materials[1].material;
        materials[2].partnerPerUnit = between(random, 0, 1);
        const auto plan = planOrder(someRequest(random), materials);
        QVERIFY(plan);
        for (const OrderLine& line : plan->lines) {
            QVERIFY(line.need.milli >= 0 && line.usable.milli >= 0 && line.ordered.milli >= 0);
            QVERIFY(line.ordered.value() < 1e6);
            QVERIFY(!has(line.why, "nan") && !has(line.why, "inf") && !has(line.why, "-"));
            QVERIFY2(line.why.ends_with('.'), line.why.c_str());
            std::int64_t sum = 0;
            for (const PackCount& pack : line.packs) {
                QVERIFY(pack.count > 0 && pack.count <= mostPacks);
                for (const MaterialDemand& demand : materials)
                    for (const PackOffer& each : demand.packs)
                        if (demand.name == line.name && each.name == pack.name)
                            sum += each.amount.milli * pack.count;
            }
            QCOMPARE(sum, line.ordered.milli);
            if (line.latestUse)
                QVERIFY(
                    std::chrono::sys_days { *line.latestUse } >= std::chrono::floor<std::chrono::days>(june));
        }
        for (const Money& total : plan->totals)
            QVERIFY(total.minorUnits > 0);
    }
}

void TestOrderProperties::order_coversTheNeedOrSaysWhyNot()
{
    QRandomGenerator random(4);
    int covered = 0;
    for (int i = 0; i < shops; ++i) {
        const auto line = lineFor(someMaterial(random, "glue"), someRequest(random));
        if (line.need.milli == 0)
            continue;
        const bool covers = line.usable.milli + line.ordered.milli >= line.need.milli;
        QVERIFY2(covers || has(line.why, "goes off") || has(line.why, "No pack"), line.why.c_str());
        covered += covers;
    }
    QVERIFY(covered > shops / 4);
}

void TestOrderProperties::sameQuestion_hasTheSameAnswer()
{
    QRandomGenerator random(5);
    for (int i = 0; i < 50; ++i) {
        auto demand = someMaterial(random, "glue");
        const auto request = someRequest(random);
        const auto once = lineFor(demand, request);
        std::reverse(demand.stock.begin(), demand.stock.end());
        std::reverse(demand.jobs.begin(), demand.jobs.end());
        const auto again = lineFor(demand, request);
        QCOMPARE(again.need, once.need);
        QCOMPARE(again.ordered, once.ordered);
    }
}

QTEST_APPLESS_MAIN(TestOrderProperties)
#include "tst_orderproperties.moc"
