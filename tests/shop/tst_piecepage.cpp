#include <algorithm>

#include <QTest>

#include "shop/glueuprecord.h"
#include "shop/piecepage.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// A piece's page: everything that went in, and how it comes apart again.
class PiecePageTest : public QObject {
    Q_OBJECT

private:
    static std::string hideOf(Workbench& bench, const char* lot = "H-3")
    {
        return bench.arrive(
            "Hide glue", "hide_granules_192", "1 kg", 1, [lot](ArrivalDraft& d) { d.lot = lot; });
    }
    static ActDone glued(Workbench& bench, const char* piece, double days)
    {
        GlueUpSaid said;
        said.jobType = "chair_full";
        said.piece = piece;
        said.who = "K.";
        said.conditions.air = Celsius { 24 };
        said.photos = { "picture" };
        auto done = recordGlueUp(*bench.shop, said, bench.on(days));
        if (!done)
            qFatal("%s", done.error().sentence.c_str());
        return *done;
    }
    static ActDone used(Workbench& bench, const std::string& container, const char* piece, double days)
    {
        const JobRecord job { {}, { "chair_full" }, "Reglue", piece, {} };
        auto done = useForJob(*bench.shop, { { container, grams(13.4) } }, job, bench.on(days));
        if (!done)
            qFatal("%s", done.error().sentence.c_str());
        return *done;
    }

private Q_SLOTS:
    void page_tellsWhatWentIn_data() { addEngines(); }
    void page_tellsWhatWentIn()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench);
        used(bench, hide, "Rocking chair 14", 4);
        glued(bench, "rocking  chair 14", 5); // however it is typed it is the same piece
        const auto page = piecePage(*bench.shop, "ROCKING chair 14", Workbench::day(30));
        GW_OK(page);
        QCOMPARE(page->work.size(), 2U);
        const PieceWork& latest = page->work.front();
        QVERIFY(latest.record);
        QCOMPARE(latest.record->fact("who")->text, std::string("K."));
        QCOMPARE(latest.record->photos, 1);
        QVERIFY(!latest.record->gates.empty());
        QCOMPARE(latest.uses.size(), 1U);
        QCOMPARE(latest.uses[0].lot, std::string("H-3"));
        QCOMPARE(latest.uses[0].verdict, std::optional(Verdict::Good));
        QVERIFY(!latest.comesApart().empty());
        const PieceWork& earlier = page->work.back();
        QVERIFY(!earlier.record);
        QCOMPARE(earlier.uses[0].amount.value(), 13.4);
        QVERIFY(!earlier.uses[0].verdict); // nobody wrote down how it stood
        QVERIFY(!earlier.comesApart().empty());
        GW_FAILS(piecePage(*bench.shop, "no such piece", Workbench::day(30)), ErrorCode::NotFound);
        GW_FAILS(piecePage(*bench.shop, " ", Workbench::day(30)), ErrorCode::BadInput);
    }

    // What was undone later still counts for a moment before the undoing.
    void undoneWork_isNotInThePiece_butWas_data() { addEngines(); }
    void undoneWork_isNotInThePiece_butWas()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        hideOf(bench);
        const auto done = glued(bench, "Rocking chair", 5);
        GW_OK(undo(*bench.shop, done.entry, Workbench::day(8)));
        QVERIFY(piecePage(*bench.shop, "Rocking chair", Workbench::day(9))->work.empty());
        QCOMPARE(piecePage(*bench.shop, "Rocking chair", Workbench::day(7))->work.size(), 1U);
        QVERIFY(piecePage(*bench.shop, "Rocking chair", Workbench::day(4))->work.empty());
        QVERIFY(pieceLines(*bench.shop, "", Workbench::day(9))->empty());
        QCOMPARE(pieceLines(*bench.shop, "", Workbench::day(7))->size(), 1U);
    }

    void lines_areFoundByPieceMaterialAndLot_data() { addEngines(); }
    void lines_areFoundByPieceMaterialAndLot()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench);
        const auto white = bench.arrive("Carver's white", "pva_white", "500 g", 1);
        used(bench, white, "Blanket box", 3);
        glued(bench, "Rocking chair", 5);
        glued(bench, "Rocking chair", 7);
        const auto all = pieceLines(*bench.shop, "", Workbench::day(30));
        GW_OK(all);
        QCOMPARE(all->size(), 2U);
        QCOMPARE(all->front().name, std::string("Rocking chair"));
        QCOMPARE(all->front().works, 2);
        QCOMPARE(all->front().photos, 2);
        QCOMPARE(all->front().first, Workbench::day(5));
        QVERIFY(all->front().materials == std::vector<std::string>({ "Hide glue" }));
        const auto only = [&](const std::string& text) {
            const auto found = pieceLines(*bench.shop, text, Workbench::day(30));
            return found && found->size() == 1 ? found->front().name : std::string("-");
        };
        QCOMPARE(only("rocking"), std::string("Rocking chair"));
        QCOMPARE(only("h-3"), std::string("Rocking chair"));
        QCOMPARE(only("carver"), std::string("Blanket box"));
        QCOMPARE(only(white), std::string("Blanket box"));
        QVERIFY(pieceLines(*bench.shop, "no such", Workbench::day(30))->empty());
    }

    void treatment_saysWhatIsKnown_oldestFirst()
    {
        Workbench bench(false);
        const auto hide = hideOf(bench);
        used(bench, hide, "Rocking chair", 4);
        glued(bench, "Rocking chair", 5);
        const auto page = piecePage(*bench.shop, "Rocking chair", Workbench::day(30));
        GW_OK(page);
        const Treatment treatment = treatmentOf(*page, UnitSystem::Metric, Workbench::day(30));
        QCOMPARE(treatment.steps.size(), 2U);
        QCOMPARE(treatment.steps[0].date, spokenDate(dateOf(Workbench::day(4))));
        QVERIFY(treatment.steps[0].conditions.empty());
        const auto& conditions = treatment.steps[1].conditions;
        QVERIFY(std::ranges::find(conditions, std::pair<std::string, std::string>("Room", "24 °C"))
            != conditions.end());
        QCOMPARE(treatment.steps[1].materials[0].lot, std::string("H-3"));
        QVERIFY(!treatment.steps[1].comesApart.empty());
    }
};

QTEST_GUILESS_MAIN(PiecePageTest)
#include "tst_piecepage.moc"
