#include "shop/shelf.h"

#include <algorithm>

#include "shop/climateasof.h"
#include "shop/tonight.h"

namespace gw {

namespace {

/// How far ahead a container going off is worth saying today.
constexpr Days soon { 30 };
/// Below this share of what it held, a container counts as nearly empty.
constexpr double nearlyEmpty = 0.1;
constexpr std::chrono::hours lastNight { 24 };
constexpr Celsius freezing { 0 };

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

/// Tonight's low of a place: as somebody said; else below freezing where it was in the night before.
Result<std::optional<Celsius>> lowTonight(
    const Shop& shop, const WatchedClimate& climate, const PlaceId& place, Moment asOf)
{
    auto said = expectedLow(shop, place, asOf);
    if (!said || *said)
        return said;
    const WatchedTrace* readings = climate.readings(place);
    const auto night = readings ? readings->extremes(asOf - lastNight, asOf) : std::nullopt;
    return night && night->low < freezing ? std::optional(night->low) : std::nullopt;
}

/// What freezes tonight where it stands, unless it is past use anyway; the most urgent first, in whatever
/// place.
Result<std::vector<TodayItem>> toBringIn(const Shop& shop, const std::vector<ShelfItem>& shelved, Moment asOf)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto climate = ClimateAsOf::of(shop, *catalogue, asOf);
    if (!climate)
        return tl::unexpected(climate.error());
    std::vector<std::pair<PlaceId, Celsius>> places;
    for (const auto& [id, place] : catalogue->places) {
        auto low = lowTonight(shop, **climate, id, asOf);
        if (!low)
            return tl::unexpected(low.error());
        if (*low)
            places.emplace_back(id, **low);
    }
    const auto nights = tonight(shop, places, asOf);
    if (!nights)
        return tl::unexpected(nights.error());
    std::vector<TodayItem> items;
    for (const auto& [place, container] : mostUrgentFirst(*nights)) {
        const auto item = std::ranges::find(shelved, container.container, &ShelfItem::id);
        if (item == shelved.end() || item->judgement.verdict == Verdict::DoNotUse
            || container.risk.harm == ColdHarm::BelowLimit)
            continue;
        items.push_back(
            { TodayItem::Kind::BringIn, container.materialName, "In " + place + " tonight: " + container.text,
                container.container, container.label, item->judgement.verdict, {} });
    }
    return items;
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
    auto cold = toBringIn(shop, *items, asOf);
    if (!cold)
        return tl::unexpected(cold.error());
    day.items.insert(day.items.end(), cold->begin(), cold->end());
    // Soonest first among what is still good; the shelf's own order otherwise.
    std::stable_sort(day.items.begin(), day.items.end(), [](const TodayItem& a, const TodayItem& b) {
        return static_cast<int>(a.kind) < static_cast<int>(b.kind);
    });
    return day;
}

} // namespace gw
