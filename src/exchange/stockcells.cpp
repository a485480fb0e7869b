#include "exchange/stockcells.h"

#include <algorithm>
#include <array>

#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr std::array columns {
    StockColumn { "label", &StockCells::label, false, "our short code, GWXXXXXXX; empty: it gets a new one" },
    StockColumn { "material", &StockCells::material, true, "its name, such as White wood glue" },
    StockColumn {
        "class", &StockCells::cls, false, "id or name of its class; needed where the material is new" },
    StockColumn { "article_code", &StockCells::articleCode, false, "the maker's own" },
    StockColumn { "gtin", &StockCells::gtin, false, "the number under its bar code" },
    StockColumn { "capacity", &StockCells::capacity, true, "what it holds when full, 500 g" },
    StockColumn { "left", &StockCells::left, false, "what is left in it, 405 g; empty: it is full" },
    StockColumn { "place", &StockCells::place, false, "where it stands; empty: not known" },
    StockColumn { "lot", &StockCells::lot, false, "the maker's batch number" },
    StockColumn { "serial", &StockCells::serial, false, "the maker's number of this one container" },
    StockColumn { "made", &StockCells::made, false, "the day it was made, 2026-05-25" },
    StockColumn { "label_date", &StockCells::labelDate, false, "the date printed on it" },
    StockColumn { "label_date_is", &StockCells::labelDateIs, false, "best before, or use by" },
    StockColumn { "arrived", &StockCells::arrived, false, "the day it came; empty: nobody knows" },
    StockColumn {
        "opened", &StockCells::opened, false, "the day, or yes where nobody knows it; empty: sealed" },
    StockColumn { "failed_test", &StockCells::failedTest, false, "the day it last failed a bench test" },
    StockColumn { "hold", &StockCells::hold, false, "why its lot is held back" },
    StockColumn { "price", &StockCells::price, false, "12.50 EUR" },
};

std::string allNames()
{
    std::string names;
    for (const StockColumn& column : columns)
        names += (names.empty() ? "" : ", ") + std::string(column.name);
    return names;
}

} // namespace

std::span<const StockColumn> stockColumns() { return columns; }

std::string stockCsv(const std::vector<StockCells>& rows)
{
    CsvTable table;
    for (const StockColumn& column : columns)
        table.columns.emplace_back(column.name);
    for (const StockCells& cells : rows) {
        std::vector<std::string>& row = table.rows.emplace_back();
        for (const StockColumn& column : columns)
            row.push_back(cells.*column.cell);
    }
    return writeCsv(table);
}

Result<std::vector<StockCells>> stockCellsOf(const CsvTable& table)
{
    for (const std::string& name : table.columns) {
        if (std::ranges::none_of(columns, [&](const StockColumn& column) { return name == column.name; }))
            return fail(ErrorCode::BadInput,
                table.name + " line 1: there is no column " + inQuotes(name)
                    + "; name it as one of these or take it out: " + allNames() + ".");
    }
    for (const StockColumn& column : columns) {
        if (column.needed && !table.column(column.name))
            return fail(ErrorCode::BadInput,
                table.name + " line 1: the column \"" + column.name + "\" is missing; add it (" + column.means
                    + ").");
    }
    std::vector<StockCells> rows;
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        StockCells& cells = rows.emplace_back();
        cells.line = table.lines[i];
        for (const StockColumn& column : columns)
            cells.*column.cell = trimmed(withoutGuard(table.cell(i, column.name)));
    }
    return rows;
}

} // namespace gw
