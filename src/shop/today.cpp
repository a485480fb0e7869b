#include "shop/shelf.h"

#include <algorithm>

namespace gw {

namespace {

/// How far ahead a container going off is worth saying today.
constexpr Days soon { 30 };
/// Below this share of what it held, a container counts as nearly empty.
constexpr double nearlyEmpty = 0.1;

std::string firstReason(const ShelfItem& item)
{
    return item.judgement.reasons.empty() ? std::string() : item.judgement.reasons.front().text;
}

std::optional<TodayItem> wanting(const ShelfItem& item, Moment asOf)
{
    TodayItem todo;
    todo.title = item.materialName;
    todo.container = item.id;
    todo.label = item.label;
    todo.verdict = item.judgement.verdict;
    todo.when = item.judgement.goodUntil;

    if (item.onHold) {
        todo.kind = TodayItem::Kind::OnHold;
        todo.text = firstReason(item);
        return todo;
    }
    if (item.left.milli <= 0) {
        todo.kind = TodayItem::Kind::NothingLeft;
        todo.text = "Nothing is left in it; retire it, and see the order list.";
        return todo;
    }
    switch (item.judgement.verdict) {
    case Verdict::DoNotUse:
        todo.kind = TodayItem::Kind::DoNotUse;
        todo.text = firstReason(item);
        return todo;
    case Verdict::NotKnown:
        todo.kind = TodayItem::Kind::NotKnown;
        todo.text = firstReason(item);
        return todo;
    case Verdict::TestFirst:
        todo.kind = TodayItem::Kind::TestFirst;
        todo.text = firstReason(item);
        return todo;
    case Verdict::Good:
        break;
    }
    if (item.judgement.goodUntil && daysBetween(asOf, *item.judgement.goodUntil) <= soon) {
        todo.kind = TodayItem::Kind::GoingOff;
        todo.text = "Good until " + spokenDate(dateOf(*item.judgement.goodUntil)) + "; use it first.";
        return todo;
    }
    if (item.level() < nearlyEmpty) {
        todo.kind = TodayItem::Kind::NothingLeft;
        todo.text = "Nearly empty: " + formatAmount(item.left) + " left.";
        return todo;
    }
    return std::nullopt;
}

} // namespace

Result<Today> today(const Shop& shop, Moment asOf)
{
    auto items = shelf(shop, { asOf, {}, {}, {}, false, true });
    if (!items)
        return tl::unexpected(items.error());

    Today day;
    day.asOf = asOf;
    day.containers = static_cast<int>(items->size());
    for (const ShelfItem& item : *items) {
        ++day.counts[item.judgement.verdict];
        if (auto todo = wanting(item, asOf))
            day.items.push_back(std::move(*todo));
    }
    // Soonest first among what is still good; the shelf's own order otherwise.
    std::stable_sort(day.items.begin(), day.items.end(), [](const TodayItem& a, const TodayItem& b) {
        return static_cast<int>(a.kind) < static_cast<int>(b.kind);
    });
    return day;
}

} // namespace gw
