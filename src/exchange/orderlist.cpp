#include "exchange/orderlist.h"

#include <optional>

#include "exchange/csv.h"
#include "exchange/savefile.h"

namespace gw {

namespace {

/// Decimals without the currency, as formatMoney writes them: it knows how many a currency has.
std::string figures(const std::optional<Money>& money)
{
    if (!money)
        return {};
    const std::string text = formatMoney(*money);
    return text.substr(0, text.find(' '));
}

std::vector<std::string> rowOf(const OrderLine& line, const PackCount& pack)
{
    std::optional<Money> together = pack.price;
    if (together)
        together->minorUnits *= pack.count;
    return {
        pack.supplier,
        line.name,
        pack.name,
        std::to_string(pack.count),
        figures(pack.price),
        figures(together),
        pack.price ? pack.price->currency : std::string(),
        formatAmount(line.need),
        formatAmount(line.usable),
        formatAmount(line.ordered),
        line.latestUse ? formatDate(*line.latestUse) : std::string(),
        line.why,
    };
}

} // namespace

std::string orderCsv(const OrderPlan& plan)
{
    CsvTable table;
    table.columns = { "supplier", "material", "pack", "count", "unit_price", "line_price", "currency", "need",
        "usable", "ordered", "latest_use", "why" };
    for (const OrderLine& line : plan.lines) {
        for (const PackCount& pack : line.packs)
            table.rows.push_back(rowOf(line, pack));
        if (line.packs.empty())
            table.rows.push_back(rowOf(line, {}));
    }
    return writeCsv(table);
}

Result<void> writeOrderCsv(const OrderPlan& plan, const QString& path)
{
    return saveFile(path, orderCsv(plan));
}

} // namespace gw
