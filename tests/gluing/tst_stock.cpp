#include <QTest>

#include "gluing/questions.h"

using namespace gw;
using namespace gw::test;

/// What the shelf says: partner, stock and amount, which containers in which order, what to weigh.
class TestStock : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void goodStock_passes();
    void testFirstStock_isToBeTested();
    void testFirstStock_besideEnoughGood_isLeftAlone();
    void notKnownStock_isUnknown();
    void notKnownStock_besideEnoughGood_passes();
    void spentStock_isAStopWithoutRemedy();
    void emptyContainers_areNoStock();
    void goodPastItsDate_isNotKnown();
    void nothingOnTheShelf_stops();
    void typicalClass_wins_whenBothAreFit();
    void unusualClass_warns_whenTypicalIsSpent();
    void firstToGoOff_breaksTiesBetweenCandidates();

    void amount_withMargin_passes();
    void amount_withoutMargin_warns();
    void amount_short_saysHowMuchAndForHowMany();
    void amount_onePieceShort_offersNoFewer();
    void amount_withoutEstimate_isUnknown();
    void amount_shortEvenWithTest_isTheFirstFix();
    void otherUnit_withoutDensity_isUnknown();

    void order_isFirstToGoOff();
    void order_sameDay_takesOpenedFirst();
    void order_undated_comesLast();
    void split_addsUpToTheNeed();
    void useNeverTakesWhatIsNotGood();

    void partner_bothThere_passes();
    void partner_neverHad_stops();
    void partner_notOnShelf_stops();
    void partner_isNoGate_forOnePart();
    void twoPart_takesBothInRatio();
    void twoPart_shortHardener_isNamed();
    void twoPart_worstSideDecides();
    void smallMix_warnsOfTheScale();

    void weighOut_hotGlue_isGranulesAndWater();
    void weighOut_bottledGlue_isOneLine();
    void weighOut_tinyAmounts_keepAFigure();
};

namespace {

GlueUpAnswer ask(const GlueUpQuestion& question)
{
    const auto answer = checkGlueUp(question, today);
    if (!answer)
        qFatal("%s", answer.error().sentence.c_str());
    return *answer;
}

GlueUpAnswer chairFrom(std::vector<StockItem> items, int howMany = 1)
{
    GlueUpQuestion q = rightChair();
    q.pieces = howMany;
    q.candidates = { granules(std::move(items)) };
    return ask(q);
}

QStringList labels(const GlueUpAnswer& answer)
{
    QStringList list;
    for (const Take& take : answer.use)
        list << QString::fromStdString(take.label);
    return list;
}

bool has(const std::string& text, const char* part) { return text.find(part) != std::string::npos; }

} // namespace

void TestStock::goodStock_passes()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 400) });
    QCOMPARE(answer.answer, GlueUpVerdict::Go);
    QCOMPARE(gate(answer, "age").result, GateResult::Pass);
    QCOMPARE(gate(answer, "age").text, std::string("Hide granules: H1 is good until 1 January 2027."));
    QVERIFY(answer.firstFix.empty());
    QCOMPARE(answer.stockName, std::string("Hide granules"));
}

void TestStock::testFirstStock_isToBeTested()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 400, Verdict::TestFirst) });
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QCOMPARE(gate(answer, "age").result, GateResult::Stop);
    QCOMPARE(gate(answer, "age").text,
        std::string("There is enough Hide granules only with H1, to be tested first. "
                    "Opened 14 months ago, and its opened life is 12 to 24 months."));
    QCOMPARE(answer.firstFix, std::string("Test H1 first: its test is on the container's page."));
    QCOMPARE(gate(answer, "amount").result, GateResult::Warn);
    QVERIFY(answer.use.empty());
}

void TestStock::testFirstStock_besideEnoughGood_isLeftAlone()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 400, Verdict::TestFirst), item("H2", 20) });
    QCOMPARE(answer.answer, GlueUpVerdict::Go);
    QCOMPARE(labels(answer), QStringList { QStringLiteral("H2") });
}

