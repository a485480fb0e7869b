#include "ageing/times.h"

#include <algorithm>

namespace gw {

namespace {

constexpr std::size_t worthAStretch = 32; // even steps one after the other: a stretch takes the room of four

} // namespace

std::size_t Times::stretchOf(std::size_t index) const
{
    const auto next = std::partition_point(
        m_stretches.begin(), m_stretches.end(), [&](const Stretch& s) { return s.index <= index; });
    return next == m_stretches.begin() ? 0 : static_cast<std::size_t>(next - m_stretches.begin()) - 1;
}

std::size_t Times::stretchAt(std::int64_t second) const
{
    const auto next = std::partition_point(
        m_stretches.begin(), m_stretches.end(), [&](const Stretch& s) { return s.first <= second; });
    return next == m_stretches.begin() ? 0 : static_cast<std::size_t>(next - m_stretches.begin()) - 1;
}

std::int64_t Times::timeIn(std::size_t stretch, std::size_t index) const
{
    const Stretch& s = m_stretches[stretch];
    const std::size_t past = index - s.index;
    return s.step > 0 ? s.first + static_cast<std::int64_t>(past) * s.step : m_uneven[s.offset + past];
}

std::int64_t Times::operator[](std::size_t i) const { return timeIn(stretchOf(i), i); }

std::size_t Times::indexIn(std::size_t stretch, std::int64_t second) const
{
    const Stretch& s = m_stretches[stretch];
    const std::size_t last = endOf(stretch) - 1;
    if (s.step > 0)
        return std::min(last, s.index + static_cast<std::size_t>((second - s.first) / s.step));
    const auto begin = m_uneven.begin() + static_cast<std::ptrdiff_t>(s.offset);
    const auto next
        = std::upper_bound(begin, begin + static_cast<std::ptrdiff_t>(last + 1 - s.index), second);
    return s.index + static_cast<std::size_t>(next - begin) - 1;
}

std::size_t Times::countUpTo(std::int64_t second) const
{
    if (m_size == 0 || second < m_stretches.front().first)
        return 0;
    return indexIn(stretchAt(second), second) + 1;
}

Times::Spot Times::spotUpTo(std::int64_t second) const
{
    const std::size_t stretch = stretchAt(second);
    const std::size_t index = indexIn(stretch, std::max(second, m_stretches.front().first));
    const std::int64_t at = timeIn(stretch, index);
    if (index + 1 == m_size)
        return { index, at, 0 };
    const bool within = index + 1 < endOf(stretch);
    return { index, at, (within ? timeIn(stretch, index + 1) : m_stretches[stretch + 1].first) - at };
}

std::int64_t Times::evenStep(std::size_t from, std::size_t to) const
{
    const std::size_t stretch = stretchOf(from);
    return to < endOf(stretch) ? m_stretches[stretch].step : 0;
}

void Times::copy(std::size_t from, std::size_t end, std::int64_t* into) const
{
    for (std::size_t stretch = stretchOf(from); from < end; ++stretch) {
        for (const std::size_t last = std::min(end, endOf(stretch)); from < last; ++from)
            *into++ = timeIn(stretch, from);
    }
}

bool Times::append(std::int64_t second)
{
    if (m_size > 0 && second <= m_back)
        return false;
    if (m_size == 0 || m_stretches.back().step > 0) {
        if (m_size > 0 && second - m_back == m_stretches.back().step) {
            ++m_size;
            m_back = second;
            return true;
        }
        m_stretches.push_back({ m_size, second, 0, m_uneven.size() });
        m_lastSteps = 0;
    } else if (const std::int64_t step = second - m_back; m_lastSteps > 0 && step == m_lastStep) {
        ++m_lastSteps;
    } else {
        m_lastStep = step;
        m_lastSteps = 1;
    }
    m_uneven.push_back(second);
    ++m_size;
    m_back = second;
    if (m_lastSteps == worthAStretch)
        evenOut();
    return true;
}

/// The last times of an uneven stretch turned out to be even.
void Times::evenOut()
{
    const std::size_t count = m_lastSteps + 1;
    const std::size_t index = m_size - count;
    const std::int64_t first = m_uneven[m_uneven.size() - count];
    m_uneven.resize(m_uneven.size() - count);
    if (m_stretches.back().index == index)
        m_stretches.pop_back();
    m_stretches.push_back({ index, first, m_lastStep, 0 });
    m_lastSteps = 0;
}

bool Times::appendEven(std::int64_t first, std::int64_t step, std::size_t count)
{
    if (m_size > 0 && first <= m_back)
        return false;
    const bool goesOn = m_size > 0 && m_stretches.back().step == step && m_back + step == first;
    if (!goesOn && count <= worthAStretch) {
        for (std::size_t i = 0; i < count; ++i)
            append(first + static_cast<std::int64_t>(i) * step);
        return true;
    }
    if (!goesOn)
        m_stretches.push_back({ m_size, first, step, 0 });
    m_size += count;
    m_back = first + static_cast<std::int64_t>(count - 1) * step;
    m_lastSteps = 0;
    return true;
}

} // namespace gw
