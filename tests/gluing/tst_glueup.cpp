#include <QTest>

#include <cmath>

#include "gluing/questions.h"

using namespace gw;
using namespace gw::test;

/// The answer as a whole: what is first to fix, the clocks, and what cannot be asked.
class TestGlueUp : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void gates_standInAPersonsOrder();
    void words_areStable();
    void nothingSaid_isNotKnown();
    void firstFix_followsImportance();
    void firstThingToFindOut_followsImportance();
    void stopWithoutRemedy_outranksOneWithRemedy();
    void warningsAlone_areAGo();

    void clocks_atTwenty_areTheFamilys();
    void clamps_stayLongerInTheCold();
    void clamps_getNoCreditForWarmth();
    void clamps_tooColdToSet_haveNoTime();
    void clamps_roomNotKnown_saySo();
    void hotGlue_isToldThatColdShortens();
    void family_tellsHowItComesApart();

    void badInput_isRefusedWithTheFigure_data();
    void badInput_isRefusedWithTheFigure();
    void extremesThatCanBe_areAnswered();
    void brokenMix_isRefused();
};

namespace {

GlueUpAnswer ask(const GlueUpQuestion& question)
{
    const auto answer = checkGlueUp(question, today);
    if (!answer)
        qFatal("%s", answer.error().sentence.c_str());
    return *answer;
}

} // namespace

void TestGlueUp::gates_standInAPersonsOrder()
{
    QStringList ids;
    for (const Gate& g : ask(rightLeg()).gates)
        ids << QString::fromStdString(g.id);
    QCOMPARE(
        ids.join(u' '), QStringLiteral("partner age amount air wood humidity moisture gap surface undoing"));
}

void TestGlueUp::words_areStable()
{
    QCOMPARE(word(GateResult::Pass), std::string_view("pass"));
    QCOMPARE(word(GateResult::Warn), std::string_view("warn"));
    QCOMPARE(word(GateResult::Stop), std::string_view("stop"));
    QCOMPARE(word(GateResult::Unknown), std::string_view("unknown"));
    QCOMPARE(word(GlueUpVerdict::Go), std::string_view("go"));
    QCOMPARE(word(GlueUpVerdict::FixFirst), std::string_view("fix_first"));
    QCOMPARE(word(GlueUpVerdict::Stop), std::string_view("stop"));
    QCOMPARE(word(GlueUpVerdict::NotKnown), std::string_view("not_known"));
}

void TestGlueUp::nothingSaid_isNotKnown()
{
    GlueUpQuestion q = rightChair();
    q.air.reset();
    q.wood.reset();
    q.humidity.reset();
    q.woodMoisture.reset();
    q.gapMm.reset();
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::NotKnown);
    for (const char* id : { "air", "wood", "humidity", "moisture", "gap" })
        QCOMPARE(gate(answer, id).result, GateResult::Unknown);
    QVERIFY(!answer.use.empty());
    QVERIFY(!answer.firstFix.empty());
}

void TestGlueUp::firstFix_followsImportance()
{
    // Everything wrong that can be put right; what is named first is put right, one after the other.
    GlueUpQuestion q = rightChair();
    q.candidates = { granules({ item("H1", 400, Verdict::TestFirst) }) };
    q.wood = Celsius { 8 };
    q.air = Celsius { 15 };
    q.woodMoisture = 15;
    q.gapMm = 1;
    q.humidity = 90;
    QVERIFY(ask(q).firstFix.starts_with("Test H1"));
    q.candidates = { granules({ item("H1", 5) }) };
    QVERIFY(ask(q).firstFix.starts_with("Short by"));
    q.candidates = { granules({ item("H1", 400) }) };
    QVERIFY(ask(q).firstFix.starts_with("Warm the wood"));
    q.wood = Celsius { 20 };
    QVERIFY(ask(q).firstFix.starts_with("Warm the room"));
    q.air = Celsius { 30 };
    QVERIFY(ask(q).firstFix.starts_with("Dry the wood"));
    q.woodMoisture = 9;
    QVERIFY(ask(q).firstFix.starts_with("Close the gap"));
    q.gapMm = 0.05;
    QVERIFY(ask(q).firstFix.starts_with("Let the wood warm to")); // under the dew point of 30 C and 90 %
    q.humidity = 50;
    q.wood = Celsius { 32 };
    QCOMPARE(ask(q).answer, GlueUpVerdict::Go);
}

