#include "store/inspection.h"

#include "measure/quoted.h"
#include "store/guards.h"
#include "store/migrator.h"
#include "store/readingscheck.h"

namespace gw {

namespace {

using Problems = std::vector<std::string>;

// A page of the same complaint helps nobody.
constexpr std::size_t shownOfEach = 5;

struct Reference {
    std::string_view table, name, column, target, key;
};

// Where one row names another. The name column is what a person can look the row up by.
constexpr std::array references {
    Reference { "material", "name", "class_id", "classes", "class_id" },
    Reference { "material", "name", "partner_id", "material", "id" },
    Reference { "material_figure", "figure", "material_id", "material", "id" },
    Reference { "pack", "id", "material_id", "material", "id" },
    Reference { "reading_month", "month", "place_id", "place", "id" },
    Reference { "place_range", "place_id", "place_id", "place", "id" },
    Reference { "place_follow", "place_id", "place_id", "place", "id" },
    Reference { "place_follow", "place_id", "follows_id", "place", "id" },
    Reference { "job", "name", "job_type_id", "job_types", "job_type_id" },
    Reference { "container", "label", "material_id", "material", "id" },
    Reference { "container", "label", "pack_id", "pack", "id" },
    Reference { "container", "label", "parent_id", "container", "id" },
    Reference { "entry", "id", "container_id", "container", "id" },
    Reference { "entry", "id", "place_id", "place", "id" },
    Reference { "entry", "id", "job_id", "job", "id" },
    Reference { "entry", "id", "other_id", "container", "id" },
    Reference { "entry", "id", "lot_material_id", "material", "id" },
    Reference { "entry", "id", "reverses", "entry", "id" },
    Reference { "batch", "label", "recipe_id", "recipes", "recipe_id" },
    Reference { "batch", "label", "place_id", "place", "id" },
    Reference { "batch_part", "what", "batch_id", "batch", "id" },
    Reference { "batch_part", "what", "container_id", "container", "id" },
    Reference { "batch_part", "what", "entry_id", "entry", "id" },
    Reference { "batch_figure", "figure", "batch_id", "batch", "id" },
    Reference { "batch_note", "id", "batch_id", "batch", "id" },
    Reference { "batch_note", "id", "place_id", "place", "id" },
    Reference { "batch_note", "id", "job_id", "job", "id" },
    Reference { "batch_note", "id", "reverses", "batch_note", "id" },
    Reference { "glue_up", "piece", "job_id", "job", "id" },
    Reference { "glue_up_fact", "fact", "glue_up_id", "glue_up", "id" },
    Reference { "glue_up_gate", "name", "glue_up_id", "glue_up", "id" },
    Reference { "glue_up_container", "glue_up_id", "glue_up_id", "glue_up", "id" },
    Reference { "glue_up_container", "glue_up_id", "container_id", "container", "id" },
    Reference { "glue_up_photo", "glue_up_id", "glue_up_id", "glue_up", "id" },
    Reference { "glue_up_undone", "glue_up_id", "glue_up_id", "glue_up", "id" },
    Reference { "order_line", "id", "list_id", "order_list", "id" },
    Reference { "order_line", "id", "material_id", "material", "id" },
    Reference { "order_line", "id", "pack_id", "pack", "id" },
    Reference { "order_event", "id", "line_id", "order_line", "id" },
    Reference { "planned_job", "id", "job_type_id", "job_types", "job_type_id" },
    Reference { "class_figures", "figure", "class_id", "classes", "class_id" },
    Reference { "family_figures", "figure", "family_id", "families", "family_id" },
};

constexpr std::string_view sumsBelowZero = R"(
    SELECT c.label FROM container c JOIN entry e ON e.container_id = c.id
    GROUP BY c.id, c.label HAVING SUM(e.delta_milli) < 0 ORDER BY c.label)";

constexpr std::string_view withoutEntries = R"(
    SELECT c.label FROM container c WHERE NOT EXISTS (SELECT 1 FROM entry e WHERE e.container_id = c.id)
    ORDER BY c.label)";

constexpr std::string_view labelsTwice = R"(
    SELECT label FROM (SELECT label FROM container UNION ALL SELECT label FROM batch) AS labels
    GROUP BY label HAVING COUNT(*) > 1 ORDER BY label)";

