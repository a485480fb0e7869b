#include <QTest>

#include "shop/containerlabel.h"
#include "shop/hazards.h"
#include "shop/materialsaid.h"
#include "shop/workbench.h"

using namespace gw;
using namespace gw::test;

namespace {

MaterialRecord material(const Workbench& bench, const char* name)
{
    const auto materials = bench.shop->store().materials();
    for (const MaterialRecord& record : *materials) {
        if (record.name == name)
            return record;
    }
    qFatal("no material %s", name);
}

std::vector<Figure> hazards(std::vector<std::string> codes, std::string_view word)
{
    auto figures = hazardFigures(codes, word);
    if (!figures)
        qFatal("%s", figures.error().sentence.c_str());
    return *figures;
}

bool contains(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

/// What a label says of a material: its hazards and its other half, and what becomes of them.
class MaterialSaidTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void hazards_ofTheLabel_beatThoseOfItsClass()
    {
        ClassRecord cls;
        cls.pictograms = { "GHS02", "GHS07" };
        QVERIFY(hazardsOf(cls, {}).pictograms == cls.pictograms);
        QVERIFY(!hazardsOf(cls, {}).fromLabel);
        MaterialRecord read;
        read.labelFigures = hazards({ "GHS08", "GHS05", "GHS08" }, "Danger");
        QVERIFY(hazardsOf(cls, read).pictograms == std::vector<std::string>({ "GHS05", "GHS08" }));
        QCOMPARE(hazardsOf(cls, read).signalWord, std::string("Danger"));
        QVERIFY(hazardsOf(cls, read).fromLabel);
        // Somebody looked and the label shows none: the class's do not stand for them.
        read.labelFigures = hazards({}, "");
        QVERIFY(hazardsOf(cls, read).pictograms.empty() && hazardsOf(cls, read).signalWord.empty());
    }

    /// GHS Rev. 9, annex 1, from memory: GHS07 and GHS09 stand with Warning or with no word, the others may
    /// stand with Danger; where nobody read the word the stronger one is taken.
    void signalWord_thatNobodyRead_isTheStrongerOne()
    {
        const auto word = [](std::vector<std::string> codes) {
            ClassRecord cls;
            cls.pictograms = std::move(codes);
            return hazardsOf(cls, {}).signalWord;
        };
        QCOMPARE(word({}), std::string());
        QCOMPARE(word({ "GHS07" }), std::string("Warning"));
        QCOMPARE(word({ "GHS07", "GHS09" }), std::string("Warning"));
        for (const char* code : { "GHS01", "GHS02", "GHS03", "GHS04", "GHS05", "GHS06", "GHS08" })
            QCOMPARE(word({ code, "GHS07" }), std::string("Danger"));
    }

    void signsAndWordsThatAreNone_areRefused()
    {
        for (const char* code : { "GHS10", "GHS00", "ghs02", "", "flame" })
            GW_FAILS(hazardFigures({ code }, "Danger"), ErrorCode::BadInput);
        GW_FAILS(hazardFigures({ "GHS02" }, "Caution"), ErrorCode::BadInput);
    }

    void label_ofWhatWasPouredOver_carriesTheHazardsThatWereRead_data() { addEngines(); }
    void label_ofWhatWasPouredOver_carriesTheHazardsThatWereRead()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        const std::string bottle = bench.arrive("Spirit", "alcohol_denatured", "1l", 1,
            [](ArrivalDraft& draft) { draft.newLabelFigures = hazards({ "GHS02", "GHS08" }, "Danger"); });
        const auto poured = decant(*bench.shop, bottle, millilitres(100), "Bench", bench.on(2));
        GW_OK(poured);
        const auto own = containerLabel(*bench.shop, bottle, Workbench::day(3));
        GW_OK(own);
        QVERIFY(own->pictograms.empty() && own->signalWord.empty() && own->hazardLine.empty());
        const std::string child = poured->containers.back() == poured->containers.front()
            ? poured->containers.front().text
            : poured->containers.back().text;
        const auto label = containerLabel(*bench.shop, child, Workbench::day(3));
        GW_OK(label);
        QVERIFY(label->pictograms == std::vector<std::string>({ "GHS02", "GHS08" }));
        QCOMPARE(label->signalWord, std::string("Danger"));
        QVERIFY(contains(label->hazardLine, "safety data sheet"));
        // Read again, the label of the next one says it.
        GW_OK(sayOfMaterial(
            *bench.shop, material(bench, "Spirit").id, { hazards({ "GHS02" }, "Warning"), {} }));
        const auto later = containerLabel(*bench.shop, child, Workbench::day(4));
        GW_OK(later);
        QVERIFY(later->pictograms == std::vector<std::string>({ "GHS02" }));
        QCOMPARE(later->signalWord, std::string("Warning"));
        QVERIFY(bench.page(child).pictograms == later->pictograms);
    }

