#include <QTest>

#include "demand/coldarrival.h"

using namespace gw;

/// Deliveries to a freezing doorstep.
class TestColdArrival : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void warmArrival_isNone();
    void coldArrival_isOrderedBeforeTheCold();
    void whenTheColdHasCome_itWaitsOrIsHeated();
    void theWeekBesideIt_counts();
    void whatIsNotKnown_isNeitherColdNorWarm();
    void whereItAlwaysFreezes_onlyHeatedDeliveryHelps();
    void lastDayOfTheYear_hasAWeek();
};

namespace {

Date day(int year, unsigned month, unsigned dayOfMonth)
{
    return Date { std::chrono::year { year }, std::chrono::month { month }, std::chrono::day { dayOfMonth } };
}

/// Frost in January, February and December.
Doorstep winters()
{
    Doorstep doorstep;
    doorstep.name = "Porch";
    for (std::size_t week = 0; week < doorstep.lows.size(); ++week)
        doorstep.lows[week] = Celsius { week < 8 || week > 47 ? -6.0 : 4.0 };
    return doorstep;
}

} // namespace

void TestColdArrival::warmArrival_isNone()
{
    QVERIFY(!coldArrival(winters(), Celsius { 0 }, day(2026, 6, 1), Days { 7 }, day(2026, 5, 20)));
    // What stands ten degrees of frost does not mind.
    QVERIFY(!coldArrival(winters(), Celsius { -10 }, day(2026, 12, 20), Days { 7 }, day(2026, 5, 20)));
}

void TestColdArrival::coldArrival_isOrderedBeforeTheCold()
{
    const auto cold = coldArrival(winters(), Celsius { 0 }, day(2026, 12, 1), Days { 6.5 }, day(2026, 10, 1));
    QVERIFY(cold);
    QCOMPARE(cold->arrives, day(2026, 12, 8));
    QCOMPARE(cold->low.value, -6.0);
    QVERIFY(cold->orderBy);
    // A day later a delivery one week late would freeze; on that day it does not.
    const auto arrives = [](Date ordered) {
        return coldArrival(winters(), Celsius { 0 }, ordered, Days { 6.5 }, day(2026, 10, 1));
    };
    QVERIFY(!arrives(*cold->orderBy));
    QVERIFY(arrives(Date { std::chrono::sys_days { *cold->orderBy } + std::chrono::days { 1 } }));
    QVERIFY(cold->warmFrom && *cold->warmFrom > day(2027, 2, 25) && *cold->warmFrom < day(2027, 3, 10));
}

void TestColdArrival::whenTheColdHasCome_itWaitsOrIsHeated()
{
    const auto cold = coldArrival(winters(), Celsius { 0 }, day(2027, 1, 1), Days { 7 }, day(2026, 12, 20));
    QVERIFY(cold && !cold->orderBy && cold->warmFrom);
}

void TestColdArrival::theWeekBesideIt_counts()
{
    // Week 48 begins on 3 December: a week before it a late delivery would come to frost.
    QVERIFY(!coldArrival(winters(), Celsius { 0 }, day(2026, 11, 25), Days { 0 }, day(2026, 11, 1)));
    QVERIFY(coldArrival(winters(), Celsius { 0 }, day(2026, 11, 26), Days { 0 }, day(2026, 11, 1)));
}

void TestColdArrival::whatIsNotKnown_isNeitherColdNorWarm()
{
    Doorstep doorstep = winters();
    for (std::size_t week = 30; week < 48; ++week)
        doorstep.lows[week].reset();
    QVERIFY(!coldArrival(doorstep, Celsius { 0 }, day(2026, 10, 1), Days { 7 }, day(2026, 9, 1)));
    const auto cold = coldArrival(doorstep, Celsius { 0 }, day(2026, 12, 20), Days { 7 }, day(2026, 9, 1));
    QVERIFY(cold && !cold->orderBy);
}

void TestColdArrival::whereItAlwaysFreezes_onlyHeatedDeliveryHelps()
{
    Doorstep doorstep;
    doorstep.lows.fill(Celsius { -3 });
    const auto cold = coldArrival(doorstep, Celsius { 0 }, day(2026, 7, 1), Days { 365 }, day(2026, 6, 1));
    QVERIFY(cold && !cold->orderBy && !cold->warmFrom);
}

void TestColdArrival::lastDayOfTheYear_hasAWeek()
{
    Doorstep doorstep;
    doorstep.lows.back() = Celsius { -1 };
    QCOMPARE(doorstep.low(day(2028, 12, 31))->value, -1.0);
    QVERIFY(!doorstep.low(day(2028, 1, 1)));
}

QTEST_APPLESS_MAIN(TestColdArrival)
#include "tst_coldarrival.moc"
