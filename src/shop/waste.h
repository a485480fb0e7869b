#pragma once

#include <optional>
#include <string>
#include <vector>

#include "shop/shop.h"

namespace gw {

/// What some stock is worth: its own price, else its pack's, else that of the cheapest pack of the material,
/// by the share of it that is meant. None where no price is known.
class Worth {
public:
    explicit Worth(const Catalogue& catalogue)
        : m_catalogue(catalogue)
    {
    }
    std::optional<Money> of(const ContainerRecord& container, Amount amount) const;

private:
    const Catalogue& m_catalogue;
};

/// Adds an amount of money to sums, one for each currency.
void addMoney(std::vector<Money>& sums, const Money& money);

/// A container that will go off soon.
struct Expiring {
    ContainerId container;
    std::string label, materialName, place;
    Amount left;
    Moment until;
    int days = 0; ///< from now, whole
    std::optional<Money> worth {};
    std::string useOn {}; ///< the work that would take it, in words; empty when there is none
};
struct ExpiringList {
    std::vector<Expiring> items; ///< the first to go off first
    std::vector<Money> worth; ///< of all with a price
    int unpriced = 0;
};
/// What still passes and will go off within so many days, under the places' usual climate. Errors: BadInput
/// outside 1 to 730 days.
Result<ExpiringList> expiringSoon(const Shop& shop, int days, Moment asOf);

/// Stock that is past use, with how such things are usually handled.
struct ToDispose {
    std::string label, materialName, place;
    Amount left;
    std::string why; ///< why it is past use
};
struct DisposalGroup {
    std::vector<std::string> handling; ///< usual cautions; empty: nothing is on record, its label has to say
    std::vector<ToDispose> items;
};
/// What stands there that is not to be used any more, by how it is usually handled. Local rules decide; the
/// text that says so goes with every list.
Result<std::vector<DisposalGroup>> disposalList(const Shop& shop, Moment asOf);
std::string localRulesDecide();

/// What was thrown away, or stands there past use, in a year up to a moment.
struct Wasted {
    Moment at;
    std::string label, materialName;
    Amount amount;
    std::optional<Money> cost;
    std::string why; ///< as it was written
};
struct WasteOfYear {
    int year = 0;
    std::vector<Wasted> items; ///< newest first
    std::vector<Money> cost; ///< of what has a price
    std::vector<Money> usedCost; ///< what was used in the same time, as far as prices are known
    int unpriced = 0;
};
Result<WasteOfYear> wasteOfYear(const Shop& shop, Moment asOf);

} // namespace gw
