#include "ageing/trace.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace gw {

namespace {

constexpr std::uint8_t noHumidity = 255;
constexpr std::chrono::seconds shortestGap = std::chrono::hours { 6 };
constexpr int usualIntervals = 3;
constexpr std::int64_t longestShortStep = shortestGap.count() / usualIntervals;

std::chrono::milliseconds medianOf(std::vector<std::chrono::milliseconds>& steps)
{
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    return *middle;
}

std::int64_t wholeSeconds(Moment at)
{
    return std::chrono::floor<std::chrono::seconds>(at).time_since_epoch().count();
}

} // namespace

std::chrono::milliseconds longestWatchedStep(std::vector<std::chrono::milliseconds> steps)
{
    if (steps.empty())
        return shortestGap;
    return std::max<std::chrono::milliseconds>(shortestGap, usualIntervals * medianOf(steps));
}

Trace::Trace(std::vector<Reading> readings)
{
    std::stable_sort(readings.begin(), readings.end(),
        [](const Reading& a, const Reading& b) { return wholeSeconds(a.at) < wholeSeconds(b.at); });
    reserve(readings.size());
    for (const Reading& reading : readings)
        append(reading);
}

void Trace::reserve(std::size_t count) { m_hundredths.reserve(count); }

bool Trace::append(const Reading& reading)
{
    const std::int64_t second = wholeSeconds(reading.at);
    const std::int64_t before = m_times.back();
    if (!m_times.append(second))
        return false;
    if (!m_hundredths.empty() && second - before <= longestShortStep)
        ++m_shortSteps;
    m_hundredths.push_back(static_cast<std::int16_t>(
        std::lround(std::clamp(reading.temperature.value * 100, -32767.0, 32767.0))));
    if (reading.humidity || !m_halfPercents.empty()) {
        m_halfPercents.resize(m_hundredths.size(), noHumidity);
        if (reading.humidity)
            m_halfPercents.back() = static_cast<std::uint8_t>(std::lround(*reading.humidity * 2));
    }
    return true;
}

/// Of the temperatures that were added just before.
void Trace::putHumidities(std::span<const std::uint8_t> halfPercents)
{
    if (!halfPercents.empty()) {
        m_halfPercents.resize(m_hundredths.size() - halfPercents.size(), noHumidity);
        m_halfPercents.insert(m_halfPercents.end(), halfPercents.begin(), halfPercents.end());
    } else if (!m_halfPercents.empty()) {
        m_halfPercents.resize(m_hundredths.size(), noHumidity);
    }
}

bool Trace::append(std::int64_t first, std::int64_t step, std::span<const std::int16_t> hundredths,
    std::span<const std::uint8_t> halfPercents)
{
    if (hundredths.empty())
        return halfPercents.empty();
    const std::int64_t before = m_times.back();
    if ((!halfPercents.empty() && halfPercents.size() != hundredths.size()) || step <= 0
        || !m_times.appendEven(first, step, hundredths.size()))
        return false;
    if (!m_hundredths.empty() && first - before <= longestShortStep)
        ++m_shortSteps;
    if (step <= longestShortStep)
        m_shortSteps += hundredths.size() - 1;
    m_hundredths.insert(m_hundredths.end(), hundredths.begin(), hundredths.end());
    putHumidities(halfPercents);
    return true;
}

bool Trace::append(std::span<const std::int64_t> seconds, std::span<const std::int16_t> hundredths,
    std::span<const std::uint8_t> halfPercents)
{
    if (seconds.size() != hundredths.size()
        || (!halfPercents.empty() && halfPercents.size() != hundredths.size())
        || std::adjacent_find(seconds.begin(), seconds.end(), std::greater_equal<>()) != seconds.end())
        return false;
    if (seconds.empty())
        return true;
    if (!empty() && seconds.front() <= m_times.back())
        return false;
    for (const std::int64_t second : seconds) {
        if (!m_times.empty() && second - m_times.back() <= longestShortStep)
            ++m_shortSteps;
        m_times.append(second);
    }
    m_hundredths.insert(m_hundredths.end(), hundredths.begin(), hundredths.end());
    putHumidities(halfPercents);
    return true;
}

std::vector<std::int64_t> Trace::seconds() const
{
    std::vector<std::int64_t> seconds(size());
    m_times.copy(0, size(), seconds.data());
    return seconds;
}

std::optional<double> Trace::humidity(std::size_t i) const
{
    if (i >= m_halfPercents.size() || m_halfPercents[i] == noHumidity)
        return std::nullopt;
    return m_halfPercents[i] / 2.0;
}

std::size_t Trace::countUpTo(Moment moment) const { return m_times.countUpTo(wholeSeconds(moment)); }

std::optional<std::chrono::seconds> Trace::usualInterval() const
{
    if (size() < 2)
        return std::nullopt;
    std::vector<std::int64_t> steps;
    steps.reserve(size() - 1);
    m_times.eachStep(0,
        [&](std::size_t, std::int64_t step, std::size_t count) { steps.insert(steps.end(), count, step); });
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    return std::chrono::seconds { *middle };
}

std::chrono::seconds Trace::longestWatched() const
{
    // Where most steps are short so is the median, and the shortest gap is the answer.
    if (m_shortSteps * 2 >= size())
        return shortestGap;
    const auto usual = usualInterval();
    return usual ? std::max(shortestGap, usualIntervals * *usual) : shortestGap;
}

} // namespace gw
