// The verdicts of a whole shelf from five years of ten-minute readings in every place, with nothing kept from
// before, against one plain pass of std::exp over the same readings in the same run.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <memory>
#include <random>
#include <string>
#include <unistd.h>
#include <vector>

#include "ageing/clocks.h"
#include "ageing/standingverdicts.h"
#include "ageing/verdict.h"
#include "ageing/watched.h"

using namespace gw;
using namespace std::chrono_literals;

namespace {

constexpr int rounds = 5;
constexpr Moment start { std::chrono::sys_days { std::chrono::March / 1 / 2021 } };
constexpr int readingsEach = 5 * 365 * 144;
constexpr std::size_t roomForMore = 4464; // a month, as the store leaves it
constexpr Moment now = start + readingsEach * 10min;

/// Milliseconds of this program's own work: other programs on the machine do not count.
double once(const std::function<void()>& work)
{
    const auto spent = [] {
        timespec time {};
        clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
        return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) * 1e-6;
    };
    const double begin = spent();
    work();
    return spent() - begin;
}

double median(std::vector<double> times)
{
    std::nth_element(
        times.begin(), times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2), times.end());
    return times[times.size() / 2];
}

long residentKilobytes()
{
    long pages = 0;
    long resident = 0;
    if (std::FILE* file = std::fopen("/proc/self/statm", "r")) {
        if (std::fscanf(file, "%ld %ld", &pages, &resident) != 2)
            resident = 0;
        std::fclose(file);
    }
    return resident * (sysconf(_SC_PAGESIZE) / 1024);
}

PlaceId placeOf(int number)
{
    return PlaceId { "5f0c7a52-0000-4000-8000-00000000000" + std::to_string(number) };
}

