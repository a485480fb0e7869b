#include <QTest>

#include <algorithm>
#include <cmath>

#include "demand/compounduse.h"
#include "demand/packchoice.h"
#include "demands.h"

using namespace gw;
using namespace gw::test;

/// Which packs cover an amount at the least cost, waste included.
class TestPackChoice : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void ruleOfThumb_ofTheTrade();
    void cheapestCover_isTaken_data();
    void cheapestCover_isTaken();
    void choice_isTheBestOfAllCombinations();
    void beingShort_isWeighed();
    void choice_isTheBestWithBeingShort();
    void stockAtHand_isUsedFirst();
    void largePack_isRefusedWhenItWouldGoOff();
    void severalSmallPacks_eachStartTheirOpenedLife();
    void lasts_untilTheLastGoesOff();
    void unknownPrice_neverLooksCheap();
    void severalCurrencies_compareByAmount();
    void tooManyPacks_areNoOrder();
    void nothing_isChosenForNothing();
};

namespace {

std::vector<const PackOffer*> pointersTo(const std::vector<PackOffer>& packs)
{
    std::vector<const PackOffer*> pointers;
    for (const PackOffer& pack : packs)
        pointers.push_back(&pack);
    return pointers;
}

QString textOf(const std::optional<PackChoice>& choice)
{
    QStringList parts;
    if (choice) {
        for (const auto& [pack, count] : choice->packs)
            parts << QStringLiteral("%1x%2").arg(count).arg(QString::fromStdString(pack->name));
    }
    return parts.join(u' ');
}

double perDay(double perMonth) { return perMonth / meanMonth.count(); }

} // namespace

// Source: month-end order arithmetic of the trade (common practice, no source): quantity <= use x life x 0.8;
// PVA 180 g a month over 12 months: 1 kg is fine; CA 6 g a month over 3 months: at most 14 g, and 32 g (64 %)
// of 50 g are wasted.
void TestPackChoice::ruleOfThumb_ofTheTrade()
{
    const PackOffer pva = offer("1 kg", grams(1000), 1450);
    const ShelfLimits year { std::nullopt, meanMonth * 12 };
    QCOMPARE(usedInTime({ { &pva, 1 } }, year, perDay(180), lifeCountedOn), 1000.0);
    QVERIFY(std::abs(1000 / 180.0 - 5.6) < 0.05);

    const PackOffer ca = offer("50 g", grams(50), 1200);
    const ShelfLimits quarter { std::nullopt, meanMonth * 3 };
    QVERIFY(std::abs(usedInTime({ { &ca, 1 } }, quarter, perDay(6), lifeCountedOn) - 14.4) < 1e-9);
    QVERIFY(std::abs(50 - usedInTime({ { &ca, 1 } }, quarter, perDay(6), 1) - 32) < 1e-9);
    QVERIFY(std::abs(lifeCap({ meanMonth * 3, {} }, perDay(6)).value() - 14.4) < 1e-9);
}

void TestPackChoice::cheapestCover_isTaken_data()
{
    QTest::addColumn<double>("target");
    QTest::addColumn<QString>("packs");
    QTest::newRow("least that covers") << 200.0 << QStringLiteral("1x250 g");
    QTest::newRow("exactly one") << 250.0 << QStringLiteral("1x250 g");
    QTest::newRow("a little more") << 250.001 << QStringLiteral("2x250 g");
    QTest::newRow("the large one is cheaper than four") << 900.0 << QStringLiteral("1x1 kg");
    QTest::newRow("one of each") << 1200.0 << QStringLiteral("1x1 kg 1x250 g");
    QTest::newRow("many") << 5100.0 << QStringLiteral("5x1 kg 1x250 g");
}

void TestPackChoice::cheapestCover_isTaken()
{
    QFETCH(double, target);
    QFETCH(QString, packs);
    const std::vector<PackOffer> offers { offer("250 g", grams(250), 500), offer("1 kg", grams(1000), 1450) };
    QCOMPARE(textOf(choosePacks(pointersTo(offers), { grams(target), 5 }, {})), packs);
}