void TestGlueUp::firstThingToFindOut_followsImportance()
{
    GlueUpQuestion q = rightChair();
    q.candidates = { granules({ item("H1", 400, Verdict::NotKnown) }) };
    q.wood.reset();
    q.air.reset();
    q.gapMm.reset();
    QVERIFY(ask(q).firstFix.starts_with("Find out about H1"));
    q.candidates = { granules({ item("H1", 400) }) };
    QCOMPARE(ask(q).firstFix, std::string("Measure the wood's temperature."));
    q.wood = Celsius { 32 };
    QCOMPARE(ask(q).firstFix, std::string("Measure the room's temperature."));
    q.air = Celsius { 24 };
    QCOMPARE(ask(q).firstFix, std::string("Measure the gap with a feeler in the dry joint."));
}

void TestGlueUp::stopWithoutRemedy_outranksOneWithRemedy()
{
    GlueUpQuestion q = rightChair();
    q.wood = Celsius { 8 };
    q.candidates = { granules({ item("H1", 400, Verdict::DoNotUse) }) };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::Stop);
    QVERIFY(answer.firstFix.starts_with("No Hide granules"));
    // And a stop with a remedy outranks what is not known.
    q.candidates = { granules({ item("H1", 400) }) };
    q.gapMm.reset();
    QCOMPARE(ask(q).answer, GlueUpVerdict::FixFirst);
}

void TestGlueUp::warningsAlone_areAGo()
{
    GlueUpQuestion q = rightChair();
    q.air = Celsius { 20 };
    q.wood = Celsius { 22 };
    q.humidity = 25;
    q.woodMoisture = 5;
    q.gapMm = 0.1;
    q.candidates = { granules({ item("H1", 13.6) }) };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::Go);
    for (const char* id : { "amount", "air", "wood", "humidity", "moisture", "gap" })
        QCOMPARE(gate(answer, id).result, GateResult::Warn);
}

void TestGlueUp::clocks_atTwenty_areTheFamilys()
{
    GlueUpQuestion q = rightLeg();
    q.air = Celsius { 20 };
    const GlueUpClocks clocks = ask(q).clocks;
    QCOMPARE(clocks.openMinutes.value(), (Range<double> { 20, 60 }));
    QVERIFY(!clocks.closedMinutes);
    QCOMPARE(clocks.unclampMinutes.value(), 600.0);
    QCOMPARE(clocks.fullLoadHours.value(), 72.0);
    QCOMPARE(
        clocks.note, std::string("Working times are for 20 °C; warm, dry or moving air makes them shorter."));
}

// Common practice: epoxy takes twice as long for each 10 C colder. Clamp time of an 8 h at 20 C system: 16.0
// h at 10 C, 11.3 h at 15 C (arithmetic on that rule).
void TestGlueUp::clamps_stayLongerInTheCold()
{
    GlueUpQuestion q = rightLeg();
    q.family.airMin = Celsius { 5 };
    q.family.unclampMinutes = 480;
    q.air = Celsius { 10 };
    QCOMPARE(ask(q).clocks.unclampMinutes.value() / 60, 16.0);
    q.air = Celsius { 15 };
    QVERIFY(std::abs(ask(q).clocks.unclampMinutes.value() / 60 - 11.3) < 0.05);
    QVERIFY(ask(q).clocks.note.ends_with("The time in clamps is for 15 °C; the full load takes longer too."));
}

void TestGlueUp::clamps_getNoCreditForWarmth()
{
    GlueUpQuestion q = rightLeg();
    q.air = Celsius { 30 };
    QCOMPARE(ask(q).clocks.unclampMinutes.value(), 600.0);
}

void TestGlueUp::clamps_tooColdToSet_haveNoTime()
{
    GlueUpQuestion q = rightLeg();
    q.air = Celsius { 10 };
    const GlueUpAnswer answer = ask(q);
    QVERIFY(!answer.clocks.unclampMinutes);
    QVERIFY(
        answer.clocks.note.ends_with("In a room this cold it is not known when the clamps may come off."));
}

void TestGlueUp::clamps_roomNotKnown_saySo()
{
    GlueUpQuestion q = rightLeg();
    q.air.reset();
    const GlueUpClocks clocks = ask(q).clocks;
    QCOMPARE(clocks.unclampMinutes.value(), 600.0);
    QVERIFY(clocks.note.find("and so is the time in clamps: the room is not known") != std::string::npos);
}

