#include <QTest>

#include <algorithm>
#include <cmath>
#include <limits>

#include "demand/orderplan.h"
#include "demands.h"

using namespace gw;
using namespace gw::test;

/// The month's order list.
class TestOrderPlan : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void pva_aKilogramIsFine();
    void ca_theSmallestBottleIsBought();
    void ca_onlyALargeBottle_isOfferedWithItsWaste();
    void glovesForAMonth_areCountedWhole();
    void enoughInStock_asksForNothing();
    void stockPastTooSoon_isNotCountedOn();
    void falseBargain_isNamed();
    void needBeyondItsLife_isCutToWhatIsUsed();
    void noPack_isALineWithoutPacks();
    void laterMonth_countsStockAsItWillBe();
    void leadOfAYear_isCovered();
    void slowPackBesideQuickOnes_isLeftOut();
    void otherDimension_isLeftOutWithANote();
    void cases_areBoughtWhole();
    void minimumOrder_isMet();
    void budget_leavesWhatCanWait();
    void budget_keepsPartnersTogether();
    void budgetOfNothing_leavesAllWithItsRisk();
    void frostOnTheDoorstep_isSaid();
    void unknownDoorstep_isSaidWhereItMatters();
    void totals_areByCurrency();
    void priceNotKnown_isNoted();
    void noHistory_isNoted();
    void lifeOfNothing_buysNothing();
    void absurdNeed_isNotOrdered();
    void badRequest_isRefused_data();
    void badRequest_isRefused();
    void badMaterial_isRefused_data();
    void badMaterial_isRefused();
    void monthStillRunningSomewhere_isNotPast();
    void noMaterials_areNoLines();
};

namespace {

OrderPlan planned(const std::vector<MaterialDemand>& materials, const PlanRequest& request = juneList())
{
    auto plan = planOrder(request, materials);
    if (!plan)
        qFatal("%s", plan.error().sentence.c_str());
    return *plan;
}

OrderLine onlyLine(const MaterialDemand& demand, const PlanRequest& request = juneList())
{
    const auto plan = planned({ demand }, request);
    if (plan.lines.size() != 1)
        qFatal("%zu lines, not one", plan.lines.size());
    return plan.lines.front();
}

bool noted(const OrderPlan& plan, const std::string& part)
{
    return std::any_of(
        plan.notes.begin(), plan.notes.end(), [&](const std::string& note) { return has(note, part); });
}

MaterialDemand pva()
{
    auto demand = material("White PVA", { 180, 180, 180 }, { offer("1 kg bottle", grams(1000), 1450) });
    demand.openedLife = months(12, 18);
    demand.sealedLife = months(18, 24);
    return demand;
}

MaterialDemand ca()
{
    auto demand = material("Thin CA", { 6, 6, 6, 6, 6, 6 },
        { offer("50 g bottle", grams(50), 1200), offer("10 g bottle", grams(10), 420) });
    demand.openedLife = months(3, 6);
    demand.sealedLife = months(12, 12);
    return demand;
}

} // namespace

// The two worked examples of the trade's month-end arithmetic (common practice, no source): PVA 180 g a month
// with 12 months of life once opened, a 1 kg bottle is 5.6 months: fine.
void TestOrderPlan::pva_aKilogramIsFine()
{
    const auto line = onlyLine(pva());
    QCOMPARE(line.packs.size(), std::size_t { 1 });
    QCOMPARE(line.packs[0].count, 1);
    QCOMPARE(line.ordered, grams(1000));
    // Between mean use over the 37 days and the rule's target of two months and a half.
    QVERIFY(line.need.value() > 180 * 37.4 / 30.4 && line.need.value() < 2.5 * 180);
    QVERIFY(!has(line.why, "wasted"));
    QVERIFY(has(line.why, "180 g a month"));
    QCOMPARE(*line.latestUse, dateOf(later(june, Days { 7 } + meanMonth * 12)));
}

