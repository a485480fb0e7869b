// Dates printed in lot codes: what is offered, in which order, and what never is. The days of ordinal and
// week dates are worked out with Python's datetime (strptime "%Y %j", date.fromisocalendar), which this house
// does not use; the shapes themselves are common practice without a source.
#include <QRandomGenerator>
#include <QTest>

#include <algorithm>
#include <set>

#include "codes/lotdate.h"

using namespace gw;
using namespace std::chrono;

namespace {

const Date today { year { 2026 } / 11 / 20 };

LotDateContext context(std::string key = {}, std::optional<Date> notAfter = {})
{
    return { today, notAfter, 12 * meanMonth, 24 * meanMonth, std::move(key) };
}

QString offered(const std::vector<LotDate>& dates)
{
    QStringList lines;
    for (const LotDate& date : dates)
        lines.append(QString::fromStdString(formatDate(date.days.low) + " " + date.words));
    return lines.join(QStringLiteral(" | "));
}

bool offers(const std::vector<LotDate>& dates, Date day)
{
    return std::ranges::any_of(dates, [&](const LotDate& d) { return d.days.low == day; });
}

} // namespace

class LotDateTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void mostPlausible_isFirst_data()
    {
        QTest::addColumn<QString>("lot");
        QTest::addColumn<QString>("from");
        QTest::addColumn<QString>("to");
        QTest::addColumn<QString>("words");
        const auto row = [](const char* lot, const char* from, const char* to, const char* words) {
            QTest::newRow(lot) << QString::fromLatin1(lot) << QString::fromLatin1(from)
                               << QString::fromLatin1(to) << QString::fromLatin1(words);
        };
        // python3: datetime.strptime("2026 145", "%Y %j") -> 2026-05-25, and so on
        row("26145", "2026-05-25", "2026-05-25", "day 145 of 2026: 25 May 2026");
        row("L26145A", "2026-05-25", "2026-05-25", "day 145 of 2026: 25 May 2026");
        row("26-145-B", "2026-05-25", "2026-05-25", "day 145 of 2026: 25 May 2026");
        row("26001", "2026-01-01", "2026-01-01", "day 1 of 2026: 1 January 2026");
        row("24366", "2024-12-31", "2024-12-31", "day 366 of 2024: 31 December 2024");
        row("24060", "2024-02-29", "2024-02-29", "day 60 of 2024: 29 February 2024");
        row("25060", "2025-03-01", "2025-03-01", "day 60 of 2025: 1 March 2025");
        row("6145", "2026-05-25", "2026-05-25", "day 145 of 2026: 25 May 2026");
        row("BX6145C", "2026-05-25", "2026-05-25", "day 145 of 2026: 25 May 2026");
        // Day 360 of 2026 is still to come: the year before that ends in 6 is 2016.
        row("6360", "2016-12-25", "2016-12-25", "day 360 of 2016: 25 December 2016");
        row("2026145", "2026-05-25", "2026-05-25", "day 145 of 2026: 25 May 2026");
        row("14526", "2026-05-25", "2026-05-25", "day 145 of 2026: 25 May 2026");
        row("260525", "2026-05-25", "2026-05-25", "year, month and day: 25 May 2026");
        row("26/05/25", "2026-05-25", "2026-05-25", "year, month and day: 25 May 2026");
        row("20260525", "2026-05-25", "2026-05-25", "year, month and day: 25 May 2026");
        row("250526", "2026-05-25", "2026-05-25", "day, month and year: 25 May 2026");
        row("31.12.25", "2025-12-31", "2025-12-31", "day, month and year: 31 December 2025");
        row("123125", "2025-12-31", "2025-12-31", "month, day and year: 31 December 2025");
        // python3: date.fromisocalendar(2026, 21, 1) -> 2026-05-18; (2020, 53, 1) -> 2020-12-28
        row("2621", "2026-05-18", "2026-05-24", "week 21: 18 May 2026 to 24 May 2026");
        row("25E14", "2025-05-14", "2025-05-14", "month E: 14 May 2025");
        row("14E25", "2025-05-14", "2025-05-14", "month E: 14 May 2025");
        row("26E", "2026-05-01", "2026-05-31", "month E: May 2026");
        row("25L", "2025-12-01", "2025-12-31", "month L: December 2025");
        row("25M", "2025-12-01", "2025-12-31", "month M: December 2025");
        // Nothing but a year and day of the last digit fits, and it is offered, not taken.
        row("H2291", "2022-10-18", "2022-10-18", "day 291 of 2022: 18 October 2022");
        row("ABC", "", "", "");
        row("", "", "", "");
        row("99999999", "", "", "");
    }
    void mostPlausible_isFirst()
    {
        QFETCH(QString, lot);
        QFETCH(QString, from);
        QFETCH(QString, to);
        QFETCH(QString, words);
        const auto dates = lotDates(lot.toStdString(), context());
        if (from.isEmpty()) {
            QVERIFY2(dates.empty(), qPrintable(offered(dates)));
            return;
        }
        QVERIFY(!dates.empty());
        QCOMPARE(QString::fromStdString(dates.front().words), words);
        QCOMPARE(QString::fromStdString(formatDate(dates.front().days.low)), from);
        QCOMPARE(QString::fromStdString(formatDate(dates.front().days.high)), to);
    }

    // ISO 8601: every day of 2011 to 2026 written as an ordinal date is offered as that day; the calendar is
    // std::chrono's own, reached by counting days and not by the reader's way.
    void everyDay_isFoundByItsOrdinalDate()
    {
        int tried = 0;
        for (sys_days day { year { 2012 } / 1 / 1 }; day <= sys_days { today }; day += days { 1 }) {
            const Date date { day };
            const int ordinal = static_cast<int>((day - sys_days { date.year() / 1 / 1 }).count()) + 1;
            const auto lot = QStringLiteral("%1%2S")
                                 .arg(static_cast<int>(date.year()) % 100, 2, 10, QChar(u'0'))
                                 .arg(ordinal, 3, 10, QChar(u'0'));
            const auto dates = lotDates(lot.toStdString(), context());
            QVERIFY2(offers(dates, date), qPrintable(lot + QStringLiteral(": ") + offered(dates)));
            ++tried;
        }
        QCOMPARE(tried, 5438); // python3: (date(2026, 11, 20) - date(2012, 1, 1)).days + 1
    }

    // Every Monday's week by ISO 8601, the week's number counted by the Thursdays of its year.
    void everyWeek_beginsOnItsMonday()
    {
        int week = 0;
        Date lastThursday { year { 2011 } / 12 / 29 };
        for (sys_days monday { year { 2012 } / 1 / 2 }; monday + days { 6 } <= sys_days { today };
            monday += days { 7 }) {
            const Date thursday { monday + days { 3 } };
            week = thursday.year() == lastThursday.year() ? week + 1 : 1;
            lastThursday = thursday;
            const auto lot = QStringLiteral("%1%2")
                                 .arg(static_cast<int>(thursday.year()) % 100, 2, 10, QChar(u'0'))
                                 .arg(week, 2, 10, QChar(u'0'));
            const auto dates = lotDates(lot.toStdString(), context());
            QVERIFY2(offers(dates, Date { monday }), qPrintable(lot + QStringLiteral(": ") + offered(dates)));
        }
        QCOMPARE(
            week, 46); // the week of 9 November 2026; python3: date(2026, 11, 9).isocalendar() -> 2026, 46
    }

    void nothingIsOfferedThatCannotBe()
    {
        // 2026 has a week 53, still to come; 2025 has none; 2020 had one (python3: date.fromisocalendar).
        QVERIFY(!offers(lotDates("2653", context()), Date { year { 2026 } / 12 / 28 }));
        QVERIFY(!offers(lotDates("2553", context()), Date { year { 2025 } / 12 / 29 }));
        QVERIFY(offers(lotDates("2053", context()), Date { year { 2020 } / 12 / 28 }));
        QVERIFY(!offers(lotDates("26325", context()), Date { year { 2026 } / 11 / 21 })); // tomorrow
        QVERIFY(offers(lotDates("26324", context()), today));
        QVERIFY(!offers(lotDates("25366", context()), Date { year { 2026 } / 1 / 1 })); // no leap year
        QVERIFY(lotDates("26000", context()).empty() || !offers(lotDates("26000", context()), today));
        QVERIFY(!offers(lotDates("09145", context()), Date { year { 2009 } / 5 / 25 })); // too old
        // A best-before of 1 March 2026 on the same label: not made in May.
        const auto before = lotDates("26145", context({}, Date { year { 2026 } / 3 / 1 }));
        QVERIFY2(!offers(before, Date { year { 2026 } / 5 / 25 }), qPrintable(offered(before)));
    }

    void olderIsLessPlausible()
    {
        const auto fresh = lotDates("26145", context());
        const auto old = lotDates("19145", context());
        QVERIFY(!fresh.empty() && !old.empty());
        QVERIFY(fresh.front().plausibility > old.front().plausibility);
        // What would be ten years old one way and new the other is new first: 12 October 2025, not 2012.
        const auto both = lotDates("121025", context());
        QVERIFY2(both.size() > 1, qPrintable(offered(both)));
        QVERIFY2(both.front().days.low > Date(year { 2025 } / 1 / 1), qPrintable(offered(both)));
    }

    void ambiguous_offersAll_andWhatWasChosenLastTimeComesFirst()
    {
        const auto dates = lotDates("050426", context());
        QVERIFY2(
            offers(dates, Date { year { 2026 } / 4 / 5 }) && offers(dates, Date { year { 2026 } / 5 / 4 }),
            qPrintable(offered(dates)));
        QVERIFY(!dates.front().asLastTime);
        const auto chosen = std::ranges::find_if(
            dates, [](const LotDate& d) { return d.days.low == Date { year { 2026 } / 5 / 4 }; });
        QVERIFY(chosen != dates.begin());
        // The next bottle of that material, its code read in the same way.
        const auto next = lotDates("060726", context(chosen->key));
        QCOMPARE(QString::fromStdString(formatDate(next.front().days.low)), QStringLiteral("2026-06-07"));
        QVERIFY(next.front().asLastTime);
        QCOMPARE(next.front().manner, std::string("month, day and year"));
        QCOMPARE(lotDateManner(chosen->key), next.front().manner);
        QCOMPARE(std::ranges::count_if(next, &LotDate::asLastTime), 1);
        // A code the chosen way does not fit is judged as if nothing had been chosen.
        const auto other = lotDates("26145", context(chosen->key));
        QVERIFY(!other.empty() && !other.front().asLastTime);
        QVERIFY(lotDateManner("no such key").empty() && lotDateManner("").empty());
    }

    // 5 May either way: one day, one answer, in the order that was chosen.
    void oneDayReadTwoWays_isOneAnswer()
    {
        const auto dates = lotDates("050526", context());
        std::set<std::pair<Date, Date>> days;
        for (const LotDate& date : dates)
            QVERIFY2(days.insert({ date.days.low, date.days.high }).second, qPrintable(offered(dates)));
        const auto again = lotDates("050526", context("MMDDYY@0"));
        QVERIFY(again.front().asLastTime);
        QCOMPARE(again.front().manner, std::string("month, day and year"));
    }

    void lettersSkippingI_shiftFromJ()
    {
        // J is the tenth letter with I, the ninth month without it.
        const auto dates = lotDates("25J07", context());
        QVERIFY2(
            offers(dates, Date { year { 2025 } / 10 / 7 }) && offers(dates, Date { year { 2025 } / 9 / 7 }),
            qPrintable(offered(dates)));
        QVERIFY(offers(lotDates("25I07", context()), Date { year { 2025 } / 9 / 7 }));
        QCOMPARE(lotDates("25H07", context()).front().days.low, Date(year { 2025 } / 8 / 7));
    }

    void anyText_isAnsweredWithinBounds()
    {
        QRandomGenerator random(20261120);
        const QByteArray alphabet = "0123456789ABCDEFGHIJKLM-/. #\x1d\xff";
        for (int i = 0; i < 20'000; ++i) {
            std::string lot;
            for (int n = random.bounded(60); n > 0; --n)
                lot += alphabet[random.bounded(static_cast<int>(alphabet.size()))];
            const auto dates = lotDates(lot, context());
            QVERIFY(dates.size() <= 6);
            for (const LotDate& date : dates) {
                QVERIFY(date.days.low.ok() && date.days.high.ok() && date.days.low <= date.days.high);
                QVERIFY2(date.days.low <= today, lot.c_str());
                QVERIFY(date.plausibility > 0 && date.plausibility <= 1);
                QVERIFY(!date.words.empty() && !date.read.empty());
                QCOMPARE(lotDateManner(date.key), date.manner);
            }
        }
    }
};

QTEST_APPLESS_MAIN(LotDateTest)
#include "tst_lotdate.moc"
