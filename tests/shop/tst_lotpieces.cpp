#include <QTest>

#include "shop/lotpieces.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// Which pieces had stock of a lot.
class LotPiecesTest : public QObject {
    Q_OBJECT

private:
    static std::string hideOf(Workbench& bench, const char* lot, const char* name = "Hide glue")
    {
        return bench.arrive(name, "hide_granules_192", "1 kg", 1, [lot](ArrivalDraft& d) { d.lot = lot; });
    }
    static ActDone glue(Workbench& bench, const std::string& container, const char* piece, double days)
    {
        JobRecord job;
        job.type = JobTypeId { "chair_full" };
        job.name = "Reglue";
        job.piece = piece;
        auto done = useForJob(*bench.shop, { { container, grams(13.4) } }, job, bench.on(days));
        if (!done)
            qFatal("%s", done.error().sentence.c_str());
        return *done;
    }
    using Names = std::vector<std::string>;

private Q_SLOTS:
    void lot_namesItsPiecesLatestFirst_data() { addEngines(); }
    void lot_namesItsPiecesLatestFirst()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto one = hideOf(bench, "H-3"), two = hideOf(bench, "H-3"), other = hideOf(bench, "H-4");
        glue(bench, one, "Rocking chair", 5);
        glue(bench, two, "Hall table", 6);
        glue(bench, one, "Rocking chair", 7);
        glue(bench, other, "Desk", 7);
        const auto found = piecesWithLot(*bench.shop, "H-3", Workbench::day(30));
        GW_OK(found);
        QVERIFY(found->pieces() == Names({ "Rocking chair", "Hall table" }));
        QCOMPARE(found->uses.size(), std::size_t { 3 });
        QCOMPARE(found->uses.front().at, Workbench::day(7));
        QCOMPARE(found->uses.front().amount.value(), 13.4);
        QVERIFY(!found->uses.front().comesApart.empty());
        QCOMPARE(found->labels.size(), std::size_t { 2 });
        QCOMPARE(found->withoutPiece, 0);
        QVERIFY(!found->onHold);
        // By a container's label code it is the same lot; as of an earlier day there was less.
        QVERIFY(piecesWithLot(*bench.shop, two, Workbench::day(30))->pieces() == found->pieces());
        QVERIFY(
            piecesWithLot(*bench.shop, "H-3", Workbench::day(5.5))->pieces() == Names({ "Rocking chair" }));
        GW_OK(holdLot(*bench.shop, "H-3", "smells", bench.on(8)));
        QVERIFY(piecesWithLot(*bench.shop, "H-3", Workbench::day(30))->onHold);
    }

    void undoneUse_isInNoPiece_data() { addEngines(); }
    void undoneUse_isInNoPiece()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench, "H-3");
        const auto done = glue(bench, hide, "Rocking chair", 5);
        GW_OK(undo(*bench.shop, done.entry, Workbench::day(6)));
        const auto found = piecesWithLot(*bench.shop, "H-3", Workbench::day(30));
        GW_OK(found);
        QVERIFY(found->uses.empty());
    }

    void useForNoJob_isCountedNotForgotten_data() { addEngines(); }
    void useForNoJob_isCountedNotForgotten()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto hide = hideOf(bench, "H-3");
        GW_OK(useSome(*bench.shop, hide, grams(20), {}, bench.on(5)));
        const auto found = piecesWithLot(*bench.shop, "H-3", Workbench::day(30));
        GW_OK(found);
        QVERIFY(found->uses.empty());
        QCOMPARE(found->withoutPiece, 1);
    }

    void withoutLot_onlyItsOwnDecantings_data() { addEngines(); }
    void withoutLot_onlyItsOwnDecantings()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto bag = hideOf(bench, ""), stranger = hideOf(bench, "");
        const auto jar = decant(*bench.shop, bag, grams(200), "Bench", bench.on(4));
        GW_OK(jar);
        std::string jarLabel;
        const auto all = bench.shop->store().containers();
        GW_OK(all);
        for (const ContainerRecord& container : *all) {
            if (container.parent)
                jarLabel = container.label;
        }
        QVERIFY(!jarLabel.empty());
        glue(bench, jarLabel, "Rocking chair", 5);
        glue(bench, stranger, "Desk", 5);
        const auto found = piecesWithLot(*bench.shop, bag, Workbench::day(30));
        GW_OK(found);
        QVERIFY(found->lot.empty());
        QCOMPARE(found->labels.size(), std::size_t { 2 });
        QVERIFY(found->pieces() == Names({ "Rocking chair" }));
        QVERIFY(piecesWithLot(*bench.shop, jarLabel, Workbench::day(30))->pieces() == found->pieces());
    }

    void nothingOfThatName_isNotFound_data() { addEngines(); }
    void nothingOfThatName_isNotFound()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        hideOf(bench, "");
        GW_FAILS(piecesWithLot(*bench.shop, "H-9", Workbench::day(30)), ErrorCode::NotFound);
        GW_FAILS(piecesWithLot(*bench.shop, "", Workbench::day(30)), ErrorCode::NotFound);
    }
};

QTEST_GUILESS_MAIN(LotPiecesTest)
#include "tst_lotpieces.moc"
