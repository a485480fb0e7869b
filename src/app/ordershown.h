#pragma once

#include "app/rowsmodel.h"
#include "shop/work.h"

namespace gw {

/// An order plan, ready for the screen.
struct OrderShown {
    OrderPlan plan;
    std::vector<ShownRow> lines; ///< orderLineRoles, by supplier; key: the material's id
    QStringList totals; ///< one for each currency
    QStringList notes;
    int packs = 0; ///< to buy in all
    bool workExpected = false; ///< of any kind; without it a list says little
};

/// usableLevel and needMark are shares of a bar; packs and price are empty where nothing can be had.
inline const QByteArrayList orderLineRoles { "supplier", "name", "packs", "price", "need", "usable",
    "ordered", "usableLevel", "needMark", "why", "latestUse" };
inline const QByteArrayList orderRateRoles { "name", "family", "rate" };
inline const QByteArrayList orderPackRoles { "title", "note", "value" };

/// The list for the month that begins on a day. Runs on the shop's thread.
Result<OrderShown> orderShown(const Shop& shop, const OrderAsked& asked, Moment now);

/// What can be supposed: kinds of work with their keys, and suppliers.
struct OrderSupposable {
    std::vector<std::pair<std::string, QString>> jobTypes;
    QStringList suppliers;
};
Result<OrderSupposable> orderSupposable(const Shop& shop);

/// How many of each job type the shop expects in a month; those it expects none of stand there too.
Result<std::vector<ShownRow>> orderRates(const Shop& shop);

/// Every pack on offer, by material.
Result<std::vector<ShownRow>> orderPacks(const Shop& shop);

/// "12,50 EUR" where the comma is the decimal mark.
QString moneyText(const Money& money);

} // namespace gw
