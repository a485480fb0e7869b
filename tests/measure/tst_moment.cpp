#include <QDate>
#include <QDateTime>
#include <QRandomGenerator>
#include <QTest>
#include <QTimeZone>

#include "measure/moment.h"

using namespace gw;

/// Days and moments, against Qt's own calendar.
class TestMoment : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void date_isReadOnlyWhenItExists();
    void date_sentenceSaysWhy();
    void everyDay_goesThereAndBack();
    void moment_isReadInIso8601_data();
    void moment_isReadInIso8601();
    void moment_badFormsAreRefused();
    void moment_goesThereAndBack();
    void moment_agreesWithQt();
    void dayOf_beginsAndEndsInUtc();
    void addMonths_keepsTheDayOrTheMonthsLast();
    void later_andDaysBetween_agree();
    void spoken_hasTheMonthsName();
    void anyBytes_areReadOrRefused();
};

void TestMoment::date_isReadOnlyWhenItExists()
{
    QCOMPARE(formatDate(*parseDate("2026-05-25")), std::string("2026-05-25"));
    QCOMPARE(formatDate(*parseDate(" 2028-02-29 ")), std::string("2028-02-29"));
    QVERIFY(parseDate("1900-01-01") && parseDate("2199-12-31"));
    for (const char* typed : { "", "2026", "2026-05", "2026-5-25", "26-05-25", "25.05.2026", "05/25/2026",
             "2026-13-01", "2026-00-10", "2026-05-00", "2026-02-29", "2100-02-29", "2026-04-31", "1899-12-31",
             "2200-01-01", "2026-05-25T00:00", "20260525", "2026-05-2x" })
        QVERIFY2(!parseDate(typed), typed);
}

void TestMoment::date_sentenceSaysWhy()
{
    const auto sentence
        = [](const char* typed) { return QString::fromStdString(parseDate(typed).error().sentence); };
    QVERIFY(sentence("2026-02-30").contains(QStringLiteral("February 2026 has 28 days")));
    QVERIFY(sentence("2026-13-01").contains(QStringLiteral("no such month")));
    QVERIFY(sentence("1812-01-01").contains(QStringLiteral("1900 to 2199")));
    QVERIFY(sentence("yesterday").contains(QStringLiteral("year-month-day")));
}

void TestMoment::everyDay_goesThereAndBack()
{
    // Qt's proleptic Gregorian calendar is the outside judge of which days there are.
    for (QDate day(1900, 1, 1); day <= QDate(2199, 12, 31); day = day.addDays(1)) {
        const std::string text = day.toString(Qt::ISODate).toStdString();
        const auto date = parseDate(text);
        QVERIFY2(date.has_value(), text.c_str());
        QCOMPARE(formatDate(*date), text);
        QCOMPARE(toMilliseconds(startOf(*date)), day.startOfDay(QTimeZone::utc()).toMSecsSinceEpoch());
    }
}

void TestMoment::moment_isReadInIso8601_data()
{
    QTest::addColumn<QString>("utc");
    const auto row
        = [](const char* typed, const char* utc) { QTest::newRow(typed) << QString::fromUtf8(utc); };
    row("2026-05-25", "2026-05-25T00:00:00Z");
    row("2026-05-25T14:03", "2026-05-25T14:03:00Z");
    row("2026-05-25 14:03", "2026-05-25T14:03:00Z");
    row("2026-05-25T14:03:07", "2026-05-25T14:03:07Z");
    row("2026-05-25T14:03:07Z", "2026-05-25T14:03:07Z");
    row("2026-05-25T14:03:07.5Z", "2026-05-25T14:03:07.500Z");
    row("2026-05-25T14:03:07,1239Z", "2026-05-25T14:03:07.123Z");
    row("2026-05-25T14:03:07+02:00", "2026-05-25T12:03:07Z");
    row("2026-05-25T14:03+0200", "2026-05-25T12:03:00Z");
    row("2026-05-25T14:03-03:30", "2026-05-25T17:33:00Z");
    row("2026-01-01T00:30+01", "2025-12-31T23:30:00Z");
    // RFC 3339, section 5.8.
    row("1985-04-12T23:20:50.52Z", "1985-04-12T23:20:50.520Z");
    row("1996-12-19T16:39:57-08:00", "1996-12-20T00:39:57Z");
    row("1937-01-01T12:00:27.87+00:20", "1937-01-01T11:40:27.870Z");
}

void TestMoment::moment_isReadInIso8601()
{
    QFETCH(QString, utc);
    const auto moment = parseMoment(QTest::currentDataTag());
    QVERIFY2(moment.has_value(), moment ? "" : moment.error().sentence.c_str());
    QCOMPARE(QString::fromStdString(formatMoment(*moment)), utc);
}

