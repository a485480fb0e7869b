#include <algorithm>
#include <tuple>

#include <QString>

#include "exchange/savefile.h"
#include "measure/number.h"
#include "shop/stock.h"
#include "shop/stockcellsof.h"
#include "shop/stockplan.h"

namespace gw {

namespace {

/// To the thousandth, as the ledger has it: a rounded amount would come back as another one.
std::string exactly(Amount amount)
{
    return numberWords(amount.value(), 3) + " " + std::string(baseUnit(amount.dimension));
}

std::string day(const std::optional<Date>& date) { return date ? formatDate(*date) : std::string(); }

std::string openedWord(const History& history)
{
    if (!history.opened)
        return {};
    return history.foundOpen ? "yes" : formatDate(dateOf(*history.opened));
}

std::string lastFailure(const std::vector<BenchTest>& tests)
{
    return tests.empty() || tests.back().passed ? std::string() : formatDate(dateOf(tests.back().at));
}

} // namespace

StockCells stockCellsOf(const Catalogue& catalogue, const Standing& standing)
{
    const auto& [container, state] = standing;
    const History& history = state.history;
    StockCells cells;
    cells.label = container.label;
    if (const auto* material = catalogue.material(container.material)) {
        cells.material = material->name;
        cells.cls = material->classId.text;
        cells.articleCode = material->articleCode;
    }
    if (container.pack) {
        const auto pack = catalogue.packs.find(*container.pack);
        if (pack != catalogue.packs.end())
            cells.gtin = pack->second.gtin14;
    }
    cells.capacity = exactly(container.capacity);
    cells.left = exactly(state.left);
    cells.place = catalogue.placeName(state.place);
    cells.lot = container.lot;
    cells.serial = container.serial;
    cells.made = day(history.made);
    cells.labelDate = day(history.printed);
    if (history.printed)
        cells.labelDateIs = history.printedIsUseBy ? "use by" : "best before";
    if (!history.foundUndated)
        cells.arrived = formatDate(dateOf(history.arrived));
    cells.opened = openedWord(history);
    cells.failedTest = lastFailure(history.tests);
    if (history.hold)
        cells.hold = history.hold->why.empty() ? "held" : history.hold->why;
    if (container.price)
        cells.price = formatMoney(*container.price);
    return cells;
}

Result<std::vector<StockCells>> stockOnShelf(const Shop& shop, Moment asOf)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto standings = standingsAsOf(shop, asOf);
    if (!standings)
        return tl::unexpected(standings.error());
    std::vector<StockCells> rows;
    for (const Standing& standing : *standings) {
        if (!standing.state.history.retired && standing.state.left.milli > 0)
            rows.push_back(stockCellsOf(*catalogue, standing));
    }
    std::ranges::sort(
        rows, {}, [](const StockCells& cells) { return std::tie(cells.place, cells.material, cells.label); });
    return rows;
}

Result<int> takeOutStock(const Shop& shop, Moment asOf, const QString& path)
{
    auto rows = stockOnShelf(shop, asOf);
    if (!rows)
        return tl::unexpected(rows.error());
    if (auto saved = saveFile(path, stockCsv(*rows)); !saved)
        return tl::unexpected(saved.error());
    return static_cast<int>(rows->size());
}

} // namespace gw
