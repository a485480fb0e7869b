#include "store/rows.h"

namespace gw {

namespace {

constexpr std::string_view selectClasses = R"(
    SELECT class_id, name, "group", family, form, vessel, counted_in, frost, moisture, hazard_note, spoilage_signs,
        bench_test, source, confidence
    FROM classes)";

ClassRecord readClass(Row& row)
{
    ClassRecord record;
    record.id = row.id<ClassId>();
    record.name = row.text();
    record.group = row.text();
    record.family = row.id<FamilyId>();
    record.form = row.text();
    record.vessel = row.text();
    record.countedIn = dimensionIn(row);
    record.frost = row.text();
    record.moisture = row.text();
    record.hazardNote = row.text();
    record.spoilageSigns = row.text();
    record.benchTest = row.text();
    record.source = row.text();
    record.confidence = row.text();
    return record;
}

constexpr std::string_view selectClassFigures = R"(
    SELECT class_id, figure, value, low, high, text, unit, source, confidence, basis,
        shop_changed_ms, shop_value, shop_low, shop_high
    FROM class_figures ORDER BY class_id, figure)";

// The shop's figure stands in for the reference's, and then the reference's source and confidence say
// nothing.
std::pair<std::string, Figure> readClassFigure(Row& row)
{
    std::string classId = row.text();
    Figure figure;
    figure.figure = row.text();
    readFigure(row, figure);
    figure.changedByShop = row.integerOrNone().has_value();
    if (figure.changedByShop) {
        figure.value = row.realOrNone();
        figure.low = row.realOrNone();
        figure.high = row.realOrNone();
        figure.source = "shop";
        figure.confidence.clear();
        figure.basis.clear();
    }
    return { std::move(classId), std::move(figure) };
}

constexpr std::string_view selectFamilies = R"(
    SELECT family_id, name, spread_faces, reversible_with, creep, source, confidence FROM families)";

FamilyRecord readFamily(Row& row)
{
    FamilyRecord record;
    record.id = row.id<FamilyId>();
    record.name = row.text();
    record.facesToSpread = row.text();
    record.reversibleWith = row.text();
    record.creep = row.text();
    record.source = row.text();
    record.confidence = row.text();
    return record;
}

// Families carry no basis of their own.
constexpr std::string_view selectFamilyFigures = R"(
    SELECT family_id, figure, value, low, high, text, unit, source, confidence, '' AS basis
    FROM family_figures ORDER BY family_id, figure)";

std::pair<std::string, Figure> readFamilyFigure(Row& row)
{
    std::string familyId = row.text();
    Figure figure;
    figure.figure = row.text();
    readFigure(row, figure);
    return { std::move(familyId), std::move(figure) };
}

constexpr std::string_view putShopFigure = R"(
    INSERT INTO class_figures (class_id, figure, unit, source, shop_value, shop_low, shop_high, shop_changed_ms)
    VALUES (?, ?, (SELECT MIN(unit) FROM class_figures WHERE figure = ?), 'shop', ?, ?, ?, ?)
    ON CONFLICT (class_id, figure) DO UPDATE SET shop_value = excluded.shop_value, shop_low = excluded.shop_low,
        shop_high = excluded.shop_high, shop_changed_ms = excluded.shop_changed_ms)";

constexpr std::string_view takeShopFigure = R"(
    UPDATE class_figures SET shop_value = NULL, shop_low = NULL, shop_high = NULL, shop_changed_ms = NULL
    WHERE class_id = ? AND figure = ?)";

// A row that only the shop made has nothing left without its figure.
constexpr std::string_view dropShopRow = R"(
    DELETE FROM class_figures WHERE class_id = ? AND figure = ? AND source = 'shop' AND shop_changed_ms IS NULL)";

} // namespace

Result<std::vector<ClassRecord>> Store::classes() const
{
    std::vector<ClassRecord> out;
    const auto read = readTogether([&]() -> Result<void> {
        auto records = m_database->list(selectClasses, readClass);
        if (!records)
            return tl::unexpected(records.error());
        auto figures = m_database->list(selectClassFigures, readClassFigure);
        if (!figures)
            return tl::unexpected(figures.error());
        auto pictograms = m_database->list("SELECT class_id, pictogram FROM class_hazards WHERE pictogram <> "
                                           "'' ORDER BY class_id, pictogram",
            [](Row& row) {
                std::string id = row.text();
                return std::pair(std::move(id), row.text());
            });
        if (!pictograms)
            return tl::unexpected(pictograms.error());
        out = std::move(*records);
        distribute(out, std::move(*figures), &ClassRecord::figures);
        distribute(out, std::move(*pictograms), &ClassRecord::pictograms);
        return {};
    });
    if (!read)
        return tl::unexpected(read.error());
    sortByName(out);
    return out;
}

Result<std::vector<FamilyRecord>> Store::families() const
{
    std::vector<FamilyRecord> out;
    const auto read = readTogether([&]() -> Result<void> {
        auto records = m_database->list(selectFamilies, readFamily);
        if (!records)
            return tl::unexpected(records.error());
        auto figures = m_database->list(selectFamilyFigures, readFamilyFigure);
        if (!figures)
            return tl::unexpected(figures.error());
        out = std::move(*records);
        distribute(out, std::move(*figures), &FamilyRecord::figures);
        return {};
    });
    if (!read)
        return tl::unexpected(read.error());
    sortByName(out);
    return out;
}

Result<std::vector<SourceRecord>> Store::sources() const
{
    auto records = m_database->list("SELECT key, title, kind, status FROM sources", [](Row& row) {
        SourceRecord record;
        record.key = row.text();
        record.title = row.text();
        record.kind = row.text();
        record.status = row.text();
        return record;
    });
    if (records)
        std::ranges::sort(*records, {}, &SourceRecord::key);
    return records;
}

Result<void> Store::setClassFigure(const ClassId& id, const std::string& figure, std::optional<double> value,
    std::optional<double> low, std::optional<double> high, Moment now)
{
    return m_database->write([&]() -> Result<void> {
        const auto known = m_database->number("SELECT COUNT(*) FROM classes WHERE class_id = ?", id);
        if (!known)
            return tl::unexpected(known.error());
        if (*known == 0)
            return fail(ErrorCode::NotFound, "There is no class of that kind any more; choose another.");
        Result<std::int64_t> done = 0;
        if (value || low || high) {
            done = m_database->run(putShopFigure, id, figure, figure, value, low, high, now);
        } else {
            done = m_database->run(takeShopFigure, id, figure);
            if (done)
                done = m_database->run(dropShopRow, id, figure);
        }
        return done ? Result<void> {} : tl::unexpected(done.error());
    });
}

} // namespace gw
