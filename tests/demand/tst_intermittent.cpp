#include <QTest>

#include <limits>

#include "demand/intermittent.h"

using namespace gw;

/// Use that comes now and then. The figures are checked in tests/outside; here the edges.
class TestIntermittent : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void nothingEverUsed_forecastsNothing();
    void oneUse_isSpreadOverThePeriodsUntilThen();
    void everyPeriodAlike_forecastsThatMuch();
    void corrections_onlyEverLower();
    void zerosAfterTheLastUse_changeNothing();
    void badInput_isRefusedWithASentence_data();
    void badInput_isRefusedWithASentence();
    void methods_areNamed();
};

void TestIntermittent::nothingEverUsed_forecastsNothing()
{
    QCOMPARE(intermittentForecast({ 0, 0, 0 }, IntermittentMethod::Croston, 0.1).value(), 0.0);
}

void TestIntermittent::oneUse_isSpreadOverThePeriodsUntilThen()
{
    QCOMPARE(intermittentForecast({ 0, 0, 0, 0, 37 }, IntermittentMethod::Croston, 0.3).value(), 37.0 / 5);
}

void TestIntermittent::everyPeriodAlike_forecastsThatMuch()
{
    for (const double alpha : { 0.0, 0.1, 1.0 })
        QCOMPARE(intermittentForecast({ 40, 40, 40, 40 }, IntermittentMethod::Croston, alpha).value(), 40.0);
}

void TestIntermittent::corrections_onlyEverLower()
{
    const std::vector<double> usage { 0, 3, 0, 0, 7, 1, 0, 2 };
    for (double alpha = 0.05; alpha <= 1; alpha += 0.05) {
        const double plain = intermittentForecast(usage, IntermittentMethod::Croston, alpha).value();
        const double sba = intermittentForecast(usage, IntermittentMethod::SyntetosBoylan, alpha).value();
        const double sbj
            = intermittentForecast(usage, IntermittentMethod::ShaleBoylanJohnston, alpha).value();
        QVERIFY(sba < plain);
        QVERIFY(sbj < sba);
        QVERIFY(sbj > -1e-12);
    }
}

void TestIntermittent::zerosAfterTheLastUse_changeNothing()
{
    const auto forecast = [](const std::vector<double>& usage) {
        return intermittentForecast(usage, IntermittentMethod::SyntetosBoylan, 0.2).value();
    };
    QCOMPARE(forecast({ 2, 0, 5, 0, 0, 0 }), forecast({ 2, 0, 5 }));
}

void TestIntermittent::badInput_isRefusedWithASentence_data()
{
    QTest::addColumn<QList<double>>("usage");
    QTest::addColumn<double>("alpha");
    const double none = std::numeric_limits<double>::quiet_NaN();
    QTest::newRow("no periods") << QList<double> {} << 0.1;
    QTest::newRow("negative use") << QList<double> { 1, -2 } << 0.1;
    QTest::newRow("use that is no number") << QList<double> { 1, none } << 0.1;
    QTest::newRow("alpha below 0") << QList<double> { 1, 2 } << -0.1;
    QTest::newRow("alpha over 1") << QList<double> { 1, 2 } << 1.1;
    QTest::newRow("alpha that is no number") << QList<double> { 1, 2 } << none;
}

void TestIntermittent::badInput_isRefusedWithASentence()
{
    QFETCH(QList<double>, usage);
    QFETCH(double, alpha);
    const auto forecast
        = intermittentForecast({ usage.begin(), usage.end() }, IntermittentMethod::Croston, alpha);
    QVERIFY(!forecast);
    QCOMPARE(forecast.error().code, ErrorCode::BadInput);
    QVERIFY(forecast.error().sentence.ends_with('.'));
}

void TestIntermittent::methods_areNamed()
{
    QCOMPARE(intermittentMethod("croston").value(), IntermittentMethod::Croston);
    QCOMPARE(intermittentMethod("sba").value(), IntermittentMethod::SyntetosBoylan);
    QCOMPARE(intermittentMethod("sbj").value(), IntermittentMethod::ShaleBoylanJohnston);
    QVERIFY(intermittentMethod("SBA ").error().sentence.find("croston, sba or sbj") != std::string::npos);
}

QTEST_APPLESS_MAIN(TestIntermittent)
#include "tst_intermittent.moc"
