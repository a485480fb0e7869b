#include <QTest>

#include "measure/moistair.h"
#include "support/csvrows.h"

using namespace gw;
using gw::test::CsvRow;
using gw::test::readCheckTable;

/// Wood moisture against the Wood Handbook's table and equation; dew point against the formula's own values
/// and two other formulations. Each row names its source.
class TestMoistAirOutside : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void handbookTable_isMet();
    void handbookEquation_isMet();
    void dewPointTable_isMet();
};

namespace {

double number(const CsvRow& row, const char* column)
{
    bool ok = false;
    const double value = row.value(QLatin1String(column)).toDouble(&ok);
    if (!ok)
        qFatal("check table: %s is no number", column);
    return value;
}

} // namespace

void TestMoistAirOutside::handbookTable_isMet()
{
    const auto rows = readCheckTable(QStringLiteral("wood_emc.csv"));
    QCOMPARE(rows.size(), 361);
    for (const CsvRow& row : rows) {
        const Celsius air { (number(row, "temp_f") - 32) / 1.8 };
        const RelativeHumidity humidity { number(row, "rh_pct") };
        QVERIFY(std::abs(air.value - number(row, "temp_c_printed")) < 0.06);
        const auto emc = equilibriumMoisture(air, humidity);
        QVERIFY(emc.has_value());
        QVERIFY(inHandbookTable(air, humidity));
        // The table has one decimal, and ten of its cells lie up to 0.0555 off its own equation.
        QVERIFY2(std::abs(emc->percent - number(row, "emc_pct_table")) < 0.06,
            qPrintable(row.value(QStringLiteral("source"))));
        QVERIFY(std::abs(emc->percent - number(row, "eq_celsius_form")) < 1e-6);
    }
}

void TestMoistAirOutside::handbookEquation_isMet()
{
    const auto rows = readCheckTable(QStringLiteral("emc_equation_points.csv"));
    QCOMPARE(rows.size(), 238);
    for (const CsvRow& row : rows) {
        const double t = number(row, "temp_c");
        const auto emc = equilibriumMoisture({ t }, { number(row, "rh_pct") });
        QVERIFY(emc.has_value());
        QVERIFY(std::abs(emc->percent - number(row, "emc_celsius_form")) < 1e-6);
        // The handbook's Fahrenheit constants are rounded on their own: in shop air the two forms agree
        // closely.
        if (t >= -10 && t <= 40)
            QVERIFY(std::abs(emc->percent - number(row, "emc_fahrenheit_form")) < 0.04);
    }
}

void TestMoistAirOutside::dewPointTable_isMet()
{
    int seen = 0;
    for (const CsvRow& row : readCheckTable(QStringLiteral("dew_point.csv"))) {
        const QString kind = row.value(QStringLiteral("kind"));
        const double t = number(row, "temp_c");
        const double expected = number(row, "value");
        ++seen;
        if (kind == QStringLiteral("dew_point_AE1996")) {
            QVERIFY(std::abs(dewPoint({ t }, { number(row, "rh_pct") })->value - expected) < 1e-6);
        } else if (kind == QStringLiteral("dew_point_psychrolib")) {
            // That formulation is over ice below 0 C, where ours stays over water: the two part there.
            if (expected > 0)
                QVERIFY(std::abs(dewPoint({ t }, { number(row, "rh_pct") })->value - expected) < 0.016);
        } else if (kind == QStringLiteral("sat_vapour_pressure_AE1996")) {
            QVERIFY(std::abs(saturationPressurePascal({ t }) - expected) < 1e-6);
        } else if (kind == QStringLiteral("sat_vapour_pressure_WagnerPruss")) {
            QVERIFY(std::abs(saturationPressurePascal({ t }) / expected - 1) < 0.003);
        } else if (kind == QStringLiteral("sat_vapour_pressure_published")) {
            if (t > 0 && t <= 60)
                QVERIFY(std::abs(saturationPressurePascal({ t }) / expected - 1) < 0.003);
        } else {
            QFAIL(qPrintable(kind));
        }
    }
    QCOMPARE(seen, 46);
}

QTEST_APPLESS_MAIN(TestMoistAirOutside)
#include "tst_moistair.moc"
