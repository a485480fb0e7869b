#include <QByteArray>

#include "store/rows.h"

// What arrivals taught about the labels of a material.
namespace gw {

namespace {

Result<void> plain(const Result<std::int64_t>& done)
{
    return done ? Result<void> {} : tl::unexpected(done.error());
}

LabelPhoto readPhoto(Row& row)
{
    LabelPhoto photo;
    photo.taken = row.moment();
    const QByteArray bytes = row.any().toByteArray();
    photo.jpeg.assign(bytes.begin(), bytes.end());
    return photo;
}

} // namespace

Result<void> Store::setLotDateReading(const MaterialId& material, const std::string& readAs)
{
    return plain(m_database->run("INSERT INTO material_lot_date (material_id, read_as) VALUES (?, ?) "
                                 "ON CONFLICT (material_id) DO UPDATE SET read_as = excluded.read_as",
        material, readAs));
}

Result<std::optional<std::string>> Store::lotDateReading(const MaterialId& material) const
{
    return m_database->first(
        "SELECT read_as FROM material_lot_date WHERE material_id = ?", [](Row& row) { return row.text(); },
        material);
}

Result<void> Store::saveLabelPhoto(const MaterialId& material, const LabelPhoto& photo)
{
    if (photo.jpeg.empty() || photo.jpeg.size() > LabelPhoto::mostBytes)
        return fail(
            ErrorCode::BadInput, "That picture cannot be kept; take it again, from nearer to the label.");
    const QByteArray bytes(photo.jpeg.data(), static_cast<qsizetype>(photo.jpeg.size()));
    return plain(m_database->run(
        "INSERT INTO material_photo (material_id, taken_ms, jpeg) VALUES (?, ?, ?) "
        "ON CONFLICT (material_id) DO UPDATE SET taken_ms = excluded.taken_ms, jpeg = excluded.jpeg",
        material, photo.taken, QVariant(bytes)));
}

Result<std::optional<LabelPhoto>> Store::labelPhoto(const MaterialId& material) const
{
    return m_database->first(
        "SELECT taken_ms, jpeg FROM material_photo WHERE material_id = ?", readPhoto, material);
}

Result<void> Store::saveCase(const CaseRecord& packedCase)
{
    return plain(m_database->run("INSERT INTO pack_case (gtin14, pack_id, pieces) VALUES (?, ?, ?) "
                                 "ON CONFLICT (gtin14) DO UPDATE SET pack_id = excluded.pack_id, "
                                 "pieces = excluded.pieces",
        packedCase.gtin14, packedCase.pack, packedCase.pieces));
}

Result<std::optional<CaseRecord>> Store::caseByGtin(const std::string& gtin14) const
{
    return m_database->first(
        "SELECT gtin14, pack_id, pieces FROM pack_case WHERE gtin14 = ?",
        [](Row& row) {
            CaseRecord record;
            record.gtin14 = row.text();
            record.pack = row.id<PackId>();
            record.pieces = static_cast<int>(row.integer());
            return record;
        },
        gtin14);
}

} // namespace gw
