#include "gluing/partstock.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <tuple>

#include "gluing/sentences.h"

namespace gw {

namespace {

std::chrono::sys_days lastDay(const StockItem& item)
{
    return item.goodUntil ? std::chrono::floor<std::chrono::days>(*item.goodUntil)
                          : std::chrono::sys_days::max();
}

bool usedBefore(const StockItem* a, const StockItem* b)
{
    const auto key = [](const StockItem& item) {
        return std::tuple(lastDay(item), !item.opened, item.goodUntil.value_or(Moment::max()),
            item.left.milli, item.label, item.container.text);
    };
    return key(*a) < key(*b);
}

Verdict verdictNow(const StockItem& item, Moment now)
{
    if (item.verdict == Verdict::Good && item.goodUntil && *item.goodUntil < now)
        return Verdict::NotKnown;
    return item.verdict;
}

std::string whyTaken(const StockItem& item, bool first, bool openedWins)
{
    if (!item.goodUntil)
        return "fit, with no date it goes off by";
    if (openedWins)
        return "opened already, and goes off no later than the unopened";
    return first ? "first to go off that is fit" : "next to go off";
}

} // namespace

PartState PartStock::state() const
{
    if (goodLeft >= wanted)
        return PartState::Covered;
    if (goodLeft + toTestLeft >= wanted)
        return PartState::CoveredOnceTested;
    if (goodLeft + toTestLeft + unknownLeft >= wanted)
        return PartState::CoveredPerhaps;
    if (goodLeft + toTestLeft + unknownLeft > 0)
        return PartState::Short;
    return spent.empty() ? PartState::None : PartState::Spent;
}

PartStock sortPart(const StockPart& part, Amount need, Moment now)
{
    PartStock stock;
    stock.part = &part;
    // Without an estimate there must still be something there to take.
    stock.wanted
        = std::max<std::int64_t>(1, amountOf(need.value() * part.sharePerUnit, part.dimension).milli);

    for (const StockItem& item : part.items) {
        const bool countable = item.left.dimension == part.dimension;
        if (item.left.milli <= 0)
            continue;
        const Verdict verdict = verdictNow(item, now);
        if (verdict == Verdict::DoNotUse) {
            stock.spent.push_back(&item);
        } else if (!countable || verdict == Verdict::NotKnown) {
            stock.unknown.push_back(&item);
            stock.unknownLeft += countable ? item.left.milli : stock.wanted;
        } else if (verdict == Verdict::TestFirst) {
            stock.toTest.push_back(&item);
            stock.toTestLeft += item.left.milli;
        } else {
            stock.good.push_back(&item);
            stock.goodLeft += item.left.milli;
        }
    }
    for (auto* items : { &stock.good, &stock.toTest, &stock.unknown, &stock.spent })
        std::sort(items->begin(), items->end(), usedBefore);
    return stock;
}

std::vector<Take> takesOf(const PartStock& stock)
{
    std::vector<Take> takes;
    std::int64_t wanted = stock.wanted;
    for (std::size_t i = 0; i < stock.good.size() && wanted > 0; ++i) {
        const StockItem& item = *stock.good[i];
        const std::int64_t taken = std::min(wanted, item.left.milli);
        wanted -= taken;
        const bool openedWins = item.opened && i + 1 < stock.good.size() && !stock.good[i + 1]->opened
            && lastDay(*stock.good[i + 1]) == lastDay(item);
        takes.push_back({ item.container, item.label, { taken, stock.part->dimension },
            whyTaken(item, i == 0, openedWins) });
    }
    return takes;
}

std::string labelsToReach(const PartStock& stock, const std::vector<const StockItem*>& items)
{
    std::vector<std::string> labels;
    std::int64_t wanted = stock.shortfall();
    for (const StockItem* item : items) {
        if (wanted <= 0)
            break;
        labels.push_back(item->label);
        wanted -= item->left.milli;
    }
    return listWords(labels);
}

} // namespace gw
