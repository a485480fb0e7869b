#include "ageing/totals.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace gw {

namespace {

constexpr std::size_t blockSize = 32;
constexpr double secondsPerDay = 86400;
constexpr std::int16_t room = 500; // hundredths a table reaches past what it was asked to cover

std::int16_t within(int hundredths)
{
    return static_cast<std::int16_t>(std::clamp<int>(hundredths, INT16_MIN, INT16_MAX));
}

/// What a piece weighs by its rise alone: one over the difference of two hundredths, or for none the speed
/// itself. Steps between readings are small, and so no division and no branch on them is needed.
struct Weight {
    double integral;
    double speed;
};
constexpr int commonStep = 511;
constexpr auto commonWeights = [] {
    std::array<Weight, 2 * commonStep + 1> weights {};
    for (int step = -commonStep; step <= commonStep; ++step)
        weights[std::size_t { commonStep } + static_cast<std::size_t>(step)]
            = { step == 0 ? 0.0 : 1.0 / step, step == 0 ? 1.0 : 0.0 };
    return weights;
}();

Weight weightOf(int rise)
{
    return std::abs(rise) <= commonStep
        ? commonWeights[std::size_t { commonStep } + static_cast<std::size_t>(rise)]
        : Weight { 1.0 / rise, 0 };
}

/// How the readings of one block weigh, whatever the speed: the pieces on both their sides put together.
using Weights = std::array<Weight, blockSize + 1>;

/// Of pieces that all take as long, a second each.
void weighEven(const std::int16_t* hundredths, Weights& weights)
{
    double before = 0;
    for (std::size_t i = 0; i < blockSize; ++i) {
        const Weight piece = weightOf(hundredths[i + 1] - hundredths[i]);
        weights[i] = { before - piece.integral, piece.speed };
        before = piece.integral;
    }
    weights[blockSize] = { before, 0 };
}

void weighUneven(const std::int16_t* hundredths, const std::int64_t* seconds, std::int64_t longestWatched,
    Weights& weights)
{
    double before = 0;
    for (std::size_t i = 0; i < blockSize; ++i) {
        const std::int64_t step = seconds[i + 1] - seconds[i];
        const double watched = step <= longestWatched ? static_cast<double>(step) : 0;
        const Weight piece = weightOf(hundredths[i + 1] - hundredths[i]);
        weights[i] = { before - watched * piece.integral, watched * piece.speed };
        before = watched * piece.integral;
    }
    weights[blockSize] = { before, 0 };
}

/// Adds, for each of the first so many speeds, the products of a block's weights and points.
template <std::size_t Speeds>
void addProducts(const SpeedTable& table, const std::int16_t* hundredths, const Weights& weights,
    double times, double* sums)
{
    std::array<Weight, Speeds> all {};
    for (std::size_t i = 0; i <= blockSize; ++i) {
        const SpeedTable::Point* row = table.row(hundredths[i]);
        for (std::size_t s = 0; s < Speeds; ++s) {
            all[s].integral += row[s].integral * weights[i].integral;
            all[s].speed += row[s].speed * weights[i].speed;
        }
    }
    for (std::size_t s = 0; s < Speeds; ++s)
        sums[s] += times * (all[s].integral + all[s].speed);
}

/// Few speeds at once stay in the processor's registers.
void addAll(const SpeedTable& table, std::size_t speeds, const std::int16_t* hundredths,
    const Weights& weights, double times, double* sums)
{
    switch (speeds) {
    case 1:
        addProducts<1>(table, hundredths, weights, times, sums);
        return;
    case 2:
        addProducts<2>(table, hundredths, weights, times, sums);
        return;
    case 3:
        addProducts<3>(table, hundredths, weights, times, sums);
        return;
    case 4:
        addProducts<4>(table, hundredths, weights, times, sums);
        return;
    case 5:
        addProducts<5>(table, hundredths, weights, times, sums);
        return;
    case 6:
        addProducts<6>(table, hundredths, weights, times, sums);
        return;
    default:
        break;
    }
    for (std::size_t i = 0; i <= blockSize; ++i) {
        const SpeedTable::Point* row = table.row(hundredths[i]);
        for (std::size_t s = 0; s < speeds; ++s)
            sums[s] += times * (row[s].integral * weights[i].integral + row[s].speed * weights[i].speed);
    }
}

std::int16_t warmest(const std::int16_t* hundredths)
{
    std::int16_t high = hundredths[0];
    for (std::size_t i = 1; i <= blockSize; ++i)
        high = hundredths[i] > high ? hundredths[i] : high;
    return high;
}

double watchedSeconds(const std::array<std::int64_t, blockSize + 1>& seconds, std::int64_t longestWatched)
{
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < blockSize; ++i) {
        const std::int64_t step = seconds[i + 1] - seconds[i];
        sum += step <= longestWatched ? step : 0;
    }
    return static_cast<double>(sum);
}