void TestPackChoice::choice_isTheBestOfAllCombinations()
{
    const std::vector<PackOffer> offers { offer("90 g", grams(90), 310), offer("250 g", grams(250), 640),
        offer("400 g", grams(400), 905) };
    const ShelfLimits limits { Days { 200 }, Days { 60 } };
    const auto pointers = pointersTo(offers);
    const auto prices = unitPrices(pointers);
    const double waste = *std::min_element(prices.begin(), prices.end());
    for (double target = 10; target < 1500; target += 37) {
        const auto choice = choosePacks(pointers, { grams(target), 4 }, limits).value();
        const auto costOf = [&](const std::vector<PackTaken>& packs) {
            double cost = 0;
            double amount = 0;
            for (const auto& [pack, count] : packs) {
                cost += static_cast<double>(pack->price->minorUnits * count);
                amount += pack->amount.value() * static_cast<double>(count);
            }
            return cost + waste * (amount - usedInTime(packs, limits, 4, lifeCountedOn));
        };
        QVERIFY(choice.ordered.value() >= target);
        for (std::int64_t a = 0; a < 18; ++a)
            for (std::int64_t b = 0; b < 8; ++b)
                for (std::int64_t c = 0; c < 5; ++c) {
                    if ((a && b && c) || !(a || b || c)
                        || static_cast<double>(90 * a + 250 * b + 400 * c) < target)
                        continue;
                    const double cost
                        = costOf({ { pointers[2], c }, { pointers[1], b }, { pointers[0], a } });
                    QVERIFY(costOf(choice.packs) <= cost + 1e-3);
                }
    }
}

void TestPackChoice::beingShort_isWeighed()
{
    const auto use = compoundUse({ { { { 50, 1 } }, GammaRate { 4, 1 }, 1, {}, 0 } }).value();
    const std::vector<PackOffer> offers { offer("250 g", grams(250), 500), offer("350 g", grams(350), 560) };
    const PackNeed without { grams(250), 5 };
    QCOMPARE(textOf(choosePacks(pointersTo(offers), without, {})), QStringLiteral("1x250 g"));
    PackNeed with = without;
    with.ahead = &use;
    with.servicePercent = use.cumulative(250) * 100;
    QCOMPARE(textOf(choosePacks(pointersTo(offers), with, {})), QStringLiteral("1x350 g"));
    // With more at hand it matters less.
    with.usable = 400;
    QCOMPARE(textOf(choosePacks(pointersTo(offers), with, {})), QStringLiteral("1x250 g"));
}

// Every set of up to two kinds of pack that covers, also far more of them than cover.
void TestPackChoice::choice_isTheBestWithBeingShort()
{
    const std::vector<PackOffer> offers { offer("90 g", grams(90), 310), offer("250 g", grams(250), 640),
        offer("400 g", grams(400), 905) };
    const ShelfLimits limits { Days { 200 }, Days { 60 } };
    const auto pointers = pointersTo(offers);
    const auto prices = unitPrices(pointers);
    const double unit = *std::min_element(prices.begin(), prices.end());
    const auto use = compoundUse({ { { { 13, .5 }, { 40, .5 } }, GammaRate { 8, 2 }, 1.2, {}, 0 } }).value();
    for (const double service : { 50.0, 80.0, 90.0, 95.0, 99.0 }) {
        const double target = use.quantile(service).value();
        PackNeed need { grams(target), 4 };
        need.ahead = &use;
        need.servicePercent = service;
        const auto costOf = [&](const std::vector<PackTaken>& packs) {
            double cost = 0;
            double amount = 0;
            for (const auto& [pack, count] : packs) {
                cost += static_cast<double>(pack->price->minorUnits * count);
                amount += pack->amount.value() * static_cast<double>(count);
            }
            return cost + unit * (amount - usedInTime(packs, limits, 4, lifeCountedOn))
                + unit * service / (100 - service) * use.expectedShort(amount);
        };
        const auto choice = choosePacks(pointers, need, limits).value();
        for (std::int64_t a = 0; a < 12; ++a)
            for (std::int64_t b = 0; b < 6; ++b)
                for (std::int64_t c = 0; c < 4; ++c) {
                    if ((a && b && c) || static_cast<double>(90 * a + 250 * b + 400 * c) < target)
                        continue;
                    const double cost
                        = costOf({ { pointers[2], c }, { pointers[1], b }, { pointers[0], a } });
                    QVERIFY(costOf(choice.packs) <= cost + 1e-3);
                }
    }
}

void TestPackChoice::stockAtHand_isUsedFirst()
{
    const PackOffer pack = offer("300 g", grams(300), 300);
    const ShelfLimits limits { Days { 100 }, std::nullopt };
    QCOMPARE(usedInTime({ { &pack, 1 } }, limits, 3, 1), 300.0);
    // Forty days of stock come first: sixty are left.
    QCOMPARE(usedInTime({ { &pack, 1 } }, limits, 3, 1, Days { 40 }), 180.0);
    QCOMPARE(usedInTime({ { &pack, 1 } }, limits, 3, 1, Days { 400 }), 0.0);
    QCOMPARE(*lifeCap(limits, 3, Days { 40 }), 120.0);
    QCOMPARE(*lifeCap(limits, 3, Days { 400 }), 0.0);
}

