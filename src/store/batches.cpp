#include "measure/quoted.h"
#include "store/rows.h"

namespace gw {

namespace {

constexpr std::string_view insertBatch = R"(
    INSERT INTO batch (id, label, recipe_id, name, made_ms, amount_milli, dimension, place_id, who, created_ms)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO NOTHING)";

constexpr std::string_view insertPart = R"(
    INSERT INTO batch_part (batch_id, part, key, what, amount_milli, dimension, container_id, entry_id)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?))";

constexpr std::string_view insertFigure
    = "INSERT INTO batch_figure (batch_id, figure, low, high, text, unit) VALUES (?, ?, ?, ?, ?, ?)";

constexpr std::string_view insertNote = R"(
    INSERT INTO batch_note (seq, id, batch_id, act_id, kind, at_ms, recorded_ms, delta_milli, temperature,
        weight_milli, place_id, job_id, reverses, note, who, device)
    VALUES ((SELECT COALESCE(MAX(seq), 0) + 1 FROM batch_note WHERE recorded_ms = ?),
        ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO NOTHING)";

constexpr std::string_view selectBatches = R"(
    SELECT b.id, b.label, b.recipe_id, b.name, b.made_ms, b.amount_milli, b.dimension, b.place_id, b.who, b.created_ms
    FROM batch b)";

constexpr std::string_view selectParts
    = "SELECT batch_id, key, what, amount_milli, dimension, container_id, entry_id FROM batch_part";

constexpr std::string_view selectFigures = "SELECT batch_id, figure, low, high, text, unit FROM batch_figure";

constexpr std::string_view selectNotes = R"(
    SELECT id, batch_id, act_id, kind, at_ms, recorded_ms, delta_milli, temperature, weight_milli, place_id, job_id,
        reverses, note, who, device
    FROM batch_note)";

// The batches mixed by a moment, without those used up, thrown away or undone by another. What was undone
// later than the first moment is not seen.
constexpr std::string_view madeUpTo = R"( b.made_ms <= ?
        AND NOT EXISTS (SELECT 1 FROM batch_note n WHERE n.batch_id = b.id AND n.at_ms <= ?
            AND (n.kind IN ('used_up', 'thrown_away')
                AND NOT EXISTS (SELECT 1 FROM batch_note r WHERE r.reverses = n.id AND r.at_ms <= ?)
                OR n.kind = 'reversed'
                AND EXISTS (SELECT 1 FROM batch_note m WHERE m.id = n.reverses AND m.kind = 'mixed'))))";

BatchRecord readBatch(Row& row)
{
    BatchRecord batch;
    batch.id = row.id<BatchId>();
    batch.label = row.text();
    batch.recipe = row.text();
    batch.name = row.text();
    batch.made = row.moment();
    batch.amount = amountIn(row);
    batch.place = row.idOrNone<PlaceId>();
    batch.who = row.text();
    batch.created = row.moment();
    return batch;
}

std::pair<std::string, BatchPart> readPart(Row& row)
{
    std::string batch = row.text();
    BatchPart part;
    part.key = row.text();
    part.what = row.text();
    part.amount = amountIn(row);
    part.container = row.idOrNone<ContainerId>();
    part.entry = row.idOrNone<EntryId>();
    return { std::move(batch), std::move(part) };
}

std::pair<std::string, BatchFigure> readFigureOfBatch(Row& row)
{
    std::string batch = row.text();
    BatchFigure figure;
    figure.figure = row.text();
    figure.low = row.realOrNone();
    figure.high = row.realOrNone();
    figure.text = row.text();
    figure.unit = row.text();
    return { std::move(batch), std::move(figure) };
}

BatchNote readNote(Row& row)
{
    BatchNote note;
    note.id = row.id<EntryId>();
    note.batch = row.id<BatchId>();
    note.act = row.id<ActId>();
    note.kind = batchNoteKindOfWord(row.text()).value_or(BatchNoteKind::Remark);
    note.at = row.moment();
    note.recorded = row.moment();
    note.deltaMilli = row.integer();
    if (const auto degrees = row.realOrNone())
        note.temperature = Celsius { *degrees };
    note.weightMilli = row.integerOrNone();
    note.place = row.idOrNone<PlaceId>();
    note.job = row.idOrNone<JobId>();
    note.reverses = row.idOrNone<EntryId>();
    note.note = row.text();
    note.who = row.text();
    note.device = row.text();
    return note;
}

bool same(const BatchRecord& a, const BatchRecord& b)
{
    const auto all = [](const BatchRecord& r) {
        return std::tie(
            r.id, r.label, r.recipe, r.name, r.made, r.amount, r.place, r.who, r.created, r.parts);
    };
    // Figures have no order of their own.
    return all(a) == all(b) && std::ranges::is_permutation(a.figures, b.figures);
}

/// Reads batches by a condition, each with its parts and figures.
template <class... P>
Result<std::vector<BatchRecord>> batchesWhere(
    Database& database, const std::string& condition, const P&... values)
{
    auto batches = database.list(std::string(selectBatches) + " WHERE " + condition, readBatch, values...);
    if (!batches || batches->empty())
        return batches;
    const std::string ofThese = " WHERE batch_id IN (SELECT b.id FROM batch b WHERE " + condition + ")";
    auto parts
        = database.list(std::string(selectParts) + ofThese + " ORDER BY batch_id, part", readPart, values...);
    if (!parts)
        return tl::unexpected(parts.error());
    auto figures = database.list(std::string(selectFigures) + ofThese, readFigureOfBatch, values...);
    if (!figures)
        return tl::unexpected(figures.error());
    distribute(*batches, std::move(*parts), &BatchRecord::parts);
    distribute(*batches, std::move(*figures), &BatchRecord::figures);
    // The engines order texts differently.
    for (BatchRecord& batch : *batches)
        std::ranges::sort(batch.figures, {}, &BatchFigure::figure);
    std::ranges::sort(*batches, [](const BatchRecord& a, const BatchRecord& b) {
        return a.made != b.made ? a.made > b.made : a.id < b.id;
    });
    return batches;
}

