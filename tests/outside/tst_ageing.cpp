#include <QTest>

#include <cmath>
#include <vector>

#include "ageing/verdict.h"
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
    AssumedClimate climate;
    Moment now;

    Judgement judgement() const { return judge(history, figures, climate, now); }
};

Stood stoodThrough(const CsvRow& row)
{
    History history;
    history.made = *parseDate("2025-01-01");
    history.arrived = startOf(*history.made);
    Moment now = history.arrived;
    std::map<PlaceId, Range<Celsius>> places;
    for (const Step& step : stepsOf(row.value(QStringLiteral("stays")))) {
        const PlaceId place { std::to_string(places.size()) };
        places.emplace(place, Range<Celsius> { step.temperature, step.temperature });
        history.stays.push_back({ place, now });
        now = later(now, step.span);
    }
    LifeFigures figures;
    figures.rate = rateOf(row);
    const Days life { number(row.value(QStringLiteral("life_days"))) };
    figures.sealed = { Life::Kind::Ages, { life, life } };
    return { history, figures, AssumedClimate(std::move(places)), now };
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
