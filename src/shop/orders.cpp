#include "shop/orders.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <unordered_map>

#include "measure/quoted.h"
#include "shop/actbuilder.h"
#include "shop/usehistory.h"

namespace gw {

namespace {

constexpr std::array stateWords { std::string_view("made"), std::string_view("taken_off"),
    std::string_view("ordered"), std::string_view("part_arrived"), std::string_view("arrived"),
    std::string_view("late"), std::string_view("closed") };
constexpr std::array stateSpoken { std::string_view("on the list"), std::string_view("taken off"),
    std::string_view("ordered"), std::string_view("part arrived"), std::string_view("arrived"),
    std::string_view("late"), std::string_view("closed") };

/// A container that came, as far as orders ask.
struct Came {
    MaterialId material;
    std::optional<PackId> pack;
    Amount holds; ///< in the material's own unit
    Moment at;
    bool taken = false;
};

/// What came and was not undone, oldest first. What was found on the shelf did not come by an order.
Result<std::vector<Came>> whatCame(const Shop& shop, const Catalogue& catalogue, Moment asOf)
{
    const auto entries = shop.store().entriesUpTo(asOf);
    if (!entries)
        return tl::unexpected(entries.error());
    const auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    std::unordered_map<ContainerId, const ContainerRecord*> byId;
    for (const ContainerRecord& container : *containers)
        byId.emplace(container.id, &container);
    const auto reversed = reversedAmong(*entries);
    std::vector<Came> all;
    for (const Entry& entry : *entries) {
        if (entry.kind != EntryKind::Arrived || !entry.container || reversed.contains(entry.id))
            continue;
        const auto found = byId.find(*entry.container);
        if (found == byId.end() || found->second->foundUndated)
            continue;
        const ContainerRecord& container = *found->second;
        const ClassRecord* cls = catalogue.classOf(container.material);
        const MaterialRecord* material = catalogue.material(container.material);
        const auto holds = cls && material
            ? convert(container.capacity, cls->countedIn, densityOf(*cls, *material))
            : std::nullopt;
        all.push_back({ container.material, container.pack, holds.value_or(container.capacity), entry.at });
    }
    std::stable_sort(all.begin(), all.end(), [](const Came& a, const Came& b) { return a.at < b.at; });
    return all;
}

void apply(const OrderEventRecord& event, KeptOrderLine& line)
{
    switch (event.kind) {
    case OrderEventKind::Counted:
        line.wanted = event.pieces.value_or(line.wanted);
        line.state = line.wanted > 0 ? OrderState::Made : OrderState::TakenOff;
        break;
    case OrderEventKind::Ordered:
        line.state = OrderState::Ordered;
        line.orderedAt = event.at;
        line.due = dateOf(later(event.at, Days { std::ceil(line.record.leadDays) }));
        break;
    case OrderEventKind::Recalled:
        line.state = OrderState::Made;
        line.orderedAt.reset();
        line.due.reset();
        break;
    case OrderEventKind::Closed:
        line.state = OrderState::Closed;
        break;
    }
}

/// Gives what came to the lines that were ordered, and says how each then stands.
void settle(std::vector<KeptOrderLine*> ordered, std::vector<Came>& came, Moment asOf)
{
    std::stable_sort(ordered.begin(), ordered.end(),
        [](const KeptOrderLine* a, const KeptOrderLine* b) { return *a->orderedAt < *b->orderedAt; });
    for (KeptOrderLine* line : ordered) {
        const Moment from = startOf(dateOf(*line->orderedAt));
        for (Came& each : came) {
            if (line->arrived >= line->wanted)
                break;
            const bool same = each.pack
                ? *each.pack == line->record.pack
                : each.material == line->record.material && each.holds == line->record.amount;
            if (each.taken || !same || each.at < from)
                continue;
            each.taken = true;
            ++line->arrived;
        }
        if (line->arrived >= line->wanted) {
            line->state = OrderState::Arrived;
        } else if (line->state != OrderState::Closed) {
            const auto today = std::chrono::sys_days { dateOf(asOf) };
            line->lateDays = static_cast<int>(
                std::max<std::int64_t>(0, (today - std::chrono::sys_days { *line->due }).count()));
            line->state = line->lateDays > 0 ? OrderState::Late
                : line->arrived > 0          ? OrderState::PartArrived
                                             : OrderState::Ordered;
        }
    }
}

bool isOpen(const KeptOrderLine& line)
{
    return line.state == OrderState::Ordered || line.state == OrderState::PartArrived
        || line.state == OrderState::Late;
}

/// What stands against an event, in a sentence; none when it may be.
std::optional<Error> hinders(const KeptOrderLine& line, OrderEventKind kind)
{
    const auto refused = [&](const std::string& why) {
        return Error { ErrorCode::Refused, inQuotes(line.materialName) + " " + why };
    };
    const bool ordered = line.orderedAt.has_value();
    switch (kind) {
    case OrderEventKind::Counted:
        if (ordered)
            return refused("is ordered already; say first that it was not, then change the number.");
        break;
    case OrderEventKind::Ordered:
        if (ordered)
            return refused("is ordered already.");
        if (line.wanted == 0)
            return refused("was taken off the list; give it a number first.");
        break;
    case OrderEventKind::Recalled:
        if (!ordered)
            return refused("is not ordered.");
        if (line.arrived > 0)
            return refused("has come in part; close the rest of it instead.");
        break;
    case OrderEventKind::Closed:
        if (!isOpen(line))
            return refused("has nothing outstanding.");
        break;
    }
    return std::nullopt;
}

std::string happenedText(const OrderHappened& what, int late, UnitSystem units)
{
    std::string text = formatAmount(what.need, units) + " was asked for; " + formatAmount(what.used, units)
        + " was used in the month; " + std::to_string(what.arrived) + " of " + std::to_string(what.wanted)
        + (what.wanted == 1 ? " pack came" : " packs came");
    if (late > 0)
        text += ", " + std::to_string(late) + (late == 1 ? " day late" : " days late") + " so far";
    return text + ".";
}

} // namespace

std::string_view word(OrderState state) { return stateWords.at(static_cast<std::size_t>(state)); }
std::string_view spoken(OrderState state) { return stateSpoken.at(static_cast<std::size_t>(state)); }

Result<OrderListId> keepOrderList(Shop& shop, const OrderPlan& plan, const OrderAsked& asked, Moment now)
{
    const auto packs = shop.store().packs();
    if (!packs)
        return tl::unexpected(packs.error());
    OrderListRecord list;
    list.id = OrderListId { newUuid() };
    list.month = asked.monthStart;
    list.made = now;
    list.servicePercent = asked.servicePercent;
    for (const OrderLine& line : plan.lines) {
        for (const PackCount& pack : line.packs) {
            const auto known = std::find_if(
                packs->begin(), packs->end(), [&](const PackRecord& each) { return each.id == pack.pack; });
            OrderLineRecord record;
            record.id = OrderLineId { newUuid() };
            record.material = line.material;
            record.pack = pack.pack;
            record.packName = pack.name;
            record.supplier = pack.supplier;
            record.pieces = pack.count;
            record.amount = pack.amount;
            record.need = line.need;
            record.usable = line.usable;
            record.price = pack.price;
            record.leadDays = known == packs->end() ? PackOffer {}.leadDays
                                                    : known->leadDays.value_or(PackOffer {}.leadDays);
            record.why = line.why;
            list.lines.push_back(std::move(record));
        }
    }
    if (list.lines.empty())
        return fail(ErrorCode::Refused, "There is nothing to buy on this list, so there is nothing to keep.");
    if (auto added = shop.store().addOrderList(list, shop.device()); !added)
        return tl::unexpected(added.error());
    return list.id;
}

Result<std::vector<KeptOrderList>> keptOrderLists(const Shop& shop, Moment asOf)
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto records = shop.store().orderLists();
    if (!records)
        return tl::unexpected(records.error());
    const auto events = shop.store().orderEvents();
    if (!events)
        return tl::unexpected(events.error());

