#pragma once

#include "exchange/stockcells.h"
#include "shop/stock.h"

namespace gw {

/// A container as a line of a stock file; what it inherited by pouring over is in it.
StockCells stockCellsOf(const Catalogue& catalogue, const Standing& standing);

} // namespace gw
