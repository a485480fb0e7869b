#pragma once

#include <memory>
#include <unordered_map>

#include "shop/shelf.h"
#include "shop/stock.h"

namespace gw {

/// Turns containers' states into shelf items, the figures of each material worked out once.
class ShelfJudge {
public:
    explicit ShelfJudge(const Catalogue& catalogue);

    const LifeFigures& figures(const MaterialId& material);
    ShelfItem item(const ContainerRecord& container, const StockState& state, Moment asOf);

private:
    const Catalogue& m_catalogue;
    std::unique_ptr<Climate> m_climate;
    std::unordered_map<MaterialId, LifeFigures> m_figures;
};

} // namespace gw
