#include <QTest>

#include <algorithm>
#include <cmath>

#include "demand/orderplan.h"
#include "demands.h"

using namespace gw;
using namespace gw::test;

/// Resin and hardener: ordered by what is mixed, not by bottles.
class TestPartners : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void kilogramOfResin_wantsItsHardener();
    void eitherSideMayNameTheOther();
    void hardenerWithoutUseOfItsOwn_followsTheResin();
    void resinWithoutUseOfItsOwn_isAskedForByTheHardener();
    void hardenerInStock_isTakenIntoAccount();
    void wholePacksOfHardener_doNotOrderMoreResin();
    void sharedHardener_coversBothResins();
    void oneSidedStock_isNoted();
    void partnerNotAmongTheMaterials_isNoted();
    void ratioNotKnown_isNoted();
    void ownPartner_isHarmless();
};

namespace {

// Mass 100 : 41.3, from a 2 : 1 volume mix (the trade's worked example; common practice, no source).
constexpr double ratio = 0.413;

MaterialDemand resin()
{
    auto demand
        = material("Slow resin", std::vector<double>(6, 220), { offer("1 kg tin", grams(1000), 3000) });
    demand.partner = MaterialId { "Slow hardener" };
    demand.partnerPerUnit = ratio;
    return demand;
}

MaterialDemand hardener(std::vector<double> used = std::vector<double>(6, 90.86))
{
    return material("Slow hardener", std::move(used), { offer("50 g bottle", grams(50), 400) });
}

const OrderLine* lineOf(const OrderPlan& plan, const std::string& name)
{
    for (const OrderLine& line : plan.lines) {
        if (line.name == name)
            return &line;
    }
    return nullptr;
}

bool noted(const OrderPlan& plan, const std::string& part)
{
    return std::any_of(
        plan.notes.begin(), plan.notes.end(), [&](const std::string& note) { return has(note, part); });
}

} // namespace

void TestPartners::kilogramOfResin_wantsItsHardener()
{
    const auto plan = planOrder(juneList(), { resin(), hardener() }).value();
    QCOMPARE(lineOf(plan, "Slow resin")->ordered, grams(1000));
    QCOMPARE(lineOf(plan, "Slow hardener")->ordered, grams(450)); // 413 g in bottles of 50 g
    QVERIFY2(has(lineOf(plan, "Slow hardener")->why, "413 g is wanted"),
        lineOf(plan, "Slow hardener")->why.c_str());
    QVERIFY(plan.notes.empty());
}

void TestPartners::eitherSideMayNameTheOther()
{
    auto part = hardener();
    part.partner = MaterialId { "Slow resin" };
    part.partnerPerUnit = 1 / ratio;
    const auto both = planOrder(juneList(), { part, resin() }).value();
    auto silent = resin();
    silent.partner.reset();
    const auto one = planOrder(juneList(), { part, silent }).value();
    for (const auto& plan : { both, one }) {
        QCOMPARE(lineOf(plan, "Slow resin")->ordered, grams(1000));
        QCOMPARE(lineOf(plan, "Slow hardener")->ordered, grams(450));
    }
}

void TestPartners::hardenerWithoutUseOfItsOwn_followsTheResin()
{
    const auto plan = planOrder(juneList(), { resin(), hardener({}) }).value();
    const OrderLine* line = lineOf(plan, "Slow hardener");
    QVERIFY(line);
    QVERIFY(std::abs(line->need.value() / lineOf(plan, "Slow resin")->need.value() - ratio) < 1e-4);
    QCOMPARE(line->ordered, grams(450));
    QVERIFY2(has(line->why, "It goes with Slow resin, 41.3 to 100"), line->why.c_str());
}

void TestPartners::resinWithoutUseOfItsOwn_isAskedForByTheHardener()
{
    auto unused = resin();
    unused.usedPerMonth.clear();
    const auto plan = planOrder(juneList(), { unused, hardener() }).value();
    QVERIFY(lineOf(plan, "Slow resin"));
    QVERIFY(std::abs(
                lineOf(plan, "Slow resin")->need.value() * ratio / lineOf(plan, "Slow hardener")->need.value()
                - 1)
        < 1e-4);
    QCOMPARE(lineOf(plan, "Slow resin")->ordered, grams(1000));
}

void TestPartners::hardenerInStock_isTakenIntoAccount()
{
    auto part = hardener();
    part.stock = { lot(300, 500) };
    const auto plan = planOrder(juneList(), { resin(), part }).value();
    QCOMPARE(lineOf(plan, "Slow hardener")->ordered, grams(150));
}

void TestPartners::wholePacksOfHardener_doNotOrderMoreResin()
{
    auto part = hardener();
    part.packs = { offer("1 kg bottle", grams(1000), 4000) };
    const auto plan = planOrder(juneList(), { resin(), part }).value();
    QCOMPARE(lineOf(plan, "Slow resin")->ordered, grams(1000));
    QCOMPARE(lineOf(plan, "Slow hardener")->ordered, grams(1000));
}

void TestPartners::sharedHardener_coversBothResins()
{
    auto thick = resin();
    thick.material = MaterialId { "Thick resin" };
    thick.name = "Thick resin";
    const auto plan = planOrder(juneList(), { resin(), thick, hardener({}) }).value();
    QCOMPARE(lineOf(plan, "Slow hardener")->ordered, grams(850)); // 826 g
}

void TestPartners::oneSidedStock_isNoted()
{
    auto full = resin();
    full.stock = { lot(3000, 600) };
    auto empty = hardener();
    empty.packs.clear();
    const auto plan = planOrder(juneList(), { full, empty }).value();
    QVERIFY(noted(plan, "3 kg of \"Slow resin\" in stock has no \"Slow hardener\""));

    auto part = hardener();
    part.stock = { lot(900, 600) };
    auto without = resin();
    without.packs.clear();
    QVERIFY(noted(planOrder(juneList(), { without, part }).value(), "900 g of \"Slow hardener\" in stock"));

    full.stock = { lot(1000, 600) };
    part.stock = { lot(413, 600) };
    QVERIFY(planOrder(juneList(), { full, part })->notes.empty());
}

void TestPartners::partnerNotAmongTheMaterials_isNoted()
{
    const auto plan = planOrder(juneList(), { resin() }).value();
    QCOMPARE(plan.lines.size(), std::size_t { 1 });
    QVERIFY(noted(plan, "planned alone"));
}

void TestPartners::ratioNotKnown_isNoted()
{
    auto unknown = resin();
    unknown.partnerPerUnit = 0;
    const auto plan = planOrder(juneList(), { unknown, hardener() }).value();
    QVERIFY(noted(plan, "is not known"));
    QVERIFY(lineOf(plan, "Slow hardener")->ordered < grams(413));
}

void TestPartners::ownPartner_isHarmless()
{
    auto self = resin();
    self.partner = self.material;
    QCOMPARE(planOrder(juneList(), { self })->lines.size(), std::size_t { 1 });
}

QTEST_APPLESS_MAIN(TestPartners)
#include "tst_partners.moc"