/// Seasons, days and weather, a tenth of a degree apart; now and then the logger stands still for a day.
Trace readings(int number)
{
    std::mt19937 engine(static_cast<unsigned>(number));
    std::uniform_real_distribution<double> step(-0.15, 0.15);
    Trace trace;
    trace.reserve(readingsEach);
    double weather = 0;
    const double mean = 10 + number % 7;
    for (int i = 0; i < readingsEach; ++i) {
        const double day = i / 144.0;
        weather += step(engine) - weather / 400;
        const double temperature
            = mean + 8 * std::sin(day / 365 * 6.2831853) + 4 * std::sin(day * 6.2831853) + weather;
        if (i % 30'000 > 144)
            trace.append({ start + i * 10min, { std::round(temperature * 10) / 10 }, {} });
    }
    return trace;
}

std::map<PlaceId, WatchedPlace> watchedPlaces(int count)
{
    std::map<PlaceId, WatchedPlace> places;
    for (int i = 0; i < count; ++i)
        places.emplace(
            placeOf(i), WatchedPlace { readings(i), { Range<Celsius> { { -5 }, { 32 } }, {} }, {} });
    return places;
}

struct Stock {
    History history;
    std::shared_ptr<const LifeFigures> figures;
};

const std::array rates { Rate { { 20 }, 1.0, {}, false }, Rate { { 20 }, 1.5, {}, false },
    Rate { { 20 }, 2.0, {}, false }, Rate { { 20 }, 2.5, {}, false }, Rate { { 18 }, 3.0, {}, true },
    Rate { { 20 }, 1.0, 83.144, false } };

std::vector<Stock> shelf(int count, int places)
{
    std::mt19937 engine(1);
    const auto whole
        = [&engine](int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine); };
    std::vector<Stock> shelf;
    for (int i = 0; i < count; ++i) {
        Stock stock;
        const int age = whole(30, 1500);
        History& history = stock.history;
        history.arrived = later(now, Days { -1.0 * age - whole(0, 86'399) / 86'400.0 });
        history.made = dateOf(later(history.arrived, Days { -40 }));
        if (i % 3 == 0)
            history.printed = dateOf(later(now, Days { 1.0 * whole(-200, 600) }));
        if (i % 2 == 0)
            history.opened = later(history.arrived, Days { age * 0.3 });
        for (int stay = 0; stay < 4; ++stay)
            history.stays.push_back(
                { placeOf(whole(0, places - 1)), later(history.arrived, Days { age * 0.25 * stay }) });
        LifeFigures figures;
        figures.rate = rates[static_cast<std::size_t>(i) % rates.size()];
        figures.sealed = { Life::Kind::Ages, { Days { 400 }, Days { 1400 } } };
        figures.opened = { Life::Kind::Ages, { Days { 200 }, Days { 900 } } };
        if (i % 4 != 0)
            figures.keepBetween = Range<Celsius> { { 5 }, { i % 8 < 4 ? 25.0 : 30.0 } };
        figures.frost = i % 3 == 0 ? Frost::Harms : i % 3 == 1 ? Frost::Recoverable : Frost::Never;
        stock.figures = std::make_shared<const LifeFigures>(figures);
        shelf.push_back(std::move(stock));
    }
    return shelf;
}

std::array<int, 4> judgeAll(const std::vector<Stock>& shelf, const Climate& climate, Wording wording)
{
    std::array<int, 4> verdicts {};
    for (const Stock& stock : shelf)
        ++verdicts[static_cast<std::size_t>(
            judge(stock.history, *stock.figures, climate, now, wording).verdict)];
    return verdicts;
}

volatile double sink = 0;

/// The life used of each, and no reasons.
void clocksOfAll(const std::vector<Stock>& shelf, const Climate& climate)
{
    double sum = 0;
    for (const Stock& stock : shelf) {
        const AgeCase item(stock.history, *stock.figures, climate, now);
        sum += sealedClock(item).age.high.count() + openedClock(item).age.high.count();
    }
    sink = sum;
}

double plainPass(const std::map<PlaceId, WatchedPlace>& places)
{
    return once([&] {
        double sum = 0;
        for (const auto& [id, place] : places) {
            for (const std::int16_t value : place.readings.hundredths())
                sum += std::exp(0.0693 * (value * 0.01 - 20));
        }
        sink = sum;
    });
}

void measure(int placeCount, int containers)
{
    const auto places = watchedPlaces(placeCount);
    const auto stock = shelf(containers, placeCount);
    std::size_t count = 0;
    for (const auto& [id, place] : places)
        count += place.readings.size();

    std::vector<double> plain, index, totals, clocks, words, first, reading, use, hour, cold, oneAgain;
    std::array<int, 4> verdicts {};
    std::array<std::size_t, 4> judged {};
    long kept = 0;
    for (int round = 0; round < rounds; ++round) {
        plain.push_back(plainPass(places));
        auto copy = places;
        for (auto& [id, place] : copy)
            place.readings.reserve(readingsEach + roomForMore);
        const long before = residentKilobytes();
        std::optional<WatchedClimate> climate;
        index.push_back(
            once([&] { climate.emplace(std::move(copy), std::vector<Rate>(rates.begin(), rates.end())); }));
        totals.push_back(once([&] {
            for (const auto& [id, place] : places) {
                for (const Rate& rate : rates)
                    sink = climate->exposure(id, start, now, rate).equivalent.high.count();
            }
        }));
        clocks.push_back(once([&] { clocksOfAll(stock, *climate); }));
        StandingVerdicts standing;
        for (std::size_t i = 0; i < stock.size(); ++i)
            standing.put(i, stock[i].history, stock[i].figures);
        // With nothing kept of the contents' cold spells, which judging with words would have left.
        first.push_back(once([&] { standing.asOf(*climate, now); }));
        kept = std::max(kept, residentKilobytes() - before);
        words.push_back(once([&] { verdicts = judgeAll(stock, *climate, Wording::Full); }));

        reading.push_back(once([&] {
            climate->append(placeOf(0), { now, { 18 }, {} });
            standing.asOf(*climate, now + 1min);
        }));
        judged[0] = standing.judgedLast();
        use.push_back(once([&] {
            History used = stock[0].history;
            used.opened = now;
            standing.put(0, std::move(used), stock[0].figures);
            standing.asOf(*climate, now + 2min);
        }));
        judged[1] = standing.judgedLast();
        hour.push_back(once([&] { standing.asOf(*climate, now + 1h); }));
        judged[2] = standing.judgedLast();
        cold.push_back(once([&] {
            climate->append(placeOf(0), { now + 1h, { -3 }, {} });
            standing.asOf(*climate, now + 1h);
        }));
        judged[3] = standing.judgedLast();
        oneAgain.push_back(once([&] {
            sink = static_cast<double>(
                judge(stock[0].history, *stock[0].figures, *climate, now + 1min).verdict);
        }));
    }
    const double lives = median(index) + median(totals) + median(clocks);
    const double all = median(index) + median(totals) + median(first);
    std::printf("%d places, %zu readings, %d containers: one pass of std::exp %.1f ms\n", placeCount, count,
        containers, median(plain));
    std::printf(
        "  first answer: gaps and extremes %.1f, totals of 5 rates %.1f, every verdict %.1f: %.1f ms, "
        "RATIO %.2f (with reasons in words %.1f ms more; the clocks alone, %.1f ms, ratio %.2f)\n",
        median(index), median(totals), median(first), all, all / median(plain), median(words) - median(first),
        median(clocks), lives / median(plain));
    const auto again = [&](const char* what, double time, std::size_t howMany) {
        std::printf(
            "  again after %s: %.3f ms, RATIO 1/%.0f, %zu judged anew\n", what, time, all / time, howMany);
    };
    again("one reading", median(reading), judged[0]);
    again("one use", median(use), judged[1]);
    again("an hour", median(hour), judged[2]);
    again("one reading of frost", median(cold), judged[3]);
    std::printf("  one container with its reasons: %.4f ms; kept besides the readings %ld kB; good %d, test "
                "first %d, not known %d, do not use %d\n",
        median(oneAgain), kept, verdicts[0], verdicts[1], verdicts[2], verdicts[3]);
    std::printf("  a container %.2f us, a thousand readings %.2f us\n", 1e3 * median(first) / containers,
        1e6 * (median(index) + median(totals)) / static_cast<double>(count));
}

} // namespace

/// Without arguments all; else only that many places and containers.
int main(int argc, char** argv)
{
    std::setvbuf(stdout, nullptr, _IOLBF, BUFSIZ);
    if (argc == 3) {
        measure(std::atoi(argv[1]), std::atoi(argv[2]));
        return 0;
    }
    measure(10, 10'000);
    measure(1, 10'000);
    measure(20, 10'000);
    measure(10, 1'000);
    measure(10, 100'000);
    return 0;
}