void TestStock::notKnownStock_isUnknown()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 400, Verdict::NotKnown) });
    QCOMPARE(answer.answer, GlueUpVerdict::NotKnown);
    QCOMPARE(gate(answer, "age").result, GateResult::Unknown);
    QCOMPARE(gate(answer, "amount").result, GateResult::Unknown);
    QCOMPARE(answer.firstFix, std::string("Find out about H1: its page says what is missing."));
    QVERIFY(answer.use.empty());
}

void TestStock::notKnownStock_besideEnoughGood_passes()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 400, Verdict::NotKnown), item("H2", 20) });
    QCOMPARE(answer.answer, GlueUpVerdict::Go);
    QCOMPARE(labels(answer), QStringList { QStringLiteral("H2") });
}

void TestStock::spentStock_isAStopWithoutRemedy()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 400, Verdict::DoNotUse) });
    QCOMPARE(answer.answer, GlueUpVerdict::Stop);
    QCOMPARE(gate(answer, "age").result, GateResult::Stop);
    QVERIFY(gate(answer, "age").fix.empty());
    QCOMPARE(answer.firstFix,
        std::string(
            "No Hide granules on the shelf may be used: get fresh stock. H1: Its printed date was 1 January "
            "2026."));
    QVERIFY(answer.use.empty());
    QCOMPARE(answer.shortBy.value(), answer.need);
}

void TestStock::emptyContainers_areNoStock()
{
    GlueUpAnswer answer = chairFrom({ item("H1", 0), item("H2", -3) });
    QCOMPARE(answer.answer, GlueUpVerdict::Stop);
    QCOMPARE(answer.firstFix, std::string("There is no Hide granules on the shelf."));
}

void TestStock::goodPastItsDate_isNotKnown()
{
    const GlueUpAnswer past
        = chairFrom({ item("H1", 400, Verdict::Good, today - std::chrono::milliseconds { 1 }) });
    QCOMPARE(past.answer, GlueUpVerdict::NotKnown);
    const GlueUpAnswer last = chairFrom({ item("H1", 400, Verdict::Good, today) });
    QCOMPARE(last.answer, GlueUpVerdict::Go);
    QVERIFY(has(gate(last, "age").text, "less than a day from now"));
}

void TestStock::nothingOnTheShelf_stops()
{
    GlueUpQuestion q = rightChair();
    q.candidates.clear();
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::Stop);
    QCOMPARE(answer.firstFix, std::string("There is no hot hide glue on the shelf."));
    QCOMPARE(gate(answer, "amount").text, std::string("Needs 37.4 g, none here."));
    QVERIFY(answer.stockName.empty());
    QCOMPARE(answer.shortBy.value(), answer.need);
}

void TestStock::typicalClass_wins_whenBothAreFit()
{
    GlueUpQuestion q = rightChair();
    q.candidates = { granules({ item("S1", 400, Verdict::Good, day(2026, 7, 1)) }, false, "Strong granules"),
        granules({ item("H1", 400, Verdict::Good, day(2027, 7, 1)) }) };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.stockName, std::string("Hide granules"));
    QCOMPARE(gate(answer, "age").result, GateResult::Pass);
}

void TestStock::unusualClass_warns_whenTypicalIsSpent()
{
    GlueUpQuestion q = rightChair();
    q.candidates = { granules({ item("H1", 400, Verdict::DoNotUse) }),
        granules({ item("S1", 400) }, false, "Strong granules") };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.stockName, std::string("Strong granules"));
    QCOMPARE(answer.answer, GlueUpVerdict::Go);
    QCOMPARE(gate(answer, "age").result, GateResult::Warn);
    QVERIFY(has(gate(answer, "age").text, "It is not of the class usual for \"Chair, full reglue\"."));
}

