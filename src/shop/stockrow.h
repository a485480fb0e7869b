#pragma once

#include <optional>
#include <string>
#include <vector>

#include "codes/gtin.h"
#include "exchange/stockcells.h"
#include "measure/amount.h"
#include "measure/moment.h"
#include "measure/money.h"

namespace gw {

/// What a line of a stock file says by itself, before anybody looks what is here.
struct StockRow {
    int line = 0;
    std::string label; ///< in its one written form; empty: it gets a new one
    std::string material, cls, articleCode;
    std::optional<Gtin> gtin;
    Amount capacity, left;
    std::string place, lot, serial;
    std::optional<Date> made, printed;
    bool printedIsUseBy = false;
    std::optional<Date> arrived; ///< none: it was met here, since when nobody knows
    bool open = false;
    std::optional<Date> opened; ///< none while open: nobody knows since when
    std::optional<Date> failedTest;
    std::string hold;
    std::optional<Money> price;

    friend bool operator==(const StockRow&, const StockRow&) = default;
};

/// Why a line cannot be brought in.
struct StockRefusal {
    int line = 0;
    std::string column;
    std::string why; ///< one sentence, with what to do
};

/// "line 4, capacity: 500 is ...", for a report.
std::string refusalText(const StockRefusal& refusal);

/// Reads one line. Every fault of it is told, not only the first; then the row is of no use. Dates that
/// contradict each other or lie after today are faults.
StockRow readStockRow(const StockCells& cells, Date today, std::vector<StockRefusal>& refusals);

} // namespace gw