    void whatWasReadBefore_isReplaced_otherFiguresStay_data() { addEngines(); }
    void whatWasReadBefore_isReplaced_otherFiguresStay()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        bench.arrive("Glue", "pva_white", "500g", 1, [](ArrivalDraft& draft) {
            draft.newLabelFigures
                = { { "sealed_life", 24.0, {}, {}, {}, "month", "label", "high", {}, false },
                      { "density", 1.1, {}, {}, {}, "g/ml", "label", "high", {}, false } };
        });
        const Figure opened { "opened_life", 6.0, {}, {}, {}, "month", "label", "high", {}, false };
        GW_OK(sayOfMaterial(*bench.shop, material(bench, "Glue").id, { { opened }, {} }));
        std::vector<std::string> names;
        for (const Figure& figure : material(bench, "Glue").labelFigures)
            names.push_back(figure.figure);
        std::ranges::sort(names);
        QVERIFY(names == std::vector<std::string>({ "density", "opened_life" }));
        GW_FAILS(sayOfMaterial(*bench.shop, MaterialId { "nothing" }, {}), ErrorCode::NotFound);
    }

    void resinAndHardener_nameEachOther_data() { addEngines(); }
    void resinAndHardener_nameEachOther()
    {
        QFETCH(bool, postgres);
        Workbench bench(postgres);
        bench.arrive("Resin", "epoxy_resin", "1kg");
        const MaterialId resin = material(bench, "Resin").id;
        const auto withResin = [&](ArrivalDraft& draft) { draft.newPartner = resin; };
        bench.arrive("Fast", "epoxy_hardener_fast", "200g", 1, withResin);
        QVERIFY(material(bench, "Fast").partner == resin);
        QVERIFY(material(bench, "Resin").partner == material(bench, "Fast").id);
        // A second hardener goes with it too; the resin keeps the one it named first.
        bench.arrive("Slow", "epoxy_hardener_slow", "200g", 1, withResin);
        QVERIFY(material(bench, "Slow").partner == resin);
        QVERIFY(material(bench, "Resin").partner == material(bench, "Fast").id);

        // Changed on the resin, the new one is named, and who named only it is left.
        GW_OK(sayOfMaterial(*bench.shop, resin, { {}, material(bench, "Slow").id }));
        QVERIFY(material(bench, "Resin").partner == material(bench, "Slow").id);
        QVERIFY(!material(bench, "Fast").partner);
        GW_OK(sayOfMaterial(*bench.shop, resin, {}));
        QVERIFY(!material(bench, "Slow").partner);

        bench.arrive("White", "pva_white", "500g");
        GW_FAILS(sayOfMaterial(*bench.shop, resin, { {}, material(bench, "White").id }), ErrorCode::BadInput);
        GW_FAILS(sayOfMaterial(*bench.shop, resin, { {}, resin }), ErrorCode::BadInput);
        GW_FAILS(sayOfMaterial(*bench.shop, material(bench, "White").id, { {}, resin }), ErrorCode::BadInput);
        GW_FAILS(sayOfMaterial(*bench.shop, resin, { {}, MaterialId { "nothing" } }), ErrorCode::NotFound);
        QVERIFY(bench.shop->store().verify()->ok);
    }

    void partnersToChoose_areTheOtherHalves()
    {
        Workbench bench(false);
        for (const auto& [name, cls] : { std::pair("White", "pva_white"), { "Fast", "epoxy_hardener_fast" },
                 { "Slow", "epoxy_hardener_slow" }, { "Resin", "epoxy_resin" } })
            bench.arrive(name, cls, "500g");
        const auto catalogue = bench.shop->catalogue();
        GW_OK(catalogue);
        const auto names = [&](const char* cls) {
            std::string all;
            for (const MaterialRecord& one : partnersFor(*catalogue, ClassId { cls }))
                all += one.name + " ";
            return all;
        };
        QCOMPARE(names("epoxy_resin"), std::string("Fast Slow "));
        QCOMPARE(names("epoxy_hardener_slow"), std::string("Resin "));
        QCOMPARE(names("pva_white"), std::string());
        QCOMPARE(names("nothing"), std::string());
    }
};

QTEST_MAIN(MaterialSaidTest)
#include "tst_materialsaid.moc"
