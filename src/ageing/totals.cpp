#include "ageing/totals.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace gw {

namespace {

constexpr std::size_t blockSize = 64;
constexpr double secondsPerDay = 86400;
constexpr std::int16_t room = 500; // hundredths a table reaches past what it was asked to cover

std::int16_t within(int hundredths)
{
    return static_cast<std::int16_t>(std::clamp<int>(hundredths, INT16_MIN, INT16_MAX));
}

/// One over the difference of two hundredths, and 0 for none: steps between readings are small, and so no
/// division and no branch on them is needed.
constexpr int commonStep = 511;
constexpr auto oneOver = [] {
    std::array<double, 2 * commonStep + 1> shares {};
    for (int step = -commonStep; step <= commonStep; ++step)
        shares[static_cast<std::size_t>(step + commonStep)] = step == 0 ? 0.0 : 1.0 / step;
    return shares;
}();

} // namespace

Speed clockSpeed(const Rate& rate, double warmer)
{
    return { [=](Celsius t) { return speedAt({ t.value + warmer }, rate); },
        [=](Celsius a, Celsius b) { return meanSpeed({ a.value + warmer }, { b.value + warmer }, rate); } };
}

Speed timeAbove(Celsius limit)
{
    const auto at = [=](Celsius t) { return t > limit ? 1.0 : 0.0; };
    const auto mean = [=](Celsius a, Celsius b) {
        const double low = std::min(a.value, b.value);
        const double high = std::max(a.value, b.value);
        if (high <= limit.value || low > limit.value || low == high)
            return at(b) * at(a);
        return (high - std::max(low, limit.value)) / (high - low);
    };
    return { at, mean };
}

Speed temperatureItself()
{
    return { [](Celsius t) { return t.value; },
        [](Celsius a, Celsius b) { return (a.value + b.value) / 2; } };
}

SpeedTable::SpeedTable(Speed speed, std::int16_t low, std::int16_t high)
    : m_speed(std::move(speed))
    , m_low(within(low - room))
{
    fill(within(high + room));
}

void SpeedTable::fill(std::int16_t high)
{
    m_points.assign(index(high) + 1, {});
    double integral = 0;
    Celsius here { m_low / 100.0 };
    for (std::size_t i = 0; i < m_points.size(); ++i) {
        m_points[i] = { integral, m_speed.at(here) };
        const Celsius next { (m_low + static_cast<int>(i) + 1) / 100.0 };
        integral += m_speed.mean(here, next);
        here = next;
    }
}

bool SpeedTable::covers(std::int16_t hundredths) const
{
    return hundredths >= m_low && index(hundredths) < m_points.size();
}

void SpeedTable::cover(std::int16_t hundredths)
{
    if (covers(hundredths))
        return;
    const int high = m_low + static_cast<int>(m_points.size()) - 1;
    m_low = within(std::min<int>(m_low, hundredths - room));
    fill(within(std::max<int>(high, hundredths + room)));
}

double SpeedTable::mean(std::int16_t from, std::int16_t to) const
{
    const Point& a = m_points[index(from)];
    const Point& b = m_points[index(to)];
    const int step = to - from;
    if (static_cast<unsigned>(step + commonStep) <= 2 * commonStep)
        return (b.integral - a.integral) * oneOver[static_cast<std::size_t>(step + commonStep)]
            + a.speed * static_cast<double>(step == 0);
    return (b.integral - a.integral) / step;
}

double SpeedTable::integral(std::int16_t from, double to) const
{
    const auto below = static_cast<std::int16_t>(std::floor(to));
    const double whole = m_points[index(below)].integral - m_points[index(from)].integral;
    const double rest = to - below;
    return rest > 0 ? whole + rest * m_speed.mean({ below / 100.0 }, { to / 100 }) : whole;
}

Totals::Totals(Speed speed, const Trace& trace, std::int64_t longestWatched)
    : m_table([&] {
        const auto values = trace.hundredths();
        const auto [low, high] = std::minmax_element(values.begin(), values.end());
        return SpeedTable(std::move(speed), *low, *high);
    }())
    , m_longest(longestWatched)
{
    m_totals.reserve(trace.size() / blockSize + 1);
    m_totals.push_back(0);
    grow(trace);
}

void Totals::grow(const Trace& trace)
{
    for (std::size_t i = m_size; i < trace.size(); ++i)
        m_table.cover(trace.hundredths()[i]);
    m_size = trace.size();
    for (std::size_t from = (m_totals.size() - 1) * blockSize; from + blockSize < m_size; from += blockSize)
        m_totals.push_back(m_totals.back() + block(trace, from, from + blockSize));
}

/// Seconds times speed from one reading to another.
double Totals::block(const Trace& trace, std::size_t from, std::size_t end) const
{
    const auto* const seconds = trace.seconds().data();
    const auto* const values = trace.hundredths().data();
    double sum = 0;
    for (std::size_t i = from; i < end; ++i) {
        const std::int64_t step = seconds[i + 1] - seconds[i];
        if (step <= m_longest)
            sum += static_cast<double>(step) * m_table.mean(values[i], values[i + 1]);
    }
    return sum;
}

double Totals::upTo(const Trace& trace, std::size_t index, double secondsPast) const
{
    const std::size_t whole = index / blockSize;
    double sum = m_totals[whole] + block(trace, whole * blockSize, index);
    if (secondsPast > 0 && index + 1 < trace.size()) {
        const std::int64_t step = trace.seconds()[index + 1] - trace.seconds()[index];
        if (step <= m_longest) {
            const std::int16_t a = trace.hundredths()[index];
            const int rise = trace.hundredths()[index + 1] - a;
            const double slope = rise / static_cast<double>(step);
            sum += rise == 0 ? secondsPast * m_table.at(a)
                             : m_table.integral(a, a + slope * secondsPast) / slope;
        }
    }
    return sum / secondsPerDay;
}

} // namespace gw
