#include <algorithm>

#include <QTest>

#include "shop/glueuprecord.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// Recording a glue-up: one act with its uses, what was said, and how everything stood.
class GlueUpRecordTest : public QObject {
    Q_OBJECT

private:
    static std::string hideOf(Workbench& bench)
    {
        return bench.arrive(
            "Hide glue", "hide_granules_192", "1 kg", 1, [](ArrivalDraft& d) { d.lot = "H-3"; });
    }
    static GlueUpSaid chair()
    {
        GlueUpSaid said;
        said.jobType = "chair_full";
        said.piece = "  Rocking   chair ";
        said.conditions.air = Celsius { 24 };
        said.conditions.wood = Celsius { 32 };
        said.conditions.woodMoisture = 8;
        said.conditions.gapMm = 0.1;
        return said;
    }
    static GlueUpRecord kept(Workbench& bench, std::size_t which = 0)
    {
        const auto all = bench.shop->store().glueUps();
        if (!all || all->size() <= which)
            qFatal("no such record");
        const auto whole = bench.shop->store().glueUp((*all)[which].id);
        if (!whole || !*whole)
            qFatal("the record does not read");
        return **whole;
    }
    static const GlueUpGateRecord* gate(const GlueUpRecord& record, const char* id)
    {
        const auto found = std::ranges::find(record.gates, std::string(id), &GlueUpGateRecord::gate);
        return found == record.gates.end() ? nullptr : &*found;
    }

private Q_SLOTS:
    void oneAct_keepsAllOfIt_data() { addEngines(); }
    void oneAct_keepsAllOfIt()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench);
        GlueUpSaid said = chair();
        said.who = "K.";
        said.note = "Left arm only";
        said.conditions.period = true;
        said.clampedMinutes = 90;
        said.photos = { "picture" };
        const double before = bench.left(hide);
        const auto done = recordGlueUp(*bench.shop, said, bench.on(5));
        GW_OK(done);
        QVERIFY(bench.left(hide) < before);

        const GlueUpRecord record = kept(bench);
        QCOMPARE(record.piece, std::string("Rocking chair"));
        QCOMPARE(record.act, done->act);
        QCOMPARE(record.at, Workbench::day(5));
        QCOMPARE(record.family, FamilyId { "hot_hide" });
        QVERIFY(!record.comesApart.empty());
        QCOMPARE(record.photos, 1);
        QCOMPARE(record.note, std::string("Left arm only"));
        QCOMPARE(record.fact("air")->value, std::optional(24.0));
        QCOMPARE(record.fact("who")->text, std::string("K."));
        QCOMPARE(record.fact("period")->text, std::string("period"));
        QCOMPARE(record.fact("clamped")->value, std::optional(90.0));
        QVERIFY(record.fact("joint")); // the job type's own
        // Not said is no row.
        for (const char* fact : { "humidity", "residue", "glue", "assembly", "ventilated", "load" })
            QVERIFY2(!record.fact(fact), fact);
        QVERIFY(gate(record, "air") && gate(record, "air")->result == "pass");
        QVERIFY(gate(record, "humidity") && gate(record, "humidity")->result == "unknown");
        QCOMPARE(record.containers.size(), 1U);
        QCOMPARE(record.containers[0].verdict, bench.verdict(hide, 5));
        QVERIFY(!record.containers[0].reason.empty());

        const auto entries = bench.shop->store().entriesOfAct(done->act);
        GW_OK(entries);
        QVERIFY(std::ranges::all_of(*entries, [](const Entry& entry) {
            return entry.kind == EntryKind::Opened || entry.kind == EntryKind::Used;
        }));
        QVERIFY(std::ranges::any_of(*entries, [&](const Entry& e) { return e.job == record.job; }));
        QVERIFY(bench.shop->store().verify()->ok);
    }

    // A verdict kept is what it was then, whatever becomes of the container.
    void verdicts_stayAsTheyStood_data() { addEngines(); }
    void verdicts_stayAsTheyStood()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench);
        GW_OK(recordGlueUp(*bench.shop, chair(), bench.on(5)));
        GW_OK(holdLot(*bench.shop, "H-3", "smells", bench.on(6)));
        QCOMPARE(bench.verdict(hide, 7), Verdict::DoNotUse);
        QCOMPARE(kept(bench).containers[0].verdict, Verdict::Good);
        // Another from the held lot is kept as what it was: against the verdict.
        GlueUpSaid said = chair();
        said.takings = { { hide, grams(5) } };
        GW_OK(recordGlueUp(*bench.shop, said, bench.on(8)));
        QCOMPARE(kept(bench).containers[0].verdict, Verdict::DoNotUse);
    }

    void undoing_takesTheUsesBackAndMarksTheRecord_data() { addEngines(); }
    void undoing_takesTheUsesBackAndMarksTheRecord()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench);
        const auto done = recordGlueUp(*bench.shop, chair(), bench.on(5));
        GW_OK(done);
        GW_OK(undo(*bench.shop, done->entry, Workbench::day(6)));
        QCOMPARE(bench.left(hide), 1000.0);
        QCOMPARE(kept(bench).undone, std::optional(Workbench::day(6)));
        GW_FAILS(undo(*bench.shop, done->entry, Workbench::day(7)), ErrorCode::Refused);
        QVERIFY(bench.shop->store().verify()->ok);
    }

    void whatCannotBe_writesNothing_data()
    {
        QTest::addColumn<bool>("postgres");
        QTest::addColumn<QString>("what");
        for (const bool postgres : { false, true }) {
            for (const char* what : { "pieces", "gap", "humidity", "wood", "air", "piece", "clamped",
                     "assembly", "photo", "container", "much", "joint", "residue", "stood", "job", "future" })
                QTest::addRow("%s %s", postgres ? "postgresql" : "sqlite", what)
                    << postgres << QString::fromLatin1(what);
        }
    }
    void whatCannotBe_writesNothing()
    {
        QFETCH(bool, postgres);
        QFETCH(QString, what);
        Workbench bench(postgres);
        const auto hide = hideOf(bench);
        GlueUpSaid said = chair();
        const std::map<QString, std::function<void()>> faults {
            { QStringLiteral("pieces"), [&] { said.pieces = 0; } },
            { QStringLiteral("gap"), [&] { said.conditions.gapMm = 40; } },
            { QStringLiteral("humidity"), [&] { said.conditions.humidity = 300; } },
            { QStringLiteral("wood"), [&] { said.conditions.wood = Celsius { -20 }; } },
            { QStringLiteral("air"), [&] { said.conditions.air = Celsius { -20 }; } },
            { QStringLiteral("piece"), [&] { said.piece = " \t"; } },
            { QStringLiteral("clamped"), [&] { said.clampedMinutes = -1; } },
            { QStringLiteral("assembly"), [&] { said.assemblyMinutes = 1e9; } },
            // Met by the store when all else is written already.
            { QStringLiteral("photo"), [&] { said.photos = { "good", "" }; } },
            { QStringLiteral("container"), [&] { said.takings = { { "no such", grams(1) } }; } },
            { QStringLiteral("much"), [&] { said.takings = { { hide, grams(1) }, { hide, grams(2000) } }; } },
            { QStringLiteral("joint"), [&] { said.conditions.joint = "no such joint"; } },
            { QStringLiteral("residue"), [&] { said.conditions.residue = "no such residue"; } },
            { QStringLiteral("stood"), [&] { said.conditions.woodStood = "no such place"; } },
            { QStringLiteral("job"), [&] { said.jobType = "no such job"; } },
            { QStringLiteral("future"), [&] {} },
        };
        faults.at(what)();
        ActTime time = bench.on(5);
        if (what == QStringLiteral("future"))
            time.at = Workbench::day(6);
        const auto done = recordGlueUp(*bench.shop, said, time);
        QVERIFY(!done);
        QVERIFY2(done.error().sentence.size() > 20 && done.error().sentence.ends_with('.'),
            done.error().sentence.c_str());
        QCOMPARE(bench.left(hide), 1000.0);
        QVERIFY(bench.shop->store().glueUps()->empty());
        QVERIFY(bench.shop->store().jobs()->empty());
        QCOMPARE(bench.shop->store().entriesUpTo(Moment::max())->size(), 1U);
    }

    void nothingFit_andNothingSaid_isRefused_data() { addEngines(); }
    void nothingFit_andNothingSaid_isRefused()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        GW_FAILS(recordGlueUp(*bench.shop, chair(), bench.on(5)), ErrorCode::BadInput);
        QVERIFY(bench.shop->store().jobs()->empty());
    }

    void facts_areWordedInThePersonsUnits()
    {
        QCOMPARE(factWords({ "air", 18.0, {} }, UnitSystem::Metric), std::string("18 °C"));
        QCOMPARE(factWords({ "air", 18.0, {} }, UnitSystem::Us), std::string("64.4 °F"));
        QCOMPARE(factWords({ "gap", 0.15, {} }, UnitSystem::Metric), std::string("0.15 mm"));
        QCOMPARE(factWords({ "who", {}, "K." }, UnitSystem::Metric), std::string("K."));
    }
};

QTEST_GUILESS_MAIN(GlueUpRecordTest)
#include "tst_glueuprecord.moc"
