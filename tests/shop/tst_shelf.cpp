#include <QTest>

#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

/// The shelf and today: what stands where, in which order, and what wants doing.
class ShelfTest : public QObject {
    Q_OBJECT

private:
    static std::vector<std::string> names(const Workbench& bench, ShelfQuery query)
    {
        std::vector<std::string> found;
        const auto items = shelf(*bench.shop, query);
        if (!items)
            qFatal("%s", items.error().sentence.c_str());
        for (const ShelfItem& item : *items)
            found.push_back(item.materialName);
        return found;
    }
    using Names = std::vector<std::string>;

private Q_SLOTS:
    void shelf_filtersByPlaceVerdictAndText_data() { addEngines(); }
    void shelf_filtersByPlaceVerdictAndText()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        bench.arrive("White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& d) { d.lot = "W-12"; });
        bench.arrive("Hide glue", "hide_granules_192", "1 kg", 0);
        const auto old = bench.arrive("Fish glue", "fish_glue_liquid", "100 g", 0, [](ArrivalDraft& d) {
            d.printed = dateIn2026(4, 1);
            d.printedIsUseBy = true;
        });
        const Moment when = Workbench::day(60);
        QCOMPARE(names(bench, { when }).size(), std::size_t { 3 });
        // The worst first.
        QCOMPARE(names(bench, { when }).front(), std::string("Fish glue"));
        QVERIFY(names(bench, { when, {}, Verdict::DoNotUse }) == Names({ "Fish glue" }));
        QVERIFY(names(bench, { when, {}, {}, "w-12" }) == Names({ "White PVA" }));
        QVERIFY(names(bench, { when, {}, {}, "HIDE" }) == Names({ "Hide glue" }));
        QVERIFY(names(bench, { when, {}, {}, old }) == Names({ "Fish glue" }));
        QVERIFY(names(bench, { when, PlaceId { "elsewhere" } }).empty());
        GW_OK(moveTo(*bench.shop, old, "Lean-to", bench.on(61)));
        const auto places = bench.shop->store().places();
        GW_OK(places);
        for (const PlaceRecord& place : *places) {
            const auto there = names(bench, { Workbench::day(62), place.id });
            QCOMPARE(there.size(), place.name == "Lean-to" ? std::size_t { 1 } : std::size_t { 2 });
        }
    }

