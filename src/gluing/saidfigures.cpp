#include "gluing/saidfigures.h"

#include <cmath>
#include <string>

#include "gluing/sentences.h"
#include "measure/number.h"

namespace gw {

namespace {

// A cold store and a wood kiln lie inside; further out a figure was mistyped or misread.
constexpr Range<Celsius> airCanBe { { -40 }, { 60 } };
constexpr Range<Celsius> woodCanBe { { -40 }, { 100 } };
constexpr Range<double> humidityCanBe { 0, 100 };
// Green sapwood reaches some 250 % (Wood Handbook table 4-1, from memory).
constexpr Range<double> moistureCanBe { 0, 250 };
constexpr Range<double> gapCanBe { 0, 25 };
constexpr Range<double> surfaceAgeCanBe { 0, 10 * 8766.0 }; // hours
constexpr Range<double> thicknessCanBe { 0.3, 300 }; // mm
constexpr int mostPieces = 1000;

template <class T> bool within(const std::optional<T>& value, const Range<T>& range)
{
    return !value || (*value >= range.low && *value <= range.high);
}

std::string degrees(Celsius temperature, UnitSystem units)
{
    return std::isfinite(temperature.value) && std::abs(temperature.value) < 1e6
        ? formatTemperature(temperature, units)
        : std::string("such a temperature");
}

tl::unexpected<Error> cannotBe(const std::string& what, const std::string& range)
{
    return fail(ErrorCode::BadInput, what + " cannot be: say " + range + ".");
}

bool isShare(double share) { return std::isfinite(share) && share > 0 && share <= 100; }

} // namespace

Result<void> checkFigures(const GlueUpQuestion& question)
{
    if (question.pieces < 1 || question.pieces > mostPieces)
        return cannotBe(std::to_string(question.pieces) + " pieces", "1 to " + std::to_string(mostPieces));
    if (!within(question.air, airCanBe))
        return cannotBe("A room at " + degrees(*question.air, question.units),
            temperatureRangeWords(airCanBe, question.units));
    if (!within(question.wood, woodCanBe))
        return cannotBe("Wood at " + degrees(*question.wood, question.units),
            temperatureRangeWords(woodCanBe, question.units));
    if (!within(question.humidity, humidityCanBe))
        return cannotBe(
            "A humidity of " + percentWords(*question.humidity), percentRangeWords(humidityCanBe));
    if (!within(question.woodMoisture, moistureCanBe))
        return cannotBe(
            "A wood moisture of " + percentWords(*question.woodMoisture), percentRangeWords(moistureCanBe));
    if (!within(question.gapMm, gapCanBe))
        return cannotBe("A gap of " + millimetreWords(*question.gapMm) + " in a joint", "0 to 25 mm");
    if (!within(question.otherMoisture, moistureCanBe))
        return cannotBe(
            "A wood moisture of " + percentWords(*question.otherMoisture), percentRangeWords(moistureCanBe));
    if (!within(question.glue, woodCanBe))
        return cannotBe("Glue at " + degrees(*question.glue, question.units),
            temperatureRangeWords(woodCanBe, question.units));
    if (!within(question.surfaceAgeHours, surfaceAgeCanBe))
        return cannotBe(
            "A surface " + numberWords(*question.surfaceAgeHours, 1) + " h old", "0 h to ten years");
    if (!within(question.thicknessMm, thicknessCanBe))
        return cannotBe("Wood " + millimetreWords(*question.thicknessMm) + " thick", "0.3 to 300 mm");
    for (const StockCandidate& candidate : question.candidates) {
        if (!std::isfinite(candidate.waterPerUnit) || candidate.waterPerUnit < 0
            || candidate.waterPerUnit > 100)
            return fail(ErrorCode::BadInput,
                "The water for " + candidate.name + " cannot be: check its water ratio.");
        for (const StockPart& part : candidate.parts) {
            if (!isShare(part.sharePerUnit))
                return fail(ErrorCode::BadInput,
                    "The share of " + part.name + " in the mix cannot be: check its mix ratio.");
        }
    }
    return {};
}

} // namespace gw