// CA 6 g a month, 3 months once opened: at most 14 g; buy the smallest bottle.
void TestOrderPlan::ca_theSmallestBottleIsBought()
{
    const auto line = onlyLine(ca());
    for (const PackCount& pack : line.packs)
        QCOMPARE(QString::fromStdString(pack.name), QStringLiteral("10 g bottle"));
    QVERIFY(line.ordered.value() >= line.need.value());
    QVERIFY(line.ordered.value() <= 20);
    QVERIFY(!has(line.why, "wasted"));
}

// Of a 50 g bottle 32 g (64 %) would be waste.
void TestOrderPlan::ca_onlyALargeBottle_isOfferedWithItsWaste()
{
    auto demand = ca();
    demand.packs.pop_back();
    const auto line = onlyLine(demand);
    QCOMPARE(line.ordered, grams(50));
    QVERIFY2(has(line.why, "Of 50 g about 18 g would be used"), line.why.c_str());
    QVERIFY2(has(line.why, "32 g (64 %)"), line.why.c_str());
    QVERIFY2(has(line.why, "No smaller pack"), line.why.c_str());
}

// A month of 3 full chairs, 4 patches, 1 leg, 2 polishes: 10 pairs of gloves (common practice, no source).
void TestOrderPlan::glovesForAMonth_areCountedWhole()
{
    auto demand = material(
        "Nitrile gloves", {}, { offer("pair", pieces(1), 40), offer("box of 50", pieces(50), 900) });
    demand.dimension = Dimension::Count;
    demand.jobs = { { "Chair", 3, 1 }, { "Patch", 4, 1 }, { "Leg", 1, 1 }, { "Polish", 2, 1 } };
    const auto line = onlyLine(demand);
    QCOMPARE(line.need.dimension, Dimension::Count);
    QCOMPARE(line.need.milli % 1000, std::int64_t { 0 });
    QVERIFY(line.need.value() >= 12 && line.need.value() <= 20); // 10 pairs and 20 % at the least
    QCOMPARE(line.ordered, line.need);
    QVERIFY(!line.latestUse);
    QVERIFY2(has(line.why, "10 pieces a month"), line.why.c_str());
}

void TestOrderPlan::enoughInStock_asksForNothing()
{
    auto demand = pva();
    demand.stock = { lot(900, 300) };
    const auto plan = planned({ demand });
    QVERIFY(plan.lines.empty());
    QVERIFY(plan.totals.empty());
}

void TestOrderPlan::stockPastTooSoon_isNotCountedOn()
{
    auto demand = pva();
    demand.stock = { lot(900, 10) };
    const auto line = onlyLine(demand);
    QVERIFY(std::abs(line.usable.value() - 180 / 30.436875 * 10) < 0.01);
    QVERIFY2(has(line.why, "will be past unused, the first from 11 June 2026"), line.why.c_str());
    QVERIFY2(has(line.why, "the missing"), line.why.c_str());
}

void TestOrderPlan::falseBargain_isNamed()
{
    auto demand = material("Fish glue", std::vector<double>(12, 70),
        { offer("1 kg bottle", grams(1000), 1900), offer("250 g bottle", grams(250), 900) });
    demand.openedLife = months(6.142857, 12); // 430 g at 70 g a month
    const auto line = onlyLine(demand);
    QCOMPARE(line.ordered, grams(250));
    QVERIFY2(has(line.why,
                 "Buy the 250 g bottle: of the 1 kg bottle, cheaper for its size, you would use about 430 g"),
        line.why.c_str());
}

void TestOrderPlan::needBeyondItsLife_isCutToWhatIsUsed()
{
    // Now and then a lot: the service level asks for far more than is used, on the mean, in the half year it
    // lasts.
    auto demand = material("Liquid hide", { 0, 0, 400, 0, 0, 0, 350, 0 }, { offer("50 g", grams(50), 300) });
    demand.sealedLife = months(3, 6);
    const auto line = onlyLine(demand);
    QVERIFY(line.need.value() > 400);
    QVERIFY(line.ordered.value() < line.need.value() / 2);
    QVERIFY2(has(line.why, "go towards"), line.why.c_str());
    QVERIFY2(has(line.why, "before it goes off"), line.why.c_str());
}

