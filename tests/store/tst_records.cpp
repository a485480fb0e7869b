#include <QTest>

#include "store/smallshop.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

using namespace gw;
using namespace gw::test;

/// Materials, packs, places, jobs, containers and settings: what is saved is what comes back.
class RecordsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void material_comesBackAsSaved_data() { addEngines(); }
    void material_comesBackAsSaved()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        GW_OK(store->refreshReference(smallReference(), "small"));
        MaterialRecord resin = whiteGlue(), hardener;
        resin.partner = MaterialId { "material-hardener" };
        resin.vessel = "tin";
        resin.note = "Regal links, \"oben\"";
        Figure life = figureOf("opened_life", {}, "month");
        life.low = 6.1;
        life.high = 1.0 / 3 + 12;
        life.text = "cool and dry";
        life.confidence = "high";
        life.basis = "printed on the lid";
        resin.labelFigures.push_back(life);
        hardener.id = *resin.partner;
        hardener.name = "hardener";
        hardener.partner = resin.id;
        // The two name each other, so the first is saved before the second is there.
        GW_OK(store->transact([&]() -> Result<void> {
            const auto first = store->saveMaterial(resin);
            return first ? store->saveMaterial(hardener) : first;
        }));
        const auto materials = store->materials();
        GW_OK(materials);
        QCOMPARE(materials->size(), 2U);
        QCOMPARE(materials->at(0).name, "hardener");
        QVERIFY(materials->at(0).classId.empty());
        const MaterialRecord& back = materials->at(1);
        QCOMPARE(back.name, resin.name);
        QCOMPARE(back.classId, resin.classId);
        QCOMPARE(back.articleCode, resin.articleCode);
        QCOMPARE(back.partner, resin.partner);
        QCOMPARE(back.vessel, resin.vessel);
        QCOMPARE(back.note, resin.note);
        QCOMPARE(back.labelFigures.size(), 2U);
        QCOMPARE(back.labelFigures[0].figure, "density");
        QCOMPARE(back.labelFigures[0].value, std::optional(1.08));
        const Figure& read = back.labelFigures[1];
        QCOMPARE(read.low, life.low);
        QCOMPARE(read.high, life.high);
        QVERIFY(!read.value);
        QCOMPARE(read.text, life.text);
        QCOMPARE(read.basis, life.basis);
        QCOMPARE(read.source, "label");

        resin.labelFigures.clear();
        resin.partner.reset();
        resin.name = "White glue, new label";
        GW_OK(store->saveMaterial(resin));
        const auto changed = store->materials();
        GW_OK(changed);
        QCOMPARE(changed->at(1).name, "White glue, new label");
        QVERIFY(changed->at(1).labelFigures.empty());
        QVERIFY(!changed->at(1).partner);
    }

    void material_withAnUnknownPartnerOrClass_isNotSaved_data() { addEngines(); }
    void material_withAnUnknownPartnerOrClass_isNotSaved()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        MaterialRecord material = whiteGlue();
        material.id = { "material-other" };
        material.partner = MaterialId { "nobody" };
        GW_FAILS(store->saveMaterial(material), ErrorCode::NotFound);
        material.partner.reset();
        material.classId = { "no_such_class" };
        GW_FAILS(store->saveMaterial(material), ErrorCode::NotFound);
        material.classId = {};
        material.name.clear();
        GW_FAILS(store->saveMaterial(material), ErrorCode::BadInput);
        // A figure that cannot be undoes the material's other changes as well.
        material = whiteGlue();
        material.name = "Changed";
        material.labelFigures.front().figure.clear();
        GW_FAILS(store->saveMaterial(material), ErrorCode::BadInput);
        const auto materials = store->materials();
        GW_OK(materials);
        QCOMPARE(materials->size(), 1U);
        QCOMPARE(materials->front().name, whiteGlue().name);
        QCOMPARE(materials->front().labelFigures.size(), 1U);
    }

    void pack_isFoundByItsNumberAndSharesItWithNone_data() { addEngines(); }
    void pack_isFoundByItsNumberAndSharesItWithNone()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        PackRecord pack;
        pack.id = { "pack-1" };
        pack.material = whiteGlue().id;
        pack.gtin14 = "09521234543213"; // the prefix 952 is GS1's for demonstrations
        pack.amount = grams(500);
        pack.price = Money { 1250, "EUR" };
        pack.supplier = "Leim & Lack";
        pack.leadDays = 2.5;
        GW_OK(store->savePack(pack));
        const auto found = store->packByGtin(pack.gtin14);
        GW_OK(found);
        QVERIFY(found->has_value());
        QCOMPARE((*found)->id, pack.id);
        QCOMPARE((*found)->amount, pack.amount);
        QCOMPARE((*found)->price, pack.price);
        QCOMPARE((*found)->supplier, pack.supplier);
        QCOMPARE((*found)->leadDays, pack.leadDays);
        QVERIFY(!store->packByGtin("09521234543220")->has_value());
        QVERIFY(!store->packByGtin("")->has_value());

        PackRecord other = pack;
        other.id = { "pack-2" };
        GW_FAILS(store->savePack(other), ErrorCode::Conflict);
        // Any number of packs carry none.
        for (const char* id : { "pack-2", "pack-3" }) {
            other.id = { id };
            other.gtin14.clear();
            other.price.reset();
            other.leadDays.reset();
            other.amount = millilitres(750);
            GW_OK(store->savePack(other));
        }
        QCOMPARE(store->packs()->size(), 3U);
        QVERIFY(!store->packs()->back().price && !store->packs()->back().leadDays);
        QCOMPARE(store->packs()->back().amount, millilitres(750));
        other.gtin14 = "12345";
        GW_FAILS(store->savePack(other), ErrorCode::BadInput);
        other.gtin14.clear();
        other.amount = grams(0);
        GW_FAILS(store->savePack(other), ErrorCode::BadInput);
        other.amount = grams(1);
        other.material = { "nobody" };
        GW_FAILS(store->savePack(other), ErrorCode::NotFound);
    }

    void place_hasANameOfItsOwn_data() { addEngines(); }
    void place_hasANameOfItsOwn()
    {
        QFETCH(bool, postgres);
        StorePlace storePlace(postgres);
        auto store = openAt(storePlace);
        GW_OK(store->savePlace(shelf()));
        PlaceRecord cellar { { "place-cellar" }, "cellar", {}, {}, "damp", 0 };
        GW_OK(store->savePlace(cellar));
        PlaceRecord twice = cellar;
        twice.id = { "place-twice" };
        GW_FAILS(store->savePlace(twice), ErrorCode::Conflict);
        const auto places = store->places();
        GW_OK(places);
        QCOMPARE(places->size(), 2U);
        QCOMPARE(places->at(0).name, "cellar");
        QVERIFY(places->at(0).assumed == AssumedRanges {} && !places->at(0).follows);
        QVERIFY(places->at(1).assumed == shelf().assumed);
        cellar.assumed.year = Range<Celsius> { Celsius { 4 }, Celsius { 3 } };
        GW_FAILS(store->savePlace(cellar), ErrorCode::BadInput);
    }

    void jobs_comeNewestFirst_data() { addEngines(); }
    void jobs_comeNewestFirst()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        GW_OK(store->saveJob({ { "j1" }, { "chair" }, "Reglue", "Windsor chair", minute(5) }));
        GW_OK(store->saveJob({ { "j2" }, {}, "Odd work", "", minute(9) }));
        GW_OK(store->saveJob({ { "j3" }, { "chair" }, "Some day", "Table", {} }));
        GW_FAILS(store->saveJob({ { "j4" }, { "nothing" }, "", "", {} }), ErrorCode::NotFound);
        const auto jobs = store->jobs();
        GW_OK(jobs);
        QCOMPARE(jobs->size(), 3U);
        QCOMPARE(jobs->at(0).id.text, "j3");
        QVERIFY(!jobs->at(0).at);
        QCOMPARE(jobs->at(1).id.text, "j2");
        QVERIFY(jobs->at(1).type.empty());
        QCOMPARE(jobs->at(2).piece, "Windsor chair");
        QCOMPARE(jobs->at(2).at, std::optional(minute(5)));
    }

    void container_comesBackAsSaved_data() { addEngines(); }
    void container_comesBackAsSaved()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        ContainerRecord full = bottle("c");
        full.serial = "S-77";
        full.printed = Date { std::chrono::February / 29 / 2028 };
        full.printedIsUseBy = true;
        full.foundUndated = true;
        full.capacity = millilitres(250.125);
        full.vessel = "jar";
        full.parent = bottle("a").id;
        full.created = fromMilliseconds(minute(3).time_since_epoch().count() + 7);
        ContainerRecord bare;
        bare.id = { "container-bare" };
        bare.label = "g bare ü";
        bare.material = whiteGlue().id;
        bare.created = minute(4);
        GW_OK(store->addContainer(full));
        GW_OK(store->addContainer(bare));
        for (const ContainerRecord& written : { full, bare }) {
            const auto read = store->container(written.id);
            GW_OK(read);
            QVERIFY(read->has_value());
            const ContainerRecord& back = **read;
            QCOMPARE(back.label, written.label);
            QCOMPARE(back.material, written.material);
            QVERIFY(!back.pack);
            QCOMPARE(back.lot, written.lot);
            QCOMPARE(back.serial, written.serial);
            QVERIFY(back.made == written.made && back.printed == written.printed);
            QCOMPARE(back.printedIsUseBy, written.printedIsUseBy);
            QCOMPARE(back.foundUndated, written.foundUndated);
            QCOMPARE(back.capacity, written.capacity);
            QCOMPARE(back.vessel, written.vessel);
            QCOMPARE(back.parent, written.parent);
            QCOMPARE(back.price, written.price);
            QCOMPARE(back.created, written.created);
            const auto byLabel = store->containerByLabel(written.label);
            GW_OK(byLabel);
            QCOMPARE(byLabel->value().id, written.id);
        }
        QVERIFY(!store->container({ "nobody" })->has_value());
        QVERIFY(!store->containerByLabel("nobody")->has_value());
    }

    void container_sentAgain_isTheSameContainer_data() { addEngines(); }
    void container_sentAgain_isTheSameContainer()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        auto store = openAt(place);
        stock(*store);
        GW_OK(store->addContainer(bottle("a")));
        ContainerRecord other = bottle("a");
        other.lot = "L9";
        GW_FAILS(store->addContainer(other), ErrorCode::Conflict);
        other = bottle("c");
        other.label = bottle("a").label;
        GW_FAILS(store->addContainer(other), ErrorCode::Conflict);
        other = bottle("c");
        other.material = { "nobody" };
        GW_FAILS(store->addContainer(other), ErrorCode::NotFound);
        QCOMPARE(store->containers()->size(), 2U);
        QCOMPARE(store->container(bottle("a").id)->value().lot, "L1");
    }

    void setting_isKeptWithTheShop_data() { addEngines(); }
    void setting_isKeptWithTheShop()
    {
        QFETCH(bool, postgres);
        StorePlace place(postgres);
        {
            auto store = openAt(place);
            QVERIFY(!store->setting("currency")->has_value());
            GW_OK(store->setSetting("currency", "EUR"));
            GW_OK(store->setSetting("currency", "USD"));
            GW_OK(store->setSetting("empty", ""));
        }
        auto store = openAt(place);
        QCOMPARE(store->setting("currency")->value(), "USD");
        QCOMPARE(store->setting("empty")->value(), "");
    }
};

QTEST_GUILESS_MAIN(RecordsTest)
#include "tst_records.moc"
