#include "ageing/readingsfigures.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <span>

namespace gw {

namespace {

// 83.144 kJ/mol over 8.3144e-3 kJ/(mol K), the constants of USP <1160>.
constexpr double kineticKelvin = 10000;
// Speeds are summed against this temperature so that none overflows or vanishes.
constexpr double kineticReference = 293.15;

/// The rule of the published counts: frozen when at or below freeze, until at or above thaw.
class FrostCount {
public:
    FrostCount(const ReadingsQuestion& question, std::vector<FrostMark>& marks)
        : m_question(question)
        , m_marks(marks)
    {
    }
    void see(Moment at, Celsius temperature)
    {
        const bool frozen = !m_marks.empty() && m_marks.back().frozen;
        if (!frozen && temperature <= m_question.freeze)
            m_marks.push_back({ at, temperature, true });
        else if (frozen && temperature >= m_question.thaw)
            m_marks.push_back({ at, temperature, false });
    }

private:
    const ReadingsQuestion& m_question;
    std::vector<FrostMark>& m_marks;
};

/// The share of a linear piece that lies below a limit.
double shareBelow(double a, double b, double limit)
{
    const double low = std::min(a, b);
    const double high = std::max(a, b);
    if (low >= limit)
        return 0;
    return high <= limit ? 1 : (limit - low) / (high - low);
}

/// What each reading stands for: half of each watched step beside it.
std::vector<double> weights(std::span<const Reading> readings, std::span<const bool> watched)
{
    std::vector<double> weights(readings.size(), 1);
    const auto step = [&](std::size_t i) { return daysBetween(readings[i].at, readings[i + 1].at).count(); };
    Days usual { 0 };
    std::size_t steps = 0;
    for (std::size_t i = 0; i + 1 < readings.size(); ++i) {
        if (watched[i]) {
            usual += Days { step(i) };
            ++steps;
        }
    }
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const bool before = i > 0 && watched[i - 1];
        const bool after = i + 1 < readings.size() && watched[i];
        if (before && after)
            weights[i] = (step(i - 1) + step(i)) / 2;
        else if (before)
            weights[i] = step(i - 1);
        else if (after)
            weights[i] = step(i);
        else if (steps > 0) // a lone reading between two gaps stands for a usual step
            weights[i] = usual.count() / static_cast<double>(steps);
    }
    return weights;
}

Result<void> checked(bool any, const ReadingsQuestion& question)
{
    if (!any)
        return fail(ErrorCode::BadInput, "There are no readings to answer from.");
    if (question.life && !(*question.life > Days { 0 }))
        return fail(ErrorCode::BadInput, "A life must be longer than 0 days.");
    if (question.thaw < question.freeze)
        return fail(ErrorCode::BadInput, "The thawing limit must not be below the freezing limit.");
    return {};
}

void useLife(ReadingsFigures& figures, const ReadingsQuestion& question)
{
    if (figures.equivalent && question.life)
        figures.lifeUsed = *figures.equivalent / *question.life;
}

template <class T, class Key> void sortAndDropSame(std::vector<T>& items, Key key)
{
    std::stable_sort(items.begin(), items.end(), [&](const T& a, const T& b) { return key(a) < key(b); });
    items.erase(
        std::unique(items.begin(), items.end(), [&](const T& a, const T& b) { return key(a) == key(b); }),
        items.end());
}

} // namespace

Result<ReadingsFigures> figuresOf(std::vector<Reading> readings, const ReadingsQuestion& question)
{
    if (auto fine = checked(!readings.empty(), question); !fine)
        return tl::unexpected(fine.error());
    sortAndDropSame(readings, [](const Reading& reading) { return reading.at; });

    ReadingsFigures figures;
    figures.count = readings.size();
    figures.from = readings.front().at;
    figures.to = readings.back().at;
    const auto [low, high] = std::minmax_element(readings.begin(), readings.end(),
        [](const Reading& a, const Reading& b) { return a.temperature < b.temperature; });
    figures.low = low->temperature;
    figures.high = high->temperature;

    std::vector<std::chrono::milliseconds> steps;
    steps.reserve(readings.size());
    for (std::size_t i = 0; i + 1 < readings.size(); ++i)
        steps.push_back(readings[i + 1].at - readings[i].at);
    const std::chrono::milliseconds longest = longestWatchedStep(steps);

    Days equivalent { 0 };
    const auto watched = std::make_unique<bool[]>(readings.size());
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const Days step = steps[i];
        const Celsius a = readings[i].temperature;
        const Celsius b = readings[i + 1].temperature;
        watched[i] = steps[i] <= longest;
        if (!watched[i]) {
            figures.unwatched += step;
            continue;
        }
        figures.below += step * shareBelow(a.value, b.value, question.freeze.value);
        if (question.rate)
            equivalent += step * meanRawSpeed(a, b, *question.rate);
    }
    if (question.rate)
        figures.equivalent = equivalent;
    useLife(figures, question);

    const auto weight = weights(readings, { watched.get(), readings.size() });
    KineticMean mean;
    FrostCount frost(question, figures.marks);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        mean.add(readings[i].temperature, weight[i]);
        frost.see(readings[i].at, readings[i].temperature);
    }
    figures.mean = mean.mean();
    figures.kinetic = mean.kinetic();
    return figures;
}

Result<ReadingsFigures> figuresOf(std::vector<DayReading> days, const ReadingsQuestion& question)
{
    if (auto fine = checked(!days.empty(), question); !fine)
        return tl::unexpected(fine.error());
    sortAndDropSame(days, [](const DayReading& day) { return day.day; });

    constexpr Days half { 0.5 };
    ReadingsFigures figures;
    figures.count = days.size();
    figures.from = startOf(days.front().day);
    figures.to = endOf(days.back().day);
    figures.low = days.front().low;
    figures.high = days.front().high;
    const Days spanned
        = std::chrono::sys_days { days.back().day } - std::chrono::sys_days { days.front().day };
    figures.unwatched = spanned + Days { 1 } - Days { static_cast<double>(days.size()) };

    Days equivalent { 0 };
    KineticMean mean;
    FrostCount frost(question, figures.marks);
    for (const DayReading& day : days) {
        for (const Celsius temperature : { day.low, day.high }) {
            figures.low = std::min(figures.low, temperature);
            figures.high = std::max(figures.high, temperature);
            mean.add(temperature, half.count());
            frost.see(startOf(day.day), temperature);
            if (temperature < question.freeze)
                figures.below += half;
            if (question.rate)
                equivalent += half * rawSpeedAt(temperature, *question.rate);
        }
    }
    figures.mean = mean.mean();
    figures.kinetic = mean.kinetic();
    if (question.rate)
        figures.equivalent = equivalent;
    useLife(figures, question);
    return figures;
}

void KineticMean::add(Celsius temperature, double weight)
{
    m_weight += weight;
    m_sum += weight * temperature.value;
    m_speeds
        += weight * std::exp(kineticKelvin * (1 / kineticReference - 1 / (temperature.value + kelvinOffset)));
}

Celsius KineticMean::mean() const { return Celsius { m_sum / m_weight }; }

Celsius KineticMean::kinetic() const
{
    const double kelvin = kineticKelvin / (kineticKelvin / kineticReference - std::log(m_speeds / m_weight));
    return Celsius { kelvin - kelvinOffset };
}

} // namespace gw