void TestStock::firstToGoOff_breaksTiesBetweenCandidates()
{
    GlueUpQuestion q = rightChair();
    q.candidates = { granules({ item("A1", 400, Verdict::Good, day(2027, 7, 1)) }, true, "A granules"),
        granules({ item("B1", 400, Verdict::Good, day(2026, 7, 1)) }, true, "B granules") };
    QCOMPARE(ask(q).stockName, std::string("B granules"));
    std::swap(q.candidates[0], q.candidates[1]);
    QCOMPARE(ask(q).stockName, std::string("B granules"));
}

void TestStock::amount_withMargin_passes()
{
    // 37.42 g wet is 13.37 g of granules; a tenth over is 14.70 g.
    const GlueUpAnswer answer = chairFrom({ item("H1", 14.71) });
    QCOMPARE(gate(answer, "amount").result, GateResult::Pass);
    QCOMPARE(gate(answer, "amount").text,
        std::string("Needs 37.4 g ready to use: 13.4 g of Hide granules (14.7 g good)."));
    QVERIFY(!answer.shortBy);
}

void TestStock::amount_withoutMargin_warns()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 13.5) });
    QCOMPARE(answer.answer, GlueUpVerdict::Go);
    QCOMPARE(gate(answer, "amount").result, GateResult::Warn);
    QVERIFY(!answer.shortBy);
}

void TestStock::amount_short_saysHowMuchAndForHowMany()
{
    // Three chairs: 3 x 22.42 + 15 = 82.27 g wet, 29.38 g of granules. 25 g are 70 g wet: enough for two
    // (59.84 g).
    const GlueUpAnswer answer = chairFrom({ item("H1", 20), item("H2", 5) }, 3);
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QCOMPARE(gate(answer, "amount").result, GateResult::Stop);
    QVERIFY(std::abs(answer.shortBy.value().value() - (82.267 - 70)) < 0.01);
    QCOMPARE(answer.firstFix,
        std::string(
            "Short by 12.3 g ready to use: get 4.38 g more of Hide granules, or do 2 of the 3 pieces."));
    QCOMPARE(labels(answer), (QStringList { QStringLiteral("H2"), QStringLiteral("H1") }));
}

void TestStock::amount_onePieceShort_offersNoFewer()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 5) });
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QCOMPARE(answer.firstFix, std::string("Short by 23.4 g ready to use: get 8.37 g more of Hide granules."));
}

void TestStock::amount_withoutEstimate_isUnknown()
{
    GlueUpQuestion q = rightChair();
    q.job.areaCm2 = q.job.fixedLoss = 0;
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::NotKnown);
    QCOMPARE(gate(answer, "amount").result, GateResult::Unknown);
    QVERIFY(answer.use.empty());
    QVERIFY(answer.weighOut.empty());
}

void TestStock::amount_shortEvenWithTest_isTheFirstFix()
{
    const GlueUpAnswer answer = chairFrom({ item("H1", 5), item("H2", 2, Verdict::TestFirst) });
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QCOMPARE(gate(answer, "age").result, GateResult::Warn);
    QVERIFY(answer.firstFix.starts_with("Short by "));
}

void TestStock::otherUnit_withoutDensity_isUnknown()
{
    StockItem volume = item("H1", 0);
    volume.left = millilitres(500);
    const GlueUpAnswer answer = chairFrom({ volume });
    QCOMPARE(answer.answer, GlueUpVerdict::NotKnown);
    QVERIFY(has(gate(answer, "age").text, "It is counted in ml, and its density is not known."));
}

void TestStock::order_isFirstToGoOff()
{
    const GlueUpAnswer answer = chairFrom(
        { item("late", 6, Verdict::Good, day(2027, 9, 1)), item("soon", 6, Verdict::Good, day(2026, 9, 1)),
            item("mid", 6, Verdict::Good, day(2027, 1, 1), true) });
    QCOMPARE(labels(answer),
        (QStringList { QStringLiteral("soon"), QStringLiteral("mid"), QStringLiteral("late") }));
    QCOMPARE(answer.use[0].why, std::string("first to go off that is fit"));
    QCOMPARE(answer.use[1].why, std::string("next to go off"));
}