void TestOrderPlan::noPack_isALineWithoutPacks()
{
    auto demand = pva();
    demand.packs.clear();
    const auto plan = planned({ demand });
    QCOMPARE(plan.lines.size(), std::size_t { 1 });
    QVERIFY(plan.lines[0].packs.empty());
    QCOMPARE(plan.lines[0].ordered, grams(0));
    QVERIFY(plan.lines[0].need.value() > 180);
    QVERIFY(!plan.lines[0].latestUse);
    QVERIFY2(has(plan.lines[0].why, "No pack"), plan.lines[0].why.c_str());
    QVERIFY(noted(plan, "White PVA"));
}

void TestOrderPlan::laterMonth_countsStockAsItWillBe()
{
    auto demand = pva();
    demand.stock = { lot(500, 400) };
    QVERIFY(planned({ demand }).lines.empty());
    auto request = juneList();
    request.monthStart = Date { std::chrono::August / 1 / 2026 };
    const auto line = onlyLine(demand, request);
    // 60 days and 16 hours at 180 g a month have gone by then.
    QVERIFY(std::abs(line.usable.value() - (500 - 180 / 30.436875 * (61 - 8.0 / 24))) < 0.01);
    // What is there is used first, so that the bottle is opened only then.
    const Days usedUp { line.usable.value() / 180 * 30.436875 };
    QVERIFY(usedUp > Days { 7 });
    QCOMPARE(*line.latestUse,
        dateOf(later(startOf(Date { std::chrono::August / 1 / 2026 }), usedUp + meanMonth * 12)));
}

void TestOrderPlan::leadOfAYear_isCovered()
{
    auto demand = pva();
    demand.packs[0].leadDays = 365;
    const auto line = onlyLine(demand);
    QVERIFY(line.need.value() > 13 * 180);
    QVERIFY(line.need.value() < 20 * 180);
    QVERIFY(line.ordered >= grams(1000));
    QVERIFY(line.latestUse);
}

