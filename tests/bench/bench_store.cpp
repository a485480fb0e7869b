// How fast the store writes and reads, against the same work done through SQLite's own C API in the same run:
// durable acts of one entry each, and everything a shelf of 10,000 containers needs.
#include <sqlite3.h>

#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>

#include <QCoreApplication>
#include <QTemporaryDir>

#include "store/store.h"

using namespace gw;

namespace {

using Clock = std::chrono::steady_clock;

constexpr int rounds = 10, actsPerRound = 200;
constexpr int containers = 10'000, entriesEach = 5;
constexpr Moment start { std::chrono::sys_days { std::chrono::May / 4 / 2026 } };

double seconds(const std::function<void()>& work)
{
    const auto begin = Clock::now();
    work();
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

template <class T> void must(const Result<T>& done)
{
    if (done)
        return;
    std::fprintf(stderr, "%s\n", done.error().sentence.c_str());
    std::exit(1);
}

// Ids as long as the real ones.
std::string uuid(const char* kind, int n)
{
    char text[64];
    std::snprintf(text, sizeof text, "%08x-%.4s-4000-8000-%012x", static_cast<unsigned>(n) * 2654435761U,
        kind, static_cast<unsigned>(n));
    return text;
}

Entry entryOf(int container, int n)
{
    Entry entry;
    entry.id = { uuid("e000", n) };
    entry.act = { uuid("a000", n) };
    entry.container = ContainerId { uuid("c000", container) };
    entry.kind = n % entriesEach == 0 ? EntryKind::Arrived : EntryKind::Used;
    entry.deltaMilli = entry.kind == EntryKind::Arrived ? 500'000 : -1000;
    entry.at = entry.recorded = start + std::chrono::milliseconds(n);
    if (entry.kind == EntryKind::Arrived)
        entry.place = PlaceId { "place" };
    entry.device = "bench";
    return entry;
}

std::unique_ptr<Store> stocked(const std::string& file, int count)
{
    OpenOptions options;
    options.now = start;
    auto opened = Store::open({ file }, options);
    must(opened);
    Store& store = **opened;
    MaterialRecord material;
    material.id = { "material" };
    material.name = "White glue";
    must(store.saveMaterial(material));
    must(store.savePlace({ { "place" }, "Shelf", {}, {}, "" }));
    must(store.transact([&]() -> Result<void> {
        for (int i = 0; i < count; ++i) {
            ContainerRecord container;
            container.id = { uuid("c000", i) };
            container.label = "G" + std::to_string(i);
            container.material = material.id;
            container.lot = "L" + std::to_string(i / 20);
            container.made = Date { std::chrono::January / 31 / 2026 };
            container.capacity = grams(500);
            container.created = start;
            if (auto added = store.addContainer(container); !added)
                return added;
        }
        return {};
    }));
    return std::move(*opened);
}

class Raw {
public:
    explicit Raw(const std::string& file)
    {
        check(sqlite3_open(file.c_str(), &m_connection));
        for (const char* pragma :
            { "PRAGMA journal_mode = WAL", "PRAGMA synchronous = FULL", "PRAGMA foreign_keys = ON" })
            check(sqlite3_exec(m_connection, pragma, nullptr, nullptr, nullptr));
    }
    ~Raw()
    {
        for (sqlite3_stmt* statement : m_statements)
            sqlite3_finalize(statement);
        sqlite3_close(m_connection);
    }
    Raw(const Raw&) = delete;
    Raw& operator=(const Raw&) = delete;

    sqlite3_stmt* prepare(const char* sql)
    {
        sqlite3_stmt* statement = nullptr;
        check(sqlite3_prepare_v2(m_connection, sql, -1, &statement, nullptr));
        m_statements.push_back(statement);
        return statement;
    }
    void run(sqlite3_stmt* statement)
    {
        check(sqlite3_step(statement) == SQLITE_DONE ? SQLITE_OK : SQLITE_ERROR);
        check(sqlite3_reset(statement));
    }

private:
    void check(int code)
    {
        if (code == SQLITE_OK)
            return;
        std::fprintf(stderr, "%s\n", sqlite3_errmsg(m_connection));
        std::exit(1);
    }
    sqlite3* m_connection = nullptr;
    std::vector<sqlite3_stmt*> m_statements;
};

void compareWriting(const QTemporaryDir& folder)
{
    const auto store = stocked(folder.filePath(QStringLiteral("a")).toStdString(), 1);
    const std::string other = folder.filePath(QStringLiteral("b")).toStdString();
    stocked(other, 1);
    Raw raw(other);
    sqlite3_stmt* const begin = raw.prepare("BEGIN IMMEDIATE");
    sqlite3_stmt* const commit = raw.prepare("COMMIT");
    sqlite3_stmt* const insert = raw.prepare("INSERT INTO entry (seq, id, act_id, kind, container_id, at_ms, "
                                             "recorded_ms, delta_milli, place_id, job_id, "
                                             "other_id, lot_material_id, lot, passed, wood_failure, grainy, "
                                             "reverses, note, device) VALUES ((SELECT "
                                             "COALESCE(MAX(seq), 0) + 1 FROM entry WHERE recorded_ms = ?), "
                                             "?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) "
                                             "ON CONFLICT (id) DO NOTHING");
    double ours = 0, theirs = 0;
    int n = 0;
    for (int round = 0; round < rounds; ++round) {
        std::vector<Entry> entries;
        for (int i = 0; i < actsPerRound; ++i)
            entries.push_back(entryOf(0, n++));
        ours += seconds([&] {
            for (const Entry& entry : entries)
                must(store->append({ entry }));
        });
        theirs += seconds([&] {
            for (const Entry& entry : entries) {
                raw.run(begin);
                const auto text = [&](int at, const std::string& value) {
                    sqlite3_bind_text(
                        insert, at, value.data(), static_cast<int>(value.size()), SQLITE_STATIC);
                };
                const std::string kind(word(entry.kind));
                sqlite3_bind_int64(insert, 1, toMilliseconds(entry.recorded));
                text(2, entry.id.text);
                text(3, entry.act.text);
                text(4, kind);
                text(5, entry.container->text);
                sqlite3_bind_int64(insert, 6, toMilliseconds(entry.at));
                sqlite3_bind_int64(insert, 7, toMilliseconds(entry.recorded));
                sqlite3_bind_int64(insert, 8, entry.deltaMilli);
                if (entry.place)
                    text(9, entry.place->text);
                else
                    sqlite3_bind_null(insert, 9);
                text(13, "");
                sqlite3_bind_int64(insert, 16, 0);
                text(18, entry.note);
                text(19, entry.device);
                raw.run(insert);
                raw.run(commit);
            }
        });
    }
    std::printf("durable acts of one entry: store %.0f per second, bare SQLite %.0f per second, ratio %.2f\n",
        n / ours, n / theirs, ours / theirs);
}

void compareReading(const QTemporaryDir& folder)
{
    const std::string file = folder.filePath(QStringLiteral("c")).toStdString();
    const auto store = stocked(file, containers);
    std::vector<Entry> entries;
    for (int i = 0; i < containers * entriesEach; ++i)
        entries.push_back(entryOf(i / entriesEach, i));
    const double written = seconds([&] { must(store->append(entries)); });
    Raw raw(file);
    const std::array<sqlite3_stmt*, 2> selects {
        raw.prepare(
            "SELECT id, label, material_id, pack_id, lot, serial, made, printed, printed_is_use_by, "
            "found_undated, "
            "capacity_milli, dimension, vessel, parent_id, price_minor, currency, created_ms FROM container"),
        raw.prepare(
            "SELECT id, act_id, kind, container_id, at_ms, recorded_ms, delta_milli, place_id, job_id, "
            "other_id, "
            "lot_material_id, lot, passed, wood_failure, grainy, reverses, note, device FROM entry WHERE "
            "container_id "
            "IS NOT NULL AND at_ms <= 4102444800000 ORDER BY container_id, at_ms, recorded_ms, seq, id"),
    };
    double ours = 1e9, theirs = 1e9;
    std::size_t read = 0, bytes = 0;
    for (int round = 0; round < 7; ++round) {
        ours = std::min(ours, seconds([&] {
            const auto there = store->containers();
            must(there);
            const auto all = store->entriesUpTo(fromMilliseconds(4'102'444'800'000));
            must(all);
            read = there->size() + all->size();
        }));
        theirs = std::min(theirs, seconds([&] {
            for (sqlite3_stmt* select : selects) {
                while (sqlite3_step(select) == SQLITE_ROW) {
                    for (int column = 0; column < sqlite3_column_count(select); ++column) {
                        if (sqlite3_column_type(select, column) == SQLITE_TEXT)
                            bytes += sqlite3_column_text(select, column)[0];
                        else
                            bytes += static_cast<std::size_t>(sqlite3_column_int64(select, column));
                    }
                }
                sqlite3_reset(select);
            }
        }));
    }
    std::printf("%d entries in one act: %.0f ms\n", containers * entriesEach, written * 1000);
    std::printf("reading %zu rows: store %.0f ms, bare SQLite %.0f ms, ratio %.2f (check %zu)\n", read,
        ours * 1000, theirs * 1000, ours / theirs, bytes % 10);
}

} // namespace

int main(int argc, char* argv[])
{
    const QCoreApplication app(argc, argv);
    // On the disk that a shop's store would be on, not in memory: the working folder's.
    const QTemporaryDir folder(argc > 1
            ? QString::fromLocal8Bit(argv[1]) + QStringLiteral("/gluewright-bench-XXXXXX")
            : QStringLiteral("gluewright-bench-XXXXXX"));
    if (!folder.isValid()) {
        std::fprintf(stderr, "No folder can be made here for the stores; name one that may be written.\n");
        return 1;
    }
    compareWriting(folder);
    compareReading(folder);
    return 0;
}
