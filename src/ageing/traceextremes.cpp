#include "ageing/traceextremes.h"

#include <algorithm>
#include <bit>

namespace gw {

namespace {

constexpr std::size_t blockSize = 64;

} // namespace

TraceExtremes::TraceExtremes(std::span<const std::int16_t> values) { grow(values); }

void TraceExtremes::grow(std::span<const std::int16_t> values)
{
    const std::size_t blocks = values.size() / blockSize;
    m_rest = { INT16_MAX, INT16_MIN };
    for (const std::int16_t value : values.subspan(blocks * blockSize))
        m_rest = { std::min(m_rest.low, value), std::max(m_rest.high, value) };
    if (blocks == 0)
        return;
    if (m_levels.empty())
        m_levels.emplace_back();
    for (std::size_t block = m_levels[0].size(); block < blocks; ++block) {
        const std::int16_t* const first = values.data() + block * blockSize;
        std::int16_t low = first[0];
        std::int16_t high = first[0];
        for (std::size_t i = 1; i < blockSize; ++i) {
            low = first[i] < low ? first[i] : low;
            high = first[i] > high ? first[i] : high;
        }
        m_levels[0].push_back({ low, high });
    }
    for (std::size_t level = 1; std::size_t { 1 } << level <= blocks; ++level) {
        if (level == m_levels.size())
            m_levels.emplace_back();
        const std::size_t half = std::size_t { 1 } << (level - 1);
        const auto& below = m_levels[level - 1];
        auto& here = m_levels[level];
        for (std::size_t i = here.size(); i + 2 * half <= blocks; ++i)
            here.push_back({ std::min(below[i].low, below[i + half].low),
                std::max(below[i].high, below[i + half].high) });
    }
}

Range<std::int16_t> TraceExtremes::between(
    std::span<const std::int16_t> values, std::size_t from, std::size_t end) const
{
    std::int16_t low = values[from];
    std::int16_t high = values[from];
    const auto see = [&](std::size_t first, std::size_t last) {
        const std::int16_t* const all = values.data();
        for (std::size_t i = first; i < last; ++i) {
            low = all[i] < low ? all[i] : low;
            high = all[i] > high ? all[i] : high;
        }
    };
    const std::size_t first = (from + blockSize - 1) / blockSize;
    const std::size_t last = end / blockSize;
    if (first >= last) {
        see(from, end);
        return { low, high };
    }
    see(from, first * blockSize);
    see(last * blockSize, end);
    const auto level = static_cast<std::size_t>(std::bit_width(last - first)) - 1;
    const auto& row = m_levels[level];
    const Extremes& a = row[first];
    const Extremes& b = row[last - (std::size_t { 1 } << level)];
    return { std::min({ low, a.low, b.low }), std::max({ high, a.high, b.high }) };
}

Range<std::int16_t> TraceExtremes::around(
    std::span<const std::int16_t> values, std::size_t from, std::size_t end) const
{
    const std::size_t blocks = values.size() / blockSize;
    const std::size_t first = from / blockSize;
    const std::size_t last = std::min((end + blockSize - 1) / blockSize, blocks);
    Range<std::int16_t> range { INT16_MAX, INT16_MIN };
    if (end > blocks * blockSize)
        range = { m_rest.low, m_rest.high };
    if (first < last) {
        const auto whole = between(values, first * blockSize, last * blockSize);
        range = { std::min(range.low, whole.low), std::max(range.high, whole.high) };
    }
    return range;
}

std::optional<std::size_t> TraceExtremes::firstAbove(
    std::span<const std::int16_t> values, std::size_t from, std::size_t end, double limit) const
{
    while (from < end) {
        const std::size_t block = from / blockSize;
        if (from % blockSize != 0 || m_levels.empty() || block >= m_levels[0].size()
            || m_levels[0][block].high > limit) {
            if (values[from] > limit)
                return from;
            ++from;
            continue;
        }
        // As many blocks as are known to stay below it.
        std::size_t level = 0;
        while (level + 1 < m_levels.size() && block < m_levels[level + 1].size()
            && m_levels[level + 1][block].high <= limit)
            ++level;
        from += blockSize << level;
    }
    return std::nullopt;
}

} // namespace gw