void TestOrderPlan::slowPackBesideQuickOnes_isLeftOut()
{
    auto demand = pva();
    const auto before = onlyLine(demand);
    demand.packs.push_back(offer("25 kg drum", grams(25'000), 1500, 365));
    const auto plan = planned({ demand });
    QCOMPARE(plan.lines[0].need, before.need);
    QCOMPARE(plan.lines[0].ordered, before.ordered);
    QVERIFY(noted(plan, "takes 365 days"));
}

void TestOrderPlan::otherDimension_isLeftOutWithANote()
{
    auto demand = pva();
    demand.packs.push_back(offer("1 l bottle", millilitres(1000), 100));
    demand.stock = { { millilitres(5000), std::nullopt, false } };
    const auto plan = planned({ demand });
    QCOMPARE(plan.lines[0].usable, grams(0));
    QCOMPARE(QString::fromStdString(plan.lines[0].packs[0].name), QStringLiteral("1 kg bottle"));
    QVERIFY(noted(plan, "\"1 l bottle\""));
    QVERIFY(noted(plan, "kept in ml"));
}

void TestOrderPlan::cases_areBoughtWhole()
{
    auto demand = pva();
    demand.sealedLife.reset();
    demand.openedLife.reset();
    demand.packs = { offer("100 g tube", grams(100), 300) };
    demand.packs[0].soldBy = 6;
    const auto line = onlyLine(demand);
    QCOMPARE(line.packs[0].count % 6, 0);
    QVERIFY(line.ordered >= line.need);
    QVERIFY2(has(line.why, "sold by the 6"), line.why.c_str());
}

void TestOrderPlan::minimumOrder_isMet()
{
    auto demand = pva();
    demand.packs[0].least = 3;
    const auto line = onlyLine(demand);
    QCOMPARE(line.packs[0].count, 3);
    QVERIFY2(has(line.why, "Fewer than 3"), line.why.c_str());
    // A smaller pack without a minimum is the cheaper way then.
    demand.packs.push_back(offer("300 g bottle", grams(300), 600));
    QCOMPARE(QString::fromStdString(onlyLine(demand).packs[0].name), QStringLiteral("300 g bottle"));
}

void TestOrderPlan::budget_leavesWhatCanWait()
{
    auto urgent = pva();
    auto waiting = pva();
    waiting.material = MaterialId { "waiting" };
    waiting.name = "Spare PVA";
    // Enough for most of the time until the next list's goods are in.
    waiting.stock = { lot(250, 400) };
    auto request = juneList();
    QCOMPARE(planned({ urgent, waiting }, request).lines.size(), std::size_t { 2 });
    request.budget = Money { 2000, "EUR" };
    const auto plan = planned({ urgent, waiting }, request);
    QCOMPARE(plan.lines.size(), std::size_t { 1 });
    QCOMPARE(plan.lines[0].name, std::string("White PVA"));
    QCOMPARE(plan.left.size(), std::size_t { 1 });
    QVERIFY(plan.left[0].riskWithout > 0.05 && plan.left[0].riskWithout < plan.lines[0].riskWithout);
    QCOMPARE(plan.totals[0], (Money { 1450, "EUR" }));
    QVERIFY(noted(plan, "Left for the next list, to stay within 20.00 EUR: Spare PVA ("));
    QVERIFY(noted(plan, "% risk of running short"));
    request.budget = Money { 2900, "EUR" };
    QVERIFY(planned({ urgent, waiting }, request).left.empty());
}

void TestOrderPlan::budget_keepsPartnersTogether()
{
    auto resin = material("Resin", { 200, 200, 200 }, { offer("1 kg", grams(1000), 3000) });
    auto hardener = material("Hardener", { 80, 80, 80 }, { offer("400 g", grams(400), 2000) });
    resin.partner = hardener.material;
    resin.partnerPerUnit = 0.4;
    auto request = juneList();
    request.budget = Money { 4900, "EUR" };
    const auto plan = planned({ resin, hardener, pva() }, request);
    QCOMPARE(plan.left.size(), std::size_t { 2 });
    QCOMPARE(plan.lines.size(), std::size_t { 1 });
}

void TestOrderPlan::budgetOfNothing_leavesAllWithItsRisk()
{
    auto request = juneList();
    request.budget = Money { 0, "EUR" };
    auto unpriced = pva();
    unpriced.material = MaterialId { "unpriced" };
    unpriced.packs[0].price.reset();
    const auto plan = planned({ pva(), unpriced }, request);
    QCOMPARE(plan.left.size(), std::size_t { 1 });
    QVERIFY(plan.left[0].riskWithout > 0.95);
    // What it costs is not known, so it cannot be weighed: it stays, and that is said.
    QCOMPARE(plan.lines.size(), std::size_t { 1 });
    QVERIFY(noted(plan, "the budget is reckoned without it"));
    request.budget = Money { -1, "EUR" };
    QVERIFY(!planOrder(request, { pva() }));
}

void TestOrderPlan::frostOnTheDoorstep_isSaid()
{
    auto request = juneList();
    request.monthStart = Date { std::chrono::December / 1 / 2026 };
    request.now = startOf(Date { std::chrono::October / 20 / 2026 });
    request.doorstep.emplace();
    request.doorstep->name = "Porch";
    request.doorstep->lows.fill(Celsius { 6 });
    // Frost from the middle of November to the end of February.
    for (std::size_t week = 0; week < request.doorstep->lows.size(); ++week) {
        if (week < 9 || week > 45)
            request.doorstep->lows[week] = Celsius { -5 };
    }
    auto demand = pva();
    QVERIFY(!onlyLine(demand, request).cold);
    demand.frostHarmsBelow = Celsius { 0 };
    const auto line = onlyLine(demand, request);
    QVERIFY(line.cold);
    QCOMPARE(line.cold->arrives, (Date { std::chrono::December / 8 / 2026 }));
    QVERIFY2(has(line.why, "when Porch usually goes down to -5"), line.why.c_str());
    QVERIFY2(has(line.why, "Order by 4 November 2026"), line.why.c_str());
    QVERIFY2(has(line.why, "heated delivery"), line.why.c_str());
    QVERIFY(planned({ demand }, request).notes.empty());
}

void TestOrderPlan::unknownDoorstep_isSaidWhereItMatters()
{
    auto demand = pva();
    QVERIFY(!noted(planned({ demand }), "freeze on arrival"));
    demand.frostHarmsBelow = Celsius { 0 };
    QVERIFY(noted(planned({ demand }), "not known whether what frost spoils may freeze on arrival"));
    auto request = juneList();
    request.doorstep.emplace();
    request.doorstep->name = "Porch";
    QVERIFY(noted(planned({ demand }, request), "How cold it gets at \"Porch\" then is not known"));
    request.doorstep->lows.fill(Celsius { 8 });
    QVERIFY(planned({ demand }, request).notes.empty());
}

void TestOrderPlan::totals_areByCurrency()
{
    auto first = pva();
    auto second = pva();
    second.material = MaterialId { "other" };
    second.packs[0].price = Money { 990, "GBP" };
    auto third = pva();
    third.material = MaterialId { "third" };
    const auto plan = planned({ first, second, third });
    QCOMPARE(plan.totals.size(), std::size_t { 2 });
    QCOMPARE(plan.totals[0], (Money { 2900, "EUR" }));
    QCOMPARE(plan.totals[1], (Money { 990, "GBP" }));
}

void TestOrderPlan::priceNotKnown_isNoted()
{
    for (const std::optional<Money>& price : { std::optional<Money> {}, std::optional(Money { 0, "EUR" }) }) {
        auto demand = pva();
        demand.packs[0].price = price;
        const auto plan = planned({ demand });
        QCOMPARE(plan.lines[0].packs[0].count, 1);
        QVERIFY(plan.totals.empty());
        QVERIFY(noted(plan, "the total is without it"));
    }
}

void TestOrderPlan::noHistory_isNoted()
{
    auto demand = pva();
    demand.usedPerMonth.clear();
    const auto plan = planned({ demand });
    QVERIFY(plan.lines.empty());
    QVERIFY(noted(plan, "its need is not known"));
    demand.usedPerMonth = { 0, 0, 0 };
    QVERIFY(planned({ demand }).notes.empty());
}

void TestOrderPlan::lifeOfNothing_buysNothing()
{
    auto demand = pva();
    demand.sealedLife = Range<Days> {};
    const auto line = onlyLine(demand);
    QVERIFY(line.packs.empty());
    QVERIFY2(has(line.why, "goes off"), line.why.c_str());
}

void TestOrderPlan::absurdNeed_isNotOrdered()
{
    auto demand = pva();
    demand.sealedLife.reset();
    demand.openedLife.reset();
    demand.usedPerMonth = { 9e8, 9e8, 9e8 };
    const auto line = onlyLine(demand);
    QVERIFY(line.packs.empty());
    QVERIFY2(has(line.why, "10000"), line.why.c_str());
}

void TestOrderPlan::badRequest_isRefused_data()
{
    QTest::addColumn<double>("service");
    QTest::addColumn<double>("review");
    QTest::addColumn<int>("month");
    QTest::addColumn<int>("year");
    QTest::addColumn<QString>("says");
    const double none = std::numeric_limits<double>::quiet_NaN();
    const QString level = QStringLiteral("service level");
    QTest::newRow("level of 0") << 0.0 << 30.0 << 6 << 2026 << level;
    QTest::newRow("level of 100") << 100.0 << 30.0 << 6 << 2026 << level;
    QTest::newRow("level over 100") << 120.0 << 30.0 << 6 << 2026 << level;
    QTest::newRow("level that is no number") << none << 30.0 << 6 << 2026 << level;
    QTest::newRow("no time to the next list") << 95.0 << 0.0 << 6 << 2026 << QStringLiteral("next list");
    QTest::newRow("endless time to the next list") << 95.0 << 1e9 << 6 << 2026 << QStringLiteral("next list");
    QTest::newRow("last month") << 95.0 << 30.0 << 5 << 2026 << QStringLiteral("is past");
    QTest::newRow("last year") << 95.0 << 30.0 << 6 << 2025 << QStringLiteral("is past");
    QTest::newRow("far ahead") << 95.0 << 30.0 << 6 << 2036 << QStringLiteral("too far ahead");
    QTest::newRow("no such month") << 95.0 << 30.0 << 13 << 2026 << QStringLiteral("does not exist");
}

void TestOrderPlan::badRequest_isRefused()
{
    QFETCH(double, service);
    QFETCH(double, review);
    QFETCH(int, month);
    QFETCH(int, year);
    QFETCH(QString, says);
    const PlanRequest request { std::chrono::year { year } / month / 1, later(june, Days { 10 }), service,
        review };
    const auto plan = planOrder(request, { pva() });
    QVERIFY(!plan);
    QCOMPARE(plan.error().code, ErrorCode::BadInput);
    QVERIFY2(has(plan.error().sentence, says.toStdString()), plan.error().sentence.c_str());
    QVERIFY(plan.error().sentence.ends_with('.'));
}

void TestOrderPlan::badMaterial_isRefused_data()
{
    QTest::addColumn<int>("flaw");
    const QStringList flaws { QStringLiteral("pack of nothing"), QStringLiteral("pack below nothing"),
        QStringLiteral("negative lead"), QStringLiteral("lead that is no number"),
        QStringLiteral("negative price"), QStringLiteral("negative jobs"),
        QStringLiteral("amount that is no number"), QStringLiteral("use past counting"),
        QStringLiteral("life upside down"), QStringLiteral("life that is no number"),
        QStringLiteral("negative ratio") };
    for (int i = 0; i < flaws.size(); ++i)
        QTest::newRow(qPrintable(flaws[i])) << i;
}

void TestOrderPlan::badMaterial_isRefused()
{
    QFETCH(int, flaw);
    const double none = std::numeric_limits<double>::quiet_NaN();
    auto demand = pva();
    switch (flaw) {
    case 0:
        demand.packs[0].amount = grams(0);
        break;
    case 1:
        demand.packs[0].amount = grams(-5);
        break;
    case 2:
        demand.packs[0].leadDays = -1;
        break;
    case 3:
        demand.packs[0].leadDays = none;
        break;
    case 4:
        demand.packs[0].price->minorUnits = -100;
        break;
    case 5:
        demand.jobs = { { "Chair", -1, 13 } };
        break;
    case 6:
        demand.jobs = { { "Chair", 1, none } };
        break;
    case 7:
        demand.usedPerMonth = { 1e300 };
        break;
    case 8:
        demand.sealedLife = Range<Days> { Days { 20 }, Days { 10 } };
        break;
    case 9:
        demand.openedLife = Range<Days> { Days { none }, Days { none } };
        break;
    default:
        demand.partnerPerUnit = -2;
        break;
    }
    const auto plan = planOrder(juneList(), { demand });
    QVERIFY(!plan);
    QCOMPARE(plan.error().code, ErrorCode::BadInput);
    QVERIFY2(has(plan.error().sentence, "White PVA"), plan.error().sentence.c_str());
    QVERIFY(plan.error().sentence.ends_with('.'));
}

void TestOrderPlan::monthStillRunningSomewhere_isNotPast()
{
    auto request = juneList();
    request.monthStart = Date { std::chrono::May / 1 / 2026 };
    request.now = startOf(Date { std::chrono::June / 1 / 2026 }) + std::chrono::hours { 3 };
    QVERIFY(planOrder(request, {}));
    request.now = startOf(Date { std::chrono::June / 1 / 2026 }) + std::chrono::hours { 13 };
    QVERIFY(!planOrder(request, {}));
}

void TestOrderPlan::noMaterials_areNoLines()
{
    const auto plan = planned({});
    QVERIFY(plan.lines.empty() && plan.notes.empty() && plan.totals.empty());
}

QTEST_APPLESS_MAIN(TestOrderPlan)
#include "tst_orderplan.moc"