Result<std::optional<BatchRecord>> onlyOne(Result<std::vector<BatchRecord>> batches)
{
    if (!batches)
        return tl::unexpected(batches.error());
    if (batches->empty())
        return std::nullopt;
    return std::optional(std::move(batches->front()));
}

Result<void> addPartsAndFigures(Database& database, const BatchRecord& batch)
{
    std::int64_t number = 0;
    for (const BatchPart& part : batch.parts) {
        const auto done = database.run(insertPart, batch.id, ++number, part.key, part.what, part.amount.milli,
            unitOf(part.amount.dimension), part.container, part.entry);
        if (!done)
            return tl::unexpected(done.error());
    }
    for (const BatchFigure& figure : batch.figures) {
        const auto done = database.run(
            insertFigure, batch.id, figure.figure, figure.low, figure.high, figure.text, figure.unit);
        if (!done)
            return tl::unexpected(done.error());
    }
    return {};
}

Result<void> appendNote(Database& database, const BatchNote& note)
{
    const auto degrees = note.temperature ? std::optional(note.temperature->value) : std::nullopt;
    const auto added = database.run(insertNote, note.recorded, note.id, note.batch, note.act,
        std::string(word(note.kind)), note.at, note.recorded, note.deltaMilli, degrees, note.weightMilli,
        note.place, note.job, note.reverses, note.note, note.who, note.device);
    if (!added)
        return tl::unexpected(added.error());
    if (*added == 1)
        return {};
    const auto there = database.first(std::string(selectNotes) + " WHERE id = ?", readNote, note.id);
    if (!there)
        return tl::unexpected(there.error());
    if (*there && **there == note)
        return {};
    return database.spoil({ ErrorCode::Conflict,
        "A note " + inQuotes(note.id.text)
            + " is written of a batch with other content; nothing was written, look at the batch and note it "
              "anew." });
}

constexpr std::string_view inOrder = " ORDER BY at_ms, recorded_ms, seq, id";

} // namespace

Result<void> Store::addBatch(const BatchRecord& batch)
{
    return m_database->write([&]() -> Result<void> {
        const auto taken = m_database->number("SELECT COUNT(*) FROM container WHERE label = ?", batch.label);
        if (!taken)
            return tl::unexpected(taken.error());
        if (*taken > 0)
            return m_database->spoil(
                { ErrorCode::Conflict, "A container carries that label code; use a fresh label." });
        const auto added
            = m_database->run(insertBatch, batch.id, batch.label, batch.recipe, batch.name, batch.made,
                batch.amount.milli, unitOf(batch.amount.dimension), batch.place, batch.who, batch.created);
        if (!added)
            return tl::unexpected(added.error());
        if (*added == 1)
            return addPartsAndFigures(*m_database, batch);
        const auto there = this->batch(batch.id);
        if (!there)
            return tl::unexpected(there.error());
        if (*there && same(**there, batch))
            return {};
        return m_database->spoil(
            { ErrorCode::Conflict, "Another batch has that id already; record the mix again." });
    });
}

Result<std::vector<BatchRecord>> Store::batches(Moment madeBy, Moment goneBy) const
{
    return batchesWhere(*m_database, std::string(madeUpTo), madeBy, std::min(goneBy, madeBy), madeBy);
}

Result<std::optional<BatchRecord>> Store::batch(const BatchId& id) const
{
    return onlyOne(batchesWhere(*m_database, "b.id = ?", id));
}

Result<std::optional<BatchRecord>> Store::batchByLabel(const std::string& label) const
{
    return onlyOne(batchesWhere(*m_database, "b.label = ?", label));
}

Result<void> Store::lockBatch(const BatchId& id)
{
    const auto taken = m_database->run("UPDATE batch SET rev = rev + 1 WHERE id = ?", id);
    if (!taken)
        return tl::unexpected(taken.error());
    if (*taken == 0)
        return fail(ErrorCode::NotFound, "That batch is not in the store; scan its label again.");
    return {};
}

Result<void> Store::appendNotes(const std::vector<BatchNote>& notes)
{
    return m_database->write([&]() -> Result<void> {
        for (const BatchNote& note : notes) {
            if (auto done = appendNote(*m_database, note); !done)
                return done;
        }
        return {};
    });
}

Result<std::optional<BatchNote>> Store::batchNote(const EntryId& id) const
{
    return m_database->first(std::string(selectNotes) + " WHERE id = ?", readNote, id);
}

Result<std::vector<BatchNote>> Store::batchNotesOfAct(const ActId& act) const
{
    return m_database->list(
        std::string(selectNotes) + " WHERE act_id = ?" + std::string(inOrder), readNote, act);
}

Result<std::vector<BatchNote>> Store::batchNotes(const BatchId& id, Moment upTo) const
{
    return m_database->list(
        std::string(selectNotes) + " WHERE batch_id = ? AND at_ms <= ?" + std::string(inOrder), readNote, id,
        upTo);
}

} // namespace gw
