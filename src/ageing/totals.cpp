#include "ageing/totals.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace gw {

namespace {

constexpr std::size_t blockSize = PieceWeights::most;
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
        shares[std::size_t { commonStep } + static_cast<std::size_t>(step)] = step == 0 ? 0.0 : 1.0 / step;
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

void SpeedTable::cover(std::int16_t hundredths)
{
    if (hundredths >= m_low && index(hundredths) < m_points.size())
        return;
    const int high = m_low + static_cast<int>(m_points.size()) - 1;
    m_low = within(std::min<int>(m_low, hundredths - room));
    fill(within(std::max<int>(high, hundredths + room)));
}

double SpeedTable::sum(const PieceWeights& pieces) const
{
    // Two sums by turns, for a sum waits for its last addition.
    double even = 0;
    double odd = 0;
    const std::int16_t* const hundredths = pieces.hundredths();
    const Point* const points = m_points.data();
    const int low = m_low;
    std::size_t i = 0;
    for (; i + 1 < pieces.readings(); i += 2) {
        const Point& a = points[hundredths[i] - low];
        const Point& b = points[hundredths[i + 1] - low];
        even += a.integral * pieces[i].integral + a.speed * pieces[i].speed;
        odd += b.integral * pieces[i + 1].integral + b.speed * pieces[i + 1].speed;
    }
    if (i < pieces.readings()) {
        const Point& last = points[hundredths[i] - low];
        even += last.integral * pieces[i].integral + last.speed * pieces[i].speed;
    }
    return even + odd;
}

double SpeedTable::integral(std::int16_t from, double to) const
{
    const auto below = static_cast<std::int16_t>(std::floor(to));
    const double whole = m_points[index(below)].integral - m_points[index(from)].integral;
    const double rest = to - below;
    return rest > 0 ? whole + rest * m_speed.mean({ below / 100.0 }, { to / 100 }) : whole;
}

PieceWeights::PieceWeights(const Trace& trace, std::size_t from, std::size_t to, std::int64_t longestWatched)
    : m_hundredths(trace.hundredths().data() + from)
    , m_readings(to - from + 1)
{
    const std::int64_t* const seconds = trace.seconds().data() + from;
    double before = 0;
    for (std::size_t i = 0; i + 1 < m_readings; ++i) {
        const std::int64_t step = seconds[i + 1] - seconds[i];
        const double watched = step <= longestWatched ? static_cast<double>(step) : 0;
        const int rise = m_hundredths[i + 1] - m_hundredths[i];
        const double slope = std::abs(rise) <= commonStep
            ? watched * oneOver[std::size_t { commonStep } + static_cast<std::size_t>(rise)]
            : watched / rise;
        m_weights[i] = { before - slope, watched * static_cast<double>(rise == 0) };
        before = slope;
    }
    m_weights[m_readings - 1] = { before, 0 };
}

Totals::Totals(Speed speed, Range<std::int16_t> covered, std::int64_t longestWatched)
    : m_table(std::move(speed), covered.low, covered.high)
    , m_longest(longestWatched)
{
}

Totals::Totals(Speed speed, const Trace& trace, std::int64_t longestWatched)
    : Totals(std::move(together({ std::move(speed) }, trace, longestWatched).front()))
{
}

std::vector<Totals> Totals::together(
    std::vector<Speed> speeds, const Trace& trace, std::int64_t longestWatched)
{
    const auto values = trace.hundredths();
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    std::vector<Totals> all;
    for (Speed& speed : speeds) {
        all.push_back(Totals(std::move(speed), { *low, *high }, longestWatched));
        all.back().m_totals.reserve(trace.size() / blockSize + 1);
        all.back().m_size = trace.size();
    }
    for (std::size_t from = 0; from + blockSize < trace.size(); from += blockSize) {
        const PieceWeights pieces(trace, from, from + blockSize, longestWatched);
        for (Totals& totals : all)
            totals.m_totals.push_back(totals.m_totals.back() + totals.m_table.sum(pieces));
    }
    return all;
}

void Totals::grow(const Trace& trace)
{
    for (; m_size < trace.size(); ++m_size)
        m_table.cover(trace.hundredths()[m_size]);
    for (std::size_t from = (m_totals.size() - 1) * blockSize; from + blockSize < m_size; from += blockSize)
        m_totals.push_back(m_totals.back() + m_table.sum({ trace, from, from + blockSize, m_longest }));
}

double Totals::upTo(const Trace& trace, std::size_t index, double secondsPast) const
{
    const std::size_t whole = index / blockSize;
    double sum = m_totals[whole] + m_table.sum({ trace, whole * blockSize, index, m_longest });
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
