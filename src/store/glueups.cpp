#include <QByteArray>

#include "store/rows.h"

// The records of glue-ups.
namespace gw {

namespace {

constexpr std::string_view insertGlueUp = R"(
    INSERT INTO glue_up (id, act_id, job_id, at_ms, recorded_ms, piece, job_name, pieces, family_id, glue, answer,
        first_fix, comes_apart, note, device) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?))";

constexpr std::string_view selectGlueUps = R"(
    SELECT g.id, g.act_id, g.job_id, g.at_ms, g.recorded_ms, g.piece, g.job_name, g.pieces, g.family_id, g.glue,
        g.answer, g.first_fix, g.comes_apart, g.note, g.device,
        (SELECT COUNT(*) FROM glue_up_photo p WHERE p.glue_up_id = g.id), u.at_ms
    FROM glue_up g LEFT JOIN glue_up_undone u ON u.glue_up_id = g.id)";

Result<void> plain(const Result<std::int64_t>& done)
{
    return done ? Result<void> {} : tl::unexpected(done.error());
}

GlueUpRecord readGlueUp(Row& row)
{
    GlueUpRecord record;
    record.id = row.id<GlueUpId>();
    record.act = row.id<ActId>();
    record.job = row.id<JobId>();
    record.at = row.moment();
    record.recorded = row.moment();
    record.piece = row.text();
    record.jobName = row.text();
    record.pieces = static_cast<int>(row.integer());
    record.family = row.id<FamilyId>();
    record.glue = row.text();
    record.answer = row.text();
    record.firstFix = row.text();
    record.comesApart = row.text();
    record.note = row.text();
    record.device = row.text();
    record.photos = static_cast<int>(row.integer());
    record.undone = row.momentOrNone();
    return record;
}

GlueUpFact readFact(Row& row)
{
    GlueUpFact fact;
    fact.fact = row.text();
    fact.value = row.realOrNone();
    fact.text = row.text();
    return fact;
}

GlueUpGateRecord readGate(Row& row)
{
    GlueUpGateRecord gate;
    gate.gate = row.text();
    gate.name = row.text();
    gate.result = row.text();
    gate.text = row.text();
    return gate;
}

GlueUpContainerRecord readContainer(Row& row)
{
    GlueUpContainerRecord container;
    container.container = row.id<ContainerId>();
    container.verdict = verdictOfWord(row.text()).value_or(Verdict::NotKnown);
    container.reason = row.text();
    if (const auto events = row.integerOrNone())
        container.frostEvents = static_cast<int>(*events);
    return container;
}

Result<void> addFacts(Database& database, const GlueUpRecord& record)
{
    for (const GlueUpFact& fact : record.facts) {
        auto done = plain(
            database.run("INSERT INTO glue_up_fact (glue_up_id, fact, value, text) VALUES (?, ?, ?, ?)",
                record.id, fact.fact, fact.value, fact.text));
        if (!done)
            return done;
    }
    return {};
}

Result<void> addGates(Database& database, const GlueUpRecord& record)
{
    int step = 0;
    for (const GlueUpGateRecord& gate : record.gates) {
        auto done = plain(database.run(
            "INSERT INTO glue_up_gate (glue_up_id, step, gate, name, result, text) VALUES (?, ?, ?, ?, ?, ?)",
            record.id, ++step, gate.gate, gate.name, gate.result, gate.text));
        if (!done)
            return done;
    }
    return {};
}

Result<void> addContainers(Database& database, const GlueUpRecord& record)
{
    for (const GlueUpContainerRecord& container : record.containers) {
        const auto events
            = container.frostEvents ? std::optional<std::int64_t>(*container.frostEvents) : std::nullopt;
        auto done = plain(database.run(
            "INSERT INTO glue_up_container (glue_up_id, container_id, verdict, reason, "
            "frost_events) VALUES (?, ?, ?, ?, ?)",
            record.id, container.container, std::string(word(container.verdict)), container.reason, events));
        if (!done)
            return done;
    }
    return {};
}

Result<void> addPhotos(Database& database, const GlueUpId& id, const std::vector<std::string>& jpegs)
{
    int step = 0;
    for (const std::string& jpeg : jpegs) {
        const QByteArray bytes(jpeg.data(), static_cast<qsizetype>(jpeg.size()));
        auto done = plain(database.run("INSERT INTO glue_up_photo (glue_up_id, step, jpeg) VALUES (?, ?, ?)",
            id, ++step, QVariant(bytes)));
        if (!done)
            return done;
    }
    return {};
}

