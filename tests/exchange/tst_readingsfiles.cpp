#include <QDir>
#include <QTest>

#include <algorithm>

#include "exchange/readingszone.h"
#include "readingstext.h"
#include "support/csvrows.h"

using namespace gw;
using namespace gw::test;

namespace {

QString folder() { return QStringLiteral(GW_TEST_DATA "/exchange/readings/"); }

} // namespace

class ReadingsFiles : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyWayOfWriting_isRead_data()
    {
        QTest::addColumn<CsvRow>("row");
        for (const CsvRow& row : readCsvRows(folder() + QStringLiteral("good.csv")))
            QTest::newRow(qPrintable(row[QStringLiteral("file")])) << row;
    }
    void everyWayOfWriting_isRead()
    {
        QFETCH(CsvRow, row);
        const auto file
            = importFile(folder() + row[QStringLiteral("file")] + QStringLiteral(".csv"), berlin());
        QVERIFY2(file, file ? "" : file.error().sentence.c_str());
        QCOMPARE(file->read.rows, row[QStringLiteral("rows")].toLongLong());
        QCOMPARE(file->read.taken, row[QStringLiteral("taken")].toLongLong());
        QCOMPARE(file->read.setAside, file->read.rows - file->read.taken);
        QVERIFY(!file->readings.empty());
        auto readings = file->readings;
        std::sort(readings.begin(), readings.end(), [](auto& a, auto& b) { return a.at < b.at; });
        const auto same = [&](const Reading& reading, const char16_t* at, const char16_t* celsius) {
            const QString text = row[QString::fromUtf16(at)];
            const double value = row[QString::fromUtf16(celsius)].toDouble();
            if (formatMoment(reading.at) != text.toStdString())
                qWarning("%s is not %s", formatMoment(reading.at).c_str(), qPrintable(text));
            return formatMoment(reading.at) == text.toStdString()
                && std::abs(reading.temperature.value - value) < 1e-3;
        };
        QVERIFY(same(readings.front(), u"first", u"first_c"));
        QVERIFY(same(readings.back(), u"last", u"last_c"));
        const QString humidity = row[QStringLiteral("first_rh")];
        QCOMPARE(readings.front().humidity.has_value(), !humidity.isEmpty());
        if (!humidity.isEmpty())
            QCOMPARE(*readings.front().humidity, humidity.toDouble());
        QCOMPARE(file->read.from.value(), readings.front().at);
        QCOMPARE(file->read.to.value(), readings.back().at);
    }

    void everyGoodFile_isInTheTable()
    {
        QStringList known { QStringLiteral("good"), QStringLiteral("bad"), QStringLiteral("wall_times") };
        for (const CsvRow& row : readCsvRows(folder() + QStringLiteral("good.csv")))
            known.append(row[QStringLiteral("file")]);
        for (const QFileInfo& file : QDir(folder()).entryInfoList({ QStringLiteral("*.csv") }, QDir::Files))
            QVERIFY2(known.contains(file.baseName()), qPrintable(file.fileName()));
    }

    void badFile_isRefusedWithItsNameAndLine_data()
    {
        QTest::addColumn<QString>("file");
        QTest::addColumn<QString>("says");
        for (const CsvRow& row : readCsvRows(folder() + QStringLiteral("bad.csv")))
            QTest::newRow(qPrintable(row[QStringLiteral("file")]))
                << row[QStringLiteral("file")] + QStringLiteral(".csv") << row[QStringLiteral("says")];
    }
    void badFile_isRefusedWithItsNameAndLine()
    {
        QFETCH(QString, file);
        QFETCH(QString, says);
        auto choices = berlin();
        choices.unitWhereSilent = DegreeUnit::Celsius;
        const auto got = importFile(folder() + QStringLiteral("bad/") + file, choices);
        QVERIFY(!got);
        QCOMPARE(got.error().code, ErrorCode::BadInput);
        const QString sentence = QString::fromStdString(got.error().sentence);
        QVERIFY2(sentence.startsWith(file), qPrintable(sentence));
        QVERIFY2(sentence.contains(says), qPrintable(sentence));
        QVERIFY(sentence.endsWith(u'.'));
    }

    void missingFile_isUnreadable()
    {
        const auto got = importFile(folder() + QStringLiteral("nowhere.csv"), berlin());
        QVERIFY(!got);
        QCOMPARE(got.error().code, ErrorCode::FileUnreadable);
        QCOMPARE(importFile(folder(), berlin()).error().code, ErrorCode::FileUnreadable);
    }

    // Checked with awk and R over the same files (tests/data/weather): 1461 days, lowest -7.1, highest 35.6,
    // mean of all lows and highs 12.336927 C.
    void publicDays_areReadWhole()
    {
        const auto file = importFile(QStringLiteral(GW_TEST_DATA "/weather/public-days.csv"), berlin());
        QVERIFY2(file, file ? "" : file.error().sentence.c_str());
        QVERIFY(file->read.daily);
        QCOMPARE(file->read.taken, 1461);
        QCOMPARE(file->days.size(), std::size_t { 1461 });
        QCOMPARE(file->readings.size(), std::size_t { 2922 });
        double sum = 0;
        double low = 100;
        double high = -100;
        for (const DayReading& day : file->days) {
            sum += day.low.value + day.high.value;
            low = std::min(low, day.low.value);
            high = std::max(high, day.high.value);
        }
        QCOMPARE(low, -7.1);
        QCOMPARE(high, 35.6);
        QVERIFY(std::abs(sum / 2922 - 12.336927) < 5e-7);
        QCOMPARE(file->days.front().day, Date { std::chrono::January / 1 / 2012 });
        QCOMPARE(file->days.back().day, Date { std::chrono::December / 31 / 2015 });
    }

    // The same check: 8759 hours, mean 11.127617 C.
    void publicHours_areReadWhole()
    {
        ReadingsChoices choices;
        const auto file = importFile(QStringLiteral(GW_TEST_DATA "/weather/public-hours.csv"), choices);
        QVERIFY2(file, file ? "" : file.error().sentence.c_str());
        QCOMPARE(file->read.taken, 8759);
        QCOMPARE(file->read.setAside, 0);
        double sum = 0;
        for (const Reading& reading : file->readings)
            sum += reading.temperature.value;
        QVERIFY(std::abs(sum / 8759 - 11.127617) < 5e-7);
        QCOMPARE(file->readings.front().at, moment("2010-01-01T01:00:00Z"));
    }

    // Python's zoneinfo over the tz database: wall_times.csv.
    void wallTimes_meanWhatTheTzDatabaseSays()
    {
        int checked = 0;
        for (const CsvRow& row : readCsvRows(folder() + QStringLiteral("wall_times.csv"))) {
            const auto wall = moment(qPrintable(row[QStringLiteral("wall")]));
            const WallClock clock(row[QStringLiteral("zone")].toStdString(), readingsNow);
            QStringList got;
            const auto shown = clock.whenShowing(wall);
            for (int i = 0; i < shown.count; ++i)
                got.append(QString::fromStdString(formatMoment(shown.at[std::size_t(i)])));
            if (got.join(u' ') != row[QStringLiteral("utc")])
                qWarning("%s", qPrintable(row[QStringLiteral("zone")] + u' ' + row[QStringLiteral("wall")]));
            QCOMPARE(got.join(u' '), row[QStringLiteral("utc")]);
            ++checked;
        }
        QVERIFY(checked > 400);
    }
};

QTEST_GUILESS_MAIN(ReadingsFiles)
#include "tst_readingsfiles.moc"
