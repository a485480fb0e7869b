#include <QTest>

#include <cmath>
#include <map>

#include "ageing/readingsfigures.h"
#include "ageing/watched.h"
#include "support/csvrows.h"

using namespace gw;
using gw::test::CsvRow;
using gw::test::readCheckTable;

namespace {

QString column(const CsvRow& row, const char* name) { return row.value(QString::fromLatin1(name)); }
double number(const CsvRow& row, const char* name)
{
    bool ok = false;
    const double value = column(row, name).toDouble(&ok);
    if (!ok)
        qFatal("check table: \"%s\" is no number", qPrintable(column(row, name)));
    return value;
}

/// The days of the weather record, of one year or of all.
std::vector<DayReading> days(const QString& year = {})
{
    std::vector<DayReading> days;
    for (const CsvRow& row : readCheckTable(QStringLiteral("weather/days.csv"))) {
        if (column(row, "date").startsWith(year))
            days.push_back({ *parseDate(column(row, "date").toStdString()), { number(row, "low_c") },
                { number(row, "high_c") } });
    }
    return days;
}

std::vector<Reading> hours()
{
    std::vector<Reading> hours;
    for (const CsvRow& row : readCheckTable(QStringLiteral("weather/hours.csv")))
        hours.push_back(
            { *parseMoment(column(row, "time").toStdString()), { number(row, "temperature_c") }, {} });
    return hours;
}

const Rate arrhenius { { 20 }, 1, 83.144, true };

/// One figure of a series by its name in the check table; a date as days since 1970.
double figure(const QString& series, const QString& quantity)
{
    if (series == QStringLiteral("hours")) {
        const auto figures = figuresOf(hours(), {});
        const std::map<QString, double> all { { QStringLiteral("n"), static_cast<double>(figures->count) },
            { QStringLiteral("mean"), figures->mean.value }, { QStringLiteral("min"), figures->low.value },
            { QStringLiteral("max"), figures->high.value },
            { QStringLiteral("mkt"), figures->kinetic.value } };
        return all.at(quantity);
    }
    std::vector<DayReading> record = days(series.contains(QLatin1Char('-')) ? QString() : series);
    if (quantity.endsWith(QStringLiteral("daily_mean"))) {
        for (DayReading& day : record)
            day.low = day.high = { (day.low.value + day.high.value) / 2 };
    }
    ReadingsQuestion question;
    question.rate = arrhenius;
    // "freezes_F-0.5_T0.5"
    const auto parts = quantity.split(QLatin1Char('_'));
    if (parts.size() == 3 && parts.at(1).startsWith(QLatin1Char('F'))) {
        question.freeze = { parts.at(1).mid(1).toDouble() };
        question.thaw = { parts.at(2).mid(1).toDouble() };
    }
    const auto figures = figuresOf(record, question);
    if (parts.front() == QStringLiteral("freezes"))
        return static_cast<double>(figures->freezes());
    if (parts.front() == QStringLiteral("thaws"))
        return static_cast<double>(figures->thaws());
    if (parts.front() == QStringLiteral("open"))
        return static_cast<double>(figures->freezes() - figures->thaws());
    if (parts.front() == QStringLiteral("mkt"))
        return figures->kinetic.value;
    if (parts.front() == QStringLiteral("equiv"))
        return figures->equivalent->count();
    const std::map<QString, double> all { { QStringLiteral("days"), static_cast<double>(figures->count) },
        { QStringLiteral("first"),
            static_cast<double>(figures->from.time_since_epoch() / std::chrono::days { 1 }) },
        { QStringLiteral("last"),
            static_cast<double>(figures->to.time_since_epoch() / std::chrono::days { 1 }) },
        { QStringLiteral("min_of_min"), figures->low.value },
        { QStringLiteral("max_of_max"), figures->high.value },
        { QStringLiteral("arith_mean_minmax"), figures->mean.value } };
    return all.at(quantity);
}

} // namespace

/// What is made of real weather: the records of tests/data/weather (source and licence in its README),
/// against figures computed independently of this program, named in each row.
class TestWeatherLife : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void figure_isAsComputedIndependently_data()
    {
        QTest::addColumn<CsvRow>("row");
        const auto rows = readCheckTable(QStringLiteral("weather/checks.csv"));
        QCOMPARE(rows.size(), 130);
        for (const CsvRow& row : rows)
            QTest::addRow("%s %s", qPrintable(column(row, "series")), qPrintable(column(row, "quantity")))
                << row;
    }
    void figure_isAsComputedIndependently()
    {
        QFETCH(CsvRow, row);
        const double found = figure(column(row, "series"), column(row, "quantity"));
        const auto date = parseDate(column(row, "value").toStdString());
        if (date) {
            QCOMPARE(found, static_cast<double>(std::chrono::sys_days { *date }.time_since_epoch().count()));
            return;
        }
        // The table gives six decimals.
        QVERIFY2(
            std::abs(found - number(row, "value")) <= 0.51e-6, qPrintable(QString::number(found, 'g', 12)));
    }

    void freezes_areThoseCountedOneByOne()
    {
        const auto figures = figuresOf(days(), {});
        const auto rows = readCheckTable(QStringLiteral("weather/freezes.csv"));
        QCOMPARE(rows.size(), 102);
        QCOMPARE(figures->marks.size(), static_cast<std::size_t>(rows.size()));
        for (qsizetype i = 0; i < rows.size(); ++i) {
            const FrostMark& mark = figures->marks[static_cast<std::size_t>(i)];
            QCOMPARE(QString::fromStdString(formatDate(dateOf(mark.at))), column(rows[i], "date"));
            QCOMPARE(mark.frozen, column(rows[i], "event") == QStringLiteral("freeze"));
            QCOMPARE(mark.temperature.value, number(rows[i], "value_c"));
        }
    }

    void hotterSpell_hasAHigherKineticMeanThanItsYear()
    {
        // As one record in a pharmacopoeia article: 23.98 C over a year, 28.98 over 30 days, 30.7 over a day.
        const auto year = days(QStringLiteral("2014"));
        const auto month = days(QStringLiteral("2014-08"));
        const auto all = figuresOf(year, {});
        const auto hot = figuresOf(month, {});
        QVERIFY(hot->kinetic > all->kinetic);
        QVERIFY(figuresOf(days(QStringLiteral("2014-08-11")), {})->kinetic > hot->kinetic);
        QVERIFY(all->kinetic > all->mean);
    }

    void watchedPlace_countsTheHoursAsThePiecesDo()
    {
        // The same hourly record through running totals, to hundredths of a degree, and by itself.
        const PlaceId place { "yard" };
        const WatchedClimate climate({ { place, { Trace(hours()), {}, {} } } });
        ReadingsQuestion question;
        question.rate = arrhenius;
        const auto figures = figuresOf(hours(), question);
        const Exposure e = climate.exposure(place, figures->from, figures->to, arrhenius);
        QVERIFY(e.known);
        QCOMPARE(e.unwatched.count(), 0.0);
        QVERIFY(std::abs(e.equivalent.high / *figures->equivalent - 1) < 1e-9);
        QCOMPARE(e.coldest->value, 3.1);
        QCOMPARE(e.hottest->value, 24.4);
    }
};

QTEST_APPLESS_MAIN(TestWeatherLife)
#include "tst_weatherlife.moc"
