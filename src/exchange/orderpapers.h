#pragma once

#include <string>
#include <vector>

#include "demand/orderplan.h"
#include "measure/error.h"

class QByteArray;
class QString;

namespace gw {

/// What stands over an order list.
struct OrderHeading {
    std::string shop; ///< its name; empty when it has none
    Date monthStart;
    Date written;
    UnitSystem units = UnitSystem::Metric;
};

/// What is ordered at one supplier.
struct SupplierOrder {
    struct Item {
        const OrderLine* line = nullptr;
        std::vector<const PackCount*> packs;
    };
    std::string supplier; ///< empty when it is not known
    std::vector<Item> items; ///< by name
    std::vector<Money> totals; ///< of what has a price, one for each currency
    bool unpriced = false; ///< something has none
};

/// The lines that can be bought, by supplier and name; unknown suppliers last. They point into the plan.
std::vector<SupplierOrder> bySupplier(const OrderPlan& plan);

/// Plain text to paste into messages: for each supplier what to send, with GTINs where there are any, nothing
/// of why.
std::string orderMessage(const OrderPlan& plan, const OrderHeading& heading);

/// The list on A4 pages: a section for each supplier with prices and each line's why, what is needed and not
/// to be had, what a budget leaves, and the notes. Wants a QGuiApplication for its fonts.
QByteArray orderPdf(const OrderPlan& plan, const OrderHeading& heading);
/// The same into a file, whole or not at all. Errors: FileUnwritable, StoreFull.
Result<void> writeOrderPdf(const OrderPlan& plan, const OrderHeading& heading, const QString& path);

} // namespace gw
