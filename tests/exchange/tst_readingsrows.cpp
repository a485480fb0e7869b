#include <QTest>

#include "readingstext.h"

using namespace gw;
using namespace gw::test;

namespace {

QByteArray rows(std::initializer_list<const char*> lines, const char* header = "time,temp C")
{
    QByteArray text(header);
    for (const char* line : lines)
        text += QByteArray("\n") + line;
    return text + "\n";
}

QString allMoments(const Imported& file)
{
    QStringList moments;
    for (const Reading& reading : file.readings)
        moments.append(QString::fromStdString(formatMoment(reading.at)).mid(5, 11));
    return moments.join(u' ');
}

} // namespace

class ReadingsRows : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void faultyRow_isSetAsideWithItsLineAndReason_data()
    {
        QTest::addColumn<QByteArray>("row");
        QTest::addColumn<QString>("why");
        const auto add = [](const char* name, const char* row, const char* why) {
            QTest::newRow(name) << QByteArray(row) << QString::fromUtf8(why);
        };
        add("500 C", "2026-03-01 12:00,500",
            "500 \xC2\xB0"
            "C cannot be right");
        add("-61 C", "2026-03-01 12:00,-61", "cannot be right");
        add("80.1 C", "2026-03-01 12:00,80.1", "cannot be right");
        add("500 with its unit", "2026-03-01 12:00,500 F",
            "260 \xC2\xB0"
            "C cannot be right");
        add("year 0201", "0201-03-01 12:00,18.5", "The year 201 cannot be right");
        add("year 1970", "1970-01-01 00:00,18.5", "The year 1970 cannot be right");
        add("years to come", "2126-03-01 12:00,18.5", "The year 2126 cannot be right");
        add("next week", "2026-12-02 12:00,18.5", "has not come yet");
        add("words", "2026-03-01 12:00,warm", "\"warm\" is no temperature");
        add("no figure", "2026-03-01 12:00,", "has no temperature");
        add("not a number", "2026-03-01 12:00,nan", "\"nan\" is no temperature");
        add("infinite", "2026-03-01 12:00,inf", "\"inf\" is no temperature");
        add("an exponent", "2026-03-01 12:00,1e1", "\"1e1\" is no temperature");
        add("a thousands mark", "2026-03-01 12:00,\"1,018.5\"", "is no temperature");
        add("the other decimal sign", "2026-03-01 12:00,\"18,5\"", "is no temperature");
        add("two points", "2026-03-01 12:00,18.5.1", "is no temperature");
        add("no such day", "2026-02-30 12:00,18.5", "cannot be read as a time");
        add("no such hour", "2026-03-01 25:00,18.5", "cannot be read as a time");
        add("half a time", "2026-03-01 12:,18.5", "cannot be read as a time");
        add("too short", "2026-03-01 12:00", "The row has 1 cells where the others have 2");
        add("in the leap of spring", "2026-03-29 02:30,18.5", "leap over this time");
        add("zero bytes", "2026-03-01 12:00,1?8", "is no temperature");
    }
    void faultyRow_isSetAsideWithItsLineAndReason()
    {
        QFETCH(QByteArray, row);
        QFETCH(QString, why);
        row.replace('?', '\0');
        // A note with a line break before it: the lines of the file count, not the rows.
        const QByteArray text = "time,temp C\n2026-03-01 10:00,18.5\n2026-03-01 11:00,18.6,\"a note\nof two "
                                "lines\"\n"
            + row + "\n2026-03-01 13:00,18.7\n";
        const auto file = importText(text, berlin());
        QVERIFY2(file, file ? "" : file.error().sentence.c_str());
        QCOMPARE(file->read.rows, 4);
        QCOMPARE(file->read.taken, 3);
        QCOMPARE(file->readings.size(), std::size_t { 3 });
        QCOMPARE(file->read.setAside, 1);
        const SetAside& aside = file->read.listed.front();
        QCOMPARE(aside.line, 5);
        QVERIFY2(QString::fromStdString(aside.why).contains(why), aside.why.c_str());
        QVERIFY(aside.why.ends_with('.'));
        QVERIFY(!aside.text.empty() && aside.text.find('\0') == std::string::npos);
    }

    void spike_isSetAside_data()
    {
        QTest::addColumn<QByteArray>("three");
        QTest::addColumn<bool>("spike");
        const auto add = [](const char* name, const char* a, const char* b, const char* c, bool spike) {
            QTest::newRow(name) << rows({ "2026-03-01 08:00,18.0", a, b, c, "2026-03-01 14:00,18.0" })
                                << spike;
        };
        add("up", "2026-03-01 10:00,18", "2026-03-01 10:10,36", "2026-03-01 10:20,20", true);
        add("down", "2026-03-01 10:00,18", "2026-03-01 10:10,-10", "2026-03-01 10:20,18", true);
        add("hourly", "2026-03-01 10:00,18", "2026-03-01 11:00,36", "2026-03-01 12:00,20", true);
        add("not far enough", "2026-03-01 10:00,18", "2026-03-01 10:10,33", "2026-03-01 10:20,18", false);
        add("neighbours apart", "2026-03-01 10:00,14", "2026-03-01 10:10,34", "2026-03-01 10:20,18", false);
        add("a step that stays", "2026-03-01 10:00,10", "2026-03-01 10:10,30", "2026-03-01 10:20,30", false);
        add("neighbours hours away", "2026-03-01 09:00,18", "2026-03-01 10:10,34", "2026-03-01 12:20,18",
            false);
    }
    void spike_isSetAside()
    {
        QFETCH(QByteArray, three);
        QFETCH(bool, spike);
        const auto file = importText(three, berlin());
        QVERIFY(file);
        QCOMPARE(file->read.taken, spike ? 4 : 5);
        QCOMPARE(file->readings.size(), std::size_t(file->read.taken));
        if (spike) {
            QCOMPARE(file->read.listed.front().line, 4);
            QVERIFY(file->read.listed.front().why.starts_with("A spike: "));
        }
    }

    void spike_isSeenAcrossBatches()
    {
        QByteArray text = "time,temp C\n";
        const auto spikes = { 4094, 4095, 4096, 4097, 8191, 8192, 8193, 11999 };
        for (int i = 0; i < 12000; ++i) {
            const Moment at = moment("2026-01-01T00:00:00Z") + std::chrono::minutes(i);
            const bool spike
                = i != 11999 && i % 2 == 0 && std::find(spikes.begin(), spikes.end(), i) != spikes.end();
            text += QByteArray::fromStdString(formatMoment(at)) + (spike ? ",60.0\n" : ",18.0\n");
        }
        const auto file = importText(text, berlin());
        QVERIFY(file);
        QCOMPARE(file->read.setAside, 3);
        for (const Reading& reading : file->readings)
            QCOMPARE(reading.temperature.value, 18.0);
    }

    void list_keepsTheFirstTwoHundredInOrder()
    {
        QByteArray text = "time,temp C\n2026-01-01T00:00:00Z,18\n";
        for (int i = 1; i < 1000; ++i) {
            const Moment at = moment("2026-01-01T00:00:00Z") + std::chrono::minutes(i);
            text += QByteArray::fromStdString(formatMoment(at))
                + (i % 3 == 0      ? ",x\n"
                        : i == 100 ? ",60\n"
                                   : ",18\n");
        }
        const auto file = importText(text, berlin());
        QVERIFY(file);
        QVERIFY(file->read.setAside > 300);
        QCOMPARE(file->read.setAside + file->read.taken, file->read.rows);
        QCOMPARE(file->read.listed.size(), std::size_t { 200 });
        QVERIFY(std::is_sorted(file->read.listed.begin(), file->read.listed.end(),
            [](auto& a, auto& b) { return a.line < b.line; }));
    }

    void doubledHour_isToldApartByOrder_data()
    {
        QTest::addColumn<QString>("zone");
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QString>("utc");
        const auto add = [](const char* name, const char* zone, const QByteArray& text, const char* utc) {
            QTest::newRow(name) << QString::fromLatin1(zone) << text << QString::fromLatin1(utc);
        };
        add("Europe, half hours", "Europe/Berlin",
            rows({ "2026-10-25 01:30,4", "2026-10-25 02:00,4", "2026-10-25 02:30,4", "2026-10-25 02:00,4",
                "2026-10-25 02:30,4", "2026-10-25 03:00,4" }),
            "10-24T23:30 10-25T00:00 10-25T00:30 10-25T01:00 10-25T01:30 10-25T02:00");
        add("Europe, hours", "Europe/Berlin",
            rows({ "2026-10-25 01:15,4", "2026-10-25 02:15,4", "2026-10-25 02:15,4", "2026-10-25 03:15,4" }),
            "10-24T23:15 10-25T00:15 10-25T01:15 10-25T02:15");
        add("America", "America/New_York",
            rows({ "10/31/2026 11:30 PM,4", "11/01/2026 12:30 AM,4", "11/01/2026 1:30 AM,4",
                "11/01/2026 1:00 AM,4", "11/01/2026 2:00 AM,4" }),
            "11-01T03:30 11-01T04:30 11-01T05:30 11-01T06:00 11-01T07:00");
        add("the spring of Europe", "Europe/Berlin", rows({ "2026-03-29 01:59,4", "2026-03-29 03:00,4" }),
            "03-29T00:59 03-29T01:00");
        add("an offset wins", "Europe/Berlin",
            rows({ "2026-10-25 02:30+01:00,4", "2026-10-25 02:30 +0200,4", "2026-10-25 02:30Z,4" }),
            "10-25T01:30 10-25T00:30 10-25T02:30");
        add("half an hour of daylight saving", "Australia/Lord_Howe",
            rows({ "2026-04-05 01:20,4", "2026-04-05 01:50,4", "2026-04-05 01:50,4", "2026-04-05 02:20,4" }),
            "04-04T14:20 04-04T14:50 04-04T15:20 04-04T15:50");
        add("seconds since 1970 know no zone", "Europe/Berlin", rows({ "1792888200,4", "1792891800,4" }),
            "10-25T00:30 10-25T01:30");
    }
    void doubledHour_isToldApartByOrder()
    {
        QFETCH(QString, zone);
        QFETCH(QByteArray, text);
        QFETCH(QString, utc);
        ReadingsChoices choices;
        choices.zone = zone.toStdString();
        const auto file = importText(text, choices);
        QVERIFY2(file, file ? "" : file.error().sentence.c_str());
        QCOMPARE(allMoments(*file), utc);
    }

    void fileThatBeginsInADoubledHour_takesOnlyWhatIsCertain()
    {
        const auto file = importText(rows({ "2026-10-25 02:30,4", "2026-10-25 02:50,4", "2026-10-25 02:10,4",
                                         "2026-10-25 02:30,4", "2026-10-25 03:00,4", "2026-10-25 04:00,4" }),
            berlin());
        QVERIFY(file);
        QCOMPARE(file->read.setAside, 2);
        QCOMPARE(allMoments(*file), QStringLiteral("10-25T01:10 10-25T01:30 10-25T02:00 10-25T03:00"));
    }

    void disorderAndRepeats_areTakenAndCounted()
    {
        const auto file
            = importText(rows({ "2026-03-01 10:00,18", "2026-03-01 12:00,18", "2026-03-01 11:00,18",
                             "2026-03-01 11:00,18", "2026-03-01 13:00,18" }),
                berlin());
        QVERIFY(file);
        QCOMPARE(file->read.taken, 5);
        QCOMPARE(file->read.outOfOrder, 1);
        QCOMPARE(file->read.repeated, 1);
    }

    void humidityOutOfRange_isDroppedAndTheTemperatureKept()
    {
        const auto file = importText(
            rows({ "2026-03-01 10:00,18,101", "2026-03-01 11:00,18,-1", "2026-03-01 12:00,18,x",
                     "2026-03-01 13:00,18,", "2026-03-01 14:00,18,0", "2026-03-01 15:00,18,100" },
                "time,temp C,RH"),
            berlin());
        QVERIFY(file);
        QCOMPARE(file->read.taken, 6);
        QCOMPARE(file->read.humidityDropped, 3);
        QVERIFY(!file->readings[3].humidity);
        QCOMPARE(file->readings[4].humidity.value(), 0.0);
        QCOMPARE(file->readings[5].humidity.value(), 100.0);
    }

    void dayWithLowAboveHigh_isSetAside()
    {
        const auto file
            = importText(rows({ "2026-01-10,-5,4", "2026-01-11,4,-5", "2026-01-12,x,4", "2026-01-13,-6,3" },
                             "date,temp_min_c,temp_max_c"),
                berlin());
        QVERIFY(file);
        QCOMPARE(file->read.taken, 2);
        QCOMPARE(file->days.size(), std::size_t { 2 });
        QCOMPARE(file->days[1].day, Date { std::chrono::January / 13 / 2026 });
        QCOMPARE(file->days[1].low, Celsius { -6 });
        QCOMPARE(allMoments(*file), QStringLiteral("01-10T04:00 01-10T14:00 01-13T04:00 01-13T14:00"));
        QCOMPARE(file->read.listed[0].why, "The low of the day is above its high.");
    }

    void orderThatTheRestOfTheFileContradicts_isRefusedWhole()
    {
        const TextFile file(rows({ "03/04/2026 10:00,18", "04/04/2026 10:00,18", "25/04/2026 10:00,18" }));
        auto look = lookAtReadings(file.path(), readingsNow, berlin());
        QVERIFY(look);
        look->layout.dateOrder = DateOrder::MonthFirst;
        const auto read = readReadings(file.path(), look->layout, readingsNow, {});
        QVERIFY(!read);
        QVERIFY2(read.error().sentence.find("line 4: \"25/04/2026 10:00\"") != std::string::npos,
            read.error().sentence.c_str());
        QVERIFY(read.error().sentence.ends_with("choose --date-order day-month."));
    }

    void errorOfTheTaker_endsTheReading()
    {
        const TextFile file(rows({ "2026-03-01 10:00,18", "2026-03-01 11:00,18" }));
        const auto look = lookAtReadings(file.path(), readingsNow, berlin());
        const auto read = readReadings(file.path(), look->layout, readingsNow,
            [](std::span<const Reading>) -> Result<void> { return fail(ErrorCode::StoreFull, "Full."); });
        QVERIFY(!read);
        QCOMPARE(read.error().code, ErrorCode::StoreFull);
    }

    void progress_runsToTheEndAndCanStop()
    {
        QByteArray text = "time,temp C\n";
        for (int i = 0; i < 60000; ++i)
            text += QByteArray::fromStdString(
                        formatMoment(moment("2026-01-01T00:00:00Z") + std::chrono::minutes(i)))
                + ",18.0\n";
        const TextFile file(text);
        const auto look = lookAtReadings(file.path(), readingsNow, berlin());
        QVERIFY(look);
        std::vector<std::int64_t> done;
        std::int64_t given = 0;
        const auto count = [&](std::span<const Reading> batch) -> Result<void> {
            given += std::int64_t(batch.size());
            return {};
        };
        const auto whole
            = readReadings(file.path(), look->layout, readingsNow, count, [&](auto at, auto total) {
                  done.push_back(at);
                  return total == text.size();
              });
        QVERIFY(whole);
        QVERIFY(!whole->cancelled);
        QCOMPARE(given, 60000);
        QVERIFY(done.size() > 3 && std::is_sorted(done.begin(), done.end()));
        QCOMPARE(done.back(), std::int64_t(text.size()));
        given = 0;
        const auto stopped
            = readReadings(file.path(), look->layout, readingsNow, count, [](auto, auto) { return false; });
        QVERIFY(stopped);
        QVERIFY(stopped->cancelled);
        QVERIFY(stopped->taken > 0 && stopped->taken < 60000);
        QCOMPARE(given, stopped->taken);
    }

    void endlessLine_isGivenUpAndTheNextRead()
    {
        QByteArray before = "time,temp C\n";
        for (int i = 0; i < 6000; ++i)
            before += "2026-03-01 09:00,18.5\n";
        const QByteArray text
            = before + QByteArray(3'000'000, '\0') + "\n2026-03-01 11:00,18.6\n2026-03-01 12:00,18.7\n";
        const auto file = importText(text, berlin());
        QVERIFY2(file, file ? "" : file.error().sentence.c_str());
        QCOMPARE(file->read.taken, 6002);
        QCOMPARE(file->read.setAside, 1);
        QCOMPARE(file->read.listed[0].line, 6002);
    }
};

QTEST_GUILESS_MAIN(ReadingsRows)
#include "tst_readingsrows.moc"
