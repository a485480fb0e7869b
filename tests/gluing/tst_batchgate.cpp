#include <QTest>

#include "gluing/questions.h"

using namespace gw;
using namespace gw::test;
using namespace std::chrono_literals;

namespace {

BatchAtHand pot(double left, Verdict verdict = Verdict::Good)
{
    return { { "batch" }, "GWPOT", "Hot hide glue, 192 g grade", grams(left), verdict, {}, true, true, 2.5,
        {} };
}

GlueUpAnswer askWith(GlueUpQuestion question, const std::optional<BatchAtHand>& batch)
{
    question.batch = batch;
    const auto answer = checkGlueUp(question, today);
    if (!answer)
        qFatal("%s", answer.error().sentence.c_str());
    return *answer;
}

bool has(const GlueUpAnswer& answer, std::string_view id) { return gate(answer, id).id == id; }

} // namespace

/// A batch at hand in the check: used first, and never more than a pass when it is one. The chair takes 37.4
/// g.
class BatchGateTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void aPotThatCovers_standsInForTheShelf()
    {
        GlueUpQuestion q = rightChair();
        q.candidates.clear();
        const auto answer = askWith(q, pot(60));
        QVERIFY(answer.answer == GlueUpVerdict::Go);
        QCOMPARE(gate(answer, "batch").result, GateResult::Pass);
        QVERIFY(gate(answer, "batch").text.find("2.5 hours at 60") != std::string::npos);
        QCOMPARE(gate(answer, "amount").result, GateResult::Pass);
        QVERIFY(!has(answer, "age"));
        QVERIFY(answer.fromBatch == answer.need && answer.use.empty() && answer.weighOut.empty());
        QCOMPARE(gate(askWith(q, pot(38)), "amount").result, GateResult::Warn);
    }

    void aPotThatDoesNotCover_isFilledUpFromTheShelf()
    {
        const auto answer = askWith(rightChair(), pot(20));
        QVERIFY(answer.answer == GlueUpVerdict::Go);
        QCOMPARE(answer.fromBatch.value(), 20.0);
        QVERIFY(has(answer, "age"));
        QVERIFY(gate(answer, "amount").text.starts_with("Besides the 20 g in GWPOT: needs 17"));
        double weighed = 0;
        for (const WeighLine& line : answer.weighOut)
            weighed += line.amount.value();
        QVERIFY(std::abs(weighed - (answer.need.value() - 20)) < 0.11);
    }

    void eachVerdict_isAGate()
    {
        GlueUpQuestion q = rightChair();
        BatchAtHand late = pot(60, Verdict::TestFirst);
        late.words = { "It was hot for 12 hours at 60 °C: it sets slower." };
        QCOMPARE(gate(askWith(q, late), "batch").result, GateResult::Warn);
        QVERIFY(gate(askWith(q, late), "batch").text.find("sets slower") != std::string::npos);
        QVERIFY(askWith(q, late).answer == GlueUpVerdict::Go);
        const auto unknown = askWith(q, pot(60, Verdict::NotKnown));
        QCOMPARE(gate(unknown, "batch").result, GateResult::Unknown);
        QVERIFY(unknown.answer == GlueUpVerdict::NotKnown);
        const auto spoilt = askWith(q, pot(60, Verdict::DoNotUse));
        QCOMPARE(gate(spoilt, "batch").result, GateResult::Stop);
        QVERIFY(spoilt.answer == GlueUpVerdict::FixFirst);
        QCOMPARE(spoilt.firstFix, std::string("Mix a new batch."));
        QCOMPARE(spoilt.fromBatch.milli, 0);
        QVERIFY(!spoilt.use.empty()); // from the shelf instead
    }

    void coldHotGlue_isToBeWarmed()
    {
        BatchAtHand chilled = pot(60);
        chilled.onTheHeat = false;
        const auto answer = askWith(rightChair(), chilled);
        QCOMPARE(gate(answer, "batch").result, GateResult::Warn);
        QVERIFY(gate(answer, "batch").fix.find("60 to 63 °C") != std::string::npos);
    }

    void aCup_saysHowLongItLasts()
    {
        BatchAtHand cup { { "cup" }, "GWCUP", "Epoxy, thickened", grams(40), Verdict::Good, {}, false, false,
            {}, today + 12min + 50s };
        const auto answer = askWith(rightLeg(), cup);
        QVERIFY(gate(answer, "batch").text.find("About 12 min until") != std::string::npos);
        QVERIFY(!has(answer, "partner"));
        cup.left = millilitres(40); // measured otherwise: it covers nothing that is known
        QCOMPARE(askWith(rightLeg(), cup).fromBatch.milli, 0);
    }

    // A batch that is good never makes an answer worse than none.
    void aGoodBatch_neverMakesItWorse()
    {
        for (const double shelf : { 0.0, 5.0, 10.0, 13.4, 14.0, 400.0 }) {
            GlueUpQuestion q = rightChair();
            q.candidates = { granules({ item("H1", shelf) }) };
            const auto without = askWith(q, {});
            for (const double left : { 0.5, 5.0, 20.0, 37.0, 38.0, 100.0 })
                QVERIFY(askWith(q, pot(left)).answer <= without.answer);
        }
    }
};

QTEST_GUILESS_MAIN(BatchGateTest)
#include "tst_batchgate.moc"