constexpr std::string_view batchesWithoutMixing = R"(
    SELECT b.label FROM batch b
    WHERE NOT EXISTS (SELECT 1 FROM batch_note n WHERE n.batch_id = b.id AND n.kind = 'mixed') ORDER BY b.label)";

constexpr std::string_view batchesBelowZero = R"(
    SELECT b.label FROM batch b JOIN batch_note n ON n.batch_id = b.id
    GROUP BY b.id, b.label HAVING SUM(n.delta_milli) < 0 ORDER BY b.label)";

// What went in is what the ledger took out, of the same container. No density stands between the two.
constexpr std::string_view partsNotTaken = R"(
    SELECT p.what FROM batch_part p JOIN entry e ON e.id = p.entry_id
    WHERE e.kind <> 'mixed' OR e.container_id <> p.container_id OR e.delta_milli >= 0 ORDER BY p.what)";

constexpr std::string_view wrongNoteReversals = R"(
    SELECT r.id FROM batch_note r JOIN batch_note n ON n.id = r.reverses
    WHERE r.delta_milli <> -n.delta_milli OR r.batch_id <> n.batch_id ORDER BY r.id)";

// A reversal takes back exactly what the entry did, on the container or lot it did it to.
constexpr std::string_view wrongReversals = R"(
    SELECT r.id FROM entry r JOIN entry e ON e.id = r.reverses
    WHERE r.delta_milli <> -e.delta_milli OR COALESCE(r.container_id, '') <> COALESCE(e.container_id, '')
        OR (e.container_id IS NULL AND (r.lot_material_id <> e.lot_material_id OR r.lot <> e.lot))
    ORDER BY r.id)";

constexpr std::string_view reversedTwice = R"(
    SELECT reverses FROM entry WHERE reverses IS NOT NULL GROUP BY reverses HAVING COUNT(*) > 1 ORDER BY reverses)";

constexpr std::string_view datesOfContainers
    = "SELECT label, made, printed FROM container WHERE made IS NOT NULL OR printed IS NOT NULL";

class Inspector {
public:
    explicit Inspector(Database& database)
        : m_database(database)
    {
    }

    Result<Inspection> run()
    {
        m_found.report.engine = word(m_database.engine());
        const auto migrations = migrationsFor(m_database.engine());
        const auto schema = schemaOf(m_database, migrations);
        if (!schema) {
            if (schema.error().code == ErrorCode::StoreUnreachable
                || schema.error().code == ErrorCode::StoreLocked)
                return tl::unexpected(schema.error());
            note(schema.error().sentence, true);
            return std::move(m_found);
        }
        m_found.report.schemaVersion = schema->version;
        auto engine = engineProblems(m_database);
        if (!engine)
            return tl::unexpected(engine.error());
        for (auto& problem : *engine)
            note(std::move(problem), true);
        const auto looked = lookAtRows(migrations);
        if (!looked) {
            // A damaged page met on the way is a finding; the rest cannot be looked at.
            if (looked.error().code != ErrorCode::StoreDamaged)
                return tl::unexpected(looked.error());
            if (!m_found.broken)
                note(looked.error().sentence, true);
        }
        m_found.report.ok = m_found.report.problems.empty();
        return std::move(m_found);
    }

private:
    void note(std::string problem, bool breaks)
    {
        m_found.report.problems.push_back(std::move(problem));
        m_found.broken = m_found.broken || breaks;
    }

    // Says the same of each row that a query answers, the first few by name.
    Result<void> each(std::string_view sql, const std::string& before, const std::string& after, bool breaks)
    {
        const auto rows = m_database.list(sql, [](Row& row) { return row.text(); });
        if (!rows)
            return tl::unexpected(rows.error());
        for (std::size_t i = 0; i < std::min(rows->size(), shownOfEach); ++i)
            note(before + " " + inQuotes((*rows)[i]) + " " + after + ".", breaks);
        if (rows->size() > shownOfEach)
            note("The same holds of " + std::to_string(rows->size() - shownOfEach) + " more.", breaks);
        return {};
    }

