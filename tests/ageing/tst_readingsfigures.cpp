#include <QTest>

#include <algorithm>
#include <cmath>
#include <random>

#include "ageing/readingsfigures.h"
#include "ageing/stock.h"

using namespace gw;
using namespace gw::test;
using namespace std::chrono_literals;

namespace {

const Moment start = at("2026-01-05");

bool near(double found, double expected)
{
    return std::abs(found - expected) <= 1e-9 * (1 + std::abs(expected));
}

std::vector<Reading> hourly(const std::vector<double>& temperatures)
{
    std::vector<Reading> readings;
    for (std::size_t i = 0; i < temperatures.size(); ++i)
        readings.push_back({ start + static_cast<int>(i) * 1h, { temperatures[i] }, {} });
    return readings;
}

ReadingsFigures figures(std::vector<Reading> readings, const ReadingsQuestion& question = {})
{
    return *figuresOf(std::move(readings), question);
}

} // namespace

class TestReadingsFigures : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void plainFigures_areOfAllReadings()
    {
        const auto f = figures(hourly({ 4, 10, -3.25, 7 }));
        QCOMPARE(f.count, 4u);
        QCOMPARE(f.from, start);
        QCOMPARE(f.to, start + 3h);
        QCOMPARE(f.low.value, -3.25);
        QCOMPARE(f.high.value, 10.0);
        QVERIFY(near(f.mean.value, 17.75 / 4)); // an even series: the plain mean
        QVERIFY(!f.equivalent && !f.lifeUsed);
    }

    void order_doesNotMatter_andTheFirstOfTwoAtOnceCounts()
    {
        auto readings = hourly({ 4, 10, -3, 7, 1, 12 });
        ReadingsQuestion question;
        question.rate = Rate { { 20 }, 2, {}, false };
        const auto straight = figures(readings, question);
        std::shuffle(readings.begin(), readings.end(), std::mt19937(3));
        readings.push_back({ start + 2h, { 99 }, {} });
        const auto shuffled = figures(readings, question);
        QCOMPARE(shuffled.count, 6u);
        QCOMPARE(shuffled.high.value, 12.0);
        QCOMPARE(*shuffled.equivalent, *straight.equivalent);
        QCOMPARE(shuffled.kinetic.value, straight.kinetic.value);
    }

    void cold_isCreditedHere()
    {
        ReadingsQuestion question;
        question.rate = Rate { { 20 }, 2, {}, false };
        question.life = Days { 2 };
        const auto f = figures(hourly(std::vector<double>(25, 10.0)), question);
        QVERIFY(near(f.equivalent->count(), 0.5));
        QVERIFY(near(*f.lifeUsed, 0.25));
    }

    void below_isExactOnLinearPieces()
    {
        ReadingsQuestion question;
        question.freeze = { -1 };
        const auto below = [&](const std::vector<double>& temperatures) {
            return figures(hourly(temperatures), question).below.count() * 24;
        };
        QVERIFY(near(below({ 1, -3 }), 0.5));
        QVERIFY(near(below({ 1, -3, 1 }), 1));
        QVERIFY(near(below({ -3, -2, -4 }), 2));
        QVERIFY(near(below({ 0, 3, -1 }), 0)); // touches it only
        QVERIFY(near(below({ -5, 3 }), 0.5));
    }

    void freezesAndThaws_needTheWholeSwing()
    {
        const auto marks = [](const std::vector<double>& temperatures) {
            const auto f = figures(hourly(temperatures));
            return std::pair { f.freezes(), f.thaws() };
        };
        using Counts = std::pair<std::size_t, std::size_t>;
        QVERIFY(marks({ 5, 0, -0.9, 3 }) == Counts(0, 0));
        QVERIFY(marks({ 5, -1, 0.9, -1, 0.5 }) == Counts(1, 0)); // still frozen
        QVERIFY(marks({ -2, 1, -1, 1 }) == Counts(2, 2));
        const auto f = figures(hourly({ 5, -2, 3 }));
        QVERIFY(f.marks[0].frozen && f.marks[0].at == start + 1h && f.marks[0].temperature.value == -2);
        QVERIFY(!f.marks[1].frozen && f.marks[1].at == start + 2h);
    }

    void gap_isInNoneOfTheTimes()
    {
        auto readings = hourly(std::vector<double>(13, -5.0));
        for (int i = 0; i <= 12; ++i)
            readings.push_back({ start + 36h + i * 1h, { -5 }, {} });
        ReadingsQuestion question;
        question.rate = Rate { { -5 }, 2, {}, false };
        const auto f = figures(readings, question);
        QVERIFY(near(f.unwatched.count(), 1));
        QVERIFY(near(f.below.count(), 1));
        QVERIFY(near(f.equivalent->count(), 1));
        QVERIFY(near(f.mean.value, -5));
    }

    void weights_areHalfTheStepsBeside()
    {
        // Steps of 1 h and 3 h: weights 1, 2, 3 with the ends mirrored.
        const auto f
            = figures({ { start, { 10 }, {} }, { start + 1h, { 20 }, {} }, { start + 4h, { 30 }, {} } });
        QVERIFY(near(f.mean.value, (10 * 1 + 20 * 2 + 30 * 3) / 6.0));
        // A lone reading between two gaps weighs a usual step; it does not swallow the mean.
        auto readings = hourly({ 10, 10, 10 });
        readings.push_back({ start + 50h, { 40 }, {} });
        readings.push_back({ start + 99h, { 10 }, {} });
        readings.push_back({ start + 100h, { 10 }, {} });
        QVERIFY(near(figures(readings).mean.value, 10 + 30.0 / 6));
    }

    void oneReading_isItself()
    {
        const auto f = figures(hourly({ 18.5 }));
        QVERIFY(near(f.mean.value, 18.5) && near(f.kinetic.value, 18.5));
        QCOMPARE(f.unwatched.count(), 0.0);
        QCOMPARE(f.from, f.to);
    }

    void kineticMean_neverFallsBelowTheMean_norMovesByItself()
    {
        std::mt19937 engine(5);
        std::uniform_real_distribution<double> temperature(-20, 50);
        for (int i = 0; i < 200; ++i) {
            KineticMean mean;
            for (int n = 0; n < 30; ++n)
                mean.add({ temperature(engine) }, 1);
            QVERIFY(mean.kinetic() >= mean.mean());
            const double before = mean.kinetic().value;
            mean.add({ before }, 7); // one more reading of just that changes nothing
            QVERIFY(near(mean.kinetic().value, before));
        }
    }

    void days_areHalfAtLowAndHalfAtHigh()
    {
        ReadingsQuestion question;
        question.rate = Rate { { 20 }, 2, {}, false };
        question.life = Days { 10 };
        const auto f = *figuresOf(std::vector<DayReading> { { on("2026-01-07"), { 10 }, { 30 } },
                                      { on("2026-01-05"), { -4 }, { 20 } } },
            question);
        QCOMPARE(f.count, 2u);
        QCOMPARE(f.from, at("2026-01-05"));
        QCOMPARE(dateOf(f.to), on("2026-01-07"));
        QVERIFY(near(f.mean.value, 14));
        QVERIFY(near(f.equivalent->count(), 0.5 * (0.5 + 2 + std::pow(2, -2.4) + 1)));
        QVERIFY(near(*f.lifeUsed, f.equivalent->count() / 10));
        QVERIFY(near(f.below.count(), 0.5));
        QVERIFY(near(f.unwatched.count(), 1)); // the sixth is missing
        QCOMPARE(f.freezes(), 1u);
        QCOMPARE(f.thaws(), 1u);
    }

    void badQuestion_isASentence()
    {
        QVERIFY(!figuresOf(std::vector<Reading> {}, {}));
        QVERIFY(!figuresOf(std::vector<DayReading> {}, {}));
        ReadingsQuestion question;
        question.life = Days { 0 };
        QCOMPARE(figuresOf(hourly({ 1, 2 }), question).error().code, ErrorCode::BadInput);
        question = {};
        question.thaw = { -2 };
        QVERIFY(figuresOf(hourly({ 1, 2 }), question).error().sentence.find("thawing") != std::string::npos);
    }
};

QTEST_APPLESS_MAIN(TestReadingsFigures)
#include "tst_readingsfigures.moc"
