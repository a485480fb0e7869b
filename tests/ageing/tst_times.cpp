#include <algorithm>
#include <random>

#include <QtTest>

#include "ageing/times.h"
#include "ageing/trace.h"

using namespace gw;

// Times as they are kept, against the plain row of them.
class TestTimes : public QObject {
    Q_OBJECT

private:
    static std::size_t plainCount(const std::vector<std::int64_t>& row, std::int64_t second)
    {
        return static_cast<std::size_t>(std::upper_bound(row.begin(), row.end(), second) - row.begin());
    }

    /// Even and uneven stretches of any length, some added one by one and some at once.
    static std::vector<std::int64_t> grown(unsigned seed, Times& times)
    {
        std::mt19937 engine(seed);
        const auto whole
            = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine); };
        std::vector<std::int64_t> row;
        std::int64_t next = 1'600'000'000 + whole(0, 1000);
        for (int part = whole(1, 12); part > 0; --part) {
            const int count = whole(1, 90);
            const bool even = whole(0, 2) > 0;
            const int step = whole(1, 3) * 600;
            if (even && whole(0, 1) == 1) {
                if (!times.appendEven(next, step, static_cast<std::size_t>(count)))
                    return {};
                for (int i = 0; i < count; ++i, next += step)
                    row.push_back(next);
            } else {
                for (int i = 0; i < count; ++i, next += even ? step : whole(1, 2000)) {
                    if (!times.append(next))
                        return {};
                    row.push_back(next);
                }
            }
            if (whole(0, 1) == 1)
                next += whole(1, 100'000);
        }
        return row;
    }

private Q_SLOTS:
    void anyRow_isFoundAsItWasAdded()
    {
        for (unsigned seed = 0; seed < 400; ++seed) {
            Times times;
            const auto row = grown(seed, times);
            QVERIFY(!row.empty());
            QCOMPARE(times.size(), row.size());
            QCOMPARE(times.front(), row.front());
            QCOMPARE(times.back(), row.back());
            std::vector<std::int64_t> copied(row.size());
            times.copy(0, row.size(), copied.data());
            QCOMPARE(copied, row);
            for (std::size_t i = 0; i < row.size(); ++i) {
                QCOMPARE(times[i], row[i]);
                for (const std::int64_t second : { row[i] - 1, row[i], row[i] + 1 }) {
                    QCOMPARE(times.countUpTo(second), plainCount(row, second));
                    const Times::Spot spot = times.spotUpTo(second);
                    const std::size_t at = std::max<std::size_t>(plainCount(row, second), 1) - 1;
                    QCOMPARE(spot.index, at);
                    QCOMPARE(spot.second, row[at]);
                    QCOMPARE(spot.step, at + 1 < row.size() ? row[at + 1] - row[at] : 0);
                }
            }
        }
    }

    void steps_areAllSeenOnce()
    {
        for (unsigned seed = 0; seed < 200; ++seed) {
            Times times;
            const auto row = grown(seed, times);
            const std::size_t from = seed % row.size();
            std::vector<std::int64_t> seen { row[from] };
            times.eachStep(from, [&](std::size_t index, std::int64_t step, std::size_t steps) {
                QCOMPARE(index, from + seen.size() - 1);
                for (; steps > 0; --steps)
                    seen.push_back(seen.back() + step);
            });
            QVERIFY(std::equal(
                seen.begin(), seen.end(), row.begin() + static_cast<std::ptrdiff_t>(from), row.end()));
        }
    }

    void evenStep_isTrueWhereItIsGiven()
    {
        for (unsigned seed = 0; seed < 200; ++seed) {
            Times times;
            const auto row = grown(seed, times);
            for (std::size_t from = 0; from + 8 < row.size(); ++from) {
                const std::int64_t step = times.evenStep(from, from + 8);
                for (std::size_t i = from; step > 0 && i < from + 8; ++i)
                    QCOMPARE(row[i + 1] - row[i], step);
            }
        }
        Times logger;
        QVERIFY(logger.appendEven(0, 600, 1000));
        QCOMPARE(logger.evenStep(3, 900), 600);
    }

    void earlierTimes_areRefused()
    {
        Times times;
        QVERIFY(times.append(100));
        QVERIFY(!times.append(100));
        QVERIFY(!times.appendEven(100, 10, 50));
        QVERIFY(times.appendEven(101, 10, 50));
        QVERIFY(!times.append(101 + 490));
        QCOMPARE(times.size(), 51u);
    }

    void columns_areTheReadingsOneByOne()
    {
        std::mt19937 engine(7);
        const auto whole
            = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine); };
        for (int round = 0; round < 100; ++round) {
            Trace one;
            Trace columns;
            std::int64_t next = 1'600'000'000;
            for (int part = 0; part < 6; ++part, next += whole(1, 50'000)) {
                const int count = whole(1, 80);
                const int step = whole(0, 1) * whole(1, 9000);
                const bool humid = whole(0, 1) == 1;
                std::vector<std::int64_t> seconds;
                std::vector<std::int16_t> hundredths;
                std::vector<std::uint8_t> halfPercents;
                for (int i = 0; i < count; ++i, next += step > 0 ? step : whole(1, 9000)) {
                    seconds.push_back(next);
                    hundredths.push_back(static_cast<std::int16_t>(whole(-2000, 4000)));
                    if (humid)
                        halfPercents.push_back(static_cast<std::uint8_t>(whole(0, 200)));
                    QVERIFY(one.append(
                        { Moment { std::chrono::seconds { next } }, Celsius { hundredths.back() / 100.0 },
                            humid ? std::optional(halfPercents.back() / 2.0) : std::nullopt }));
                }
                QVERIFY(step > 0 ? columns.append(seconds.front(), step, hundredths, halfPercents)
                                 : columns.append(seconds, hundredths, halfPercents));
            }
            QCOMPARE(columns.size(), one.size());
            QCOMPARE(columns.longestWatched(), one.longestWatched());
            QCOMPARE(columns.usualInterval(), one.usualInterval());
            for (std::size_t i = 0; i < one.size(); ++i) {
                QCOMPARE(columns.at(i), one.at(i));
                QCOMPARE(columns.temperature(i).value, one.temperature(i).value);
                QCOMPARE(columns.humidity(i), one.humidity(i));
            }
        }
    }

    void columnsThatDoNotFit_addNothing()
    {
        Trace trace;
        const std::vector<std::int16_t> two { 100, 200 };
        QVERIFY(trace.append(1000, 600, two, {}));
        QVERIFY(!trace.append(1600, 600, two, {}));
        QVERIFY(!trace.append(9000, 0, two, {}));
        QVERIFY(!trace.append(9000, 600, two, std::vector<std::uint8_t> { 1 }));
        QVERIFY(!trace.append(std::vector<std::int64_t> { 9000, 9000 }, two, {}));
        QVERIFY(!trace.append(std::vector<std::int64_t> { 9000 }, two, {}));
        QCOMPARE(trace.size(), 2u);
    }
};

QTEST_APPLESS_MAIN(TestTimes)
#include "tst_times.moc"