    Result<void> lookAtReferences()
    {
        for (const auto& ref : references) {
            const std::string table(ref.table), column(ref.column), target(ref.target);
            const std::string sql = "SELECT a." + std::string(ref.name) + " FROM " + table + " a LEFT JOIN "
                + target + " b ON b." + std::string(ref.key) + " = a." + column + " WHERE a." + column
                + " IS NOT NULL AND b." + std::string(ref.key) + " IS NULL";
            if (auto done
                = each(sql, "The " + table, "names a row of " + target + " that is not there", true);
                !done)
                return done;
        }
        return {};
    }

    Result<void> lookAtDates()
    {
        return m_database.visit(datesOfContainers, [&](Row& row) -> Result<void> {
            const std::string label = row.text();
            for (const auto& text : { row.textOrNone(), row.textOrNone() }) {
                if (text && !parseDate(*text))
                    note("The container " + inQuotes(label) + " has a date " + inQuotes(*text)
                            + " that is no date.",
                        false);
            }
            return {};
        });
    }

    Result<void> lookAtGuards(const std::vector<Migration>& migrations)
    {
        const auto whole = guardsStand(m_database, migrations);
        if (!whole)
            return tl::unexpected(whole.error());
        if (!*whole)
            note("The guards that keep the ledger from being changed are missing or were altered.", false);
        return {};
    }

    Result<void> lookAtBatches()
    {
        const std::string batch = "The batch";
        if (auto done = each(batchesWithoutMixing, batch, "has no note of its mixing", false); !done)
            return done;
        if (auto done = each(batchesBelowZero, batch, "holds less than nothing by its notes", false); !done)
            return done;
        if (auto done
            = each(partsNotTaken, "The part", "of a batch is not what the ledger took for it", false);
            !done)
            return done;
        return each(wrongNoteReversals, "The note",
            "undoes another one of a batch but does not take back what that did", false);
    }

    Result<void> lookAtRows(const std::vector<Migration>& migrations)
    {
        const auto containers = m_database.number("SELECT COUNT(*) FROM container");
        if (!containers)
            return tl::unexpected(containers.error());
        m_found.report.containers = *containers;
        const auto entries = m_database.number("SELECT COUNT(*) FROM entry");
        if (!entries)
            return tl::unexpected(entries.error());
        m_found.report.entries = *entries;
        if (auto done = lookAtGuards(migrations); !done)
            return done;
        if (auto done = lookAtReferences(); !done)
            return done;
        if (auto done = lookAtDates(); !done)
            return done;
        auto readings = readingsProblems(m_database);
        if (!readings)
            return tl::unexpected(readings.error());
        for (auto& problem : *readings)
            note(std::move(problem), true);
        const std::string container = "The container", entry = "The entry";
        if (auto done = each(sumsBelowZero, container, "holds less than nothing by its entries", false);
            !done)
            return done;
        if (auto done = each(withoutEntries, container, "has no entry, so nobody knows how it came", false);
            !done)
            return done;
        if (auto done = each(labelsTwice, "The label code", "is on two containers or batches", true); !done)
            return done;
        if (auto done = lookAtBatches(); !done)
            return done;
        if (auto done
            = each(wrongReversals, entry, "undoes another one but does not take back what that did", false);
            !done)
            return done;
        return each(reversedTwice, entry, "was undone twice", true);
    }

    Database& m_database;
    Inspection m_found;
};

} // namespace

Result<std::vector<std::string>> engineProblems(Database& database)
{
    Problems problems;
    // PostgreSQL checks its pages as it reads them, and every table is read here anyway.
    if (database.engine() == Engine::Postgres)
        return problems;
    const auto pages = database.list("PRAGMA integrity_check(20)", [](Row& row) { return row.text(); });
    if (!pages) {
        if (pages.error().code != ErrorCode::StoreDamaged)
            return tl::unexpected(pages.error());
        problems.push_back(pages.error().sentence);
        return problems;
    }
    for (const auto& said : *pages) {
        if (said != "ok")
            problems.push_back("The file is damaged: " + said + ".");
    }
    return problems;
}

Result<Inspection> inspect(Database& database) { return Inspector(database).run(); }

} // namespace gw