void TestGlueUp::hotGlue_isToldThatColdShortens()
{
    QVERIFY(ask(rightChair()).clocks.note.ends_with("a cooler room or cooler wood makes them shorter."));
}

void TestGlueUp::family_tellsHowItComesApart()
{
    QCOMPARE(ask(rightChair()).reversibleWith, std::string("Heat with water"));
}

void TestGlueUp::badInput_isRefusedWithTheFigure_data()
{
    QTest::addColumn<QString>("what");
    QTest::addColumn<double>("value");
    QTest::addColumn<QString>("sentence");
    const auto row = [](const char* what, double value, const char* sentence) {
        QTest::addRow("%s %g", what, value)
            << QString::fromLatin1(what) << value << QString::fromUtf8(sentence);
    };
    row("pieces", 0, "0 pieces cannot be: say 1 to 1000.");
    row("pieces", -1, "-1 pieces cannot be: say 1 to 1000.");
    row("pieces", 1001, "1001 pieces cannot be: say 1 to 1000.");
    row("air", 120, "A room at 120 °C cannot be: say -40 to 60 °C.");
    row("air", -41, "A room at -41 °C cannot be: say -40 to 60 °C.");
    row("air", std::nan(""), "A room at such a temperature cannot be: say -40 to 60 °C.");
    row("wood", -90, "Wood at -90 °C cannot be: say -40 to 100 °C.");
    row("wood", 300, "Wood at 300 °C cannot be: say -40 to 100 °C.");
    row("wood", HUGE_VAL, "Wood at such a temperature cannot be: say -40 to 100 °C.");
    row("humidity", 300, "A humidity of 300 % cannot be: say 0 to 100 %.");
    row("humidity", -5, "A humidity of -5 % cannot be: say 0 to 100 %.");
    row("moisture", 400, "A wood moisture of 400 % cannot be: say 0 to 250 %.");
    row("moisture", -1, "A wood moisture of -1 % cannot be: say 0 to 250 %.");
    row("gap", 40, "A gap of 40 mm in a joint cannot be: say 0 to 25 mm.");
    row("gap", -0.1, "A gap of -0.1 mm in a joint cannot be: say 0 to 25 mm.");
    row("gap", std::nan(""), "A gap of not a number mm in a joint cannot be: say 0 to 25 mm.");
}

void TestGlueUp::badInput_isRefusedWithTheFigure()
{
    QFETCH(QString, what);
    QFETCH(double, value);
    QFETCH(QString, sentence);
    GlueUpQuestion q = rightChair();
    if (what == QLatin1String("pieces"))
        q.pieces = static_cast<int>(value);
    else if (what == QLatin1String("air"))
        q.air = Celsius { value };
    else if (what == QLatin1String("wood"))
        q.wood = Celsius { value };
    else if (what == QLatin1String("humidity"))
        q.humidity = value;
    else if (what == QLatin1String("moisture"))
        q.woodMoisture = value;
    else
        q.gapMm = value;
    const auto answer = checkGlueUp(q, today);
    QVERIFY(!answer);
    QCOMPARE(answer.error().code, ErrorCode::BadInput);
    QCOMPARE(QString::fromStdString(answer.error().sentence), sentence);
}

void TestGlueUp::extremesThatCanBe_areAnswered()
{
    GlueUpQuestion q = rightChair();
    q.pieces = 1000;
    q.air = Celsius { -40 };
    q.wood = Celsius { 100 };
    q.humidity = 100;
    q.woodMoisture = 250;
    q.gapMm = 25;
    QCOMPARE(ask(q).answer, GlueUpVerdict::FixFirst);
    q.humidity = 0;
    q.air = Celsius { 60 };
    q.wood = Celsius { -20 };
    QCOMPARE(ask(q).answer, GlueUpVerdict::FixFirst);
}

void TestGlueUp::brokenMix_isRefused()
{
    for (const double share : { 0.0, -0.5, 1e6, std::nan("") }) {
        GlueUpQuestion q = rightChair();
        q.candidates[0].parts[0].sharePerUnit = share;
        const auto answer = checkGlueUp(q, today);
        QVERIFY(!answer);
        QCOMPARE(answer.error().sentence,
            std::string("The share of Hide granules in the mix cannot be: check its mix ratio."));
    }
    GlueUpQuestion q = rightChair();
    q.candidates[0].waterPerUnit = -1;
    QVERIFY(!checkGlueUp(q, today));
}

QTEST_APPLESS_MAIN(TestGlueUp)
#include "tst_glueup.moc"