Result<void> complete(Database& database, GlueUpRecord& record)
{
    auto facts = database.list(
        "SELECT fact, value, text FROM glue_up_fact WHERE glue_up_id = ?", readFact, record.id);
    if (!facts)
        return tl::unexpected(facts.error());
    auto gates = database.list(
        "SELECT gate, name, result, text FROM glue_up_gate WHERE glue_up_id = ? ORDER BY step", readGate,
        record.id);
    if (!gates)
        return tl::unexpected(gates.error());
    auto containers = database.list("SELECT container_id, verdict, reason, frost_events FROM "
                                    "glue_up_container WHERE glue_up_id = ?",
        readContainer, record.id);
    if (!containers)
        return tl::unexpected(containers.error());
    record.facts = std::move(*facts);
    record.gates = std::move(*gates);
    record.containers = std::move(*containers);
    std::ranges::sort(record.facts, {}, &GlueUpFact::fact);
    std::ranges::sort(record.containers, {}, &GlueUpContainerRecord::container);
    return {};
}

} // namespace

const GlueUpFact* GlueUpRecord::fact(const std::string& key) const
{
    const auto found = std::ranges::find(facts, key, &GlueUpFact::fact);
    return found == facts.end() ? nullptr : &*found;
}

Result<void> Store::addGlueUp(const GlueUpRecord& record, const std::vector<std::string>& jpegs)
{
    for (const std::string& jpeg : jpegs) {
        if (jpeg.empty() || jpeg.size() > LabelPhoto::mostBytes)
            return fail(ErrorCode::BadInput, "That picture cannot be kept; take it again.");
    }
    return m_database->write([&]() -> Result<void> {
        auto done = plain(m_database->run(insertGlueUp, record.id, record.act, record.job, record.at,
            record.recorded, record.piece, record.jobName, record.pieces, orNull(record.family), record.glue,
            record.answer, record.firstFix, record.comesApart, record.note, record.device));
        if (done)
            done = addFacts(*m_database, record);
        if (done)
            done = addGates(*m_database, record);
        if (done)
            done = addContainers(*m_database, record);
        return done ? addPhotos(*m_database, record.id, jpegs) : done;
    });
}

Result<std::vector<GlueUpRecord>> Store::glueUps() const
{
    auto records = m_database->list(selectGlueUps, readGlueUp);
    if (records)
        std::ranges::sort(*records, [](const GlueUpRecord& a, const GlueUpRecord& b) {
            return a.at != b.at ? a.at > b.at : a.id < b.id;
        });
    return records;
}

Result<std::optional<GlueUpRecord>> Store::glueUp(const GlueUpId& id) const
{
    std::optional<GlueUpRecord> record;
    const auto read = readTogether([&]() -> Result<void> {
        auto found = m_database->first(std::string(selectGlueUps) + " WHERE g.id = ?", readGlueUp, id);
        if (!found)
            return tl::unexpected(found.error());
        record = std::move(*found);
        return record ? complete(*m_database, *record) : Result<void> {};
    });
    return read ? Result<std::optional<GlueUpRecord>>(std::move(record)) : tl::unexpected(read.error());
}

Result<std::optional<GlueUpId>> Store::glueUpOfAct(const ActId& act) const
{
    return m_database->first(
        "SELECT id FROM glue_up WHERE act_id = ?", [](Row& row) { return row.id<GlueUpId>(); }, act);
}

Result<std::vector<std::string>> Store::glueUpPhotos(const GlueUpId& id) const
{
    return m_database->list(
        "SELECT jpeg FROM glue_up_photo WHERE glue_up_id = ? ORDER BY step",
        [](Row& row) { return row.any().toByteArray().toStdString(); }, id);
}

Result<void> Store::undoGlueUp(const GlueUpId& id, const ActId& act, Moment now, const std::string& device)
{
    return plain(
        m_database->run("INSERT INTO glue_up_undone (glue_up_id, act_id, at_ms, device) VALUES (?, ?, ?, ?)",
            id, act, now, device));
}

} // namespace gw
