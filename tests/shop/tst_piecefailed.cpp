#include <algorithm>

#include <QTest>

#include "shop/glueuprecord.h"
#include "shop/piecefailed.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// A joint that came apart: causes from what was kept, and the other pieces of the lot.
class PieceFailedTest : public QObject {
    Q_OBJECT

private:
    static std::string hideOf(Workbench& bench, const char* lot = "H-3")
    {
        return bench.arrive(
            "Hide glue", "hide_granules_192", "1 kg", 1, [lot](ArrivalDraft& d) { d.lot = lot; });
    }
    static void glued(
        Workbench& bench, const char* piece, double days, const std::function<void(GlueUpSaid&)>& change = {})
    {
        GlueUpSaid said;
        said.jobType = "chair_full";
        said.piece = piece;
        if (change)
            change(said);
        const auto done = recordGlueUp(*bench.shop, said, bench.on(days));
        if (!done)
            qFatal("%s", done.error().sentence.c_str());
    }
    static Cause cause(const WhyFailed& why, const char* id)
    {
        const auto found = std::ranges::find(why.causes, std::string(id), &Cause::id);
        return found == why.causes.end() ? Cause { "missing", {}, {}, 0, {}, {} } : *found;
    }
    static WhyFailed asked(Workbench& bench, const FailedJoint& joint)
    {
        auto why = whyFailed(*bench.shop, joint, Workbench::day(60));
        if (!why)
            qFatal("%s", why.error().sentence.c_str());
        return std::move(*why);
    }

private Q_SLOTS:
    void recordedFigures_rankTheCauses_data() { addEngines(); }
    void recordedFigures_rankTheCauses()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        hideOf(bench);
        glued(bench, "Rocking chair", 5, [](GlueUpSaid& said) {
            said.conditions.air = Celsius { 12 }; // hot hide wants 20 or more (glueup_conditions, S5; S33)
            said.conditions.wood = Celsius { 14 };
            said.conditions.gapMm = 0.1;
            said.conditions.residue = "wax";
            said.clampedMinutes = 600;
        });
        const WhyFailed why = asked(bench, { "rocking chair", {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {} });
        QVERIFY(why.recorded);
        QCOMPARE(why.at, Workbench::day(5));
        QCOMPARE(cause(why, "cold").likelihood, Likelihood::Likely);
        QCOMPARE(cause(why, "residue").likelihood, Likelihood::Likely);
        QCOMPARE(cause(why, "stock").likelihood, Likelihood::Unlikely);
        // What nobody wrote down is not known, and never unlikely.
        for (const char* id : { "moisture", "assembly", "load", "surface", "humidity" })
            QCOMPARE(cause(why, id).likelihood, Likelihood::NotKnown);
        QCOMPARE(why.causes.front().likelihood, Likelihood::Likely);
        for (const Cause& one : why.causes)
            QVERIFY(!one.why.empty() && !one.test.empty());
    }

