#include <QTest>

#include "gluing/questions.h"
#include "gluing/stood.h"
#include "gluing/whichglue.h"
#include "measure/moistair.h"

using namespace gw;
using namespace gw::test;

/// The piece itself: where its wood stood, how old its faces are, whether it must open again, and which glue.
class TestPiece : public QObject {
    Q_OBJECT

private:
    static GlueUpAnswer ask(const GlueUpQuestion& q)
    {
        const auto answer = checkGlueUp(q, today);
        if (!answer)
            qFatal("%s", answer.error().sentence.c_str());
        return *answer;
    }
    static std::vector<AirReading> steady(double celsius, std::optional<double> humidity, int days)
    {
        std::vector<AirReading> readings;
        for (int hour = days * 24; hour >= 0; hour -= 3)
            readings.push_back({ today - std::chrono::hours { hour }, { celsius }, humidity });
        return readings;
    }
    static GlueCandidate candidate(const Family& family, GateResult joint, Undoing undoing)
    {
        GlueCandidate c;
        c.family = family;
        c.family.undoing = undoing;
        c.joint = Suitability { "Tenon", joint, "As the table has it" };
        return c;
    }

private Q_SLOTS:
    // Wood Handbook equation 4-5 in steady air; a point either side for species and history.
    void steadyAir_givesItsEquilibrium()
    {
        const auto stood = moistureWhereItStood(steady(20, 50, 60), today);
        QVERIFY(stood.percent);
        const double emc = equilibriumMoisture({ 20 }, { 50 })->percent;
        QVERIFY(std::abs(stood.percent->low - (emc - 1)) < 1e-6);
        QVERIFY(std::abs(stood.percent->high - (emc + 1)) < 1e-6);
    }

    void aWetWeekAfterADryMonth_widensTheRange()
    {
        auto readings = steady(20, 35, 60);
        for (AirReading& r : readings) {
            if (today - r.at < std::chrono::days { 7 })
                r.humidity = 80;
        }
        const auto stood = moistureWhereItStood(readings, today);
        QVERIFY(stood.percent->high - stood.percent->low > 4);
    }

    void tooLittleWatched_isNotKnown()
    {
        QVERIFY(!moistureWhereItStood({}, today).percent);
        QVERIFY(!moistureWhereItStood(steady(20, {}, 60), today).percent); // no hygrometer
        QVERIFY(!moistureWhereItStood(steady(20, 50, 10), today).percent);
        auto stale = steady(20, 50, 60);
        std::erase_if(stale, [](const AirReading& r) { return today - r.at < std::chrono::days { 5 }; });
        QVERIFY(!moistureWhereItStood(stale, today).percent);
    }

    void theEstimate_passesOnlyWhereAllOfItDoes_data()
    {
        QTest::addColumn<double>("low");
        QTest::addColumn<double>("high");
        QTest::addColumn<QString>("result");
        QTest::newRow("inside") << 7.0 << 10.0 << QStringLiteral("pass"); // 6 to 11 % is wanted
        QTest::newRow("over in part") << 9.0 << 12.0 << QStringLiteral("unknown");
        QTest::newRow("over") << 12.0 << 15.0 << QStringLiteral("stop");
        QTest::newRow("dry in part") << 5.0 << 8.0 << QStringLiteral("warn");
    }
    void theEstimate_passesOnlyWhereAllOfItDoes()
    {
        QFETCH(double, low);
        QFETCH(double, high);
        QFETCH(QString, result);
        GlueUpQuestion q = rightChair();
        q.woodMoisture.reset();
        q.stoodName = "Dry cupboard";
        q.stood = StoodMoisture { Range<double> { low, high }, "By the air there.", 1 };
        const GlueUpAnswer answer = ask(q);
        QCOMPARE(QString::fromUtf8(word(gate(answer, "moisture").result).data()), result);
        q.woodMoisture = 8.5; // the meter beats it
        QCOMPARE(gate(ask(q), "moisture").result, GateResult::Pass);
    }

    void partsThatDiffer_areWarnedOf()
    {
        GlueUpQuestion q = rightChair();
        q.otherMoisture = 6.2;
        QCOMPARE(gate(ask(q), "moisture").result, GateResult::Warn);
        q.otherMoisture = 14;
        QCOMPARE(gate(ask(q), "moisture").result, GateResult::Stop);
    }

    void oldFaces_areWarnedOf_andUnsaidAreAskedFor()
    {
        GlueUpQuestion q = rightChair();
        q.family.surfaceAgeMaxHours = 24;
        QCOMPARE(gate(ask(q), "surface").result, GateResult::Unknown);
        QCOMPARE(ask(q).answer, GlueUpVerdict::Go); // at worst a warning
        QVERIFY(!ask(q).asks.empty());
        q.surfaceAgeHours = 24;
        QCOMPARE(gate(ask(q), "surface").result, GateResult::Pass);
        q.surfaceAgeHours = 25;
        QCOMPARE(gate(ask(q), "surface").result, GateResult::Warn);
    }

