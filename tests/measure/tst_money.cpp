#include <QTest>

#include <limits>

#include "measure/money.h"

using namespace gw;

class TestMoney : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void money_hasItsCurrencysDecimals();
};

void TestMoney::money_hasItsCurrencysDecimals()
{
    // Decimals: ISO 4217 list one, minor unit column.
    QCOMPARE(formatMoney({ 1250, "EUR" }), std::string("12.50 EUR"));
    QCOMPARE(formatMoney({ 5, "EUR" }), std::string("0.05 EUR"));
    QCOMPARE(formatMoney({ 0, "USD" }), std::string("0.00 USD"));
    QCOMPARE(formatMoney({ -5, "USD" }), std::string("-0.05 USD"));
    QCOMPARE(formatMoney({ 1250, "JPY" }), std::string("1250 JPY"));
    QCOMPARE(formatMoney({ 1250, "KWD" }), std::string("1.250 KWD"));
    QCOMPARE(formatMoney({ 1250, "" }), std::string("12.50"));
    QCOMPARE(formatMoney({ std::numeric_limits<std::int64_t>::min(), "EUR" }),
        std::string("-92233720368547758.08 EUR"));
}

QTEST_APPLESS_MAIN(TestMoney)
#include "tst_money.moc"
