#include <QTest>

#include "gluing/questions.h"

using namespace gw;
using namespace gw::test;

/// Room, wood and joint against the family.
class TestConditions : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyGate_hasItsFourAnswers_data();
    void everyGate_hasItsFourAnswers();
    void wetWood_stopsByTheDewPoint();
    void wood_nearTheDewPoint_warns();
    void moisture_notMeasured_tellsTheEstimateOnly();
    void missingFamilyFigure_isUnknown_data();
    void missingFamilyFigure_isUnknown();
    void finish_hasNoGatesOfTheJoint();
    void joint_named_isJudged();
    void residue_named_isJudged();
    void remedies_nameTheFigure_data();
    void remedies_nameTheFigure();
    void sentences_speakThePersonsUnits();
    void thermometersDust_decidesNothing();
};

namespace {

GlueUpAnswer ask(const GlueUpQuestion& question)
{
    const auto answer = checkGlueUp(question, today);
    if (!answer)
        qFatal("%s", answer.error().sentence.c_str());
    return *answer;
}

void set(GlueUpQuestion& q, const QString& what, std::optional<double> value)
{
    const auto celsius = value ? std::optional(Celsius { *value }) : std::nullopt;
    if (what == QLatin1String("air"))
        q.air = celsius;
    else if (what == QLatin1String("wood"))
        q.wood = celsius;
    else if (what == QLatin1String("humidity"))
        q.humidity = value;
    else if (what == QLatin1String("moisture"))
        q.woodMoisture = value;
    else if (what == QLatin1String("gap"))
        q.gapMm = value;
    else
        qFatal("no such condition");
}

constexpr double notSaid = -1000;

} // namespace

// Limits of hot hide glue: textbook and common practice, as in the reference data.
void TestConditions::everyGate_hasItsFourAnswers_data()
{
    QTest::addColumn<QString>("what");
    QTest::addColumn<double>("value");
    QTest::addColumn<QString>("result");
    const auto row = [](const char* what, double value, const char* result) {
        QTest::newRow(qPrintable(
            QStringLiteral("%1 %2 %3").arg(QLatin1String(what)).arg(value).arg(QLatin1String(result))))
            << QString::fromLatin1(what) << value << QString::fromLatin1(result);
    };
    row("air", 19.9, "stop");
    row("air", 20, "warn");
    row("air", 22.9, "warn");
    row("air", 23, "pass");
    row("air", 30, "pass");
    row("air", 31, "warn");
    row("air", 35, "warn");
    row("air", 35.1, "stop");
    row("air", -40, "stop");
    row("air", notSaid, "unknown");
    row("wood", 8, "stop");
    row("wood", -20, "stop");
    row("wood", 19.9, "stop");
    row("wood", 20, "warn");
    row("wood", 30, "pass");
    row("wood", 40, "pass");
    row("wood", 41, "warn");
    row("wood", notSaid, "unknown");
    row("humidity", 29, "warn");
    row("humidity", 0, "warn");
    row("humidity", 30, "pass");
    row("humidity", 65, "pass");
    row("humidity", 66, "warn");
    row("humidity", notSaid, "unknown");
    row("moisture", 5.9, "warn");
    row("moisture", 6, "pass");
    row("moisture", 11, "pass");
    row("moisture", 11.1, "stop");
    row("moisture", 180, "stop");
    row("moisture", notSaid, "unknown");
    row("gap", 0, "pass");
    row("gap", 0.05, "pass");
    row("gap", 0.06, "warn");
    row("gap", 0.15, "warn");
    row("gap", 0.16, "stop");
    row("gap", notSaid, "unknown");
}

void TestConditions::everyGate_hasItsFourAnswers()
{
    QFETCH(QString, what);
    QFETCH(double, value);
    QFETCH(QString, result);
    GlueUpQuestion q = rightChair();
    set(q, what, value == notSaid ? std::nullopt : std::optional(value));
    const GlueUpAnswer answer = ask(q);
    const Gate& judged = gate(answer, what.toStdString());
    QCOMPARE(QString::fromUtf8(word(judged.result).data()), result);
    QVERIFY(judged.text.ends_with('.'));
    QCOMPARE(judged.fix.empty(), judged.result == GateResult::Pass);
    const auto expected = result == QLatin1String("stop") ? GlueUpVerdict::FixFirst
        : result == QLatin1String("unknown")              ? GlueUpVerdict::NotKnown
                                                          : GlueUpVerdict::Go;
    QCOMPARE(answer.answer, expected);
    QCOMPARE(answer.firstFix, expected == GlueUpVerdict::Go ? std::string() : judged.fix);
}