/// Up to where a clock's speed is 1, were every temperature so many degrees warmer.
Celsius flatUpTo(const Rate& rate, double warmer)
{
    if (rate.coldCredit)
        return Celsius { -std::numeric_limits<double>::infinity() };
    return Celsius { rate.reference.value - warmer };
}

} // namespace

Speed clockSpeed(const Rate& rate, double warmer)
{
    return { [=](Celsius t) { return speedAt({ t.value + warmer }, rate); },
        [=](Celsius a, Celsius b) { return meanSpeed({ a.value + warmer }, { b.value + warmer }, rate); },
        flatUpTo(rate, warmer) };
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
    return { at, mean, {} };
}

Speed temperatureItself()
{
    return { [](Celsius t) { return t.value; }, [](Celsius a, Celsius b) { return (a.value + b.value) / 2; },
        {} };
}

SpeedTable::SpeedTable(std::vector<Speed> speeds, Range<std::int16_t> reach)
    : m_speeds(std::move(speeds))
    , m_low(within(reach.low - room))
    , m_high(within(reach.high + room))
{
    for (const Speed& speed : m_speeds)
        m_flatUpTo.push_back(speed.flatUpTo.value * 100);
    if (!std::is_sorted(m_flatUpTo.begin(), m_flatUpTo.end()))
        m_flatUpTo.assign(m_speeds.size(), -std::numeric_limits<double>::infinity());
    m_points.resize(m_speeds.size() * static_cast<std::size_t>(m_high - m_low + 1));
    for (std::size_t s = 0; s < m_speeds.size(); ++s) {
        double integral = 0;
        Celsius here { m_low / 100.0 };
        for (std::size_t i = s; i < m_points.size(); i += m_speeds.size()) {
            m_points[i] = { integral, m_speeds[s].at(here) };
            const Celsius next { (m_low + static_cast<int>(i / m_speeds.size()) + 1) / 100.0 };
            integral += m_speeds[s].mean(here, next);
            here = next;
        }
    }
}

std::size_t SpeedTable::uneven(std::int16_t hundredths) const
{
    const auto flat = std::lower_bound(m_flatUpTo.begin(), m_flatUpTo.end(), hundredths);
    return static_cast<std::size_t>(flat - m_flatUpTo.begin());
}

SpeedTable SpeedTable::reaching(Range<std::int16_t> reach) const
{
    return { m_speeds, { std::min(m_low, reach.low), std::max(m_high, reach.high) } };
}

double SpeedTable::integral(std::size_t which, std::int16_t from, double to) const
{
    const auto below = static_cast<std::int16_t>(std::floor(to));
    const double whole = row(below)[which].integral - row(from)[which].integral;
    const double rest = to - below;
    return rest > 0 ? whole + rest * m_speeds[which].mean({ below / 100.0 }, { to / 100 }) : whole;
}

ClockTables::ClockTables(const std::vector<Rate>& rates)
{
    for (const Rate& rate : rates) {
        if (agesByTemperature(rate) && !has(rate))
            m_rates.push_back(rate);
    }
    std::stable_sort(m_rates.begin(), m_rates.end(),
        [](const Rate& a, const Rate& b) { return flatUpTo(a, 0) < flatUpTo(b, 0); });
}

bool ClockTables::has(const Rate& rate) const
{
    return std::find(m_rates.begin(), m_rates.end(), rate) != m_rates.end();
}

void ClockTables::cover(const Range<Celsius>& range)
{
    m_reach.low = std::min(m_reach.low, within(static_cast<int>(std::floor(range.low.value * 100))));
    m_reach.high = std::max(m_reach.high, within(static_cast<int>(std::ceil(range.high.value * 100))));
}

std::shared_ptr<const SpeedTable> ClockTables::table(double warmer, Range<std::int16_t> reach)
{
    auto kept = std::find_if(
        m_tables.begin(), m_tables.end(), [&](const auto& known) { return known.first == warmer; });
    if (kept != m_tables.end() && kept->second->covers(reach.low) && kept->second->covers(reach.high))
        return kept->second;
    m_reach = { std::min(m_reach.low, reach.low), std::max(m_reach.high, reach.high) };
    if (kept == m_tables.end())
        kept = m_tables.insert(kept, { warmer, nullptr });
    std::vector<Speed> speeds;
    for (const Rate& rate : m_rates)
        speeds.push_back(clockSpeed(rate, warmer));
    kept->second = std::make_shared<SpeedTable>(std::move(speeds), m_reach);
    return kept->second;
}

Totals::Totals(std::shared_ptr<const SpeedTable> table, const Trace& trace, std::int64_t longestWatched)
    : m_table(std::move(table))
    , m_longest(longestWatched)
    , m_totals(m_table->speeds(), 0.0)
{
    addBlocks(trace);
}

