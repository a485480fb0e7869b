#include <algorithm>

#include <QTest>

#include "shop/gluechoice.h"
#include "shop/glueuprecord.h"
#include "shop/piecefailed.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// The trade's rules of thumb, each common practice, no source: what every bench says has to come out of the
/// shop's answers too. Those of mixing stand in tst_recipes.
class RulesOfThumbTest : public QObject {
    Q_OBJECT

private:
    Workbench m_bench { false };

    WhichGlueAnswer which(const GlueAsked& asked) const
    {
        auto answer = whichGlueFor(*m_bench.shop, asked);
        if (!answer)
            qFatal("%s", answer.error().sentence.c_str());
        return std::move(*answer);
    }
    static const RankedGlue& ranked(const WhichGlueAnswer& answer, const char* family)
    {
        const auto found = std::ranges::find(answer.glues, FamilyId { family }, &RankedGlue::family);
        if (found == answer.glues.end())
            qFatal("no family %s", family);
        return *found;
    }
    static GateResult about(const RankedGlue& glue, const char* what)
    {
        const auto found = std::ranges::find(glue.reasons, what, &GlueReason::about);
        return found == glue.reasons.end() ? GateResult::Unknown : found->result;
    }
    FamilyRecord family(const char* id) const
    {
        return m_bench.shop->catalogue()->families.at(FamilyId { id });
    }

private Q_SLOTS:
    // Common practice, no source: hide and PVA bridge no gap, epoxy does.
    void hideAndPvaBridgeNoGap_epoxyDoes()
    {
        GlueAsked asked;
        asked.gapMm = 0.4;
        const auto answer = which(asked);
        for (const char* thin : { "hot_hide", "liquid_hide", "pva_white", "pva_yellow", "pva_crosslinking" })
            QCOMPARE(about(ranked(answer, thin), "gap"), GateResult::Stop);
        QVERIFY(about(ranked(answer, "epoxy_thick"), "gap") != GateResult::Stop);
        asked.gapMm = 3;
        QVERIFY(about(ranked(which(asked), "epoxy_thick"), "gap") != GateResult::Stop);
    }

    // Common practice, no source: both faces are spread.
    void bothFacesAreSpread()
    {
        for (const char* id : { "hot_hide", "liquid_hide", "fish", "epoxy_neat", "epoxy_thick", "contact" }) {
            const QString faces = QString::fromStdString(family(id).facesToSpread);
            QVERIFY2(faces.contains(QStringLiteral("both"), Qt::CaseInsensitive), id);
        }
    }

    // Common practice, no source: old hide glue need not all come off under new hide glue; under PVA it must.
    void oldHideGlueStaysUnderNew()
    {
        for (const char* residue : { "hide_old_clean", "hide_old" }) {
            GlueAsked asked;
            asked.residue = residue;
            const auto answer = which(asked);
            QVERIFY(about(ranked(answer, "hot_hide"), "residue") != GateResult::Stop);
            QVERIFY(about(ranked(answer, "liquid_hide"), "residue") != GateResult::Stop);
        }
        GlueAsked asked;
        asked.residue = "hide_old";
        QCOMPARE(about(ranked(which(asked), "pva_white"), "residue"), GateResult::Stop);
    }

    // Common practice, no source: epoxy is kept out of joints meant to come apart.
    void epoxyStaysOutOfJointsThatMustOpen()
    {
        GlueAsked asked;
        asked.joint = "chair_tenon_sound";
        asked.period = true;
        asked.mustComeApart = true;
        const auto answer = which(asked);
        QVERIFY(answer.glues.front().undoing == Undoing::Ready);
        for (const char* id : { "epoxy_neat", "epoxy_thick", "epoxy_5min" })
            QCOMPARE(ranked(answer, id).standing, GateResult::Stop);
    }

    // Common practice, no source: wood clean and close, pressure, and enough glue are the four that make a
    // joint. Each that fails is a cause; each can be asked for before.
    void cleanCloseTightEnough_areTheFour()
    {
        m_bench.arrive("Hide glue", "hide_granules_192", "20 g", 1);
        GlueUpSaid said;
        said.jobType = "chair_full";
        said.piece = "Stool";
        said.conditions.residue = "wax"; // not clean
        said.conditions.gapMm = 2; // not close
        said.clampedMinutes = 2; // no pressure to speak of
        const auto check = checkJob(*m_bench.shop, said.jobType, 2, said.conditions, Workbench::day(3));
        GW_OK(check);
        const auto gate
            = [&](const char* id) { return std::ranges::find(check->gates, id, &Gate::id)->result; };
        QCOMPARE(gate("residue"), GateResult::Stop);
        QCOMPARE(gate("gap"), GateResult::Stop);
        QCOMPARE(gate("amount"), GateResult::Stop); // not enough
        GW_OK(recordGlueUp(*m_bench.shop, said, m_bench.on(4)));
        FailedJoint joint;
        joint.piece = "Stool";
        const auto why = whyFailed(*m_bench.shop, joint, Workbench::day(9));
        GW_OK(why);
        for (const char* id : { "residue", "gap", "clamp" }) {
            const auto cause = std::ranges::find(why->causes, std::string(id), &Cause::id);
            QVERIFY2(cause->likelihood == Likelihood::Likely, id);
        }
    }

    // Common practice, no source (the bar of 75 % is that of ASTM D2559, from memory): in a break test of a
    // good joint the wood goes first.
    void woodGoesFirst_inASoundJoint()
    {
        JointFacts facts;
        facts.woodFailurePercent = 90;
        QCOMPARE(causesOf(facts)->front().id, std::string("wood_gave"));
        facts.woodFailurePercent = 5;
        QVERIFY(causesOf(facts)->front().id != "wood_gave");
    }
};

QTEST_GUILESS_MAIN(RulesOfThumbTest)
#include "tst_rulesofthumb.moc"