    std::vector<KeptOrderList> lists;
    for (const OrderListRecord& record : *records) {
        if (record.made > asOf)
            continue;
        KeptOrderList& list = lists.emplace_back(
            KeptOrderList { record.id, record.month, record.made, record.servicePercent, {} });
        for (const OrderLineRecord& line : record.lines) {
            const MaterialRecord* material = catalogue->material(line.material);
            KeptOrderLine kept;
            kept.record = line;
            kept.materialName = material ? material->name : std::string();
            kept.wanted = line.pieces;
            list.lines.push_back(std::move(kept));
        }
    }
    if (lists.empty())
        return lists;
    std::unordered_map<OrderLineId, KeptOrderLine*> byId;
    for (KeptOrderList& list : lists) {
        for (KeptOrderLine& line : list.lines)
            byId.emplace(line.record.id, &line);
    }
    for (const OrderEventRecord& event : *events) {
        if (const auto line = byId.find(event.line); line != byId.end() && event.at <= asOf)
            apply(event, *line->second);
    }
    std::vector<KeptOrderLine*> ordered;
    for (KeptOrderList& list : lists) {
        for (KeptOrderLine& line : list.lines) {
            if (line.orderedAt)
                ordered.push_back(&line);
        }
    }
    auto came = whatCame(shop, *catalogue, asOf);
    if (!came)
        return tl::unexpected(came.error());
    settle(std::move(ordered), *came, asOf);
    return lists;
}

