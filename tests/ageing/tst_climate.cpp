#include <QTest>

#include "ageing/stock.h"

using namespace gw;
using namespace gw::test;

class TestClimate : public QObject {
    Q_OBJECT

    const WatchedClimate m_climate = shopClimate();
    const Rate m_rate { { 20 }, 2, {}, false };
    const Moment m_start = at("2025-03-01");

private Q_SLOTS:
    void equivalent_isTheSpanAtBothEndsOfTheRange()
    {
        const Exposure e = m_climate.exposure(loft, m_start, after(m_start, 30), m_rate);
        QCOMPARE(e.equivalent.low.count(), 30.0); // 10 C gives no credit
        QCOMPARE(e.equivalent.high.count(), 120.0); // 40 C: 2^2
        QCOMPARE(m_climate.exposure(loft, m_start, after(m_start, 30), Rate { { 20 }, 2, {}, true })
                     .equivalent.low.count(),
            15.0);
    }

    void everything_isUnwatched()
    {
        const Exposure e = m_climate.exposure(bench, m_start, after(m_start, 12.5), m_rate);
        QCOMPARE(e.unwatched.count(), 12.5);
        QVERIFY(e.known);
        QCOMPARE(e.hottest->value, 25.0);
        QCOMPARE(e.coldest->value, 15.0);
    }

    void emptySpan_hasNoDaysButThePlacesExtremes()
    {
        const Exposure e = m_climate.exposure(shed, m_start, m_start, m_rate);
        QCOMPARE(e.equivalent.high.count(), 0.0);
        QCOMPARE(e.unwatched.count(), 0.0);
        QCOMPARE(e.coldest->value, -5.0);
    }

    void splittingASpan_changesNothing()
    {
        for (const PlaceId& place : { bench, shed, loft, nowhere }) {
            const Moment middle = after(m_start, 17.31);
            const Moment end = after(m_start, 90);
            const Exposure whole = m_climate.exposure(place, m_start, end, m_rate);
            const Exposure a = m_climate.exposure(place, m_start, middle, m_rate);
            const Exposure b = m_climate.exposure(place, middle, end, m_rate);
            QCOMPARE((a.equivalent.low + b.equivalent.low).count(), whole.equivalent.low.count());
            QCOMPARE((a.equivalent.high + b.equivalent.high).count(), whole.equivalent.high.count());
            QCOMPARE((a.unwatched + b.unwatched).count(), whole.unwatched.count());
            QCOMPARE(std::max(a.hottest, b.hottest)->value, whole.hottest->value);
            QCOMPARE(std::min(a.coldest, b.coldest)->value, whole.coldest->value);
        }
    }

    void unknownPlace_isNotKnownAndBoundedByTheWorstThereIs()
    {
        const Exposure e = m_climate.exposure(nowhere, m_start, after(m_start, 10), m_rate);
        QVERIFY(!e.known);
        QCOMPARE(e.equivalent.high.count(), 40.0); // the loft
        QCOMPARE(e.coldest->value, -5.0); // the shed
        QVERIFY(!m_climate.usual(nowhere, m_start));
    }

    void withNoPlacesAtAll_aSpanIsAtTheLeastPlainTime()
    {
        const Exposure e = WatchedClimate().exposure(bench, m_start, after(m_start, 10), m_rate);
        QVERIFY(!e.known);
        QCOMPARE(e.equivalent.high.count(), 10.0);
        QVERIFY(!e.hottest && !e.coldest);
    }

    void usual_isTheSameAllYear()
    {
        QCOMPARE(m_climate.usual(shed, at("2025-01-15"))->high.value, 34.0);
        QCOMPARE(m_climate.usual(shed, at("2025-07-15"))->low.value, -5.0);
    }
};

QTEST_APPLESS_MAIN(TestClimate)
#include "tst_climate.moc"
