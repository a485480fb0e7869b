#include <QTest>

#include "readingstext.h"

using namespace gw;
using namespace gw::test;

namespace {

Result<ReadingsLook> look(const QByteArray& text, const ReadingsChoices& choices)
{
    const TextFile file(text);
    return lookAtReadings(file.path(), readingsNow, choices);
}

/// The doubt of a kind; null when there is none.
const Doubt* doubtOf(const ReadingsLook& look, DoubtKind kind)
{
    for (const Doubt& doubt : look.doubts)
        if (doubt.kind == kind)
            return &doubt;
    return nullptr;
}

constexpr auto ambiguous
    = "time,temp C\n03/04/2026 10:00,18.5\n03/04/2026 11:00,18.6\n05/06/2026 10:00,18.7\n";
constexpr auto unitless = "time,temperature\n2026-03-01 10:00,18.5\n2026-03-01 11:00,18.6\n";

} // namespace

class ReadingsLooks : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void datesThatFitTwoOrders_areAsked()
    {
        const auto got = look(ambiguous, berlin());
        QVERIFY(got);
        const Doubt* doubt = doubtOf(*got, DoubtKind::DateOrder);
        QVERIFY(doubt != nullptr);
        QVERIFY(!doubt->taken);
        QCOMPARE(doubt->choices, (std::vector<std::string> { "3 April 2026", "4 March 2026" }));
        QCOMPARE(doubt->values, (std::vector<std::string> { "day-month", "month-day" }));
        const auto refusal = unanswered(got->doubts, got->name);
        QVERIFY(refusal);
        QCOMPARE(QString::fromStdString(refusal->sentence),
            QStringLiteral(
                "readings.csv: \"03/04/2026 10:00\" could be 3 April 2026 or 4 March 2026, and no other "
                "date in the file tells. Which is it? Add --date-order day-month or --date-order "
                "month-day."));
        for (std::size_t i = 0; i < 2; ++i) {
            const auto again = importText(ambiguous, answered(berlin(), *doubt, i));
            QVERIFY2(again, again ? "" : again.error().sentence.c_str());
            QCOMPARE(
                again->read.from.value(), moment(i == 0 ? "2026-04-03T08:00:00Z" : "2026-03-04T09:00:00Z"));
        }
    }

    void timeAndHumidity_areTakenFromTheColumnsNamed()
    {
        constexpr auto text = "sent,taken,temp C,RH inside,wet\n"
                              "2026-03-01 12:00,2026-03-01 10:00,18.5,55,40\n"
                              "2026-03-01 13:00,2026-03-01 11:00,18.6,56,41\n";
        ReadingsChoices choices = berlin();
        choices.timeColumn = "Taken";
        choices.humidityColumn = "5";
        const auto got = look(text, choices);
        QVERIFY2(got, got ? "" : got.error().sentence.c_str());
        QCOMPARE(got->layout.timeColumn, std::size_t { 1 });
        QCOMPARE(got->layout.humidityColumn.value(), std::size_t { 4 });
        choices.humidityColumn.reset();
        QCOMPARE(look(text, choices)->layout.humidityColumn.value(), std::size_t { 3 });
        choices.humidityColumn = "damp";
        QVERIFY(look(text, choices).error().sentence.starts_with("readings.csv has no column \"damp\""));
    }

    void humidityOfWords_isRefused()
    {
        ReadingsChoices choices = berlin();
        choices.humidityColumn = "note";
        const auto got
            = look("time,temp C,note\n2026-03-01 10:00,18.5,dry\n2026-03-01 11:00,18.6,dry\n", choices);
        QVERIFY(!got);
        QCOMPARE(QString::fromStdString(got.error().sentence),
            QStringLiteral("readings.csv: the column \"note\" holds no figures of humidity; name another."));
    }

    void dateOrder_isSettledByTheFile_data()
    {
        QTest::addColumn<QByteArray>("dates"); // separated by commas
        QTest::addColumn<bool>("open");
        QTest::addColumn<int>("order");
        const auto row = [](const char* name, const char* dates, bool open, DateOrder order) {
            QTest::newRow(name) << QByteArray(dates) << open << int(order);
        };
        row("a day above twelve", "03/04/2026,25/04/2026", false, DateOrder::DayFirst);
        row("a day above twelve, second", "03/04/2026,04/25/2026", false, DateOrder::MonthFirst);
        row("the same day either way", "03/03/2026,04/04/2026", false, DateOrder::DayFirst);
        row("dots", "03.04.2026,05.04.2026", false, DateOrder::DayFirst);
        row("year first", "2026-03-04,2026-03-05", false, DateOrder::YearFirst);
        row("year first with slashes", "2026/03/04,2026/03/05", false, DateOrder::YearFirst);
        row("single digits", "3/4/2026,4/4/2026", true, DateOrder::DayFirst);
        row("two digits of a year, anything", "03/04/05,04/04/05", true, DateOrder::DayFirst);
        row("two digits of a year, year first", "26-03-14,26-03-15", true, DateOrder::DayFirst);
        row("two digits of a year, day above twelve and year to come", "14/03/28,15/03/28", false,
            DateOrder::YearFirst);
        row("an impossible date beside", "99/99/2026,25/04/2026", false, DateOrder::DayFirst);
    }
    void dateOrder_isSettledByTheFile()
    {
        QFETCH(QByteArray, dates);
        QFETCH(bool, open);
        QFETCH(int, order);
        QByteArray text = "time,temp C\n";
        for (const QByteArray& date : dates.split(','))
            text += date + " 10:00,18.5\n";
        const auto got = look(text, berlin());
        QVERIFY2(got, got ? "" : got.error().sentence.c_str());
        QCOMPARE(doubtOf(*got, DoubtKind::DateOrder) != nullptr, open);
        if (!open)
            QCOMPARE(int(got->layout.dateOrder), order);
    }

    void chosenOrderThatTheFileContradicts_isRefused()
    {
        auto choices = berlin();
        choices.dateOrder = DateOrder::MonthFirst;
        const auto got = look("time,temp C\n03/04/2026 10:00,18\n25/04/2026 10:00,18\n", choices);
        QVERIFY(!got);
        QVERIFY2(got.error().sentence.find("line 3: \"25/04/2026 10:00\"") != std::string::npos,
            got.error().sentence.c_str());
    }

    void unit_isAskedWhereNothingTells()
    {
        const auto got = look(unitless, berlin());
        QVERIFY(got);
        const Doubt* doubt = doubtOf(*got, DoubtKind::Unit);
        QVERIFY(doubt != nullptr);
        QVERIFY(!doubt->taken);
        const auto fahrenheit = importText(unitless, answered(berlin(), *doubt, 1));
        QVERIFY(fahrenheit);
        QVERIFY(std::abs(fahrenheit->readings.front().temperature.value - (18.5 - 32) / 1.8) < 1e-9);
        auto silent = berlin();
        silent.unitWhereSilent = DegreeUnit::Celsius;
        QVERIFY(doubtOf(*look(unitless, silent), DoubtKind::Unit) == nullptr);
        QVERIFY2(unanswered(got->doubts, got->name)->sentence.find("Add --unit C or --unit F.")
                != std::string::npos,
            unanswered(got->doubts, got->name)->sentence.c_str());
    }

    void unit_isFound_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<bool>("fahrenheit");
        const auto file = [](const char* name, const char* value) {
            return QByteArray("time,") + name + "\n2026-03-01 10:00," + value + "\n2026-03-01 11:00," + value
                + "\n";
        };
        for (const char* name : { "Temp (\xC2\xB0"
                                  "F)",
                 "temp_f", "tempF", "Temperature Fahrenheit", "T [degF]",
                 "Temp \xC2\xBA"
                 "F",
                 "\xE2\x84\x89" })
            QTest::newRow(name) << file(name, "18.5") << true;
        for (const char* name : { "Temp (\xC2\xB0"
                                  "C)",
                 "temp_c", "temperatureC", "Celsius", "T [deg C]", "\xE2\x84\x83" })
            QTest::newRow(name) << file(name, "18.5") << false;
        QTest::newRow("in the cells, F") << file("temperature", "65.3 F") << true;
        QTest::newRow("in the cells, C") << file("temperature",
            "18.5\xC2\xB0"
            "C") << false;
        QTest::newRow("above the header")
            << QByteArray("Temperature unit,F\n") + file("temperature", "50") << true;
        // A room of 68 degrees Celsius is none.
        QTest::newRow("by its values") << file("temperature", "68") << true;
    }
    void unit_isFound()
    {
        QFETCH(QByteArray, text);
        QFETCH(bool, fahrenheit);
        const auto got = look(text, berlin());
        QVERIFY2(got, got ? "" : got.error().sentence.c_str());
        QVERIFY(doubtOf(*got, DoubtKind::Unit) == nullptr);
        QCOMPARE(got->layout.unit == DegreeUnit::Fahrenheit, fahrenheit);
    }

    // One row with a clock gone wrong must not make a winter's week a year.
    void unit_isNotGuessedFromAStrayDate()
    {
        const auto got
            = look(QByteArray(unitless) + "0201-01-01 10:00,18.7\n2019-05-01 10:00,18.8\n", berlin());
        QVERIFY(got);
        QVERIFY(doubtOf(*got, DoubtKind::Unit) != nullptr);
    }

    void twoTemperatures_areAskedBetween()
    {
        const QByteArray text
            = "time,probe (C),ambient (C)\n2026-03-01 10:00,4.5,18.5\n2026-03-01 11:00,4.6,18.6\n";
        const auto got = look(text, berlin());
        QVERIFY(got);
        const Doubt* doubt = doubtOf(*got, DoubtKind::Column);
        QVERIFY(doubt != nullptr);
        QCOMPARE(doubt->choices, (std::vector<std::string> { "probe (C)", "ambient (C)" }));
        QVERIFY(importText(text, answered(berlin(), *doubt, 1))->readings.front().temperature
            == Celsius { 18.5 });
        auto named = berlin();
        named.column = "Probe (c)";
        QVERIFY(importText(text, named)->readings.front().temperature == Celsius { 4.5 });
        named.column = "shed";
        QVERIFY2(look(text, named).error().sentence.find("its columns are \"time\", \"probe (C)\"")
                != std::string::npos,
            look(text, named).error().sentence.c_str());
    }

    void zone_isTheShopsAndSaidSo()
    {
        const QByteArray text = "time,temp C\n2026-07-01 10:00,18.5\n2026-07-01 11:00,18.6\n";
        const auto got = importText(text, berlin());
        QVERIFY(got);
        const Doubt* doubt = doubtOf(got->look, DoubtKind::Zone);
        QVERIFY(doubt != nullptr);
        QCOMPARE(doubt->taken.value(), std::size_t { 0 });
        QCOMPARE(doubt->values, (std::vector<std::string> { "Europe/Berlin", "UTC" }));
        QCOMPARE(got->read.from.value(), moment("2026-07-01T08:00:00Z"));
        QCOMPARE(importText(text, answered(berlin(), *doubt, 1))->read.from.value(),
            moment("2026-07-01T10:00:00Z"));
        ReadingsChoices lost;
        lost.shopZone = "Nowhere/Atall";
        QVERIFY(!importText(text, lost));
        QVERIFY(importText(text, lost).error().sentence.find("--zone UTC") != std::string::npos);
    }

    void zone_isTakenFromTheFile_data()
    {
        QTest::addColumn<QByteArray>("header");
        QTest::addColumn<QString>("zone");
        QTest::newRow("UTC") << QByteArray("Time (UTC),temp C") << QStringLiteral("UTC");
        QTest::newRow("underscore") << QByteArray("time_utc,temp C") << QStringLiteral("UTC");
        QTest::newRow("GMT and hours")
            << QByteArray("\"Date Time, GMT-04:00\",temp C") << QStringLiteral("UTC-04:00");
        QTest::newRow("short") << QByteArray("Time (UTC+5:30),temp C") << QStringLiteral("UTC+05:30");
        QTest::newRow("above") << QByteArray("Time zone: UTC+1,\ntime,temp C") << QStringLiteral("UTC+01:00");
        QTest::newRow("above by name")
            << QByteArray("Time zone,Asia/Kathmandu\ntime,temp C") << QStringLiteral("Asia/Kathmandu");
    }
    void zone_isTakenFromTheFile()
    {
        QFETCH(QByteArray, header);
        QFETCH(QString, zone);
        const auto got = look(header + "\n2026-07-01 10:00,18.5\n2026-07-01 11:00,18.6\n", berlin());
        QVERIFY2(got, got ? "" : got.error().sentence.c_str());
        QVERIFY(doubtOf(*got, DoubtKind::Zone) == nullptr);
        QCOMPARE(QString::fromStdString(got->layout.zone), zone);
    }

    void zone_mustBeGivenWhereOrderCannotTellADoubledHour()
    {
        QByteArray text = "time,temp C\n";
        for (const char* time : { "05:00", "02:30", "04:00", "01:30", "03:30", "02:10" })
            text += QByteArray("2026-10-25 ") + time + ",4.5\n";
        const auto got = look(text, berlin());
        QVERIFY(got);
        const Doubt* doubt = doubtOf(*got, DoubtKind::Zone);
        QVERIFY(doubt != nullptr);
        QVERIFY(!doubt->taken);
        QCOMPARE(importText(text, answered(berlin(), *doubt, 1))->read.taken, 6);
        // Whoever insists on the zone gets what is certain.
        const auto insisted = importText(text, answered(berlin(), *doubt, 0));
        QVERIFY(insisted);
        QCOMPARE(insisted->read.taken, 4);
        QCOMPARE(insisted->read.setAside, 2);
    }

    void clockThatNeverChanges_isOffered()
    {
        const auto got = look(
            "time,temp C\n2026-03-29 01:30,4.5\n2026-03-29 02:30,4.6\n2026-03-29 03:30,4.7\n", berlin());
        QVERIFY(got);
        const Doubt* doubt = doubtOf(*got, DoubtKind::Zone);
        QVERIFY(doubt != nullptr);
        QCOMPARE(doubt->taken.value(), std::size_t { 0 });
        QCOMPARE(doubt->values, (std::vector<std::string> { "Europe/Berlin", "UTC+01:00", "UTC" }));
    }

    void options_takeTheirValuesOnly()
    {
        ReadingsChoices choices;
        QVERIFY(setChoice(choices, DoubtKind::DateOrder, "Month-Day"));
        QCOMPARE(choices.dateOrder.value(), DateOrder::MonthFirst);
        QVERIFY(!setChoice(choices, DoubtKind::DateOrder, "backwards"));
        QVERIFY(setChoice(choices, DoubtKind::Unit, "f"));
        QVERIFY(!setChoice(choices, DoubtKind::Unit, "K"));
        QVERIFY(setChoice(choices, DoubtKind::Zone, "+5:30"));
        QCOMPARE(choices.zone.value(), "UTC+05:30");
        QVERIFY(!setChoice(choices, DoubtKind::Zone, "+19:00"));
        QVERIFY(!setChoice(choices, DoubtKind::Zone, "Atlantis"));
        QCOMPARE(optionOf(DoubtKind::Column), "--column");
    }

    void sample_showsTheFirstRows()
    {
        const auto got = look(unitless, berlin());
        QVERIFY(got);
        QCOMPARE(got->sample.size(), std::size_t { 2 });
        QCOMPARE(got->sample[0], (std::vector<std::string> { "2026-03-01 10:00", "18.5" }));
        QCOMPARE(got->bytes, qint64(QByteArray(unitless).size()));
    }
};

QTEST_GUILESS_MAIN(ReadingsLooks)
#include "tst_readingslook.moc"
