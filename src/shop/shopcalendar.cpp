#include "shop/shopcalendar.h"

#include <algorithm>

#include "demand/usage.h"
#include "shop/monthdemands.h"
#include "shop/orders.h"
#include "shop/plannedwork.h"
#include "shop/shelf.h"

namespace gw {

namespace {

constexpr double sureOfDelivery = 95; // percent, that what is left lasts until a delivery
constexpr Days furthest { 366 };

using Calendar = std::vector<CalendarDay>;

std::string uid(const std::string& kind, const std::string& id) { return kind + "-" + id + "@gluewright"; }

void addGoodUntil(const std::vector<ShelfItem>& items, Moment asOf, UnitSystem units, Calendar& days)
{
    for (const ShelfItem& item : items) {
        if (!item.judgement.goodUntil || *item.judgement.goodUntil < asOf || item.left.milli <= 0
            || item.judgement.verdict == Verdict::DoNotUse)
            continue;
        days.push_back({ uid("good-until", item.id.text), dateOf(*item.judgement.goodUntil),
            item.materialName + " " + item.label + " is good until today",
            formatAmount(item.left, units) + " left"
                + (item.placeName.empty() ? std::string() : ", in " + item.placeName) + ".",
            "good until" });
    }
}

/// The day what is there has run down to what a delivery's time may take.
std::optional<Date> reorderDay(const MaterialDemand& demand, Moment asOf)
{
    if (demand.packs.empty())
        return std::nullopt;
    const UseForecast use = forecastUse(demand);
    double lead = 0;
    for (const PackOffer& pack : demand.packs)
        lead = std::max(lead, pack.leadDays);
    const auto meanwhile = useOver(use, Days { std::max(1.0, lead) });
    if (!(use.perMonth > 0) || !meanwhile)
        return std::nullopt;
    const auto kept = meanwhile->quantile(sureOfDelivery);
    double there = 0;
    for (const UsableLot& lot : demand.stock)
        there += lot.left.dimension == demand.dimension ? lot.left.value() : 0;
    const Days wait { std::max(0.0, (there - kept.value_or(0)) / use.perMonth * meanMonth.count()) };
    if (wait > furthest)
        return std::nullopt;
    return dateOf(later(asOf, wait));
}

void addOrders(const std::vector<KeptOrderList>& lists, Calendar& days)
{
    for (const KeptOrderList& list : lists) {
        for (const KeptOrderLine& line : list.lines) {
            const bool open = line.state == OrderState::Ordered || line.state == OrderState::PartArrived
                || line.state == OrderState::Late;
            if (open && line.due)
                days.push_back(
                    { uid("delivery", line.record.id.text), *line.due, line.materialName + " is due",
                        std::to_string(line.wanted - line.arrived) + " × " + line.record.packName
                            + (line.record.supplier.empty() ? std::string() : " from " + line.record.supplier)
                            + ".",
                        "delivery" });
        }
    }
}

} // namespace

Result<std::vector<CalendarDay>> shopCalendar(const Shop& shop, Moment asOf)
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto items = shelf(shop, { asOf, {}, {}, {}, false, false });
    if (!items)
        return tl::unexpected(items.error());
    const Date today = dateOf(asOf);
    const auto demands
        = monthDemands(shop, *catalogue, Date { today.year(), today.month(), std::chrono::day { 1 } }, asOf);
    if (!demands)
        return tl::unexpected(demands.error());
    const auto lists = keptOrderLists(shop, asOf);
    if (!lists)
        return tl::unexpected(lists.error());
    const auto planned = plannedWork(shop, asOf);
    if (!planned)
        return tl::unexpected(planned.error());

    Calendar days;
    addGoodUntil(*items, asOf, shop.units(), days);
    for (const MaterialDemand& demand : *demands) {
        if (const auto day = reorderDay(demand, asOf))
            days.push_back({ uid("order", demand.material.text), *day, "Order " + demand.name,
                "At the usual rate what is left then lasts until a delivery, and not much longer.",
                "order" });
    }
    addOrders(*lists, days);
    for (const PlannedJob& job : *planned)
        days.push_back({ uid("work", job.record.id.text), job.record.day,
            std::to_string(job.record.pieces) + " × " + job.jobType, job.record.piece, "work" });
    std::stable_sort(days.begin(), days.end(), [](const CalendarDay& a, const CalendarDay& b) {
        return std::chrono::sys_days { a.day } < std::chrono::sys_days { b.day };
    });
    return days;
}

} // namespace gw
