#include <QTest>

#include <libical/ical.h>

#include "exchange/calendar.h"

using namespace gw;

/// The calendar file. Rules: RFC 5545 (lines of at most 75 octets ended by CRLF, UID and DTSTAMP in each
/// event, DATE values, a SEQUENCE that grows).
class TestCalendar : public QObject {
    Q_OBJECT

private:
    static Date day(unsigned month, unsigned dayOfMonth)
    {
        return Date { std::chrono::year { 2026 }, std::chrono::month { month },
            std::chrono::day { dayOfMonth } };
    }
    static std::vector<CalendarDay> someDays()
    {
        return { { "good-until-1@gluewright", day(5, 31), "White glue AB12 is good until today",
                     "400 g left, in the dry cupboard; use it, or test it, first\\ and \xc3\xa4 line\nmore.",
                     "good until" },
            { "order-2@gluewright", day(12, 31), "Order hide glue", "", "order" } };
    }

private Q_SLOTS:
    void lines_areShortAndEndAsTheyMust()
    {
        const std::string text = calendarText(someDays(), "Shop", startOf(day(3, 1)));
        QVERIFY(text.starts_with("BEGIN:VCALENDAR\r\n"));
        QVERIFY(text.ends_with("END:VCALENDAR\r\n"));
        std::size_t from = 0;
        for (std::size_t end = text.find("\r\n"); end != std::string::npos; end = text.find("\r\n", from)) {
            QVERIFY2(end - from <= 75, text.substr(from, end - from).c_str());
            QVERIFY(text.substr(from, end - from).find('\n') == std::string::npos);
            from = end + 2;
        }
    }

    void days_areReadBackAsTheyWere()
    {
        const auto days = someDays();
        const std::string text = calendarText(days, "Shop", startOf(day(3, 1)));
        icalcomponent* calendar = icalparser_parse_string(text.c_str());
        QVERIFY(calendar);
        QCOMPARE(icalcomponent_count_errors(calendar), 0);
        std::size_t index = 0;
        for (auto* event = icalcomponent_get_first_component(calendar, ICAL_VEVENT_COMPONENT); event;
            event = icalcomponent_get_next_component(calendar, ICAL_VEVENT_COMPONENT), ++index) {
            QCOMPARE(std::string(icalcomponent_get_uid(event)), days[index].uid);
            QCOMPARE(std::string(icalcomponent_get_summary(event)), days[index].title);
            const auto start = icalcomponent_get_dtstart(event);
            QVERIFY(start.is_date);
            QCOMPARE(static_cast<unsigned>(start.day), static_cast<unsigned>(days[index].day.day()));
            if (!days[index].text.empty())
                QCOMPARE(std::string(icalcomponent_get_description(event)), days[index].text);
        }
        QCOMPARE(index, days.size());
        icalcomponent_free(calendar);
        // The last day of a year ends on the first of the next (DTEND is the day after).
        QVERIFY(text.find("DTSTART;VALUE=DATE:20261231") != std::string::npos);
        QVERIFY(text.find("DTEND;VALUE=DATE:20270101") != std::string::npos);
    }

    void writtenAgain_isALaterRevisionOfTheSame()
    {
        const auto sequence
            = [](const std::string& text) { return std::stoi(text.substr(text.find("SEQUENCE:") + 9)); };
        const std::string before = calendarText(someDays(), "Shop", startOf(day(3, 1)));
        const std::string after = calendarText(someDays(), "Shop", startOf(day(3, 2)));
        QVERIFY(sequence(after) > sequence(before));
        QCOMPARE(before.substr(before.find("UID:"), 30), after.substr(after.find("UID:"), 30));
        QCOMPARE(calendarText(someDays(), "Shop", startOf(day(3, 1))), before);
    }

    void noDays_areACalendarStill()
    {
        const std::string text = calendarText({}, "", startOf(day(3, 1)));
        QVERIFY(text.find("VEVENT") == std::string::npos);
        QVERIFY(text.find("VERSION:2.0") != std::string::npos);
    }
};

QTEST_APPLESS_MAIN(TestCalendar)
#include "tst_calendar.moc"