void TestStock::order_sameDay_takesOpenedFirst()
{
    const Moment evening = day(2026, 9, 1) + std::chrono::hours { 20 };
    const GlueUpAnswer answer = chairFrom({ item("sealed", 10, Verdict::Good, day(2026, 9, 1)),
        item("open", 10, Verdict::Good, evening, true) });
    QCOMPARE(labels(answer), (QStringList { QStringLiteral("open"), QStringLiteral("sealed") }));
    QCOMPARE(answer.use[0].why, std::string("opened already, and goes off no later than the unopened"));
}

void TestStock::order_undated_comesLast()
{
    const GlueUpAnswer answer = chairFrom({ item("never", 10, Verdict::Good, std::nullopt, true),
        item("late", 10, Verdict::Good, day(2031, 1, 1)) });
    QCOMPARE(labels(answer), (QStringList { QStringLiteral("late"), QStringLiteral("never") }));
    QCOMPARE(answer.use[1].why, std::string("fit, with no date it goes off by"));
}

void TestStock::split_addsUpToTheNeed()
{
    const GlueUpAnswer answer = chairFrom({ item("A", 6, Verdict::Good, day(2026, 8, 1)),
        item("B", 5, Verdict::Good, day(2026, 9, 1)), item("C", 400, Verdict::Good, day(2026, 10, 1)) });
    QCOMPARE(answer.use.size(), std::size_t { 3 });
    QCOMPARE(answer.use[0].amount, grams(6));
    QCOMPARE(answer.use[1].amount, grams(5));
    QCOMPARE(
        answer.use[0].amount + answer.use[1].amount + answer.use[2].amount, grams(answer.need.value() / 2.8));
}

void TestStock::useNeverTakesWhatIsNotGood()
{
    const GlueUpAnswer answer = chairFrom({ item("bad", 400, Verdict::DoNotUse),
        item("test", 400, Verdict::TestFirst), item("unknown", 400, Verdict::NotKnown), item("good", 3) });
    QCOMPARE(labels(answer), QStringList { QStringLiteral("good") });
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QCOMPARE(answer.firstFix, std::string("Test test first: its test is on the container's page."));
}

void TestStock::partner_bothThere_passes()
{
    const GlueUpAnswer answer = ask(rightLeg());
    QCOMPARE(answer.answer, GlueUpVerdict::Go);
    QCOMPARE(gate(answer, "partner").result, GateResult::Pass);
    QCOMPARE(answer.gates.front().id, std::string("partner"));
}

void TestStock::partner_neverHad_stops()
{
    GlueUpQuestion q = rightLeg();
    q.candidates[0].parts.pop_back();
    q.candidates[0].partnerMissing = true;
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::Stop);
    QCOMPARE(gate(answer, "partner").result, GateResult::Stop);
    QCOMPARE(answer.firstFix,
        std::string("Epoxy resin sets only with its other half, and this shop has never had that."));
    QVERIFY(answer.use.empty());
    QCOMPARE(answer.shortBy.value(), answer.need);
}

void TestStock::partner_notOnShelf_stops()
{
    GlueUpQuestion q = rightLeg();
    q.candidates[0].parts[1].items.clear();
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::Stop);
    QCOMPARE(answer.firstFix,
        std::string("There is no Slow hardener on the shelf, and without it Epoxy resin does not set."));
}

void TestStock::partner_isNoGate_forOnePart()
{
    QCOMPARE(gate(ask(rightChair()), "partner").id, std::string("none"));
}

void TestStock::twoPart_takesBothInRatio()
{
    // Worked example: 22 g mixed is resin 15.4 g and hardener 6.4 g, 100 : 41.3 (arithmetic).
    const GlueUpAnswer answer = ask(rightLeg());
    QCOMPARE(labels(answer), (QStringList { QStringLiteral("R1"), QStringLiteral("S1") }));
    QCOMPARE(answer.weighOut.size(), std::size_t { 2 });
    QCOMPARE(answer.weighOut[0].what, std::string("Epoxy resin"));
    QCOMPARE(answer.weighOut[0].amount, grams(15.4));
    QCOMPARE(answer.weighOut[1].amount, grams(6.4));
    QVERIFY(std::abs(answer.use[1].amount.value() / answer.use[0].amount.value() - 0.413) < 0.0001);
}

