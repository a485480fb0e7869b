// What a person copies from a label, as they write it.
#include <QTest>

#include "app/labeltext.h"

using namespace gw;
using namespace Qt::StringLiterals;

class LabelTextTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void date_isADayOrAMonth_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("first");
        QTest::addColumn<QString>("last");
        QTest::newRow("day") << u"2027-05-31"_s << u"2027-05-31"_s << u"2027-05-31"_s;
        QTest::newRow("blanks") << u" 2027-05-31 "_s << u"2027-05-31"_s << u"2027-05-31"_s;
        QTest::newRow("month") << u"2027-04"_s << u"2027-04-01"_s << u"2027-04-30"_s;
        QTest::newRow("short month") << u"2027-4"_s << u"2027-04-01"_s << u"2027-04-30"_s;
        // 2028 is a leap year of the Gregorian calendar (ISO 8601), 2027 is none.
        QTest::newRow("leap") << u"2028-02"_s << u"2028-02-01"_s << u"2028-02-29"_s;
        QTest::newRow("no leap") << u"2027-02"_s << u"2027-02-01"_s << u"2027-02-28"_s;
        for (const char* wrong :
            { "", "2027", "2027-00", "2027-13", "2027-02-29", "May 2027", "0027-05", "2500-01" })
            QTest::newRow(qPrintable(u"refused: "_s + QLatin1String(wrong)))
                << QString::fromLatin1(wrong) << QString() << QString();
    }

    void date_isADayOrAMonth()
    {
        QFETCH(QString, text);
        QFETCH(QString, first);
        QFETCH(QString, last);
        const auto read = readLabelDate(text);
        QCOMPARE(read.has_value(), !first.isEmpty());
        if (!read) {
            QVERIFY2(read.error().sentence.ends_with('.'), read.error().sentence.c_str());
            return;
        }
        QCOMPARE(QString::fromStdString(formatDate(read->low)), first);
        QCOMPARE(QString::fromStdString(formatDate(read->high)), last);
    }

    void lives_areInMonths_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<double>("months"); // 0: refused
        QTest::newRow("number") << u"18"_s << 18.0;
        QTest::newRow("comma") << u"1,5"_s << 1.5;
        QTest::newRow("months") << u"12 months"_s << 12.0;
        QTest::newRow("years") << u"2 Years"_s << 24.0;
        QTest::newRow("nothing") << u"0"_s << 0.0;
        QTest::newRow("less") << u"-3"_s << 0.0;
        QTest::newRow("too long") << u"51 years"_s << 0.0;
        QTest::newRow("weeks") << u"6 weeks"_s << 0.0;
        QTest::newRow("words") << u"long"_s << 0.0;
    }

    void lives_areInMonths()
    {
        QFETCH(QString, text);
        QFETCH(double, months);
        const auto read = readLabelLives({}, text);
        QCOMPARE(read.has_value(), months > 0);
        if (!read)
            return;
        QCOMPARE(read->size(), std::size_t(1));
        QCOMPARE(read->front().figure, std::string("opened_life"));
        QCOMPARE(read->front().value.value_or(0), months);
        QCOMPARE(read->front().source, std::string("label"));
    }

    void nothingSaid_givesNoFigures()
    {
        QCOMPARE(readLabelLives(u" "_s, {})->size(), std::size_t(0));
        QCOMPARE(readKeepBetween({}, u""_s, UnitSystem::Metric)->size(), std::size_t(0));
        QVERIFY(!*readPrice(u" "_s, u"EUR"_s));
    }

    // 41 F is 5 C by definition (NIST SP 811, appendix B.8).
    void keepBetween_isInTheirOwnDegrees_andInOrder()
    {
        const auto celsius = readKeepBetween(u"5"_s, u"25"_s, UnitSystem::Metric);
        QCOMPARE(celsius->front().low.value_or(0), 5.0);
        QCOMPARE(celsius->front().high.value_or(0), 25.0);
        const auto fahrenheit = readKeepBetween(u"41"_s, {}, UnitSystem::Us);
        QVERIFY(std::abs(fahrenheit->front().low.value_or(0) - 5.0) < 1e-9);
        QVERIFY(!fahrenheit->front().high);
        const auto named = readKeepBetween({}, u"77 F"_s, UnitSystem::Metric);
        QVERIFY(std::abs(named->front().high.value_or(0) - 25.0) < 1e-9);
        QVERIFY(!readKeepBetween(u"25"_s, u"5"_s, UnitSystem::Metric));
        QVERIFY(!readKeepBetween(u"cool"_s, {}, UnitSystem::Metric));
    }

    void price_isInTheShopsCurrencyUnlessItSaysAnother()
    {
        QCOMPARE(**readPrice(u"12,50"_s, u"EUR"_s), (Money { 1250, "EUR" }));
        QCOMPARE(**readPrice(u"12.50 usd"_s, u"EUR"_s), (Money { 1250, "USD" }));
        QVERIFY(!readPrice(u"12.50"_s, {}));
        QVERIFY(!readPrice(u"cheap"_s, u"EUR"_s));
    }

    void amount_isInTheUnitBesideItUnlessItSaysAnother()
    {
        QCOMPARE(*readAmount(u"1,5"_s, u"kg"_s), grams(1500));
        QCOMPARE(*readAmount(u"250 ml"_s, u"g"_s), millilitres(250));
        QCOMPARE(*readAmount(u"6"_s, u"pieces"_s), pieces(6));
        QVERIFY(!readAmount(u"some"_s, u"g"_s));
    }
};

QTEST_GUILESS_MAIN(LabelTextTest)
#include "tst_labeltext.moc"
