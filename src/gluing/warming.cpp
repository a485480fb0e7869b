#include "gluing/warming.h"

#include <algorithm>
#include <cmath>

#include "measure/number.h"

namespace gw {

namespace {

/// What makes wood warm quickly or slowly; sources at minutesToWarm().
struct Warms {
    double density; ///< kg/m3
    double heatCapacity; ///< J/kg K
    double transfer; ///< W/m2 K
    double conductivity; ///< W/m K
    double sides; ///< that the air reaches
};
constexpr Warms quick { 450, 1600, 10, 0.17, 2 };
constexpr Warms slow { 750, 1900, 5, 0.12, 1 };

/// The time constant in minutes.
double timeConstant(const Warms& warms, double thicknessMm)
{
    const double perSide = thicknessMm / 1000 / warms.sides; // metres of wood behind each warmed face
    const double resistance = 1 / warms.transfer + perSide / 3 / warms.conductivity;
    return warms.density * warms.heatCapacity * perSide * resistance / 60;
}

bool canBe(Celsius temperature) { return temperature.value >= -40 && temperature.value <= 100; }

} // namespace

std::optional<double> lumpedTimes(Celsius from, Celsius to, Celsius around)
{
    const double start = from.value - around.value;
    const double end = to.value - around.value;
    if (start == end)
        return 0.0;
    if (start == 0 || end == 0 || (start > 0) != (end > 0) || std::abs(end) > std::abs(start))
        return std::nullopt;
    return std::log(start / end);
}

Result<std::optional<Range<double>>> minutesToWarm(const ColdPiece& piece, Celsius to)
{
    if (!(piece.thicknessMm >= 0.3 && piece.thicknessMm <= 300))
        return fail(ErrorCode::BadInput,
            "Wood " + numberWords(piece.thicknessMm, 1) + " mm thick cannot be: say 0.3 to 300 mm.");
    if (!canBe(piece.wood) || !canBe(piece.room) || !canBe(to))
        return fail(ErrorCode::BadInput, "Such a temperature of wood or room cannot be: say -40 to 100 °C.");
    if (piece.wood >= to)
        return Range<double> { 0, 0 };
    const auto times = lumpedTimes(piece.wood, to, piece.room);
    if (!times)
        return std::nullopt;
    return Range<double> { *times * timeConstant(quick, piece.thicknessMm),
        *times * timeConstant(slow, piece.thicknessMm) };
}

std::string waitWords(const Range<double>& minutes)
{
    // Quarters of an hour below two hours, halves above: the model is no finer than that.
    const auto rounded
        = [](double value, double step) { return std::max(step, std::round(value / step) * step); };
    if (minutes.high < 90) {
        const double low = rounded(minutes.low, 5);
        const double high = std::max(low, rounded(minutes.high, 5));
        return low == high ? numberWords(high, 0) + " min"
                           : numberWords(low, 0) + " to " + numberWords(high, 0) + " min";
    }
    const double low = rounded(minutes.low / 60, 0.5);
    const double high = std::max(low, rounded(minutes.high / 60, 0.5));
    return low == high ? numberWords(high, 1) + " h"
                       : numberWords(low, 1) + " to " + numberWords(high, 1) + " h";
}

} // namespace gw
