// The shelf of 10,000 containers, with every verdict and its reasons, against a bare SELECT of the same rows
// through SQLite's own C API in the same run.
#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <vector>

#include <QCoreApplication>
#include <QTemporaryDir>

#include "shop/arrival.h"
#include "shop/setup.h"
#include "shop/shelf.h"

using namespace gw;

namespace {

constexpr int containers = 10'000, atOnce = 200, usesEach = 4, rounds = 7;
constexpr Moment start { std::chrono::sys_days { std::chrono::May / 4 / 2026 } };

double seconds(const std::function<void()>& work)
{
    using Clock = std::chrono::steady_clock;
    std::vector<double> times;
    for (int i = 0; i < rounds; ++i) {
        const auto begin = Clock::now();
        work();
        times.push_back(std::chrono::duration<double>(Clock::now() - begin).count());
    }
    std::nth_element(times.begin(), times.begin() + rounds / 2, times.end());
    return times.at(rounds / 2);
}

template <class T> T must(Result<T> result)
{
    if (!result) {
        std::fprintf(stderr, "%s\n", result.error().sentence.c_str());
        std::exit(1);
    }
    if constexpr (!std::is_void_v<T>)
        return std::move(*result);
}

std::unique_ptr<Shop> stocked(const std::string& file)
{
    OpenOptions options;
    options.now = start;
    auto shop = must(Shop::open({ file }, options));
    must(savePlaceNamed(*shop, "Bench", Range<Celsius> { Celsius { 15 }, Celsius { 26 } }));
    const char* classes[]
        = { "pva_white", "hide_granules_192", "liquid_hide_glue", "epoxy_resin", "shellac_flakes_waxy" };
    std::vector<Entry> uses;
    int number = 0;
    for (int i = 0; i < containers / atOnce; ++i) {
        ArrivalDraft draft;
        draft.newName = std::string("Material ") + std::to_string(i);
        draft.newClass = ClassId { classes[i % 5] };
        draft.amount = grams(500);
        draft.count = atOnce;
        draft.place = "Bench";
        draft.lot = "L" + std::to_string(i);
        draft.made = dateOf(later(start, Days { -10.0 - 9 * i }));
        const ActDone done = must(bookIn(*shop, draft, { start, start }));
        for (const ContainerId& container : done.containers) {
            for (int n = 0; n < usesEach; ++n) {
                Entry entry;
                entry.id = EntryId { "use-" + std::to_string(++number) };
                entry.act = ActId { "act-" + std::to_string(number) };
                entry.kind = n == 0 ? EntryKind::Opened : EntryKind::Used;
                entry.container = container;
                entry.at = entry.recorded = later(start, Days { 1.0 + n });
                entry.deltaMilli = n == 0 ? 0 : -20'000;
                uses.push_back(std::move(entry));
            }
        }
    }
    must(shop->store().transact([&] { return shop->store().append(uses); }));
    return shop;
}

void readBare(const std::string& file)
{
    sqlite3* connection = nullptr;
    if (sqlite3_open(file.c_str(), &connection) != SQLITE_OK)
        std::exit(1);
    long long bytes = 0;
    for (const char* sql :
        { "SELECT * FROM container", "SELECT * FROM entry ORDER BY container_id, at_ms, recorded_ms" }) {
        sqlite3_stmt* statement = nullptr;
        sqlite3_prepare_v2(connection, sql, -1, &statement, nullptr);
        while (sqlite3_step(statement) == SQLITE_ROW) {
            for (int column = 0; column < sqlite3_column_count(statement); ++column) {
                if (sqlite3_column_text(statement, column))
                    bytes += sqlite3_column_bytes(statement, column);
            }
        }
        sqlite3_finalize(statement);
    }
    sqlite3_close(connection);
    if (bytes == 0)
        std::exit(1);
}

} // namespace

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv);
    const QTemporaryDir folder;
    const std::string file = folder.filePath(QStringLiteral("shop.gluewright")).toStdString();
    const auto shop = stocked(file);

    const double bare = seconds([&] { readBare(file); });
    std::size_t shown = 0;
    const double whole = seconds([&] { shown = must(shelf(*shop, { later(start, Days { 200 }) })).size(); });
    std::printf(
        "shelf of %zu containers, %d entries: %.0f ms; bare SELECT of the same rows: %.0f ms; ratio %.2f\n",
        shown, containers * (usesEach + 1), whole * 1e3, bare * 1e3, whole / bare);
    return 0;
}