void TestStock::twoPart_shortHardener_isNamed()
{
    GlueUpQuestion q = rightLeg();
    q.candidates = { twoPart({ item("R1", 300) }, { item("S1", 5) }) };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QVERIFY(answer.firstFix.starts_with("Short by "));
    QVERIFY(has(answer.firstFix, "more of Slow hardener."));
    QVERIFY(!has(answer.firstFix, "Epoxy resin"));
    QVERIFY(std::abs(answer.shortBy.value().value() - (answer.need.value() - 5 * 141.3 / 41.3)) < 0.01);
}

void TestStock::twoPart_worstSideDecides()
{
    GlueUpQuestion q = rightLeg();
    q.candidates = { twoPart({ item("R1", 300) }, { item("S1", 120, Verdict::DoNotUse) }) };
    QCOMPARE(ask(q).answer, GlueUpVerdict::Stop);
    q.candidates = { twoPart({ item("R1", 300, Verdict::NotKnown) }, { item("S1", 120) }) };
    QCOMPARE(ask(q).answer, GlueUpVerdict::NotKnown);
    q.candidates = { twoPart({ item("R1", 300, Verdict::TestFirst) }, { item("S1", 120) }) };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::FixFirst);
    QCOMPARE(answer.firstFix, std::string("Test R1 first: its test is on the container's page."));
}

void TestStock::smallMix_warnsOfTheScale()
{
    GlueUpQuestion q = rightLeg();
    q.job.extra = 0; // 11 g: under the 17 g that a 0.1 g scale wants at 100 : 41.3
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.answer, GlueUpVerdict::Go);
    QCOMPARE(gate(answer, "amount").result, GateResult::Warn);
    QVERIFY(
        has(gate(answer, "amount").text, "the slow hardener may be out by more than 2 %: mix 18 g or more"));
    QCOMPARE(gate(ask(rightLeg()), "amount").result, GateResult::Pass);
}

void TestStock::weighOut_hotGlue_isGranulesAndWater()
{
    // Worked example: a chair at 1.8 : 1 takes 13 g of granules and 24 g of water (arithmetic).
    const GlueUpAnswer answer = ask(rightChair());
    QCOMPARE(answer.weighOut.size(), std::size_t { 2 });
    QCOMPARE(answer.weighOut[0].what, std::string("Hide granules"));
    QCOMPARE(answer.weighOut[0].amount, grams(13.4));
    QCOMPARE(answer.weighOut[1].what, std::string("Cold water"));
    QCOMPARE(answer.weighOut[1].amount, grams(24.1));
    QVERIFY(std::abs(answer.need.value() - 37.4) < 0.05);
}

void TestStock::weighOut_bottledGlue_isOneLine()
{
    GlueUpQuestion q = rightChair();
    q.candidates = { { .name = "Liquid glue",
        .typical = true,
        .partnerMissing = false,
        .parts = { part("Liquid glue", 1, { item("L1", 240) }) },
        .waterPerUnit = 0 } };
    const GlueUpAnswer answer = ask(q);
    QCOMPARE(answer.weighOut.size(), std::size_t { 1 });
    QCOMPARE(answer.weighOut[0].amount, grams(37.4));
    QCOMPARE(gate(answer, "amount").text, std::string("Needs 37.4 g, 240 g good here."));
}

void TestStock::weighOut_tinyAmounts_keepAFigure()
{
    GlueUpQuestion q = rightChair();
    q.job.areaCm2 = 1;
    q.job.fixedLoss = 0;
    const GlueUpAnswer answer = ask(q); // 0.0455 g wet
    QCOMPARE(answer.weighOut[0].amount, grams(0.02));
    q.job.areaCm2 = 0.1;
    QVERIFY(ask(q).weighOut[0].amount.milli > 0);
}

QTEST_APPLESS_MAIN(TestStock)
#include "tst_stock.moc"
