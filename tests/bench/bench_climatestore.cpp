// How fast the store keeps and loads the readings of a shop, against bare SELECTs of the same data through
// SQLite's own C API in the same run: of the rows as the store keeps them, and of one row for each reading.
// 10 places, 5 years, a reading every 10 minutes.
#include <sqlite3.h>

#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <functional>

#include <QCoreApplication>
#include <QFileInfo>
#include <QTemporaryDir>

#include "store/store.h"

using namespace gw;

namespace {

using Clock = std::chrono::steady_clock;

constexpr int placeCount = 10, rounds = 7;
constexpr int perPlace = 5 * 365 * 144;
constexpr std::size_t batch = 4096;
constexpr Moment start { std::chrono::sys_days { std::chrono::May / 4 / 2021 } };

double seconds(const std::function<void()>& work)
{
    const auto begin = Clock::now();
    work();
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

double best(const std::function<void()>& work)
{
    double least = seconds(work);
    for (int i = 1; i < rounds; ++i)
        least = std::min(least, seconds(work));
    return least;
}

template <class T> void must(const Result<T>& done)
{
    if (done)
        return;
    std::fprintf(stderr, "%s\n", done.error().sentence.c_str());
    std::exit(1);
}

PlaceId placeOf(int n) { return { "place-" + std::to_string(n) }; }

Reading readingOf(int place, int i)
{
    const double hours = i / 6.0;
    const double degrees = 12 + 11 * std::sin(hours / 8766 * 6.2832) + 5 * std::sin(hours / 24 * 6.2832)
        + 0.01 * ((i * 7919 + place * 104729) % 60);
    return { start + std::chrono::minutes { 10 * i }, Celsius { degrees }, {} };
}

std::unique_ptr<Store> opened(const std::string& file)
{
    OpenOptions options;
    options.now = start;
    auto store = Store::open({ file }, options);
    must(store);
    return std::move(*store);
}

void fill(Store& store)
{
    for (int place = 0; place < placeCount; ++place) {
        PlaceRecord record;
        record.id = placeOf(place);
        record.name = record.id.text;
        must(store.savePlace(record));
        must(store.transact([&]() -> Result<void> {
            std::vector<Reading> readings;
            for (int i = 0; i < perPlace; ++i) {
                readings.push_back(readingOf(place, i));
                if (readings.size() < batch && i + 1 < perPlace)
                    continue;
                if (auto added = store.addReadings(record.id, readings); !added)
                    return tl::unexpected(added.error());
                readings.clear();
            }
            return {};
        }));
    }
}

class Raw {
public:
    explicit Raw(const std::string& file) { check(sqlite3_open(file.c_str(), &m_connection)); }
    ~Raw() { sqlite3_close(m_connection); }
    Raw(const Raw&) = delete;
    Raw& operator=(const Raw&) = delete;

    void run(const char* sql) { check(sqlite3_exec(m_connection, sql, nullptr, nullptr, nullptr)); }
    void rows(const char* sql, const std::function<void(sqlite3_stmt*)>& row)
    {
        sqlite3_stmt* statement = nullptr;
        check(sqlite3_prepare_v2(m_connection, sql, -1, &statement, nullptr));
        while (sqlite3_step(statement) == SQLITE_ROW)
            row(statement);
        sqlite3_finalize(statement);
    }
    void insertAll()
    {
        run("CREATE TABLE reading (place INTEGER, second INTEGER, hundredths INTEGER, PRIMARY KEY (place, "
            "second)) WITHOUT ROWID; BEGIN");
        sqlite3_stmt* insert = nullptr;
        check(sqlite3_prepare_v2(m_connection, "INSERT INTO reading VALUES (?, ?, ?)", -1, &insert, nullptr));
        for (int place = 0; place < placeCount; ++place) {
            for (int i = 0; i < perPlace; ++i) {
                const Reading reading = readingOf(place, i);
                sqlite3_bind_int(insert, 1, place);
                sqlite3_bind_int64(insert, 2, toMilliseconds(reading.at) / 1000);
                sqlite3_bind_int64(insert, 3, std::lround(reading.temperature.value * 100));
                sqlite3_step(insert);
                sqlite3_reset(insert);
            }
        }
        sqlite3_finalize(insert);
        run("COMMIT");
    }

private:
    static void check(int code)
    {
        if (code == SQLITE_OK)
            return;
        std::fprintf(stderr, "SQLite says %d\n", code);
        std::exit(1);
    }
    sqlite3* m_connection = nullptr;
};

} // namespace

int main(int argc, char** argv)
{
    const QCoreApplication app(argc, argv);
    const QTemporaryDir folder;
    const std::string ours = folder.filePath(QStringLiteral("shop")).toStdString();
    const std::string plain = folder.filePath(QStringLiteral("plain")).toStdString();
    constexpr double count = static_cast<double>(placeCount) * perPlace;

    auto store = opened(ours);
    const double writing = seconds([&] { fill(*store); });
    Raw raw(plain);
    const double inserting = seconds([&] { raw.insertAll(); });
    std::printf("%.0f readings of %d places\n", count, placeCount);
    std::printf("kept by the store in %.2f s, %.0f a second; inserted bare, a row each, in %.2f s\n", writing,
        count / writing, inserting);
    std::printf("the store's file: %.1f MB; a row each: %.1f MB\n",
        static_cast<double>(QFileInfo(QString::fromStdString(ours)).size()) / 1e6,
        static_cast<double>(QFileInfo(QString::fromStdString(plain)).size()) / 1e6);

    std::size_t loaded = 0;
    const double loading = best([&] {
        loaded = 0;
        for (int place = 0; place < placeCount; ++place) {
            const auto trace = store->readings(placeOf(place));
            must(trace);
            loaded += trace->size();
        }
    });
    if (loaded != static_cast<std::size_t>(count))
        std::exit(1);

    Raw packed(ours);
    std::vector<char> bytes;
    const double asKept = best([&] {
        bytes.clear();
        packed.rows("SELECT place_id, month, packed FROM reading_month ORDER BY place_id, month",
            [&](sqlite3_stmt* row) {
                const auto* from = static_cast<const char*>(sqlite3_column_blob(row, 2));
                bytes.insert(bytes.end(), from, from + sqlite3_column_bytes(row, 2));
            });
    });
    std::vector<std::int64_t> times;
    std::vector<std::int16_t> degrees;
    const double aRowEach = best([&] {
        times.clear();
        degrees.clear();
        raw.rows("SELECT second, hundredths FROM reading ORDER BY place, second", [&](sqlite3_stmt* row) {
            times.push_back(sqlite3_column_int64(row, 0));
            degrees.push_back(static_cast<std::int16_t>(sqlite3_column_int(row, 1)));
        });
    });
    std::printf("loaded as traces: %.1f ms\n", loading * 1e3);
    std::printf("bare SELECT of the rows as kept (%.1f MB): %.1f ms; the store has %.2f of its speed\n",
        static_cast<double>(bytes.size()) / 1e6, asKept * 1e3, asKept / loading);
    std::printf("bare SELECT of a row each: %.1f ms; the store has %.1f times its speed\n", aRowEach * 1e3,
        aRowEach / loading);

    const double one = best([&] {
        static int i = perPlace;
        must(store->addReadings(placeOf(0), std::vector { readingOf(0, i++) }));
    });
    std::printf("one reading more: %.2f ms\n", one * 1e3);
    return 0;
}
