#include <QTest>

#include <cmath>

#include "demand/runoff.h"
#include "demands.h"

using namespace gw;
using namespace gw::test;

/// What stock still gives when it is needed.
class TestRunoff : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void lasting_countsWhole();
    void pastBeforeNeeded_doesNotCount();
    void pastWithin_countsForWhatIsUsedBefore();
    void firstToExpire_isUsedFirst();
    void alreadyPast_doesNotCount();
    void wait_usesStockUp();
    void openedLife_limitsAnUnopenedContainer();
    void opened_isUsedBeforeUnopenedOfTheSameDay();
    void noUse_countsWhatLasts();
    void nothing_givesNothing();
};

namespace {

constexpr double perDay = 10;

Runoff of(const std::vector<UsableLot>& stock, double span = 37, double wait = 0, double use = perDay,
    std::optional<Days> openedLife = std::nullopt)
{
    return runOff(stock, Dimension::Mass, { june, Days { wait }, Days { span } }, use, openedLife);
}

} // namespace

void TestRunoff::lasting_countsWhole()
{
    QCOMPARE(of({ lot(900, 400) }).usable, grams(900));
    QCOMPARE(of({ { grams(900), std::nullopt, true } }).usable, grams(900));
    QCOMPARE(of({ lot(900, 400) }).past.milli, std::int64_t { 0 });
}

void TestRunoff::pastBeforeNeeded_doesNotCount()
{
    // The first lot covers ten days; the second is past after eight of them.
    const auto runoff = of({ lot(500, 8), lot(100, 7) });
    QCOMPARE(runoff.usable, grams(80));
    QCOMPARE(runoff.past, grams(520));
    QCOMPARE(runoff.firstPast, std::optional(later(june, Days { 7 })));
}

void TestRunoff::pastWithin_countsForWhatIsUsedBefore()
{
    const auto runoff = of({ lot(300, 12) });
    QCOMPARE(runoff.usable, grams(120));
    QCOMPARE(runoff.past, grams(180));
    QCOMPARE(runoff.firstPast, std::optional(later(june, Days { 12 })));
}

void TestRunoff::firstToExpire_isUsedFirst()
{
    // In whatever order they stand: 50 g in five days, then 150 g more until the twentieth.
    const auto runoff = of({ lot(400, 300), lot(150, 20), lot(50, 9) });
    QCOMPARE(runoff.usable, grams(600));
    QCOMPARE(runoff.past, grams(0));
    QVERIFY(!runoff.firstPast);
}

void TestRunoff::alreadyPast_doesNotCount()
{
    QCOMPARE(of({ lot(300, -3) }).usable, grams(0));
    QCOMPARE(of({ lot(300, -3) }).past, grams(300));
}

void TestRunoff::wait_usesStockUp()
{
    QCOMPARE(of({ lot(300, 400) }, 37, 10).usable, grams(200));
    QCOMPARE(of({ lot(300, 400) }, 37, 60).usable, grams(0));
    // Past in the wait, but used until then; the lasting lot is spared that long.
    const auto runoff = of({ lot(300, 6), lot(500, 400) }, 37, 10);
    QCOMPARE(runoff.usable, grams(460));
    QCOMPARE(runoff.past, grams(240));
}

void TestRunoff::openedLife_limitsAnUnopenedContainer()
{
    QCOMPARE(of({ lot(900, 400) }, 37, 0, perDay, Days { 14 }).usable, grams(140));
    QCOMPARE(of({ lot(900, 400, true) }, 37, 0, perDay, Days { 14 }).usable, grams(900));
    QCOMPARE(of({ lot(900, 400) }, 37, 0, perDay, Days { 90 }).usable, grams(900));
    QVERIFY(!of({ lot(900, 400) }, 37, 0, perDay, Days { 14 }).firstPast);
}

void TestRunoff::opened_isUsedBeforeUnopenedOfTheSameDay()
{
    // Ten days: the opened one first, whole; of the other what is left of its time, capped by its life once
    // opened.
    const auto runoff = of({ lot(200, 20), lot(100, 20, true) }, 37, 0, perDay, Days { 5 });
    QCOMPARE(runoff.usable, grams(150));
}

void TestRunoff::noUse_countsWhatLasts()
{
    QCOMPARE(of({ lot(300, 10), lot(200, 400) }, 37, 0, 0).usable, grams(200));
}

void TestRunoff::nothing_givesNothing()
{
    QCOMPARE(of({}).usable, grams(0));
    QCOMPARE(of({ lot(0, 100), { grams(-20), std::nullopt, true } }).usable, grams(0));
}

QTEST_APPLESS_MAIN(TestRunoff)
#include "tst_runoff.moc"
