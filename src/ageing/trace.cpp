#include "ageing/trace.h"

#include <algorithm>
#include <cmath>

namespace gw {

namespace {

constexpr std::uint8_t noHumidity = 255;
constexpr std::chrono::seconds shortestGap = std::chrono::hours { 6 };
constexpr int usualIntervals = 3;

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

void Trace::reserve(std::size_t count)
{
    m_seconds.reserve(count);
    m_hundredths.reserve(count);
}

bool Trace::append(const Reading& reading)
{
    const std::int64_t second = wholeSeconds(reading.at);
    if (!m_seconds.empty() && second <= m_seconds.back())
        return false;
    if (!m_seconds.empty() && second - m_seconds.back() <= shortestGap.count() / usualIntervals)
        ++m_shortSteps;
    m_seconds.push_back(second);
    m_hundredths.push_back(static_cast<std::int16_t>(
        std::lround(std::clamp(reading.temperature.value * 100, -32767.0, 32767.0))));
    if (reading.humidity || !m_halfPercents.empty()) {
        m_halfPercents.resize(m_seconds.size(), noHumidity);
        if (reading.humidity)
            m_halfPercents.back() = static_cast<std::uint8_t>(std::lround(*reading.humidity * 2));
    }
    return true;
}

std::optional<double> Trace::humidity(std::size_t i) const
{
    if (i >= m_halfPercents.size() || m_halfPercents[i] == noHumidity)
        return std::nullopt;
    return m_halfPercents[i] / 2.0;
}

std::size_t Trace::countUpTo(Moment moment) const
{
    const std::int64_t second = wholeSeconds(moment);
    if (m_seconds.empty() || second < m_seconds.front())
        return 0;
    return second >= m_seconds.back() ? m_seconds.size() : countUpTo(moment, 0, m_seconds.size() - 1);
}

std::size_t Trace::countUpTo(Moment moment, std::size_t low, std::size_t high) const
{
    const std::int64_t second = wholeSeconds(moment);
    // A logger's readings are even: the one looked for is near where it would be were all of them so.
    const double share = static_cast<double>(second - m_seconds[low])
        / static_cast<double>(m_seconds[high] - m_seconds[low]);
    std::size_t at = low + static_cast<std::size_t>(share * static_cast<double>(high - low));
    at = std::clamp(at, low, high - 1);
    // From there outwards by doubling steps: low <= moment < high throughout.
    if (m_seconds[at] <= second) {
        low = at;
        for (std::size_t reach = 1; low + reach < high; reach *= 2) {
            if (m_seconds[low + reach] > second) {
                high = low + reach;
                break;
            }
            low += reach;
        }
    } else {
        high = at;
        for (std::size_t reach = 1; low + reach < high; reach *= 2) {
            if (m_seconds[high - reach] <= second) {
                low = high - reach;
                break;
            }
            high -= reach;
        }
    }
    const auto begin = m_seconds.begin();
    return static_cast<std::size_t>(std::upper_bound(begin + static_cast<std::ptrdiff_t>(low),
                                        begin + static_cast<std::ptrdiff_t>(high), second)
        - begin);
}

std::optional<std::chrono::seconds> Trace::usualInterval() const
{
    if (m_seconds.size() < 2)
        return std::nullopt;
    std::vector<std::int64_t> steps(m_seconds.size() - 1);
    for (std::size_t i = 0; i + 1 < m_seconds.size(); ++i)
        steps[i] = m_seconds[i + 1] - m_seconds[i];
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    return std::chrono::seconds { *middle };
}

std::chrono::seconds Trace::longestWatched() const
{
    // Where most steps are short so is the median, and the shortest gap is the answer.
    if (m_shortSteps * 2 >= m_seconds.size())
        return shortestGap;
    const auto usual = usualInterval();
    return usual ? std::max(shortestGap, usualIntervals * *usual) : shortestGap;
}

} // namespace gw