void TestPackChoice::largePack_isRefusedWhenItWouldGoOff()
{
    const std::vector<PackOffer> offers { offer("250 g", grams(250), 500), offer("1 kg", grams(1000), 900) };
    const ShelfLimits limits { std::nullopt, Days { 86 } };
    // 5 g a day for 86 days: 430 g of the kilogram, too little for its lower price.
    QCOMPARE(textOf(choosePacks(pointersTo(offers), { grams(200), 5 }, limits)), QStringLiteral("1x250 g"));
    // Ten times the use: none of it goes off.
    QCOMPARE(textOf(choosePacks(pointersTo(offers), { grams(800), 50 }, limits)), QStringLiteral("1x1 kg"));
}

void TestPackChoice::severalSmallPacks_eachStartTheirOpenedLife()
{
    const PackOffer pack = offer("100 g", grams(100), 300);
    const ShelfLimits limits { Days { 365 }, Days { 30 } };
    QCOMPARE(usedInTime({ { &pack, 3 } }, limits, 5, 1), 300.0);
    QCOMPARE(usedInTime({ { &pack, 3 } }, limits, 2, 1), 180.0);
    // The sealed life ends it for all: 365 days at 2 g.
    QCOMPARE(usedInTime({ { &pack, 20 } }, limits, 2, 1), 730.0);
}

void TestPackChoice::lasts_untilTheLastGoesOff()
{
    const std::vector<PackOffer> offers { offer("100 g", grams(100), 300) };
    const auto lasts = [&](double target, const ShelfLimits& limits) {
        return choosePacks(pointersTo(offers), { grams(target), 5 }, limits)->lasts;
    };
    QCOMPARE(lasts(100, { Days { 365 }, Days { 30 } })->count(), 30.0);
    QCOMPARE(lasts(300, { Days { 365 }, Days { 30 } })->count(), 70.0);
    QCOMPARE(lasts(300, { Days { 50 }, Days { 30 } })->count(), 50.0);
    QCOMPARE(lasts(100, { Days { 365 }, std::nullopt })->count(), 365.0);
    QVERIFY(!lasts(100, {}));
}

void TestPackChoice::unknownPrice_neverLooksCheap()
{
    const std::vector<PackOffer> offers { offer("250 g", grams(250), 500), offer("500 g", grams(500), -1),
        offer("500 g free", grams(500), 0) };
    QCOMPARE(textOf(choosePacks(pointersTo(offers), { grams(400), 5 }, {})), QStringLiteral("2x250 g"));
    const std::vector<PackOffer> unpriced { offer("250 g", grams(250), -1), offer("1 kg", grams(1000), -1) };
    QCOMPARE(textOf(choosePacks(pointersTo(unpriced), { grams(400), 5 }, {})), QStringLiteral("2x250 g"));
}

void TestPackChoice::severalCurrencies_compareByAmount()
{
    std::vector<PackOffer> offers { offer("250 g", grams(250), 500), offer("1 kg", grams(1000), 1) };
    offers[1].price->currency = "GBP";
    QCOMPARE(textOf(choosePacks(pointersTo(offers), { grams(200), 5 }, {})), QStringLiteral("1x250 g"));
}

void TestPackChoice::tooManyPacks_areNoOrder()
{
    const std::vector<PackOffer> offers { offer("1 g", grams(1), 5) };
    QVERIFY(!choosePacks(pointersTo(offers), { grams(50'000), 5 }, {}));
    QCOMPARE(textOf(choosePacks(pointersTo(offers), { grams(10'000), 5 }, {})), QStringLiteral("10000x1 g"));
}

void TestPackChoice::nothing_isChosenForNothing()
{
    const std::vector<PackOffer> offers { offer("1 kg", grams(1000), 5) };
    QVERIFY(!choosePacks({}, { grams(10), 5 }, {}));
    QVERIFY(!choosePacks(pointersTo(offers), { grams(0), 5 }, {}));
    QVERIFY(!choosePacks(pointersTo(offers), { grams(10), 0 }, {}));
}

QTEST_APPLESS_MAIN(TestPackChoice)
#include "tst_packchoice.moc"
