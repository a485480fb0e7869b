#include <QTest>

#include "shopyears.h"

using namespace gw;
using namespace gw::test;

/// The promised service over many invented shop-years, and what goes off compared with the usual rule of so
/// many months of supply. tests/bench/bench_shopyears runs a thousand.
class TestShopYears : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void promisedService_isMet_data();
    void promisedService_isMet();
};

void TestShopYears::promisedService_isMet_data()
{
    QTest::addColumn<double>("promised");
    QTest::addRow("80 percent") << 80.0;
    QTest::addRow("95 percent") << 95.0;
}

void TestShopYears::promisedService_isMet()
{
    QFETCH(double, promised);
    constexpr int shops = 150;
    const ShopYears planned = plannedYears(2, shops, promised);
    const auto [months, rule] = supplyForService(2, shops, planned.service());
    qInfo(
        "%g %% promised: %.2f %% +- %.2f sufficed, %.2f %% went off; %.1f months of supply: %.2f %%, %.2f %%",
        promised, planned.service(), planned.error(), planned.waste(), months, rule.service(), rule.waste());
    QCOMPARE(planned.cycles, shops * monthsPlanned);
    // Whole packs are bought, so it is met rather more than less; three errors either way.
    QVERIFY(planned.service() > promised - 3 * planned.error());
    QVERIFY(planned.service() < promised + 4 + 3 * planned.error());
    QVERIFY(rule.service() >= planned.service() - 0.2);
    QVERIFY(planned.waste() < rule.waste());
}

QTEST_APPLESS_MAIN(TestShopYears)
#include "tst_shopyears.moc"