// Air of 20 C and 55 % has a dew point of 10.7 C (Magnus form with the constants of Alduchov and Eskridge
// 1996).
void TestConditions::wetWood_stopsByTheDewPoint()
{
    GlueUpQuestion q = rightLeg();
    q.family.woodMin = Celsius { 5 };
    q.air = Celsius { 20 };
    q.humidity = 55;
    q.wood = Celsius { 10.7 };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(gate(answer, "wood").result, GateResult::Warn);
    QCOMPARE(gate(answer, "humidity").result, GateResult::Stop);
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QVERIFY2(answer.firstFix.starts_with("Let the wood warm to 13.7 °C and dry off: it is 10.7 °C, and water "
                                         "condenses on it below 10.7 °C. In this room it takes about "),
        answer.firstFix.c_str());
}

void TestConditions::wood_nearTheDewPoint_warns()
{
    GlueUpQuestion q = rightLeg();
    q.family.woodMin = Celsius { 5 };
    q.air = Celsius { 20 };
    q.humidity = 55;
    q.wood = Celsius { 13.6 };
    QCOMPARE(gate(ask(q), "humidity").result, GateResult::Warn);
    q.wood = Celsius { 13.7 };
    QCOMPARE(gate(ask(q), "humidity").result, GateResult::Pass);
}

void TestConditions::moisture_notMeasured_tellsTheEstimateOnly()
{
    GlueUpQuestion q = rightChair();
    q.air = Celsius { 21.1 };
    q.humidity = 50;
    q.woodMoisture.reset();
    // Wood Handbook table 4-2: 9.2 % at 21.1 C and 50 %.
    const Gate told = gate(ask(q), "moisture");
    QCOMPARE(told.result, GateResult::Unknown);
    QVERIFY(
        told.text.find("If it has stood in this air for weeks, it holds about 9 %.") != std::string::npos);
    q.humidity.reset();
    QVERIFY(gate(ask(q), "moisture").text.find("about") == std::string::npos);
}

void TestConditions::missingFamilyFigure_isUnknown_data()
{
    QTest::addColumn<QString>("what");
    for (const char* what : { "air", "wood", "humidity", "moisture", "gap" })
        QTest::newRow(what) << QString::fromLatin1(what);
}

void TestConditions::missingFamilyFigure_isUnknown()
{
    QFETCH(QString, what);
    GlueUpQuestion q = rightChair();
    const std::string id = what.toStdString();
    if (id == "air")
        q.family.airMin.reset();
    else if (id == "wood")
        q.family.woodMin.reset();
    else if (id == "humidity")
        q.family.humidity.reset();
    else if (id == "moisture")
        q.family.woodMoisture.reset();
    else
        q.family.gapMaxMm.reset();
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(gate(answer, id).result, GateResult::Unknown);
    QCOMPARE(answer.answer, GlueUpVerdict::NotKnown);
    QVERIFY(answer.firstFix.starts_with("Read what the label says of the "));
}

void TestConditions::finish_hasNoGatesOfTheJoint()
{
    GlueUpQuestion q = rightChair();
    q.family = Family {};
    QStringList ids;
    for (const Gate& g : ask(q).gates)
        ids << QString::fromStdString(g.id);
    QCOMPARE(ids, (QStringList { QStringLiteral("age"), QStringLiteral("amount"), QStringLiteral("air") }));
    // Nothing is known of the room it wants: that must not be a go.
    QCOMPARE(ask(q).answer, GlueUpVerdict::NotKnown);
    q.family.airMin = Celsius { 15 };
    q.family.airMax = Celsius { 30 };
    QCOMPARE(ask(q).answer, GlueUpVerdict::Go);
}

