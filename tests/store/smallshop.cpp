#include "store/smallshop.h"

#include <QTest>

namespace gw::test {

Moment minute(int minutes)
{
    return Moment { std::chrono::sys_days { Date { std::chrono::May / 4 / 2026 } } }
    + std::chrono::minutes { minutes };
}

std::vector<ReferenceTable> smallReference()
{
    return {
        { "sources", { "key", "title", "kind", "status" },
            { { "CP", "common practice", "practice", "none" } } },
        { "families",
            { "family_id", "name", "spread_faces", "reversible_with", "creep", "source", "confidence" },
            { { "pva", "White glue", "one", "warm water", "creeps", "CP", "medium" } } },
        { "family_figures",
            { "family_id", "figure", "value", "low", "high", "text", "unit", "source", "confidence" },
            { { "pva", "air_temperature", "", "10", "30", "", "C", "CP", "medium" } } },
        { "classes",
            { "class_id", "name", "group", "family", "form", "vessel", "counted_in", "frost", "moisture",
                "hazard_note", "spoilage_signs", "bench_test", "source", "confidence" },
            { { "pva_white", "White PVA", "pva", "pva", "emulsion", "bottle", "g", "harms", "no", "", "lumps",
                  "Spread it", "CP", "medium" },
                { "rags", "Rags", "consumable", "", "cloth", "bag", "each", "never", "no", "", "", "", "CP",
                    "high" } } },
        { "class_figures",
            { "class_id", "figure", "value", "low", "high", "text", "unit", "source", "confidence", "basis" },
            { { "pva_white", "opened_life", "", "12", "24", "", "month", "CP", "low", "shop habit" },
                { "pva_white", "density", "1.1", "", "", "", "g/ml", "CP", "medium", "several labels" } } },
        { "class_hazards", { "class_id", "pictogram", "note" },
            { { "pva_white", "", "No pictogram usual" }, { "rags", "GHS02", "when oily" } } },
        { "joints", { "joint", "name" }, { { "mortise", "Mortise and tenon" } } },
        { "recipes", { "recipe_id", "name", "group", "note", "based_on" },
            { { "hot_hide", "Hot hide glue", "hot_hide", "", "" } } },
        { "job_types",
            { "job_type_id", "name", "family_id", "typical_class", "counted_in", "area_cm2",
                "spread_g_per_m2", "net", "waste_fraction", "fixed_loss", "extra", "estimate", "note",
                "source", "confidence", "joint" },
            { { "chair", "Reglue a chair", "pva", "pva_white", "g", "200", "180", "3.6", "0.3", "2", "0",
                "6.68", "", "CP", "medium", "mortise" } } },
        { "job_type_consumables", { "job_type_id", "item", "class_id", "amount", "unit" },
            { { "chair", "rags", "rags", "2", "each" }, { "chair", "gloves", "", "1", "pr" } } },
    };
}

Figure figureOf(const std::string& name, std::optional<double> value, const std::string& unit)
{
    Figure figure;
    figure.figure = name;
    figure.value = value;
    figure.unit = unit;
    figure.source = "label";
    return figure;
}

MaterialRecord whiteGlue()
{
    MaterialRecord material;
    material.id = { "material-white" };
    material.name = "White glue";
    material.classId = { "pva_white" };
    material.articleCode = "W-1";
    material.labelFigures = { figureOf("density", 1.08, "g/ml") };
    return material;
}

PlaceRecord shelf()
{
    PlaceRecord place;
    place.id = { "place-shelf" };
    place.name = "Shelf";
    place.assumed.year = Range<Celsius> { Celsius { 12 }, Celsius { 27.5 } };
    return place;
}

ContainerRecord bottle(const std::string& name)
{
    ContainerRecord container;
    container.id = { "container-" + name };
    container.label = "G" + name;
    container.material = whiteGlue().id;
    container.lot = "L1";
    container.made = Date { std::chrono::January / 31 / 2026 };
    container.capacity = grams(500);
    container.price = Money { 1250, "EUR" };
    container.created = minute(0);
    return container;
}

Entry entryOn(const std::string& bottleName, EntryKind kind, std::int64_t deltaMilli, const std::string& name,
    Moment at)
{
    Entry entry;
    entry.id = { "entry-" + name };
    entry.act = { "act-" + name };
    entry.kind = kind;
    entry.container = bottle(bottleName).id;
    entry.at = at;
    entry.recorded = at;
    entry.deltaMilli = deltaMilli;
    entry.device = "bench";
    return entry;
}

BatchRecord potOf(const std::string& bottleName, const std::string& name)
{
    BatchRecord batch;
    batch.id = { "batch-" + name };
    batch.label = "P" + name;
    batch.recipe = "hot_hide";
    batch.name = "Hot hide glue, 192 g";
    batch.made = minute(10);
    batch.amount = grams(50);
    batch.place = shelf().id;
    batch.who = "Ä. Tester";
    batch.created = minute(11);
    batch.parts = { { "granules", "Dry hide glue", grams(17.9), bottle(bottleName).id,
                        EntryId { "entry-" + name + "-granules" } },
        { "water", "Cold water", grams(32.1), {}, {} } };
    batch.figures = { { "form", {}, {}, "pearls", {} }, { "water_ratio", 1.8, 1.8, {}, "kg/kg" },
        { "work_temp_c", 60, 63, {}, "C" } };
    return batch;
}

BatchNote noteOn(const BatchRecord& batch, BatchNoteKind kind, const std::string& name, Moment at)
{
    BatchNote note;
    note.id = { "note-" + name };
    note.batch = batch.id;
    note.act = { "act-" + name };
    note.kind = kind;
    note.at = note.recorded = at;
    note.who = batch.who;
    note.device = "bench";
    return note;
}

Result<void> mix(Store& store, const BatchRecord& batch)
{
    return store.transact([&]() -> Result<void> {
        if (auto added = store.addBatch(batch); !added)
            return added;
        BatchNote mixed = noteOn(batch, BatchNoteKind::Mixed, batch.id.text.substr(6) + "-mixed", batch.made);
        mixed.deltaMilli = batch.amount.milli;
        if (auto done = store.appendNotes({ mixed }); !done)
            return done;
        const BatchPart& part = batch.parts.front();
        Entry taken = entryOn("a", EntryKind::Mixed, -part.amount.milli, "x", batch.made);
        taken.id = *part.entry;
        taken.container = part.container;
        taken.act = mixed.act;
        return store.append({ taken });
    });
}

GlueUpRecord gluedChair()
{
    GlueUpRecord record;
    record.id = { "glueup-1" };
    record.act = { "act-used" };
    record.job = { "job-1" };
    record.at = minute(10);
    record.recorded = minute(11);
    record.piece = "Chair \"Linde\"";
    record.jobName = "Reglue a chair";
    record.pieces = 2;
    record.family = { "pva" };
    record.glue = "White glue";
    record.answer = "fix_first";
    record.firstFix = "Warm the room.";
    record.comesApart = "warm water";
    record.note = "Left arm";
    record.device = "bench";
    record.facts = { { "air", 1.0 / 3, {} }, { "who", {}, "M\xC3\xBCller" } };
    record.gates = { { "age", "Stock", "pass", "Good." }, { "air", "Room", "stop", "Too cold." } };
    record.containers = { { bottle("a").id, Verdict::TestFirst, "Opened long ago.", 1 },
        { bottle("b").id, Verdict::NotKnown, "Nobody knows.", {} } };
    return record;
}

void stock(Store& store)
{
    const auto must = [](const Result<void>& done) {
        if (!done)
            qFatal("%s", done.error().sentence.c_str());
    };
    must(store.refreshReference(smallReference(), "small"));
    must(store.saveMaterial(whiteGlue()));
    must(store.savePlace(shelf()));
    must(store.transact([&]() -> Result<void> {
        for (const std::string name : { "a", "b" }) {
            if (auto added = store.addContainer(bottle(name)); !added)
                return added;
            Entry arrived = entryOn(name, EntryKind::Arrived, 500'000, name + "-arrived", minute(1));
            arrived.place = shelf().id;
            if (auto done = store.append({ arrived }); !done)
                return done;
        }
        return {};
    }));
}

} // namespace gw::test