void Totals::addBlocks(const Trace& trace)
{
    const std::size_t speeds = m_table->speeds();
    const std::size_t blocks = trace.empty() ? 0 : (trace.size() - 1) / blockSize;
    m_totals.resize((blocks + 1) * speeds);
    Weights weights;
    std::array<std::int64_t, blockSize + 1> seconds;
    for (; m_blocks < blocks; ++m_blocks) {
        const std::size_t from = m_blocks * blockSize;
        const std::int16_t* const hundredths = trace.hundredths().data() + from;
        double* const sums = m_totals.data() + (m_blocks + 1) * speeds;
        std::copy(sums - speeds, sums, sums);
        const std::int64_t step = trace.times().evenStep(from, from + blockSize);
        if (step > m_longest)
            continue;
        if (step == 0)
            trace.times().copy(from, from + blockSize + 1, seconds.data());
        // Cold enough, most clocks just go on with time.
        const std::size_t uneven = m_table->uneven(warmest(hundredths));
        if (uneven < speeds) {
            const double watched = step > 0 ? static_cast<double>(step) * static_cast<double>(blockSize)
                                            : watchedSeconds(seconds, m_longest);
            for (std::size_t s = uneven; s < speeds; ++s)
                sums[s] += watched;
        }
        if (uneven == 0)
            continue;
        if (step > 0)
            weighEven(hundredths, weights);
        else
            weighUneven(hundredths, seconds.data(), m_longest, weights);
        addAll(*m_table, uneven, hundredths, weights, step > 0 ? static_cast<double>(step) : 1, sums);
    }
}

void Totals::grow(const Trace& trace)
{
    // Readings are covered as they come, so that a walk over the last ones finds them too.
    for (std::size_t i = m_blocks * blockSize; i < trace.size(); ++i) {
        const std::int16_t value = trace.hundredths()[i];
        if (!m_table->covers(value))
            m_table = std::make_shared<SpeedTable>(m_table->reaching({ value, value }));
    }
    addBlocks(trace);
}

/// Seconds times a speed from one reading to another within a block.
double Totals::pieces(const Trace& trace, std::size_t from, std::size_t to, std::size_t which) const
{
    if (from == to)
        return 0;
    const std::int16_t* const hundredths = trace.hundredths().data();
    const std::int64_t even = trace.times().evenStep(from, to);
    std::array<std::int64_t, blockSize + 1> seconds;
    if (even == 0)
        trace.times().copy(from, to + 1, seconds.data());
    double sum = 0;
    SpeedTable::Point here = m_table->row(hundredths[from])[which];
    for (std::size_t i = from; i < to; ++i) {
        const SpeedTable::Point next = m_table->row(hundredths[i + 1])[which];
        const std::int64_t step = even > 0 ? even : seconds[i - from + 1] - seconds[i - from];
        const Weight weight = weightOf(hundredths[i + 1] - hundredths[i]);
        const double mean = (next.integral - here.integral) * weight.integral + here.speed * weight.speed;
        sum += step <= m_longest ? static_cast<double>(step) * mean : 0;
        here = next;
    }
    return sum;
}

double Totals::upTo(const Trace& trace, const At& at, std::size_t which) const
{
    const auto total = [&](std::size_t block) { return m_totals[block * m_table->speeds() + which]; };
    const std::size_t block = at.index / blockSize;
    const std::size_t past = at.index % blockSize;
    double sum = past > blockSize / 2 && block < m_blocks
        ? total(block + 1) - pieces(trace, at.index, (block + 1) * blockSize, which)
        : total(block) + pieces(trace, block * blockSize, at.index, which);
    if (at.past > 0 && at.step > 0 && at.step <= m_longest) {
        const std::int16_t a = trace.hundredths()[at.index];
        const int rise = trace.hundredths()[at.index + 1] - a;
        const double slope = rise / static_cast<double>(at.step);
        sum += rise == 0 ? at.past * m_table->row(a)[which].speed
                         : m_table->integral(which, a, a + slope * at.past) / slope;
    }
    return sum / secondsPerDay;
}

Range<Days> Totals::around(const Trace& trace, std::size_t index, std::size_t which) const
{
    const std::size_t speeds = m_table->speeds();
    const std::size_t block = index / blockSize;
    const double before = m_totals[block * speeds + which];
    double low = before;
    double high = before;
    if (block < m_blocks) {
        high = m_totals[(block + 1) * speeds + which];
    } else {
        low += pieces(trace, block * blockSize, index, which);
        high += pieces(trace, block * blockSize, std::min(index + 1, trace.size() - 1), which);
    }
    return { Days { low / secondsPerDay }, Days { high / secondsPerDay } };
}

} // namespace gw
