#include <QTest>

#include "exchange/stockcells.h"

using namespace gw;

namespace {

Result<std::vector<StockCells>> read(std::string_view text)
{
    auto table = readCsv(text, "stock.csv");
    if (!table)
        return tl::unexpected(table.error());
    return stockCellsOf(*table);
}

} // namespace

/// The table of a stock file: its columns, and what they keep of a cell.
class StockCellsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void whatIsWritten_isReadBack_inEveryColumn()
    {
        StockCells cells;
        int turn = 0;
        for (const StockColumn& column : stockColumns())
            cells.*column.cell = (turn++ % 2 == 0 ? "=SUM(" : "with, \"") + std::string(column.name);
        const auto back = read(stockCsv({ cells, cells }));
        QVERIFY2(back, back ? "" : back.error().sentence.c_str());
        QCOMPARE(back->size(), std::size_t { 2 });
        QCOMPARE((*back)[1].line, 3);
        for (const StockColumn& column : stockColumns())
            QCOMPARE((*back)[1].*column.cell, cells.*column.cell);
    }

    void columns_standInAnyOrder_andOnlyTwoAreNeeded()
    {
        const auto rows = read("capacity;material\r\n 500 g ;White glue\r\n");
        QVERIFY2(rows, rows ? "" : rows.error().sentence.c_str());
        QCOMPARE(rows->at(0).material, std::string("White glue"));
        QCOMPARE(rows->at(0).capacity, std::string("500 g"));
        QVERIFY(rows->at(0).place.empty());
    }

    void columns_thatAreUnknownOrMissing_areNamed()
    {
        const auto unknown = read("material,capacity,plase\nGlue,500 g,Bench\n");
        QVERIFY(!unknown);
        QVERIFY(unknown.error().sentence.starts_with("stock.csv line 1: there is no column \"plase\""));
        QVERIFY(unknown.error().sentence.find("place") != std::string::npos);
        const auto missing = read("material,left\nGlue,500 g\n");
        QVERIFY(!missing);
        QVERIFY(missing.error().sentence.find("\"capacity\" is missing") != std::string::npos);
    }
};

QTEST_MAIN(StockCellsTest)
#include "tst_stockcells.moc"
