#pragma once

#include <unordered_map>

#include "shop/shelf.h"
#include "shop/stock.h"

namespace gw {

/// Turns containers' states into shelf items, the figures of each material worked out once.
class ShelfJudge {
public:
    ShelfJudge(const Catalogue& catalogue, const Climate& climate);

    const LifeFigures& figures(const MaterialId& material);
    const Climate& climate() const { return m_climate; }
    ShelfItem item(const ContainerRecord& container, const StockState& state, Moment asOf);

private:
    const Catalogue& m_catalogue;
    const Climate& m_climate;
    std::unordered_map<MaterialId, LifeFigures> m_figures;
};

} // namespace gw
