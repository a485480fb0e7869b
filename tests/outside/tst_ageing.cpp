#include <QTest>

#include <cmath>
#include <functional>
#include <vector>

#include "ageing/readingsfigures.h"
#include "ageing/verdict.h"
#include "ageing/watched.h"
#include "support/csvrows.h"

using namespace gw;
using gw::test::CsvRow;
using gw::test::readCheckTable;

namespace {

double number(const QString& text)
{
    bool ok = false;
    const double value = text.toDouble(&ok);
    if (!ok)
        qFatal("check table: \"%s\" is no number", qPrintable(text));
    return value;
}

struct Step {
    Celsius temperature;
    Days span { 0 };
};

/// "23:200 28:20": temperature and days (hours and months do as well where only their ratio counts).
std::vector<Step> stepsOf(const QString& text)
{
    std::vector<Step> steps;
    const auto words = text.split(QLatin1Char(' '));
    for (const QString& word : words) {
        const auto parts = word.split(QLatin1Char(':'));
        steps.push_back(
            { { number(parts.first()) }, Days { parts.size() > 1 ? number(parts.last()) : 0.0 } });
    }
    return steps;
}

Rate rateOf(const CsvRow& row)
{
    Rate rate;
    rate.reference = { number(row.value(QStringLiteral("reference_c"))) };
    // The sources let cold lengthen a life; so must the class here.
    rate.coldCredit = true;
    const QString q10 = row.value(QStringLiteral("q10"));
    const QString energy = row.value(QStringLiteral("activation_energy_kj_mol"));
    if (!q10.isEmpty())
        rate.q10 = number(q10);
    if (!energy.isEmpty())
        rate.activationEnergy = number(energy);
    return rate;
}

/// A container made and brought in on one day, that stood in one place of steady temperature after the other.
struct Stood {
    History history;
    LifeFigures figures;
    WatchedClimate climate;
    Moment now;

    Judgement judgement() const { return judge(history, figures, climate, now); }
};

Stood stoodThrough(const CsvRow& row)
{
    History history;
    history.made = *parseDate("2025-01-01");
    history.arrived = startOf(*history.made);
    Moment now = history.arrived;
    std::map<PlaceId, WatchedPlace> places;
    for (const Step& step : stepsOf(row.value(QStringLiteral("stays")))) {
        const PlaceId place { std::to_string(places.size()) };
        places.emplace(
            place, WatchedPlace { {}, { Range<Celsius> { step.temperature, step.temperature }, {} }, {} });
        history.stays.push_back({ place, now });
        now = later(now, step.span);
    }
    LifeFigures figures;
    figures.rate = rateOf(row);
    const Days life { number(row.value(QStringLiteral("life_days"))) };
    figures.sealed = { Life::Kind::Ages, { life, life } };
    return { history, figures, WatchedClimate(std::move(places)), now };
}

constexpr Moment madeUpStart { std::chrono::sys_days { std::chrono::January / 1 / 2025 } };
constexpr double pi = 3.14159265358979323846;

/// Readings of a course of temperature, by day, so many a day, both ends included.
std::vector<Reading> sampled(double days, int perDay, const std::function<double(double)>& course)
{
    std::vector<Reading> readings;
    for (int i = 0; i <= std::lround(days * perDay); ++i) {
        const double day = static_cast<double>(i) / perDay;
        readings.push_back({ later(madeUpStart, Days { day }), { course(day) }, {} });
    }
    return readings;
}

double dailySine(double day) { return 20 + 10 * std::sin(2 * pi * day); }

/// Equivalent days of readings in one place, through its running totals.
double watchedDays(const std::vector<Reading>& readings, const Rate& rate)
{
    const PlaceId place { "place" };
    const WatchedClimate climate({ { place, { Trace(readings), {}, {} } } });
    const Exposure e = climate.exposure(place, readings.front().at, readings.back().at, rate);
    return e.unwatched > Days { 0 } ? std::nan("") : e.equivalent.high.count();
}

double ownDays(const std::vector<Reading>& readings, const Rate& rate)
{
    ReadingsQuestion question;
    question.rate = rate;
    return figuresOf(readings, question)->equivalent->count();
}

/// The steady temperature that ages as much as the steps do: the mean kinetic temperature.
double meanKineticTemperature(const std::vector<Step>& steps, const Rate& rate)
{
    double sum = 0;
    double weight = 0;
    for (const Step& step : steps) {
        sum += step.span.count() * rawSpeedAt(step.temperature, rate);
        weight += step.span.count();
    }
    // Speed rises with temperature, so halving finds it.
    double low = -50;
    double high = 100;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (rawSpeedAt({ middle }, rate) < sum / weight ? low : high) = middle;
    }
    return low;
}