void TestConditions::joint_named_isJudged()
{
    GlueUpQuestion q = rightChair();
    q.joint = Suitability { "Turning blank", GateResult::Stop, "It does not stand the heat of the lathe" };
    const GlueUpAnswer wrong = ask(q);
    QCOMPARE(wrong.answer, GlueUpVerdict::Stop);
    QCOMPARE(wrong.firstFix,
        std::string(
            "Turning blank: wrong for hot hide glue; choose another glue. It does not stand the heat of the "
            "lathe."));
    q.joint->result = GateResult::Unknown;
    QCOMPARE(ask(q).answer, GlueUpVerdict::NotKnown);
    q.joint->result = GateResult::Warn;
    QCOMPARE(ask(q).answer, GlueUpVerdict::Go);
    QCOMPARE(gate(ask(q), "joint").result, GateResult::Warn);
    q.joint->result = GateResult::Pass;
    QCOMPARE(gate(ask(q), "joint").result, GateResult::Pass);
}

void TestConditions::residue_named_isJudged()
{
    GlueUpQuestion q = rightChair();
    q.residue = Suitability { "Film of PVA", GateResult::Stop, "Hide glue cannot get into the wood" };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QCOMPARE(answer.firstFix,
        std::string("Clean the joint back to bare wood: hot hide glue does not hold on film of PVA."));
    q.residue->result = GateResult::Unknown;
    QCOMPARE(ask(q).answer, GlueUpVerdict::NotKnown);
    q.residue->result = GateResult::Pass;
    QCOMPARE(ask(q).answer, GlueUpVerdict::Go);
}

void TestConditions::remedies_nameTheFigure_data()
{
    QTest::addColumn<QString>("what");
    QTest::addColumn<double>("value");
    QTest::addColumn<QString>("fix");
    QTest::newRow("cold wood") << QStringLiteral(
        "wood") << 8.0 << QStringLiteral("Warm the wood: it is 8 °C, hot hide glue wants 20 °C or more.");
    QTest::newRow("cold room") << QStringLiteral(
        "air") << 14.5 << QStringLiteral("Warm the room: it is 14.5 °C, hot hide glue wants 20 °C or more.");
    QTest::newRow("hot room") << QStringLiteral(
        "air") << 38.0 << QStringLiteral("Cool the room: it is 38 °C, hot hide glue wants 35 °C or less.");
    QTest::newRow("wet wood") << QStringLiteral("moisture") << 14.0
                              << QStringLiteral(
                                     "Dry the wood: it holds 14 %, hot hide glue wants 11 % or less.");
    QTest::newRow("loose joint")
        << QStringLiteral("gap") << 0.4
        << QStringLiteral("Close the gap with wood: it is 0.4 mm, hot hide glue bridges 0.15 mm "
                          "at most.");
}

void TestConditions::remedies_nameTheFigure()
{
    QFETCH(QString, what);
    QFETCH(double, value);
    QFETCH(QString, fix);
    GlueUpQuestion q = rightChair();
    set(q, what, value);
    // A figure that takes time to mend says how long after it.
    QVERIFY2(QString::fromStdString(ask(q).firstFix).startsWith(fix), ask(q).firstFix.c_str());
}

void TestConditions::sentences_speakThePersonsUnits()
{
    GlueUpQuestion q = rightChair();
    q.units = UnitSystem::Us;
    q.wood = Celsius { 8 };
    QVERIFY(ask(q).firstFix.starts_with(
        "Warm the wood: it is 46.4 °F, hot hide glue wants 68 °F or more. In this "));
    QVERIFY(ask(q).firstFix.find(" to 68 °F, for wood 20 to 40 mm thick.") != std::string::npos);
    q = rightLeg();
    q.wood = Celsius { 8 };
    QVERIFY(
        ask(q).firstFix.starts_with("Warm the wood: it is 8 °C, thickened epoxy wants 15 °C or more. In "));
}

void TestConditions::thermometersDust_decidesNothing()
{
    GlueUpQuestion q = rightChair();
    q.wood = Celsius { 19.96 }; // shown as 20 °C
    QCOMPARE(gate(ask(q), "wood").result, GateResult::Warn);
    q.wood = Celsius { 19.94 };
    QCOMPARE(gate(ask(q), "wood").result, GateResult::Stop);
}

QTEST_APPLESS_MAIN(TestConditions)
#include "tst_conditions.moc"
