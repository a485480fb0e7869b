#include "store/rows.h"

namespace gw {

namespace {

constexpr std::string_view upsertMaterial = R"(
    INSERT INTO material (id, name, class_id, article_code, partner_id, vessel, note) VALUES (?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO UPDATE SET name = excluded.name, class_id = excluded.class_id,
        article_code = excluded.article_code, partner_id = excluded.partner_id, vessel = excluded.vessel,
        note = excluded.note)";

constexpr std::string_view insertMaterialFigure = R"(
    INSERT INTO material_figure (material_id, figure, value, low, high, text, unit, source, confidence, basis)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?))";

constexpr std::string_view selectMaterials
    = "SELECT id, name, class_id, article_code, partner_id, vessel, note FROM material";

MaterialRecord readMaterial(Row& row)
{
    MaterialRecord record;
    record.id = row.id<MaterialId>();
    record.name = row.text();
    record.classId = row.id<ClassId>();
    record.articleCode = row.text();
    record.partner = row.idOrNone<MaterialId>();
    record.vessel = row.text();
    record.note = row.text();
    return record;
}

constexpr std::string_view selectMaterialFigures = R"(
    SELECT material_id, figure, value, low, high, text, unit, source, confidence, basis
    FROM material_figure ORDER BY material_id, figure)";

std::pair<std::string, Figure> readMaterialFigure(Row& row)
{
    std::string id = row.text();
    Figure figure;
    figure.figure = row.text();
    readFigure(row, figure);
    return { std::move(id), std::move(figure) };
}

constexpr std::string_view upsertPack = R"(
    INSERT INTO pack (id, material_id, gtin14, amount_milli, dimension, price_minor, currency, supplier, lead_days,
        sold_by, least)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO UPDATE SET material_id = excluded.material_id, gtin14 = excluded.gtin14,
        amount_milli = excluded.amount_milli, dimension = excluded.dimension, price_minor = excluded.price_minor,
        currency = excluded.currency, supplier = excluded.supplier, lead_days = excluded.lead_days,
        sold_by = excluded.sold_by, least = excluded.least)";

constexpr std::string_view selectPacks = R"(
    SELECT id, material_id, gtin14, amount_milli, dimension, price_minor, currency, supplier, lead_days, sold_by, least
    FROM pack)";

PackRecord readPack(Row& row)
{
    PackRecord record;
    record.id = row.id<PackId>();
    record.material = row.id<MaterialId>();
    record.gtin14 = row.text();
    record.amount = amountIn(row);
    record.price = moneyIn(row);
    record.supplier = row.text();
    record.leadDays = row.realOrNone();
    record.soldBy = static_cast<int>(row.integer());
    record.least = static_cast<int>(row.integer());
    return record;
}

Result<void> plain(Result<std::int64_t> done)
{
    return done ? Result<void> {} : tl::unexpected(done.error());
}

} // namespace

Result<void> Store::saveMaterial(const MaterialRecord& material)
{
    return m_database->write([&]() -> Result<void> {
        auto done = m_database->run(upsertMaterial, material.id, material.name, orNull(material.classId),
            material.articleCode, material.partner, material.vessel, material.note);
        if (done)
            done = m_database->run("DELETE FROM material_figure WHERE material_id = ?", material.id);
        for (const Figure& figure : material.labelFigures) {
            if (!done)
                break;
            done = m_database->run(insertMaterialFigure, material.id, figure.figure, figure.value, figure.low,
                figure.high, figure.text, figure.unit, figure.source, figure.confidence, figure.basis);
        }
        return plain(done);
    });
}

Result<std::vector<MaterialRecord>> Store::materials() const
{
    std::vector<MaterialRecord> out;
    const auto read = readTogether([&]() -> Result<void> {
        auto records = m_database->list(selectMaterials, readMaterial);
        if (!records)
            return tl::unexpected(records.error());
        auto figures = m_database->list(selectMaterialFigures, readMaterialFigure);
        if (!figures)
            return tl::unexpected(figures.error());
        out = std::move(*records);
        distribute(out, std::move(*figures), &MaterialRecord::labelFigures);
        return {};
    });
    if (!read)
        return tl::unexpected(read.error());
    sortByName(out);
    return out;
}

Result<void> Store::savePack(const PackRecord& pack)
{
    return plain(m_database->run(upsertPack, pack.id, pack.material, orNull(pack.gtin14), pack.amount.milli,
        unitOf(pack.amount.dimension), minorOf(pack.price), currencyOf(pack.price), pack.supplier,
        pack.leadDays, pack.soldBy, pack.least));
}

Result<std::vector<PackRecord>> Store::packs() const
{
    return m_database->list(std::string(selectPacks) + " ORDER BY material_id, amount_milli, id", readPack);
}

Result<std::optional<PackRecord>> Store::packByGtin(const std::string& gtin14) const
{
    return m_database->first(std::string(selectPacks) + " WHERE gtin14 = ?", readPack, gtin14);
}

} // namespace gw
