#include <QString>

#include "codes/gtin.h"
#include "exchange/referencefiles.h"
#include "shop/actbuilder.h"
#include "shop/demodata.h"

namespace gw {

namespace {

MaterialRecord materialOf(const DemoRow& row)
{
    MaterialRecord material;
    material.id = MaterialId { newUuid() };
    material.name = row.text("name");
    material.classId = ClassId { row.text("class_id") };
    material.articleCode = row.text("article_code");
    material.note = row.text("note");
    const auto onLabel = [&](const char* figure, const char* column, const char* unit) {
        if (const auto value = row.number(column))
            material.labelFigures.push_back({ figure, value, {}, {}, {}, unit, "label", "high", {}, false });
    };
    onLabel("sealed_life", "sealed_life_months", "month");
    onLabel("opened_life", "opened_life_months", "month");
    onLabel("density", "density_g_per_ml", "g/ml");
    onLabel("freeze_tolerance", "freeze_cycles", "count");
    onLabel("mix_ratio_mass", "mix_ratio_mass", "g/100 g");
    onLabel("mix_ratio_volume", "mix_ratio_volume", "ml/100 ml");
    if (row.has("keep_low_c") || row.has("keep_high_c")) {
        material.labelFigures.push_back({ "storage_temperature", {}, row.number("keep_low_c"),
            row.number("keep_high_c"), {}, "C", "label", "high", {}, false });
    }
    return material;
}

Result<void> saveMaterials(Shop& shop, const std::vector<CsvTable>& tables, DemoCatalogue& demo)
{
    auto rows = demoRows(tables, "materials");
    if (!rows)
        return tl::unexpected(rows.error());
    for (const DemoRow& row : *rows) {
        const auto [place, fresh] = demo.materials.emplace(row.text("material"), materialOf(row));
        if (auto saved = shop.store().saveMaterial(place->second); !saved)
            return saved;
    }
    // Partners name each other, so both must be there before either points at the other.
    for (const DemoRow& row : *rows) {
        if (!row.has("partner"))
            continue;
        MaterialRecord& material = demo.materials.at(row.text("material"));
        material.partner = demo.materials.at(row.text("partner")).id;
        if (auto saved = shop.store().saveMaterial(material); !saved)
            return saved;
    }
    return {};
}

Result<void> savePacks(
    Shop& shop, const std::vector<CsvTable>& tables, const std::string& currency, DemoCatalogue& demo)
{
    auto rows = demoRows(tables, "packs");
    if (!rows)
        return tl::unexpected(rows.error());
    for (const DemoRow& row : *rows) {
        PackRecord pack;
        pack.id = PackId { newUuid() };
        pack.material = demo.materials.at(row.text("material")).id;
        if (row.has("gtin")) {
            auto gtin = parseGtin(row.text("gtin"));
            if (!gtin)
                return tl::unexpected(gtin.error());
            pack.gtin14 = gtin->digits14;
            demo.packs.emplace(row.text("gtin"), pack.id);
        }
        auto amount = parseAmount(row.text("amount"));
        if (!amount)
            return tl::unexpected(amount.error());
        pack.amount = *amount;
        if (const auto price = row.number("price_minor"))
            pack.price = Money { static_cast<std::int64_t>(*price), currency };
        pack.supplier = row.text("supplier");
        pack.leadDays = row.number("lead_days");
        if (auto saved = shop.store().savePack(pack); !saved)
            return saved;
    }
    return {};
}

Result<void> saveJobs(Shop& shop, const std::vector<CsvTable>& tables, Moment now, DemoCatalogue& demo)
{
    auto jobTypes = shop.store().jobTypes();
    if (!jobTypes)
        return tl::unexpected(jobTypes.error());
    std::map<std::string, JobTypeRecord> types;
    for (auto& jobType : *jobTypes)
        types.emplace(jobType.id.text, std::move(jobType));

    auto jobs = demoRows(tables, "jobs");
    if (!jobs)
        return tl::unexpected(jobs.error());
    const DemoDays days(now);
    for (const DemoRow& row : *jobs) {
        JobRecord job;
        job.id = JobId { newUuid() };
        job.type = JobTypeId { row.text("job_type_id") };
        job.piece = row.text("piece");
        const auto type = types.find(job.type.text);
        job.name = type == types.end() ? row.text("job") : type->second.name;
        if (!job.piece.empty())
            job.name += ", " + job.piece;
        if (const auto day = row.number("days"))
            job.at = *day <= 0 ? days.at(*day) : later(now, Days { *day });
        demo.jobs.emplace(row.text("job"), job.id);
        ++demo.jobCount;
        if (auto saved = shop.store().saveJob(job); !saved)
            return saved;
    }

    auto rates = demoRows(tables, "rates");
    if (!rates)
        return tl::unexpected(rates.error());
    for (const DemoRow& row : *rates) {
        JobTypeRecord& jobType = types.at(row.text("job_type_id"));
        jobType.perMonth = row.number("per_month").value_or(0);
        if (auto saved = shop.store().saveJobType(jobType, now); !saved)
            return saved;
    }
    return {};
}

Result<std::string> saveSettings(Shop& shop, const std::vector<CsvTable>& tables)
{
    auto rows = demoRows(tables, "shop");
    if (!rows)
        return tl::unexpected(rows.error());
    std::string currency;
    for (const DemoRow& row : *rows) {
        if (row.text("key") == "currency")
            currency = row.text("value");
        if (auto saved = shop.store().setSetting("shop_" + row.text("key"), row.text("value")); !saved)
            return tl::unexpected(saved.error());
    }
    return currency;
}

} // namespace

Result<DemoCatalogue> DemoCatalogue::save(Shop& shop, const std::vector<CsvTable>& tables, Moment now)
{
    DemoCatalogue demo;
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    demo.catalogue = std::move(*catalogue);
    auto currency = saveSettings(shop, tables);
    if (!currency)
        return tl::unexpected(currency.error());
    if (auto saved = saveDemoPlaces(shop, tables, now, demo); !saved)
        return tl::unexpected(saved.error());
    if (auto saved = saveMaterials(shop, tables, demo); !saved)
        return tl::unexpected(saved.error());
    if (auto saved = savePacks(shop, tables, *currency, demo); !saved)
        return tl::unexpected(saved.error());
    if (auto saved = saveJobs(shop, tables, now, demo); !saved)
        return tl::unexpected(saved.error());
    return demo;
}

Result<DemoCounts> fillDemo(Shop& shop, Moment now)
{
    auto empty = isEmpty(shop);
    if (!empty)
        return tl::unexpected(empty.error());
    if (!*empty)
        return fail(ErrorCode::Refused,
            "There is a shop in this store already; the demonstration shop needs an empty store (give "
            "another with "
            "--store).");
    auto tables = readDemo();
    if (!tables)
        return tl::unexpected(tables.error());

    DemoCounts counts;
    auto filled = shop.store().transact([&]() -> Result<void> {
        auto catalogue = DemoCatalogue::save(shop, *tables, now);
        if (!catalogue)
            return tl::unexpected(catalogue.error());
        auto containers = saveDemoLedger(shop, *tables, *catalogue, now);
        if (!containers)
            return tl::unexpected(containers.error());
        counts = { *containers, static_cast<int>(catalogue->materials.size()),
            static_cast<int>(catalogue->places.size()), catalogue->jobCount };
        return {};
    });
    if (!filled)
        return tl::unexpected(filled.error());
    return counts;
}

} // namespace gw
