#include "measure/quoted.h"
#include "store/rows.h"

namespace gw {

namespace {

// The number within its millisecond keeps the order of what was recorded at once.
constexpr std::string_view insertEntry = R"(
    INSERT INTO entry (seq, id, act_id, kind, container_id, at_ms, recorded_ms, delta_milli, place_id, job_id, other_id,
        lot_material_id, lot, passed, wood_failure, grainy, reverses, note, device)
    VALUES ((SELECT COALESCE(MAX(seq), 0) + 1 FROM entry WHERE recorded_ms = ?),
        ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO NOTHING)";

// $ as in Database: these are read by the ten thousand.
#define GW_ENTRY_COLUMNS                                                                                     \
    "$id, $act_id, $kind, $container_id, at_ms, recorded_ms, delta_milli, $place_id, $job_id, $other_id, "   \
    "$lot_material_id, $lot, passed, wood_failure, grainy, $reverses, $note, $device"

constexpr std::string_view selectById = "SELECT " GW_ENTRY_COLUMNS " FROM entry WHERE id = ?";

constexpr std::string_view selectAct
    = "SELECT " GW_ENTRY_COLUMNS " FROM entry WHERE act_id = ? ORDER BY recorded_ms, seq, id";

// Two statements, as the engines place NULL differently.
constexpr std::string_view selectContainersUpTo
    = "SELECT " GW_ENTRY_COLUMNS " FROM entry WHERE container_id IS NOT NULL AND at_ms <= ?"
      " ORDER BY container_id, at_ms, recorded_ms, seq, id";
constexpr std::string_view selectLotsUpTo
    = "SELECT " GW_ENTRY_COLUMNS " FROM entry WHERE container_id IS NULL AND at_ms <= ?"
      " ORDER BY at_ms, recorded_ms, seq, id";

constexpr std::string_view selectOfContainer = "SELECT " GW_ENTRY_COLUMNS R"( FROM entry WHERE id IN (
        SELECT id FROM entry WHERE container_id = ? AND at_ms <= ?
        UNION ALL
        SELECT e.id FROM entry e JOIN container c ON e.lot_material_id = c.material_id AND e.lot = c.lot
        WHERE c.id = ? AND e.container_id IS NULL AND e.at_ms <= ?)
    ORDER BY at_ms, recorded_ms, seq, id)";

constexpr std::string_view selectLatest
    = "SELECT " GW_ENTRY_COLUMNS " FROM entry ORDER BY recorded_ms DESC, seq DESC, id DESC LIMIT ?";

#undef GW_ENTRY_COLUMNS

Entry readEntry(Row& row)
{
    Entry entry;
    entry.id = row.id<EntryId>();
    entry.act = row.id<ActId>();
    entry.kind = entryKindOfWord(row.text()).value_or(EntryKind::Counted);
    entry.container = row.idOrNone<ContainerId>();
    entry.at = row.moment();
    entry.recorded = row.moment();
    entry.deltaMilli = row.integer();
    entry.place = row.idOrNone<PlaceId>();
    entry.job = row.idOrNone<JobId>();
    entry.other = row.idOrNone<ContainerId>();
    entry.lotMaterial = row.idOrNone<MaterialId>();
    entry.lot = row.text();
    entry.passed = row.flagOrNone();
    entry.woodFailurePercent = row.realOrNone();
    entry.grainy = row.flag();
    entry.reverses = row.idOrNone<EntryId>();
    entry.note = row.text();
    entry.device = row.text();
    return entry;
}

bool same(const Entry& a, const Entry& b)
{
    const auto all = [](const Entry& e) {
        return std::tie(e.id, e.act, e.kind, e.container, e.at, e.recorded, e.deltaMilli, e.place, e.job,
            e.other, e.lotMaterial, e.lot, e.passed, e.woodFailurePercent, e.grainy, e.reverses, e.note,
            e.device);
    };
    return all(a) == all(b);
}

Result<void> appendOne(Database& database, const Entry& entry)
{
    const auto added = database.run(insertEntry, entry.recorded, entry.id, entry.act,
        std::string(word(entry.kind)), entry.container, entry.at, entry.recorded, entry.deltaMilli,
        entry.place, entry.job, entry.other, entry.lotMaterial, entry.lot, entry.passed,
        entry.woodFailurePercent, entry.grainy, entry.reverses, entry.note, entry.device);
    if (!added)
        return tl::unexpected(added.error());
    if (*added == 1)
        return {};
    const auto there = database.first(selectById, readEntry, entry.id);
    if (!there)
        return tl::unexpected(there.error());
    if (*there && same(**there, entry))
        return {};
    return database.spoil({ ErrorCode::Conflict,
        "An entry " + inQuotes(entry.id.text)
            + " is in the ledger with other content; nothing was written, "
              "look at the container's history and enter it anew." });
}

} // namespace

Result<void> Store::append(const std::vector<Entry>& entries)
{
    return m_database->write([&]() -> Result<void> {
        for (const Entry& entry : entries) {
            if (auto done = appendOne(*m_database, entry); !done)
                return done;
        }
        return {};
    });
}

Result<std::optional<Entry>> Store::entry(const EntryId& id) const
{
    return m_database->first(selectById, readEntry, id);
}

Result<std::vector<Entry>> Store::entriesOfAct(const ActId& act) const
{
    return m_database->list(selectAct, readEntry, act);
}

Result<std::vector<Entry>> Store::entriesUpTo(Moment moment) const
{
    std::vector<Entry> out;
    const auto read = readTogether([&]() -> Result<void> {
        for (const auto sql : { selectContainersUpTo, selectLotsUpTo }) {
            auto entries = m_database->list(sql, readEntry, moment);
            if (!entries)
                return tl::unexpected(entries.error());
            if (out.empty())
                out = std::move(*entries);
            else
                std::ranges::move(*entries, std::back_inserter(out));
        }
        return {};
    });
    if (!read)
        return tl::unexpected(read.error());
    return out;
}

Result<std::vector<Entry>> Store::entriesOf(const ContainerId& id, Moment upTo) const
{
    return m_database->list(selectOfContainer, readEntry, id, upTo, id, upTo);
}

Result<std::vector<Entry>> Store::latestEntries(int count) const
{
    return m_database->list(selectLatest, readEntry, std::max(count, 0));
}

} // namespace gw