    void remembered_fillsOnlyWhatWasNotRecorded_data() { addEngines(); }
    void remembered_fillsOnlyWhatWasNotRecorded()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        hideOf(bench);
        glued(bench, "Rocking chair", 5, [](GlueUpSaid& said) { said.conditions.gapMm = 0.1; });
        FailedJoint joint;
        joint.piece = "Rocking chair";
        joint.gapMm = 3; // recorded otherwise
        joint.clampedMinutes = 5;
        joint.woodFailurePercent = 90;
        const WhyFailed why = asked(bench, joint);
        QVERIFY(cause(why, "gap").likelihood != Likelihood::Likely);
        QCOMPARE(cause(why, "clamp").likelihood, Likelihood::Likely);
        // In a break test of a good joint the wood goes first (common practice, no source).
        QCOMPARE(why.causes.front().id, std::string("wood_gave"));
    }

    // The verdict that counts is that of the day, not today's.
    void stockIsJudgedAsItStood_data() { addEngines(); }
    void stockIsJudgedAsItStood()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench);
        const JobRecord job { {}, { "chair_full" }, "Reglue", "Desk", {} };
        GW_OK(useForJob(*bench.shop, { { hide, grams(10) } }, job, bench.on(3)));
        glued(bench, "Rocking chair", 5);
        GW_OK(holdLot(*bench.shop, "H-3", "smells", bench.on(6)));
        for (const char* piece : { "Rocking chair", "Desk" }) {
            FailedJoint joint;
            joint.piece = piece;
            QCOMPARE(cause(asked(bench, joint), "stock").likelihood, Likelihood::Unlikely);
        }
        FailedJoint desk;
        desk.piece = "Desk";
        const WhyFailed why = asked(bench, desk);
        QVERIFY(!why.recorded);
        QCOMPARE(cause(why, "cold").likelihood, Likelihood::NotKnown);
        // A glue-up after the hold, against the verdict.
        glued(bench, "Stool", 8, [&](GlueUpSaid& said) { said.takings = { { hide, grams(5) } }; });
        FailedJoint stool;
        stool.piece = "Stool";
        QCOMPARE(cause(asked(bench, stool), "stock").likelihood, Likelihood::Likely);
    }

    void otherPiecesOfTheLot_areNamed_data() { addEngines(); }
    void otherPiecesOfTheLot_areNamed()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench);
        const auto other = hideOf(bench, "H-4");
        glued(bench, "Rocking chair", 5, [&](GlueUpSaid& s) { s.takings = { { hide, grams(9) } }; });
        glued(bench, "Hall table", 6, [&](GlueUpSaid& s) { s.takings = { { hide, grams(9) } }; });
        glued(bench, "Stool", 7, [&](GlueUpSaid& s) { s.takings = { { other, grams(9) } }; });
        glued(bench, "Rocking chair", 8, [&](GlueUpSaid& s) { s.takings = { { other, grams(9) } }; });
        GW_OK(useSome(*bench.shop, hide, grams(2), {}, bench.on(9)));
        FailedJoint joint;
        joint.piece = "Rocking chair";
        joint.on = dateOf(Workbench::day(5));
        const WhyFailed why = asked(bench, joint);
        QCOMPARE(why.others.size(), 1U);
        QCOMPARE(why.others[0].piece, std::string("Hall table"));
        QCOMPARE(why.others[0].lot, std::string("H-3"));
        QCOMPARE(why.usesWithoutPiece, 1);
        joint.on.reset(); // the latest is of the other lot
        QCOMPARE(asked(bench, joint).others[0].piece, std::string("Stool"));
    }

    void whatCannotBe_isASentence_data() { addEngines(); }
    void whatCannotBe_isASentence()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        hideOf(bench);
        glued(bench, "Rocking chair", 5);
        const auto oil = bench.arrive("Polishing oil", "drying_oil", "500 ml", 1);
        const JobRecord job { {}, {}, "Oil", "Chest", {} };
        GW_OK(useForJob(*bench.shop, { { oil, *parseAmount("20 ml") } }, job, bench.on(3)));
        const Moment now = Workbench::day(60);
        FailedJoint joint;
        GW_FAILS(whyFailed(*bench.shop, joint, now), ErrorCode::BadInput);
        joint.piece = "no such piece";
        GW_FAILS(whyFailed(*bench.shop, joint, now), ErrorCode::NotFound);
        joint.piece = "Chest"; // nothing was glued on it
        GW_FAILS(whyFailed(*bench.shop, joint, now), ErrorCode::NotFound);
        joint.piece = "Rocking chair";
        joint.on = dateIn2026(1, 1);
        GW_FAILS(whyFailed(*bench.shop, joint, now), ErrorCode::NotFound);
        joint.on.reset();
        joint.woodFailurePercent = 140;
        GW_FAILS(whyFailed(*bench.shop, joint, now), ErrorCode::BadInput);
    }
};

QTEST_GUILESS_MAIN(PieceFailedTest)
#include "tst_piecefailed.moc"
