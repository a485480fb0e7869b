#include <QtTest>

#include "ageing/trace.h"

using namespace gw;
using namespace std::chrono_literals;

namespace {
constexpr Moment start { std::chrono::sys_days { std::chrono::January / 10 / 2026 } };
} // namespace

class TestTrace : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void readings_comeInTimeOrderAndOnce()
    {
        const Trace trace({ { start + 20min, Celsius { 4 }, {} }, { start, Celsius { 2 }, 55.5 },
            { start + 20min, Celsius { 9 }, {} }, { start + 10min, Celsius { -3.25 }, {} } });
        QCOMPARE(trace.size(), 3u);
        QCOMPARE(trace.temperature(1).value, -3.25);
        QCOMPARE(trace.temperature(2).value, 4.0);
        QCOMPARE(trace.humidity(0), std::optional(55.5));
        QCOMPARE(trace.humidity(2), std::optional<double>());
    }

    void append_takesOnlyWhatIsLater()
    {
        Trace trace;
        QVERIFY(trace.append({ start, Celsius { 1 }, {} }));
        QVERIFY(!trace.append({ start, Celsius { 2 }, {} }));
        QVERIFY(!trace.append({ start - 1h, Celsius { 2 }, {} }));
        QVERIFY(trace.append({ start + 1h, Celsius { 2 }, 40 }));
        QCOMPARE(trace.humidity(0), std::optional<double>());
        QCOMPARE(trace.humidity(1), std::optional(40.0));
        QCOMPARE(trace.countUpTo(start - 1s), 0u);
        QCOMPARE(trace.countUpTo(start), 1u);
        QCOMPARE(trace.countUpTo(start + 2h), 2u);
    }

    void aGap_isLongerThanSixHoursAndThreeUsualIntervals()
    {
        QCOMPARE(Trace().longestWatched(), std::chrono::seconds(6h));
        std::vector<Reading> often, daily;
        for (int i = 0; i < 20; ++i) {
            often.push_back({ start + i * 10min, Celsius { 5 }, {} });
            daily.push_back({ start + i * 24h, Celsius { 5 }, {} });
        }
        QCOMPARE(Trace(often).longestWatched(), std::chrono::seconds(6h));
        QCOMPARE(Trace(daily).longestWatched(), std::chrono::seconds(72h));
    }
};

QTEST_APPLESS_MAIN(TestTrace)
#include "tst_trace.moc"
