#include "ageing/traceextremes.h"

#include <algorithm>

namespace gw {

namespace {

constexpr std::size_t fan = 64;

} // namespace

TraceExtremes::TraceExtremes(std::span<const std::int16_t> values)
    : m_size(values.size())
{
    std::span<const std::int16_t> lows = values;
    std::span<const std::int16_t> highs = values;
    while (!values.empty() && (m_levels.empty() || lows.size() > 1)) {
        Level level;
        for (std::size_t from = 0; from < lows.size(); from += fan) {
            const std::size_t end = std::min(from + fan, lows.size());
            std::int16_t low = lows[from];
            std::int16_t high = highs[from];
            for (std::size_t i = from + 1; i < end; ++i) {
                low = std::min(low, lows[i]);
                high = std::max(high, highs[i]);
            }
            level.low.push_back(low);
            level.high.push_back(high);
        }
        m_levels.push_back(std::move(level));
        lows = m_levels.back().low;
        highs = m_levels.back().high;
    }
}

void TraceExtremes::append(std::int16_t value)
{
    std::size_t block = m_size++;
    for (std::size_t level = 0;; ++level) {
        block /= fan;
        if (level == m_levels.size()) {
            if (block == 0 && level > 0)
                return; // one block holds everything below
            // A level begins late: what is below it so far fills its blocks.
            Level& fresh = m_levels.emplace_back();
            if (level > 0) {
                const Level& below = m_levels[level - 1];
                fresh.low.push_back(*std::min_element(below.low.begin(), below.low.begin() + fan));
                fresh.high.push_back(*std::max_element(below.high.begin(), below.high.begin() + fan));
            }
        }
        Level& here = m_levels[level];
        if (block == here.low.size()) {
            here.low.push_back(value);
            here.high.push_back(value);
        } else {
            here.low[block] = std::min(here.low[block], value);
            here.high[block] = std::max(here.high[block], value);
        }
    }
}

Range<std::int16_t> TraceExtremes::between(
    std::span<const std::int16_t> values, std::size_t from, std::size_t end) const
{
    Range<std::int16_t> range { values[from], values[from] };
    const auto see = [&range](std::span<const std::int16_t> lows, std::span<const std::int16_t> highs,
                         std::size_t first, std::size_t last) {
        for (std::size_t i = first; i < last; ++i) {
            range.low = std::min(range.low, lows[i]);
            range.high = std::max(range.high, highs[i]);
        }
    };
    std::span<const std::int16_t> lows = values;
    std::span<const std::int16_t> highs = values;
    for (const Level& level : m_levels) {
        if (end - from <= 2 * fan)
            break;
        const std::size_t firstBlock = (from + fan - 1) / fan;
        const std::size_t lastBlock = end / fan;
        see(lows, highs, from, firstBlock * fan);
        see(lows, highs, lastBlock * fan, end);
        from = firstBlock;
        end = lastBlock;
        lows = level.low;
        highs = level.high;
    }
    see(lows, highs, from, end);
    return range;
}

std::optional<std::size_t> TraceExtremes::firstAbove(
    std::span<const std::int16_t> values, std::size_t from, std::size_t end, double limit) const
{
    while (from < end) {
        if (values[from] > limit)
            return from;
        std::size_t skip = 1;
        std::size_t size = 1;
        for (const Level& level : m_levels) {
            size *= fan;
            if (from % size != 0 || level.high[from / size] > limit)
                break;
            skip = size;
        }
        from += skip;
    }
    return std::nullopt;
}

} // namespace gw
