#include <QTest>

#include "ageing/wording.h"

using namespace gw;

class TestWording : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void span_isInWholeUnitsGoneBy_data()
    {
        QTest::addColumn<double>("days");
        QTest::addColumn<QString>("text");
        QTest::newRow("hours") << 0.9 << QStringLiteral("less than a day");
        QTest::newRow("one") << 1.0 << QStringLiteral("1 day");
        QTest::newRow("just short of two months") << 60.8 << QStringLiteral("60 days");
        QTest::newRow("two months") << 60.87375 << QStringLiteral("2 months");
        QTest::newRow("eleven and a half") << 350.0 << QStringLiteral("11 months");
        QTest::newRow("35 months") << 35.9 * 30.436875 << QStringLiteral("35 months");
        QTest::newRow("3 years") << 36 * 30.436875 << QStringLiteral("3 years");
    }
    void span_isInWholeUnitsGoneBy()
    {
        QFETCH(double, days);
        QFETCH(QString, text);
        QCOMPARE(QString::fromStdString(spanWords(Days { days })), text);
    }

    void hours_areWholeOnesGoneByUpToTwoDays()
    {
        const auto said = [](double hours) { return hoursWords(Days { hours / 24 }); };
        QCOMPARE(said(0.99), std::string("less than an hour"));
        QCOMPARE(said(1), std::string("1 hour"));
        QCOMPARE(said(47.9), std::string("47 hours"));
        QCOMPARE(said(48), std::string("2 days"));
        QCOMPARE(said(100 * 24), std::string("3 months"));
    }

    void life_readsInItsNaturalUnit_data()
    {
        QTest::addColumn<double>("low");
        QTest::addColumn<double>("high");
        QTest::addColumn<QString>("text");
        const double month = meanMonth.count();
        QTest::newRow("months") << 6 * month << 12 * month << QStringLiteral("6 to 12 months");
        QTest::newRow("one figure") << 12 * month << 12 * month << QStringLiteral("12 months");
        QTest::newRow("one month") << month << month << QStringLiteral("1 month");
        QTest::newRow("years") << 60 * month << 240 * month << QStringLiteral("5 to 20 years");
        QTest::newRow("not all years") << 24 * month << 30 * month << QStringLiteral("24 to 30 months");
        QTest::newRow("halves") << 1.5 * month << 3 * month << QStringLiteral("1.5 to 3 months");
        QTest::newRow("days") << 1.5 << 3.0 << QStringLiteral("1.5 to 3 days");
    }
    void life_readsInItsNaturalUnit()
    {
        QFETCH(double, low);
        QFETCH(double, high);
        QFETCH(QString, text);
        QCOMPARE(QString::fromStdString(lifeWords({ Days { low }, Days { high } })), text);
    }

    void share_roundsOutward_data()
    {
        QTest::addColumn<double>("low");
        QTest::addColumn<double>("high");
        QTest::addColumn<QString>("text");
        QTest::newRow("range") << 0.5539 << 1.0921 << QStringLiteral("55 to 110 %");
        QTest::newRow("equal") << 0.55 << 0.55 << QStringLiteral("55 %");
        QTest::newRow("a hair past") << 0.5 << 1.0001 << QStringLiteral("50 to 101 %");
        QTest::newRow("far past") << 0.5 << 20.0 << QStringLiteral("50 to more than 999 %");
        QTest::newRow("both far past") << 15.0 << 20.0 << QStringLiteral("more than 999 %");
    }
    void share_roundsOutward()
    {
        QFETCH(double, low);
        QFETCH(double, high);
        QFETCH(QString, text);
        QCOMPARE(QString::fromStdString(shareWords({ low, high })), text);
    }

    void range_namesTheUnitOnce()
    {
        QCOMPARE(
            QString::fromStdString(rangeWords({ { -5 }, { 30 } })), QStringLiteral("between -5 and 30 °C"));
    }
};

QTEST_APPLESS_MAIN(TestWording)
#include "tst_wording.moc"