void TestMoment::moment_badFormsAreRefused()
{
    for (const char* typed : { "", "now", "2026-05-25T", "2026-05-25T14", "2026-05-25T24:00",
             "2026-05-25T14:60", "2026-05-25T14:03:60", "2026-05-25T14:03:07.", "2026-05-25T14:03:07 Z",
             "2026-05-25T14:03+15:00", "2026-05-25T14:03+02:60", "2026-05-25T14:03+", "2026-05-25T14:03ZZ",
             "2026-02-30T10:00", "2026-05-25X14:03", "14:03", "2026-05-25T1:03", "2026-05-25T14:03+02:" })
        QVERIFY2(!parseMoment(typed), typed);
}

void TestMoment::moment_goesThereAndBack()
{
    QRandomGenerator64 random(6);
    const auto first = toMilliseconds(startOf(*parseDate("1900-01-01")));
    const auto last = toMilliseconds(endOf(*parseDate("2199-12-31")));
    for (int i = 0; i < 100000; ++i) {
        const Moment moment = fromMilliseconds(random.bounded(qint64(first), qint64(last + 1)));
        const auto back = parseMoment(formatMoment(moment));
        QVERIFY(back.has_value());
        QCOMPARE(toMilliseconds(*back), toMilliseconds(moment));
    }
    QCOMPARE(formatMoment(fromMilliseconds(-1)), std::string("1969-12-31T23:59:59.999Z"));
}

void TestMoment::moment_agreesWithQt()
{
    QRandomGenerator64 random(7);
    for (int i = 0; i < 20000; ++i) {
        const qint64 ms = random.bounded(qint64(-2'000'000'000'000), qint64(7'000'000'000'000));
        const QDateTime qt = QDateTime::fromMSecsSinceEpoch(ms, QTimeZone(random.bounded(-56, 57) * 900));
        const auto read = parseMoment(qt.toString(Qt::ISODateWithMs).toStdString());
        QVERIFY2(read.has_value(), qPrintable(qt.toString(Qt::ISODateWithMs)));
        QCOMPARE(toMilliseconds(*read), ms);
    }
}

void TestMoment::dayOf_beginsAndEndsInUtc()
{
    const Date day = *parseDate("2026-05-25");
    QCOMPARE(formatMoment(startOf(day)), std::string("2026-05-25T00:00:00Z"));
    QCOMPARE(formatMoment(endOf(day)), std::string("2026-05-25T23:59:59.999Z"));
    QCOMPARE(dateOf(startOf(day)), day);
    QCOMPARE(dateOf(endOf(day)), day);
    QVERIFY(dateOf(endOf(day) + std::chrono::milliseconds { 1 }) != day);
    QCOMPARE(formatDate(dateOf(fromMilliseconds(-1))), std::string("1969-12-31"));
}

void TestMoment::addMonths_keepsTheDayOrTheMonthsLast()
{
    for (QDate day(2023, 12, 1); day < QDate(2025, 2, 1); day = day.addDays(1)) {
        const Date date = *parseDate(day.toString(Qt::ISODate).toStdString());
        for (int months = -30; months <= 30; ++months)
            QCOMPARE(formatDate(addMonths(date, months)),
                day.addMonths(months).toString(Qt::ISODate).toStdString());
    }
}

void TestMoment::later_andDaysBetween_agree()
{
    const Moment start = startOf(*parseDate("2026-03-28"));
    QCOMPARE(daysBetween(start, later(start, Days { 1.5 })).count(), 1.5);
    QCOMPARE(daysBetween(later(start, Days { 2 }), start).count(), -2.0);
    // The mean month of the Gregorian calendar: 146,097 days in 4,800 months.
    QCOMPARE(meanMonth.count(), 146097.0 / 4800);
}

void TestMoment::spoken_hasTheMonthsName()
{
    QCOMPARE(spokenDate(*parseDate("2026-05-25")), std::string("25 May 2026"));
    QCOMPARE(spokenDate(*parseDate("2026-12-01")), std::string("1 December 2026"));
}

void TestMoment::anyBytes_areReadOrRefused()
{
    QRandomGenerator random(8);
    const std::string alphabet = "0123456789-:TZ+. \xC3";
    for (int i = 0; i < 100000; ++i) {
        std::string text = i % 2 == 0 ? "2026-05-25T14:03:07.5+02:00"
                                      : std::string(static_cast<std::size_t>(random.bounded(30)), '0');
        for (int n = random.bounded(4); n >= 0 && !text.empty(); --n)
            text[random.bounded(static_cast<quint32>(text.size()))]
                = alphabet[random.bounded(static_cast<quint32>(alphabet.size()))];
        if (const auto moment = parseMoment(text))
            QCOMPARE(parseMoment(formatMoment(*moment)).has_value(),
                dateOf(*moment).year() >= std::chrono::year { 1900 }
                    && dateOf(*moment).year() <= std::chrono::year { 2199 });
        else
            QVERIFY(moment.error().sentence.ends_with('.'));
    }
    QVERIFY(!parseMoment(std::string(4'000'000, '2')));
}

QTEST_APPLESS_MAIN(TestMoment)
#include "tst_moment.moc"
