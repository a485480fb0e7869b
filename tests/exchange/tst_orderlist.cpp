#include <QFile>
#include <QTemporaryDir>
#include <QTest>

#include "exchange/csv.h"
#include "exchange/orderlist.h"
#include "support/csvrows.h"

using namespace gw;

namespace {

OrderLine line(std::string name, Amount need, Amount usable)
{
    OrderLine made;
    made.name = std::move(name);
    made.need = need;
    made.usable = usable;
    made.why = "Six jobs at 80 g each.";
    return made;
}

PackCount pack(std::string name, std::string supplier, int count, std::optional<Money> price)
{
    PackCount made;
    made.name = std::move(name);
    made.supplier = std::move(supplier);
    made.count = count;
    made.price = std::move(price);
    return made;
}

OrderPlan plan()
{
    using namespace std::chrono;
    OrderPlan made;
    OrderLine hide = line("Hide granules, 192 g", grams(900), grams(150));
    hide.packs = { pack("500 g bag", "Supplier A", 1, Money { 950, "EUR" }),
        pack("250 g bag", "Supplier A", 2, Money { 505, "EUR" }) };
    hide.ordered = grams(1000);
    hide.latestUse = 2027y / August / 31;
    OrderLine epoxy = line("Epoxy resin", millilitres(300), millilitres(0));
    epoxy.why = "Nothing on offer would be used in time.";
    OrderLine brushes = line("=Brushes", pieces(4), pieces(1));
    brushes.packs = { pack("each", "@Supplier \"B\"", 3, std::nullopt) };
    brushes.ordered = pieces(3);
    OrderLine shellac = line("Shellac", grams(100), grams(20));
    shellac.packs = { pack("100 g", "Supplier C", 3, Money { 1200, "JPY" }) };
    shellac.ordered = grams(300);
    made.lines = { hide, epoxy, brushes, shellac };
    return made;
}

} // namespace

class OrderList : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyPack_hasALine()
    {
        const auto table = readCsv(orderCsv(plan()), "order.csv");
        QVERIFY(table);
        QCOMPARE(table->rows.size(), std::size_t(5));
        QCOMPARE(table->cell(0, "material"), std::string("Hide granules, 192 g"));
        QCOMPARE(table->cell(0, "supplier"), std::string("Supplier A"));
        QCOMPARE(table->cell(0, "pack"), std::string("500 g bag"));
        QCOMPARE(table->cell(0, "count"), std::string("1"));
        QCOMPARE(table->cell(0, "unit_price"), std::string("9.50"));
        QCOMPARE(table->cell(0, "line_price"), std::string("9.50"));
        QCOMPARE(table->cell(0, "currency"), std::string("EUR"));
        QCOMPARE(table->cell(0, "need"), formatAmount(grams(900)));
        QCOMPARE(table->cell(0, "usable"), formatAmount(grams(150)));
        QCOMPARE(table->cell(0, "ordered"), formatAmount(grams(1000)));
        QCOMPARE(table->cell(0, "latest_use"), std::string("2027-08-31"));
        QCOMPARE(table->cell(0, "why"), std::string("Six jobs at 80 g each."));
        QCOMPARE(table->cell(1, "count"), std::string("2"));
        QCOMPARE(table->cell(1, "unit_price"), std::string("5.05"));
        QCOMPARE(table->cell(1, "line_price"), std::string("10.10"));
    }

    void needWithoutAPack_isNotLost()
    {
        const auto table = readCsv(orderCsv(plan()), "order.csv");
        QVERIFY(table);
        QCOMPARE(table->cell(2, "material"), std::string("Epoxy resin"));
        QCOMPARE(table->cell(2, "pack"), std::string());
        QCOMPARE(table->cell(2, "count"), std::string("0"));
        QCOMPARE(table->cell(2, "why"), std::string("Nothing on offer would be used in time."));
        QCOMPARE(table->cell(2, "latest_use"), std::string());
    }

    void unknownPrice_staysEmpty()
    {
        const auto table = readCsv(orderCsv(plan()), "order.csv");
        QVERIFY(table);
        QCOMPARE(table->cell(3, "unit_price"), std::string());
        QCOMPARE(table->cell(3, "line_price"), std::string());
        QCOMPARE(table->cell(3, "currency"), std::string());
    }

    // ISO 4217: the yen has no minor unit.
    void currencyWithoutCents_hasNone()
    {
        const auto table = readCsv(orderCsv(plan()), "order.csv");
        QVERIFY(table);
        QCOMPARE(table->cell(4, "unit_price"), std::string("1200"));
        QCOMPARE(table->cell(4, "line_price"), std::string("3600"));
    }

    void namesLikeFormulas_areDefused()
    {
        const auto table = readCsv(orderCsv(plan()), "order.csv");
        QVERIFY(table);
        QCOMPARE(table->cell(3, "material"), std::string("'=Brushes"));
        QCOMPARE(table->cell(3, "supplier"), std::string("'@Supplier \"B\""));
    }

    void emptyPlan_isAHeader()
    {
        const auto table = readCsv(orderCsv({}), "order.csv");
        QVERIFY(table);
        QCOMPARE(table->columns.size(), std::size_t(12));
        QVERIFY(table->rows.empty());
    }

    void file_holdsTheSame()
    {
        QTemporaryDir dir;
        const QString path = dir.filePath(QStringLiteral("order.csv"));
        QVERIFY(writeOrderCsv(plan(), path));
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        QCOMPARE(file.readAll(), QByteArray::fromStdString(orderCsv(plan())));
        QCOMPARE(test::readCsvRows(path).size(), 5);
    }

    void fileThatCannotBeWritten_isSaid()
    {
        QTemporaryDir dir;
        const auto written = writeOrderCsv(plan(), dir.filePath(QStringLiteral("none/order.csv")));
        QVERIFY(!written);
        QCOMPARE(int(written.error().code), int(ErrorCode::FileUnwritable));
    }
};

QTEST_APPLESS_MAIN(OrderList)
#include "tst_orderlist.moc"