Result<void> changeOrder(Shop& shop, const std::vector<OrderLineId>& lines, OrderEventKind kind,
    std::optional<int> pieces, ActTime time)
{
    if (time.at > time.now)
        return fail(
            ErrorCode::BadInput, "An order cannot be noted for a time to come; give a time up to now.");
    if ((kind == OrderEventKind::Counted) != pieces.has_value()
        || (pieces && (*pieces < 0 || *pieces > 10'000)))
        return fail(ErrorCode::BadInput, "Give how many packs are wanted, from 0 to 10000.");
    return shop.store().transact([&]() -> Result<void> {
        const auto lists = keptOrderLists(shop, time.now);
        if (!lists)
            return tl::unexpected(lists.error());
        std::vector<OrderEventRecord> events;
        for (const OrderLineId& id : lines) {
            const KeptOrderLine* found = nullptr;
            for (const KeptOrderList& list : *lists) {
                for (const KeptOrderLine& line : list.lines)
                    found = line.record.id == id ? &line : found;
            }
            if (!found)
                return fail(ErrorCode::NotFound, "There is no such line on any order list.");
            if (auto hindered = hinders(*found, kind))
                return tl::unexpected(*hindered);
            events.push_back(
                { OrderEventId { newUuid() }, id, kind, pieces, time.at, time.now, shop.device() });
        }
        return shop.store().appendOrderEvents(events);
    });
}

Result<std::vector<KeptOrderLine>> orderLinesOf(
    const Shop& shop, const std::string& list, const std::string& supplier, Moment asOf)
{
    const auto lists = keptOrderLists(shop, asOf);
    if (!lists)
        return tl::unexpected(lists.error());
    const auto found = std::find_if(lists->begin(), lists->end(), [&](const KeptOrderList& each) {
        return each.id.text == list || formatDate(each.month).starts_with(list);
    });
    if (list.empty() || found == lists->end())
        return fail(ErrorCode::NotFound,
            "There is no order list " + inQuotes(list) + "; \"orders\" names those there are.");
    std::vector<KeptOrderLine> lines;
    for (const KeptOrderLine& line : found->lines) {
        if (supplier.empty() || line.record.supplier == supplier)
            lines.push_back(line);
    }
    if (lines.empty())
        return fail(ErrorCode::NotFound, "Nothing on that list is from " + inQuotes(supplier) + ".");
    return lines;
}

Result<std::multimap<MaterialId, OnOrder>> onOrder(const Shop& shop, Moment asOf)
{
    const auto lists = keptOrderLists(shop, asOf);
    if (!lists)
        return tl::unexpected(lists.error());
    std::multimap<MaterialId, OnOrder> open;
    for (const KeptOrderList& list : *lists) {
        for (const KeptOrderLine& line : list.lines) {
            if (!isOpen(line))
                continue;
            Amount amount = line.record.amount;
            amount.milli *= line.wanted - line.arrived;
            open.emplace(line.record.material, OnOrder { amount, *line.due, line.state == OrderState::Late });
        }
    }
    return open;
}

Result<std::vector<OrderHappened>> whatHappened(const Shop& shop, const KeptOrderList& list, Moment asOf)
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto history = useHistory(shop, *catalogue, addMonths(list.month, 1), asOf);
    if (!history)
        return tl::unexpected(history.error());
    std::vector<OrderHappened> all;
    for (const KeptOrderLine& line : list.lines) {
        auto found = std::find_if(all.begin(), all.end(),
            [&](const OrderHappened& each) { return each.material == line.record.material; });
        if (found == all.end()) {
            found = all.insert(all.end(), OrderHappened {});
            found->material = line.record.material;
            found->materialName = line.materialName;
            found->need = line.record.need;
            found->used = Amount { 0, line.record.need.dimension };
            for (const MonthTaking& taking : history->months) {
                if (taking.material == line.record.material && taking.month + 1 == UseHistory::monthsLearned)
                    found->used.milli += std::llround(taking.amount * 1000);
            }
        }
        found->wanted += line.wanted;
        found->arrived += line.arrived;
        found->text = happenedText(*found, line.lateDays, shop.units());
    }
    return all;
}

} // namespace gw
