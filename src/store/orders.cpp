#include "store/rows.h"

// Order lists, what became of them, and work planned with a date.
namespace gw {

namespace {

constexpr std::array eventWords { std::string_view("counted"), std::string_view("ordered"),
    std::string_view("recalled"), std::string_view("closed") };
constexpr std::array stateWords { std::string_view("open"), std::string_view("done"),
    std::string_view("dropped") };

template <class Kind, class Words> Kind kindOf(const Words& words, const std::string& word, Kind otherwise)
{
    const auto found = std::ranges::find(words, word);
    return found == words.end() ? otherwise : static_cast<Kind>(found - words.begin());
}

Result<void> plain(const Result<std::int64_t>& done)
{
    return done ? Result<void> {} : tl::unexpected(done.error());
}

constexpr std::string_view insertLine = R"(
    INSERT INTO order_line (id, list_id, seq, material_id, pack_id, pack_name, supplier, pieces, amount_milli, need_milli,
        usable_milli, dimension, price_minor, currency, lead_days, why)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?))";

std::pair<std::string, OrderLineRecord> readLine(Row& row)
{
    std::string list = row.text();
    OrderLineRecord line;
    line.id = row.id<OrderLineId>();
    line.material = row.id<MaterialId>();
    line.pack = row.id<PackId>();
    line.packName = row.text();
    line.supplier = row.text();
    line.pieces = static_cast<int>(row.integer());
    line.amount.milli = row.integer();
    line.need.milli = row.integer();
    line.usable.milli = row.integer();
    line.amount.dimension = line.need.dimension = line.usable.dimension = dimensionIn(row);
    line.price = moneyIn(row);
    line.leadDays = row.realOrNone().value_or(0);
    line.why = row.text();
    return { std::move(list), std::move(line) };
}

constexpr std::string_view insertEvent = R"(
    INSERT INTO order_event (id, line_id, kind, pieces, at_ms, recorded_ms, seq, device)
    VALUES (?, ?, ?, ?, ?, ?, (SELECT COALESCE(MAX(seq), 0) + 1 FROM order_event WHERE recorded_ms = ?), ?)
    ON CONFLICT (id) DO NOTHING)";

OrderEventRecord readEvent(Row& row)
{
    OrderEventRecord event;
    event.id = row.id<OrderEventId>();
    event.line = row.id<OrderLineId>();
    event.kind = kindOf(eventWords, row.text(), OrderEventKind::Ordered);
    if (const auto pieces = row.integerOrNone())
        event.pieces = static_cast<int>(*pieces);
    event.at = row.moment();
    event.recorded = row.moment();
    event.device = row.text();
    return event;
}

constexpr std::string_view upsertPlanned = R"(
    INSERT INTO planned_job (id, job_type_id, day, pieces, piece, state, changed_ms) VALUES (?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO UPDATE SET job_type_id = excluded.job_type_id, day = excluded.day, pieces = excluded.pieces,
        piece = excluded.piece, state = excluded.state, changed_ms = excluded.changed_ms)";

} // namespace

std::string_view word(OrderEventKind kind) { return eventWords.at(static_cast<std::size_t>(kind)); }
std::string_view word(PlannedState state) { return stateWords.at(static_cast<std::size_t>(state)); }

Result<void> Store::addOrderList(const OrderListRecord& list, const std::string& device)
{
    return m_database->write([&]() -> Result<void> {
        auto done = m_database->run(
            "INSERT INTO order_list (id, month, made_ms, service_percent, device) VALUES (?, ?, ?, ?, ?)",
            list.id, list.month, list.made, list.servicePercent, device);
        std::int64_t seq = 0;
        for (const OrderLineRecord& line : list.lines) {
            if (!done)
                break;
            done = m_database->run(insertLine, line.id, list.id, ++seq, line.material, line.pack,
                line.packName, line.supplier, std::int64_t { line.pieces }, line.amount.milli,
                line.need.milli, line.usable.milli, unitOf(line.amount.dimension), minorOf(line.price),
                currencyOf(line.price), line.leadDays, line.why);
        }
        return plain(done);
    });
}

Result<std::vector<OrderListRecord>> Store::orderLists() const
{
    std::vector<OrderListRecord> out;
    const auto read = readTogether([&]() -> Result<void> {
        auto lists = m_database->list(
            "SELECT id, month, made_ms, service_percent FROM order_list ORDER BY made_ms DESC, id",
            [](Row& row) {
                OrderListRecord list;
                list.id = row.id<OrderListId>();
                list.month = row.dateOrNone().value_or(Date {});
                list.made = row.moment();
                list.servicePercent = row.realOrNone().value_or(0);
                return list;
            });
        if (!lists)
            return tl::unexpected(lists.error());
        auto lines = m_database->list("SELECT list_id, id, material_id, pack_id, pack_name, supplier, "
                                      "pieces, amount_milli, need_milli, "
                                      "usable_milli, dimension, price_minor, currency, lead_days, why FROM "
                                      "order_line ORDER BY list_id, seq",
            readLine);
        if (!lines)
            return tl::unexpected(lines.error());
        out = std::move(*lists);
        distribute(out, std::move(*lines), &OrderListRecord::lines);
        return {};
    });
    if (!read)
        return tl::unexpected(read.error());
    return out;
}

Result<void> Store::appendOrderEvents(const std::vector<OrderEventRecord>& events)
{
    return m_database->write([&]() -> Result<void> {
        for (const OrderEventRecord& event : events) {
            const std::optional<std::int64_t> pieces
                = event.pieces ? std::optional<std::int64_t>(*event.pieces) : std::nullopt;
            const auto done
                = m_database->run(insertEvent, event.id, event.line, std::string(word(event.kind)), pieces,
                    event.at, event.recorded, event.recorded, event.device);
            if (!done)
                return tl::unexpected(done.error());
        }
        return {};
    });
}

Result<std::vector<OrderEventRecord>> Store::orderEvents() const
{
    return m_database->list("SELECT id, line_id, kind, pieces, at_ms, recorded_ms, device FROM order_event "
                            "ORDER BY recorded_ms, seq, id",
        readEvent);
}

Result<void> Store::savePlannedJob(const PlannedJobRecord& job, Moment now)
{
    return plain(m_database->run(upsertPlanned, job.id, job.type, job.day, std::int64_t { job.pieces },
        job.piece, std::string(word(job.state)), now));
}

Result<std::vector<PlannedJobRecord>> Store::plannedJobs() const
{
    return m_database->list(
        "SELECT id, job_type_id, day, pieces, piece, state FROM planned_job ORDER BY day, id", [](Row& row) {
            PlannedJobRecord job;
            job.id = row.id<PlannedJobId>();
            job.type = row.id<JobTypeId>();
            job.day = row.dateOrNone().value_or(Date {});
            job.pieces = static_cast<int>(row.integer());
            job.piece = row.text();
            job.state = kindOf(stateWords, row.text(), PlannedState::Open);
            return job;
        });
}

} // namespace gw
