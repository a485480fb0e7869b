#pragma once

#include <span>
#include <string>
#include <vector>

#include "exchange/csv.h"

namespace gw {

/// One container as a line of a stock file: every cell as text, empty where nothing is known or said.
struct StockCells {
    int line = 0; ///< of the file; the header is line 1
    std::string label; ///< our short code
    std::string material;
    std::string cls; ///< id or name of its class
    std::string articleCode; ///< the maker's own
    std::string gtin;
    std::string capacity; ///< "500 g"
    std::string left; ///< "405.5 g"; empty: full
    std::string place;
    std::string lot;
    std::string serial;
    std::string made; ///< dates as 2026-05-25
    std::string labelDate;
    std::string labelDateIs; ///< "best before" or "use by"
    std::string arrived; ///< empty: it was met here, since when nobody knows
    std::string opened; ///< a date, or "yes" where nobody knows since when; empty: sealed
    std::string failedTest; ///< the day its last bench test was failed
    std::string hold; ///< why its lot is held back
    std::string price; ///< "12.50 EUR"
};

struct StockColumn {
    const char* name;
    std::string StockCells::* cell;
    bool needed; ///< a file without it cannot be brought in
    const char* means; ///< for people, with an example
};

/// The columns of a stock file, in the order they are written.
std::span<const StockColumn> stockColumns();

/// The file's table. Cells a spreadsheet would run are made harmless (writeCsv).
std::string stockCsv(const std::vector<StockCells>& rows);

/// The rows of a table, its columns in any order; what writeCsv() made harmless is itself again. Errors:
/// BadInput, naming the line and the column: a needed column is missing, or one is not known.
Result<std::vector<StockCells>> stockCellsOf(const CsvTable& table);

} // namespace gw
