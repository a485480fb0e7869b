#include <QFile>
#include <QStringEncoder>
#include <QTest>
#include <QTimeZone>

#include <algorithm>
#include <cmath>
#include <random>

#include "readingstext.h"

using namespace gw;
using namespace gw::test;

namespace {

/// A reading each half hour over the two changes of clocks of a year.
std::vector<Reading> truth()
{
    std::vector<Reading> readings;
    for (const char* start : { "2026-03-26T12:00:00Z", "2026-10-22T12:00:00Z" })
        for (int i = 0; i < 220; ++i) {
            const Moment at = moment(start) + std::chrono::minutes(30 * i);
            const double celsius = std::round((8 + 14 * std::sin(i * 0.11)) * 10) / 10;
            readings.push_back({ at, { celsius }, 40.0 + i % 50 });
        }
    return readings;
}

/// How one logger might write.
struct Manner {
    char delimiter = ',';
    char decimal = '.';
    int date = 0; ///< ISO, day first, month first, dots, month's name
    bool twelve = false;
    bool fahrenheit = false;
    int zone = 0; ///< Z, offsets, in the header, the shop's own
    int encoding = 0; ///< UTF-8, with mark, UTF-16 either way, ISO 8859-1
    bool preamble = false;
    bool crlf = false;
    bool newestFirst = false;
    bool twoColumns = false;
    bool humidityFirst = false;

    QString named() const
    {
        return QStringLiteral("%1 %2 date %3 %4 %5 zone %6 encoding %7%8%9")
            .arg(QLatin1Char(delimiter))
            .arg(QLatin1Char(decimal))
            .arg(date)
            .arg(twelve ? QStringLiteral("am") : QStringLiteral("24"), fahrenheit ? u"F" : u"C")
            .arg(zone)
            .arg(encoding)
            .arg(newestFirst ? QStringLiteral(" newest first") : QString(),
                twoColumns ? QStringLiteral(" two columns") : QString());
    }
};

QString quoted(const QString& cell, char delimiter)
{
    return cell.contains(QLatin1Char(delimiter)) ? u'"' + cell + u'"' : cell;
}

QByteArray written(std::vector<Reading> readings, const Manner& manner)
{
    static const QLocale english = QLocale::c();
    const QTimeZone berlinZone("Europe/Berlin");
    if (manner.newestFirst)
        std::reverse(readings.begin(), readings.end());
    const QString end = manner.crlf ? QStringLiteral("\r\n") : QStringLiteral("\n");
    const QString d(QLatin1Char(manner.delimiter));
    QString text;
    if (manner.preamble)
        text += QStringLiteral("Serial") + d + QStringLiteral("2217") + end
            + QStringLiteral("Interval: 30 min") + end + end;
    const QString temperature = manner.fahrenheit ? QStringLiteral("Temperature (\u00B0F)")
                                                  : QStringLiteral("Temperature (\u00B0C)");
    const QString zone = manner.zone == 2 ? QStringLiteral(" UTC+02:00") : QString();
    QStringList header { manner.twoColumns ? QStringLiteral("Date") : QStringLiteral("Date time") + zone };
    if (manner.twoColumns)
        header += QStringLiteral("Time") + zone;
    header += manner.humidityFirst ? QStringList { QStringLiteral("RH"), temperature }
                                   : QStringList { temperature, QStringLiteral("RH") };
    text += header.join(d) + end;
    const char* const dates[] = { "yyyy-MM-dd", "dd/MM/yyyy", "M/d/yyyy", "d.M.yyyy", "dd MMM yyyy" };
    for (const Reading& reading : readings) {
        const QDateTime utc = QDateTime::fromMSecsSinceEpoch(toMilliseconds(reading.at), QTimeZone::utc());
        QDateTime local = utc;
        QString offset;
        if (manner.zone == 0)
            offset = manner.twelve ? QStringLiteral(" Z") : QStringLiteral("Z");
        if (manner.zone == 1 || manner.zone == 3)
            local = utc.toTimeZone(berlinZone);
        if (manner.zone == 1)
            offset = local.offsetFromUtc() == 3600 ? QStringLiteral("+01:00") : QStringLiteral("+02:00");
        if (manner.zone == 2)
            local = utc.toOffsetFromUtc(7200);
        const QString date = english.toString(local.date(), QString::fromLatin1(dates[manner.date]));
        const QString time = english.toString(
            local.time(), manner.twelve ? QStringLiteral("h:mm:ss AP") : QStringLiteral("HH:mm:ss"));
        const auto number = [&](double value, int decimals) {
            QString cell = QString::number(value, 'f', decimals);
            return quoted(cell.replace(u'.', QLatin1Char(manner.decimal)), manner.delimiter);
        };
        const double value
            = manner.fahrenheit ? reading.temperature.value * 1.8 + 32 : reading.temperature.value;
        QStringList cells { manner.twoColumns ? date : date + u' ' + time + offset };
        if (manner.twoColumns)
            cells += time + offset;
        cells += manner.humidityFirst ? QStringList { number(*reading.humidity, 1), number(value, 2) }
                                      : QStringList { number(value, 2), number(*reading.humidity, 1) };
        text += cells.join(d) + end;
    }
    switch (manner.encoding) {
    case 1:
        return "\xEF\xBB\xBF" + text.toUtf8();
    case 2:
        return "\xFF\xFE" + QByteArray(QStringEncoder(QStringEncoder::Utf16LE).encode(text));
    case 3:
        return "\xFE\xFF" + QByteArray(QStringEncoder(QStringEncoder::Utf16BE).encode(text));
    case 4:
        return text.toLatin1();
    default:
        return text.toUtf8();
    }
}

bool sameReading(const Reading& a, const Reading& b, double tolerance)
{
    return a.at == b.at && std::abs(a.temperature.value - b.temperature.value) <= tolerance;
}

} // namespace

