#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace gw {

/// The times of a row of readings: whole seconds since 1970, each later than the one before. A logger's even
/// steps are kept as stretches, so that years of them take no room, and any moment is found in them by a
/// division. Uneven ones are kept one by one.
class Times {
public:
    std::size_t size() const { return m_size; }
    bool empty() const { return m_size == 0; }
    std::int64_t front() const { return m_stretches.front().first; } ///< not empty
    std::int64_t back() const { return m_back; } ///< 0 when empty
    std::int64_t operator[](std::size_t i) const;

    /// False, and nothing added, for a time that is not later than all that are there.
    bool append(std::int64_t second);
    /// So many times from a first one on, a step apart; step and count above 0. False as for one.
    bool appendEven(std::int64_t first, std::int64_t step, std::size_t count);

    /// How many are not later than a second: the index of the first later one.
    std::size_t countUpTo(std::int64_t second) const;
    /// One of the times, with the step to the next: 0 at the last.
    struct Spot {
        std::size_t index = 0;
        std::int64_t second = 0;
        std::int64_t step = 0;
    };
    /// The last that is not later than a second. Not empty; a second before the first is taken for it.
    Spot spotUpTo(std::int64_t second) const;
    /// The one step between all from one index to another (from < to < size()); 0 where they are uneven, or
    /// are not known to be even.
    std::int64_t evenStep(std::size_t from, std::size_t to) const;
    /// Those from one index up to, but not with, another.
    void copy(std::size_t from, std::size_t end, std::int64_t* into) const;

    /// Calls visit(index, step, steps) for steps that are alike, one after the other: the first goes from
    /// that index to the next. Beginning at an index.
    template <class Visit> void eachStep(std::size_t from, Visit visit) const
    {
        for (std::size_t s = stretchOf(from); s < m_stretches.size(); ++s) {
            const std::size_t end = endOf(s);
            if (m_stretches[s].step > 0 && from + 1 < end) {
                visit(from, m_stretches[s].step, end - 1 - from);
                from = end - 1;
            }
            for (; from < end && from + 1 < m_size; ++from)
                visit(from, (*this)[from + 1] - (*this)[from], std::size_t { 1 });
        }
    }

private:
    /// Even from `first` on, or uneven and kept from m_uneven[offset] on.
    struct Stretch {
        std::size_t index; ///< of its first time
        std::int64_t first;
        std::int64_t step; ///< 0: uneven
        std::size_t offset;
    };
    std::size_t endOf(std::size_t stretch) const
    {
        return stretch + 1 < m_stretches.size() ? m_stretches[stretch + 1].index : m_size;
    }
    std::size_t stretchOf(std::size_t index) const; ///< m_stretches.size() when empty
    std::size_t stretchAt(std::int64_t second) const; ///< not before the first
    std::size_t indexIn(std::size_t stretch, std::int64_t second) const; ///< the last not later, within it
    std::int64_t timeIn(std::size_t stretch, std::size_t index) const;
    void evenOut();

    std::vector<Stretch> m_stretches;
    std::vector<std::int64_t> m_uneven; ///< the last stretch's are at its end
    std::size_t m_size = 0;
    std::int64_t m_back = 0;
    std::int64_t m_lastStep = 0; ///< within an uneven last stretch, with how many of it there are at its end
    std::size_t m_lastSteps = 0;
};

} // namespace gw