    void shelf_asOfAnEarlierDay_showsWhatStoodThen_data() { addEngines(); }
    void shelf_asOfAnEarlierDay_showsWhatStoodThen()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto first = bench.arrive("White PVA", "pva_white", "500 g", 0);
        bench.arrive("Hide glue", "hide_granules_192", "1 kg", 20);
        GW_OK(retire(*bench.shop, first, "used up", bench.on(30)));
        QVERIFY(names(bench, { Workbench::day(-1) }).empty());
        QVERIFY(names(bench, { Workbench::day(10) }) == Names({ "White PVA" }));
        QCOMPARE(names(bench, { Workbench::day(25) }).size(), std::size_t { 2 });
        QVERIFY(names(bench, { Workbench::day(31) }) == Names({ "Hide glue" }));
        QCOMPARE(names(bench, { Workbench::day(31), {}, {}, {}, true }).size(), std::size_t { 2 });
    }

    void unknownPlaceAndUnknownAge_areNotKnown_data() { addEngines(); }
    void unknownPlaceAndUnknownAge_areNotKnown()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto nowhere
            = bench.arrive("White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& d) { d.place.clear(); });
        const auto newPlace
            = bench.arrive("White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& d) { d.place = "Attic"; });
        const auto found = bench.arrive("White PVA", "pva_white", "500 g", 0, [](ArrivalDraft& d) {
            d.made.reset();
            d.foundUndated = true;
        });
        const auto known = bench.arrive("White PVA", "pva_white", "500 g", 0);
        for (const auto& container : { nowhere, newPlace, found })
            QCOMPARE(bench.verdict(container, 30), Verdict::NotKnown);
        QCOMPARE(bench.verdict(known, 30), Verdict::Good);
    }

    void labelFigures_beatTheClass_data() { addEngines(); }
    void labelFigures_beatTheClass()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto shortLived = bench.arrive("Quick PVA", "pva_white", "500 g", 0, [](ArrivalDraft& d) {
            d.newLabelFigures.push_back(
                { "opened_life", 1.0, {}, {}, {}, "month", "label", "high", {}, false });
        });
        const auto usual = bench.arrive("White PVA", "pva_white", "500 g", 0);
        GW_OK(openContainer(*bench.shop, shortLived, bench.on(1)));
        GW_OK(openContainer(*bench.shop, usual, bench.on(1)));
        QVERIFY(bench.verdict(shortLived, 60) != Verdict::Good);
        QCOMPARE(bench.verdict(usual, 60), Verdict::Good);
        bool onPage = false;
        for (const Figure& figure : bench.page(shortLived).figures)
            onPage = onPage || (figure.figure == "opened_life" && figure.source == "label");
        QVERIFY(onPage);
    }

    void aLabelWithOneLimit_leavesTheOtherToTheClass()
    {
        Workbench bench(false);
        const auto catalogue = bench.shop->catalogue();
        GW_OK(catalogue);
        MaterialRecord material;
        material.classId = ClassId { "pva_white" };
        const ClassRecord& cls = catalogue->classes.at(material.classId);
        const auto usual = lifeFiguresOf(cls, material).keepBetween;
        QVERIFY(usual && usual->low < usual->high);
        material.labelFigures.push_back(
            { "storage_temperature", {}, 7.0, {}, {}, "C", "label", "high", {}, false });
        const auto onLabel = lifeFiguresOf(cls, material).keepBetween;
        QVERIFY(onLabel);
        QCOMPARE(onLabel->low.value, 7.0);
        QCOMPARE(onLabel->high.value, usual->high.value);
    }

    void everyFigureOnAPage_hasSourceAndConfidence()
    {
        Workbench bench(false);
        const auto page = bench.page(bench.arrive("White PVA", "pva_white", "500 g"));
        QVERIFY(page.figures.size() > 8);
        for (const Figure& figure : page.figures)
            QVERIFY2(!figure.source.empty() && !figure.confidence.empty(), figure.figure.c_str());
        QVERIFY(page.benchTest.size() >= 2);
    }

    void today_saysWhatWantsDoing_data() { addEngines(); }
    void today_saysWhatWantsDoing()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const auto soon = [](unsigned month, unsigned day) {
            return [=](ArrivalDraft& d) {
                d.printed = dateIn2026(month, day);
                d.printedIsUseBy = true;
            };
        };
        bench.arrive("Past", "pva_white", "500 g", 0, soon(3, 20));
        bench.arrive("Soon", "pva_white", "500 g", 0, soon(4, 20));
        bench.arrive("Later", "pva_white", "500 g", 0, soon(9, 20));
        const auto empty = bench.arrive("Empty", "pva_white", "500 g", 0, soon(9, 20));
        GW_OK(useSome(*bench.shop, empty, grams(500), {}, bench.on(1)));
        const auto held
            = bench.arrive("Held", "pva_white", "500 g", 0, [](ArrivalDraft& d) { d.lot = "H1"; });
        GW_OK(holdLot(*bench.shop, "H1", "why", bench.on(2)));

        const auto day = today(*bench.shop, Workbench::day(40));
        GW_OK(day);
        QCOMPARE(day->containers, 5);
        std::map<std::string, TodayItem::Kind> kinds;
        for (const TodayItem& item : day->items)
            kinds.emplace(item.title, item.kind);
        QCOMPARE(kinds.size(), std::size_t { 4 });
        QVERIFY(kinds.at("Past") == TodayItem::Kind::DoNotUse);
        QVERIFY(kinds.at("Soon") == TodayItem::Kind::GoingOff);
        QVERIFY(kinds.at("Empty") == TodayItem::Kind::NothingLeft);
        QVERIFY(kinds.at("Held") == TodayItem::Kind::OnHold);
    }
};

QTEST_GUILESS_MAIN(ShelfTest)
#include "tst_shelf.moc"