double answer(const CsvRow& row)
{
    const QString check = row.value(QStringLiteral("check"));
    if (check == QStringLiteral("speed"))
        return rawSpeedAt(stepsOf(row.value(QStringLiteral("stays"))).front().temperature, rateOf(row));
    if (check == QStringLiteral("mean"))
        return meanKineticTemperature(stepsOf(row.value(QStringLiteral("stays"))), rateOf(row));
    const Stood stood = stoodThrough(row);
    const Judgement judgement = stood.judgement();
    if (check == QStringLiteral("used"))
        return judgement.sealed.used.high;
    return judgement.goodUntil ? daysBetween(stood.now, *judgement.goodUntil).count() : std::nan("");
}

} // namespace

/// Speeds, lives and ages against the accelerated ageing factor, mean kinetic temperature and Arrhenius sums
/// of the sources named in each row of tests/data/ageing.csv. "life" and "left" are days to the end in a
/// steady temperature.
class TestAgeingOutside : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void figure_isAsPublished_data()
    {
        QTest::addColumn<CsvRow>("row");
        const auto rows = readCheckTable(QStringLiteral("ageing.csv"));
        QCOMPARE(rows.size(), 62);
        for (const CsvRow& row : rows)
            QTest::addRow("%s %s", qPrintable(row.value(QStringLiteral("check"))),
                qPrintable(row.value(QStringLiteral("case"))))
                << row;
    }
    void figure_isAsPublished()
    {
        QFETCH(CsvRow, row);
        const double expected = number(row.value(QStringLiteral("value")));
        const double tolerance = number(row.value(QStringLiteral("tolerance")));
        const double found = answer(row);
        // Temperatures are compared in degrees, everything else in proportion.
        const double scale
            = row.value(QStringLiteral("check")) == QStringLiteral("mean") ? 1 : std::abs(expected);
        QVERIFY2(std::abs(found - expected) <= tolerance * scale,
            qPrintable(QStringLiteral("%1 for %2; %3")
                    .arg(found, 0, 'g', 12)
                    .arg(expected, 0, 'g', 12)
                    .arg(row.value(QStringLiteral("source")))));
    }

    /// Lives used, Ea 83.144 kJ/mol, R 8.314462618e-3 kJ/(mol K), 20 C, of 365 days: computed independently
    /// (scipy 1.10 quadrature and exponential integral; R 4.2.2 agrees where repeated).
    void changingTemperature_usesLifeAsComputed_data()
    {
        QTest::addColumn<double>("days");
        QTest::addColumn<int>("perDay");
        QTest::addColumn<int>("course");
        QTest::addColumn<double>("q10"); // 0: Arrhenius
        QTest::addColumn<double>("used"); // equivalent days over 365
        QTest::addColumn<double>("tolerance"); // of it
        QTest::newRow("ramp 35 to 5 C in ten days, two readings, exponential integral")
            << 10.0 << 0 << 0 << 0.0 << 0.04198546649 << 1e-9;
        QTest::newRow("ramp 5 to 35 C, alike by symmetry") << 10.0 << 0 << 1 << 0.0 << 0.04198546649 << 1e-9;
        QTest::newRow("ramp in ten-minute readings") << 10.0 << 144 << 0 << 0.0 << 0.04198546649 << 1e-6;
        QTest::newRow("daily sine, exact, read every minute")
            << 30.0 << 1440 << 2 << 0.0 << 0.1100122749 << 5e-6;
        // Chords between hourly readings cut the crests off: 0.3 %.
        QTest::newRow("daily sine, read every hour") << 30.0 << 24 << 2 << 0.0 << 0.1100122749 << 4e-3;
        QTest::newRow("daily sine, Q10 2: I0(ln 2), the modified Bessel function")
            << 30.0 << 1440 << 2 << 2.0 << 30 * 1.123768551 / 365 << 5e-6;
        QTest::newRow("a year with seasons and days, every ten minutes")
            << 365.0 << 144 << 3 << 0.0 << 0.528520 << 1e-4;
    }
    void changingTemperature_usesLifeAsComputed()
    {
        QFETCH(double, days);
        QFETCH(int, perDay);
        QFETCH(int, course);
        QFETCH(double, q10);
        QFETCH(double, used);
        QFETCH(double, tolerance);
        const auto temperature = [&](double day) {
            switch (course) {
            case 0:
                return 35 - 3 * day;
            case 1:
                return 5 + 3 * day;
            case 2:
                return dailySine(day);
            default:
                return 12 + 9 * std::cos(2 * pi * (day - 200) / 365) + 4 * std::cos(2 * pi * (day - 0.625));
            }
        };
        const auto readings = perDay > 0
            ? sampled(days, perDay, temperature)
            : std::vector<Reading> { { madeUpStart, { temperature(0) }, {} },
                  { later(madeUpStart, Days { days }), { temperature(days) }, {} } };
        Rate rate { { 20 }, q10, {}, true };
        if (q10 <= 0)
            rate.activationEnergy = 83.144;
        QVERIFY2(std::abs(ownDays(readings, rate) / 365 / used - 1) <= tolerance,
            qPrintable(QString::number(ownDays(readings, rate) / 365, 'g', 12)));
        // A place keeps hundredths of a degree: at most 5e-4 of the speed, and far less on the mean.
        QVERIFY2(std::abs(watchedDays(readings, rate) / 365 / used - 1) <= tolerance + 6e-5,
            qPrintable(QString::number(watchedDays(readings, rate) / 365, 'g', 12)));
    }

    void rampOfTwoReadings_isNotTheMeanOfItsTwoSpeeds()
    {
        // That would be 0.074257, 77 % too much (computed independently).
        const Rate rate { { 20 }, 1, 83.144, true };
        const double ends = 10 * (speedAt({ 5 }, rate) + speedAt({ 35 }, rate)) / 2 / 365;
        QVERIFY(std::abs(ends - 0.07425706126) < 1e-9);
        QVERIFY(10 * meanSpeed({ 5 }, { 35 }, rate) / 365 < 0.6 * ends);
    }

    /// Mean kinetic temperature, 83.144 kJ/mol and R 8.3144e-3 kJ/(mol K), of values with weights.
    void meanKineticTemperature_isAsPublished_data()
    {
        QTest::addColumn<QString>("values"); // "temperature:weight"
        QTest::addColumn<double>("expected");
        QTest::addColumn<double>("tolerance");
        QTest::newRow("a public worked example, 528 h: prints 22.36")
            << QStringLiteral("23:200 28:20 30:8 21:300") << 22.36 << 0.005;
        QTest::newRow("the same, computed independently")
            << QStringLiteral("23:200 28:20 30:8 21:300") << 22.36311228 << 1e-8;
        QTest::newRow("two values") << QStringLiteral("15:1 30:1") << 25.22417087 << 1e-8;
        QTest::newRow("months") << QStringLiteral(
            "8:31 9:28 12:31 15:30 18:31 22:30 25:31 25:31 21:30 16:31 11:30 8:31")
                                << 17.91174895 << 1e-8;
        QTest::newRow("below zero") << QStringLiteral("-10:1 -5:1 0:1 5:1 10:1") << 2.882926234 << 1e-8;
        QTest::newRow("an hour at 60") << QStringLiteral("20:23 60:1") << 31.07463489 << 1e-8;
        QTest::newRow("one reading") << QStringLiteral("18.5:1") << 18.5 << 1e-12;
        QTest::newRow("no overflow") << QStringLiteral("-20:1 50:1") << 42.922245 << 1e-6;
    }
    void meanKineticTemperature_isAsPublished()
    {
        QFETCH(QString, values);
        QFETCH(double, expected);
        QFETCH(double, tolerance);
        KineticMean mean;
        for (const Step& step : stepsOf(values))
            mean.add(step.temperature, step.span.count());
        QVERIFY2(std::abs(mean.kinetic().value - expected) <= tolerance,
            qPrintable(QString::number(mean.kinetic().value, 'g', 12)));
        QVERIFY(mean.kinetic().value >= mean.mean().value - 1e-12);
    }

    void weeklyMeansOf25_haveAKineticMeanOf25()
    {
        // USP <1160>, worked example: 52 weekly means, all 25 C, give 25.0 C (read in two copies of it).
        std::vector<Reading> weeks;
        for (int week = 0; week < 52; ++week)
            weeks.push_back({ later(madeUpStart, Days { 7.0 * week }), { 25 }, {} });
        QVERIFY(std::abs(figuresOf(weeks, {})->kinetic.value - 25) < 1e-12);
        QCOMPARE(figuresOf(weeks, {})->unwatched.count(), 0.0);
    }

    void dailySine_isWorthASteadyTemperature()
    {
        // T = 20 + 10 sin, exact: 22.52699189 C all the time (computed independently, R 8.314462618e-3).
        QVERIFY(std::abs(figuresOf(sampled(30, 1440, dailySine), {})->kinetic.value - 22.52699189) < 1e-3);
    }

    void equivalentQ10_dependsOnTheTemperatures()
    {
        // So one Q10 cannot stand for one activation energy over the whole range (computed independently).
        const Rate energy { { 20 }, 1, 83.144, true };
        const auto q10At
            = [&](double t) { return rawSpeedAt({ t + 10 }, energy) / rawSpeedAt({ t }, energy); };
        QVERIFY(q10At(10) > q10At(20) && q10At(20) > q10At(30));
    }

    void whitePvaExample_isMet()
    {
        // Worked example of this trade's arithmetic, Q10 2 at 20 C (own model): three months at 32 C
        // count 6.9, three at 8 C count 1.3, which are shown and not credited.
        const Rate rate { { 20 }, 2, {}, false };
        QVERIFY(std::abs(3 * speedAt({ 32 }, rate) - 6.9) < 0.05);
        QVERIFY(std::abs(3 * rawSpeedAt({ 8 }, rate) - 1.3) < 0.05);
        QCOMPARE(3 * speedAt({ 8 }, rate), 3.0);
    }
};

QTEST_APPLESS_MAIN(TestAgeingOutside)
#include "tst_ageing.moc"