    void glueThatStays_isWarnedOfInAnOldPiece()
    {
        GlueUpQuestion q = rightLeg();
        q.family.undoing = Undoing::None;
        QCOMPARE(gate(ask(q), "undoing").result, GateResult::Unknown);
        q.period = false;
        QCOMPARE(gate(ask(q), "undoing").result, GateResult::Pass);
        q.period = true;
        QCOMPARE(gate(ask(q), "undoing").result, GateResult::Warn);
        QVERIFY(gate(ask(q), "undoing").fix.starts_with("Lay a barrier coat"));
        q.barrier = true;
        QVERIFY(gate(ask(q), "undoing").fix.starts_with("Write down the barrier"));
    }

    void flammable_wantsFreshAir_andUnsaidIsNoPass()
    {
        GlueUpQuestion q = rightChair();
        q.flammable = true;
        QCOMPARE(ask(q).answer, GlueUpVerdict::NotKnown);
        q.ventilated = false;
        QCOMPARE(ask(q).answer, GlueUpVerdict::FixFirst);
        QVERIFY(ask(q).firstFix.starts_with("Air the room"));
        q.ventilated = true;
        QCOMPARE(ask(q).answer, GlueUpVerdict::Go);
    }

    void aRoomTooCool_neverWarmsTheWood()
    {
        GlueUpQuestion q = rightLeg();
        q.air = Celsius { 15 };
        q.wood = Celsius { 8 };
        q.family.woodMin = Celsius { 16 };
        QVERIFY(ask(q).firstFix.find("This room will not bring it to 16 °C.") != std::string::npos);
        q.air = Celsius { 22 };
        q.thicknessMm = 25;
        QVERIFY(ask(q).firstFix.find("for wood 25 mm thick.") != std::string::npos);
        q.thicknessMm = 0;
        QVERIFY(!checkGlueUp(q, today));
    }

    // db/reference/joint_fitness and conservation practice (S8): hide glue is the default for a period piece.
    void aPeriodPiece_prefersWhatComesApart()
    {
        WhichGlueQuestion q;
        q.jointName = "Tenon";
        q.period = true;
        q.candidates = { candidate(epoxy(), GateResult::Pass, Undoing::None),
            candidate(hotHide(), GateResult::Pass, Undoing::Ready) };
        const auto answer = whichGlue(q);
        QCOMPARE(answer->glues.front().family.text, std::string("hot_hide"));
        for (const RankedGlue& glue : answer->glues)
            QVERIFY(!glue.reasons.empty() && !glue.reversibleWith.empty());
    }

    // Common practice, no source: hide and PVA bridge no gap, epoxy does.
    void aGap_rulesThinGluesOut()
    {
        WhichGlueQuestion q;
        q.jointName = "Tenon";
        q.gapMm = 1;
        q.candidates = { candidate(hotHide(), GateResult::Pass, Undoing::Ready),
            candidate(epoxy(), GateResult::Warn, Undoing::None) };
        const auto answer = whichGlue(q);
        QCOMPARE(answer->glues.front().family.text, std::string("epoxy_thick"));
        QCOMPARE(answer->glues.back().standing, GateResult::Stop);
        q.gapMm = 40;
        QVERIFY(!whichGlue(q));
    }

    void whatTheTablesLack_standsAboveTheWrong_belowThePossible()
    {
        WhichGlueQuestion q;
        q.jointName = "Tenon";
        Family a = hotHide(), b = hotHide(), c = hotHide();
        a.id = { "possible" };
        b.id = { "lacking" };
        c.id = { "wrong" };
        q.candidates = { candidate(c, GateResult::Stop, Undoing::Ready),
            candidate(b, GateResult::Unknown, Undoing::Ready),
            candidate(a, GateResult::Warn, Undoing::None) };
        const auto answer = whichGlue(q);
        QCOMPARE(answer->glues[0].family.text, std::string("possible"));
        QCOMPARE(answer->glues[1].family.text, std::string("lacking"));
        QCOMPARE(answer->glues[1].standing, GateResult::Unknown);
        QVERIFY(!answer->wouldAsk.empty());
    }

    void nothingSaid_isNotKnown()
    {
        WhichGlueQuestion q;
        GlueCandidate c;
        c.family = hotHide();
        q.candidates = { c };
        const auto answer = whichGlue(q);
        QCOMPARE(answer->glues.front().standing, GateResult::Unknown);
        QCOMPARE(answer->wouldAsk.size(), std::size_t(5));
    }
};

QTEST_APPLESS_MAIN(TestPiece)
#include "tst_piece.moc"
