#include <QRandomGenerator>
#include <QTest>

#include "measure/temperature.h"

using namespace gw;

/// Temperatures as people type them, and as they are written out.
class TestTemperature : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void typed_isRead_data();
    void typed_isRead();
    void badInput_isRefusedWithASentence();
    void temperature_isWrittenOut();
    void written_readsBackWithinWhatItShows();
};

void TestTemperature::typed_isRead_data()
{
    QTest::addColumn<double>("celsius");
    const auto row = [](const char* typed, double celsius) { QTest::newRow(typed) << celsius; };
    row("18C", 18);
    row("18 \u00B0C", 18);
    row("18\u00BAc", 18);
    row("18 deg C", 18);
    row("-3.5 c", -3.5);
    row("\u22123,5 C", -3.5);
    row("0 C", 0);
    // Fixed points: NIST SP 811 (2008), appendix B.8: t/C = (t/F - 32)/1.8.
    row("32F", 0);
    row("212F", 100);
    row("-40 F", -40);
    row("65 F", 18.333333333333332);
    row("-90 C", -90);
    row("300 C", 300);
}

void TestTemperature::typed_isRead()
{
    QFETCH(double, celsius);
    const auto read = parseTemperature(QTest::currentDataTag());
    QVERIFY2(read.has_value(), read ? "" : read.error().sentence.c_str());
    QVERIFY(std::abs(read->value - celsius) < 1e-12);
}

void TestTemperature::badInput_isRefusedWithASentence()
{
    for (const char* typed : { "", " ", "18", "18 \u00B0", "C", "18 K", "18 X", "18CC", "18 C!", "-91 C",
             "301C", "600F", "warm", "1.000,5 C" }) {
        const auto read = parseTemperature(typed);
        QVERIFY2(!read, typed);
        QCOMPARE(read.error().code, ErrorCode::BadInput);
        QVERIFY(read.error().sentence.ends_with('.'));
    }
    QVERIFY(parseTemperature("18").error().sentence.find("C or F") != std::string::npos);
}

void TestTemperature::temperature_isWrittenOut()
{
    QCOMPARE(formatTemperature({ 18 }), std::string("18 \u00B0C"));
    QCOMPARE(formatTemperature({ 18 }, UnitSystem::Us), std::string("64.4 \u00B0F"));
    QCOMPARE(formatTemperature({ 17.7777777777777777 }, UnitSystem::Us), std::string("64 \u00B0F"));
    QCOMPARE(formatTemperature({ -3.5 }), std::string("-3.5 \u00B0C"));
    QCOMPARE(formatTemperature({ -0.04 }), std::string("0 \u00B0C"));
    QCOMPARE(formatTemperature({ 19.96 }), std::string("20 \u00B0C"));
    QCOMPARE(formatTemperature({ qQNaN() }), std::string("not known"));
}

void TestTemperature::written_readsBackWithinWhatItShows()
{
    QRandomGenerator random(5);
    for (int i = 0; i < 10000; ++i) {
        const Celsius value { -89 + random.bounded(388.0) };
        for (const UnitSystem system : { UnitSystem::Metric, UnitSystem::Us }) {
            const auto back = parseTemperature(formatTemperature(value, system));
            QVERIFY(back.has_value());
            QVERIFY(std::abs(back->value - value.value) <= 0.0501);
        }
    }
}

QTEST_APPLESS_MAIN(TestTemperature)
#include "tst_temperature.moc"
