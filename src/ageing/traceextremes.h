#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "measure/range.h"

namespace gw {

/// Lowest and highest of any stretch of a row of whole numbers that only grows: extremes of every block of
/// 64, and from every block on of two, four, eight ... blocks, so that two look-ups span any number of them.
/// The row itself is handed in with each call and must be the one appended.
class TraceExtremes {
public:
    TraceExtremes() = default;
    explicit TraceExtremes(std::span<const std::int16_t> values);
    /// Takes in a row that has grown at its end.
    void grow(std::span<const std::int16_t> values);
    /// Of values[from] to values[end - 1]; from < end <= values.size().
    Range<std::int16_t> between(
        std::span<const std::int16_t> values, std::size_t from, std::size_t end) const;
    /// The same in bounds: of the whole blocks that hold them.
    Range<std::int16_t> around(std::span<const std::int16_t> values, std::size_t from, std::size_t end) const;
    /// The first index from `from` on, before end, whose value is above the limit; none when there is none.
    std::optional<std::size_t> firstAbove(
        std::span<const std::int16_t> values, std::size_t from, std::size_t end, double limit) const;

private:
    struct Extremes {
        std::int16_t low;
        std::int16_t high;
    };
    std::vector<std::vector<Extremes>> m_levels; ///< of 2^level blocks, from each block on
    Extremes m_rest { INT16_MAX, INT16_MIN }; ///< of the values after the last whole block
};

} // namespace gw