class ReadingsProperties : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void readings_areTheSameHoweverTheyAreWritten()
    {
        const auto expected = truth();
        std::mt19937 random(20261125);
        const auto pick = [&](int count) { return int(random() % unsigned(count)); };
        for (int round = 0; round < 250; ++round) {
            Manner manner;
            manner.delimiter = ",;\t|"[pick(4)];
            manner.decimal = ".,"[pick(2)];
            manner.date = pick(5);
            manner.twelve = pick(2) == 0;
            manner.fahrenheit = pick(2) == 0;
            manner.zone = pick(4);
            manner.encoding = pick(5);
            manner.preamble = pick(2) == 0;
            manner.crlf = pick(2) == 0;
            manner.newestFirst = pick(3) == 0;
            manner.twoColumns = pick(3) == 0;
            manner.humidityFirst = pick(3) == 0;
            const auto file = importText(written(expected, manner), berlin());
            QVERIFY2(file,
                qPrintable(
                    manner.named() + u' ' + QString::fromStdString(file ? "" : file.error().sentence)));
            auto readings = file->readings;
            std::sort(readings.begin(), readings.end(), [](auto& a, auto& b) { return a.at < b.at; });
            const bool same = std::equal(readings.begin(), readings.end(), expected.begin(), expected.end(),
                [](auto& a, auto& b) { return sameReading(a, b, 0.004) && a.humidity == b.humidity; });
            QVERIFY2(same, qPrintable(manner.named() + QStringLiteral(" %1").arg(readings.size())));
            QCOMPARE(file->read.setAside, 0);
        }
    }

    void fileCutAnywhere_givesNoWrongReading_data()
    {
        QTest::addColumn<QByteArray>("text");
        for (const char* name : { "iso_utc", "semicolons_latin1", "twelve_hours_fahrenheit", "utf16",
                 "utf16_big_no_mark", "seconds_since_1970", "milliseconds_since_1970", "spreadsheet_days",
                 "offsets", "newest_first", "no_header", "two_digit_year", "month_names", "daily_fahrenheit",
                 "zone_in_header", "zone_above", "events_and_comments", "carriage_returns",
                 "midnight_tells_order", "separator_named", "bars_and_alarms" }) {
            QFile file(QStringLiteral(GW_TEST_DATA "/exchange/readings/%1.csv").arg(QLatin1String(name)));
            QVERIFY(file.open(QIODevice::ReadOnly));
            QTest::newRow(name) << file.readAll();
        }
        QTest::newRow("temperature before time")
            << QByteArray("temp C,time\n18.5,2026-03-01 9:50:00 AM\n-18.5,2026-03-01 10:10:30 "
                          "PM\n18.5,2026-03-02 11:00:00 PM\n");
        QTest::newRow("whole numbers") << QByteArray("time,temp C\n2026-03-01 10:00,18\n2026-03-01 10:30,7\n"
                                                     "2026-03-01 11:00,-12\n2026-03-01 12:00,12\n");
        QTest::newRow("decimals that vary") << QByteArray(
            "time,temp C\n2026-03-01 10:00,18.25\n2026-03-01 10:30,17\n2026-03-01 11:00,-12.5\n");
    }
    void fileCutAnywhere_givesNoWrongReading()
    {
        QFETCH(QByteArray, text);
        const auto whole = importText(text, berlin());
        QVERIFY2(whole, whole ? "" : whole.error().sentence.c_str());
        int read = 0;
        for (qsizetype length = 0; length < text.size(); ++length) {
            const auto cut = importText(text.first(length), berlin());
            if (!cut) {
                QCOMPARE(cut.error().code, ErrorCode::BadInput);
                continue;
            }
            ++read;
            // What a second decimal adds is less than loggers are true to.
            for (const Reading& reading : cut->readings)
                QVERIFY2(std::any_of(whole->readings.begin(), whole->readings.end(),
                             [&](auto& one) {
                                 return sameReading(one, reading, 0.1)
                                     && (!reading.humidity || one.humidity == reading.humidity);
                             }),
                    qPrintable(QStringLiteral("%1 bytes: %2 %3")
                            .arg(length)
                            .arg(QString::fromStdString(formatMoment(reading.at)))
                            .arg(reading.temperature.value)));
        }
        QVERIFY(read > 0);
    }

    void fileReadTwice_isTheSameTrace()
    {
        const QByteArray text = written(truth(), {});
        const auto once = importText(text, berlin());
        QVERIFY(once);
        const auto again = importText(text, berlin());
        QVERIFY(again);
        auto both = once->readings;
        both.insert(both.end(), again->readings.begin(), again->readings.end());
        const Trace a(once->readings);
        const Trace b(both);
        QVERIFY(std::ranges::equal(a.seconds(), b.seconds()));
        QVERIFY(std::ranges::equal(a.hundredths(), b.hundredths()));
    }

    // Bytes at random over good text: a sentence or readings within a logger's range, never a crash.
    void damagedFile_neverGivesAnImpossibleReading()
    {
        std::mt19937 random(7);
        QByteArray good = written(truth(), {});
        good.truncate(4000);
        for (int round = 0; round < 800; ++round) {
            QByteArray text = good;
            for (int i = 0; i < 1 + round % 12; ++i)
                text[qsizetype(random() % unsigned(text.size()))] = char(random() % 256);
            const auto got = importText(text, berlin());
            if (!got) {
                QVERIFY(!got.error().sentence.empty());
                continue;
            }
            QCOMPARE(got->read.rows, got->read.taken + got->read.setAside);
            for (const Reading& reading : got->readings) {
                QVERIFY(reading.temperature.value >= -60 && reading.temperature.value <= 80);
                QVERIFY(!reading.humidity || (*reading.humidity >= 0 && *reading.humidity <= 100));
                QVERIFY(reading.at <= readingsNow + std::chrono::hours(24));
            }
        }
    }
};

QTEST_GUILESS_MAIN(ReadingsProperties)
#include "tst_readingsproperties.moc"
