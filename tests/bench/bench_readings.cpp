// How fast a logger's file is read and how much memory that takes: 200 MB of rows in a local time with
// daylight saving, against libcsv alone over the same bytes in the same run.
#include <csv.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <string>

#include <QCoreApplication>
#include <QDateTime>
#include <QFile>
#include <QTemporaryDir>
#include <QTimeZone>

#include "exchange/readingsfile.h"

using namespace gw;

namespace {

constexpr std::int64_t fileBytes = 200'000'000;
constexpr Moment now { std::chrono::sys_days { std::chrono::November / 25 / 2026 } };

/// Seconds of the clock and of the processor, which differ where other programs want it too.
struct Spent {
    double clock = 0;
    double processor = 0;
};

class Timer {
public:
    Spent spent() const
    {
        return { std::chrono::duration<double>(std::chrono::steady_clock::now() - m_start).count(),
            double(std::clock() - m_processor) / CLOCKS_PER_SEC };
    }

private:
    std::chrono::steady_clock::time_point m_start = std::chrono::steady_clock::now();
    std::clock_t m_processor = std::clock();
};

/// A reading every half minute up to the present, as clocks in Berlin show them.
std::int64_t write(const QString& path)
{
    std::ofstream out(path.toStdString(), std::ios::binary);
    out << "time;temperature (C);humidity (%)\r\n";
    const QTimeZone zone("Europe/Berlin");
    const qint64 start = 1'577'836'800; // 2020-01-01, UTC
    qint64 offset = 0;
    std::int64_t rows = 0;
    for (; out.tellp() < fileBytes; ++rows) {
        const qint64 at = start + rows * 30;
        if (rows % 120 == 0)
            offset = zone.offsetFromUtc(QDateTime::fromSecsSinceEpoch(at));
        const std::chrono::sys_seconds wall { std::chrono::seconds(at + offset) };
        const auto day = std::chrono::floor<std::chrono::days>(wall);
        const Date date { day };
        const std::chrono::hh_mm_ss clock { wall - day };
        const auto tenths = int(rows / 100 % 200);
        char line[64];
        std::snprintf(line, sizeof line, "%04d-%02u-%02u %02d:%02d:%02d;%d,%d;%d,5\r\n", int(date.year()),
            unsigned(date.month()), unsigned(date.day()), int(clock.hours().count()),
            int(clock.minutes().count()), int(clock.seconds().count()), 10 + tenths / 10, tenths % 10,
            30 + tenths / 4);
        out << line;
    }
    return rows;
}

Spent bareSpent(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        std::exit(1);
    csv_parser parser;
    csv_init(&parser, 0);
    csv_set_delim(&parser, ';');
    std::size_t cells = 0;
    const Timer timer;
    for (QByteArray piece = file.read(256 * 1024); !piece.isEmpty(); piece = file.read(256 * 1024))
        csv_parse(
            &parser, piece.constData(), std::size_t(piece.size()),
            [](void*, std::size_t, void* count) { ++*static_cast<std::size_t*>(count); }, nullptr, &cells);
    csv_free(&parser);
    return timer.spent();
}

long peakKilobytes()
{
    std::ifstream status("/proc/self/status");
    std::string word;
    while (status >> word)
        if (word == "VmHWM:") {
            long value = 0;
            status >> value;
            return value;
        }
    return 0;
}

} // namespace

int main(int argc, char** argv)
{
    const QCoreApplication app(argc, argv);
    QTemporaryDir dir;
    const QString path = dir.filePath(QStringLiteral("readings.csv"));
    const std::int64_t written = write(path);
    const double megabytes = double(fileBytes) / 1e6;
    const Spent bare = bareSpent(path);
    const long before = peakKilobytes();

    const Timer lookTimer;
    ReadingsChoices choices;
    choices.zone = "Europe/Berlin";
    const auto look = lookAtReadings(path, now, choices);
    if (!look || unanswered(look->doubts, look->name)) {
        std::fprintf(stderr, "%s\n", look ? "a doubt" : look.error().sentence.c_str());
        return 1;
    }
    const Spent looking = lookTimer.spent();
    const Timer readTimer;
    int asked = 0;
    const auto read = readReadings(
        path, look->layout, now, [](std::span<const Reading>) -> Result<void> { return {}; },
        [&](std::int64_t, std::int64_t) { return ++asked > 0; });
    if (!read) {
        std::fprintf(stderr, "%s\n", read.error().sentence.c_str());
        return 1;
    }
    const Spent reading = readTimer.spent();
    std::printf("file                 %.0f MB, %lld rows\n", megabytes, static_cast<long long>(written));
    const auto line = [&](const char* what, Spent spent) {
        std::printf("%-20s %.2f s, %.0f MB/s; of the processor %.2f s, %.0f MB/s\n", what, spent.clock,
            megabytes / spent.clock, spent.processor, megabytes / spent.processor);
    };
    line("libcsv alone", bare);
    line("read", reading);
    std::printf("read / libcsv        %.2f times the processor's time\n", reading.processor / bare.processor);
    std::printf("look                 %.3f s of the processor, first 4 MB\n", looking.processor);
    std::printf("taken                %lld, set aside %lld, out of order %lld; asked for progress %d times\n",
        static_cast<long long>(read->taken), static_cast<long long>(read->setAside),
        static_cast<long long>(read->outOfOrder), asked);
    std::printf("peak memory (VmHWM)  %.1f MB, of them %.1f before\n", double(peakKilobytes()) / 1024,
        double(before) / 1024);
    return read->taken == written ? 0 : 1;
}
