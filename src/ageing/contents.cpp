#include "ageing/contents.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace gw {

namespace {

constexpr double smallestUsual = 50; // ml
constexpr double surfaceTransfer = 8; // W/m2K
constexpr double heatOfWater = 4186; // J/kgK
constexpr double heatOfIce = 2100;
constexpr double heatOfTheRest = 1500;
constexpr double heatOfFusion = 333.6e3; // J/kg of water
constexpr double secondsAnHour = 3600;
// What has no water still needs a little cold to set; it keeps the arithmetic finite.
constexpr double leastLatent = 1e-4; // degree-hours
constexpr std::array levels { 1.0, 0.75, 0.5, 0.25, 0.125, 0.0625 };

constexpr std::array words { std::pair { std::string_view("bottle"), Vessel::Bottle },
    std::pair { std::string_view("jar"), Vessel::Jar }, std::pair { std::string_view("tin"), Vessel::Tin },
    std::pair { std::string_view("bag"), Vessel::Bag }, std::pair { std::string_view("tube"), Vessel::Tube },
    std::pair { std::string_view("box"), Vessel::Box } };

/// Height to width of a vessel that stands upright; 0 for one that lies.
double heightToWidth(Vessel vessel)
{
    switch (vessel) {
    case Vessel::Bottle:
        return 15.0 / 7.0;
    case Vessel::Jar:
        return 1;
    case Vessel::Tin:
        return 0.75;
    case Vessel::Tube:
        return 4;
    case Vessel::Bag:
    case Vessel::Box:
        break;
    }
    return 0;
}

double specificHeat(double waterShare, double ofItsWater)
{
    const double water = std::clamp(waterShare, 0.0, 1.0);
    return water * ofItsWater + (1 - water) * heatOfTheRest;
}

bool keepsItsWidth(Vessel vessel)
{
    return vessel == Vessel::Bottle || vessel == Vessel::Jar || vessel == Vessel::Tin;
}

Bulk flatBlock(double cubicMetres)
{
    constexpr double length = 4;
    constexpr double width = 3;
    const double thick = std::cbrt(cubicMetres / (length * width));
    return { cubicMetres, 2 * thick * thick * (length * width + length + width) };
}

} // namespace

std::optional<Vessel> vesselOfWord(std::string_view word)
{
    for (const auto& [text, vessel] : words) {
        if (text == word)
            return vessel;
    }
    return std::nullopt;
}

double levelOf(Amount left, Amount capacity)
{
    if (capacity.milli <= 0 || left.dimension != capacity.dimension)
        return 1;
    const double share = static_cast<double>(left.milli) / static_cast<double>(capacity.milli);
    const auto level = std::find_if(levels.begin(), levels.end(), [&](double l) { return share >= l; });
    return level == levels.end() ? levels.back() : *level;
}

Contents contentsOf(const LifeFigures& figures, const Filling& filling)
{
    Contents contents;
    contents.density = figures.density > 0 ? figures.density : 1.0;
    if (const auto full
        = convert(filling.capacity, Dimension::Volume, GramsPerMillilitre { contents.density })) {
        contents.capacity = full->value();
        contents.millilitres = filling.level * contents.capacity;
    }
    contents.vessel = filling.vessel.value_or(figures.vessel);
    contents.waterShare = figures.waterShare.value_or(0.0);
    contents.freezesAt = figures.freezesAt;
    return contents;
}

Bulk cylinder(double diameter, double height)
{
    const double end = std::numbers::pi / 4 * diameter * diameter;
    return { end * height, 2 * end + std::numbers::pi * diameter * height };
}

Bulk bulkOf(const Contents& contents)
{
    constexpr double cubicMetresAMillilitre = 1e-6;
    const double held
        = (contents.millilitres > 0 ? contents.millilitres : smallestUsual) * cubicMetresAMillilitre;
    const double ratio = heightToWidth(contents.vessel);
    if (ratio <= 0)
        return flatBlock(held);
    const double full
        = keepsItsWidth(contents.vessel) ? std::max(held, contents.capacity * cubicMetresAMillilitre) : held;
    const double diameter = std::cbrt(4 * full / (std::numbers::pi * ratio));
    return cylinder(diameter, diameter * ratio * (held / full));
}

Response responseOf(const Contents& contents)
{
    const Bulk bulk = bulkOf(contents);
    const double kilograms = contents.density * 1000 * bulk.cubicMetres;
    const double wattsADegree = surfaceTransfer * bulk.squareMetres;
    const Hours thawed { kilograms * specificHeat(contents.waterShare, heatOfWater) / wattsADegree
        / secondsAnHour };
    return responseOf(thawed, contents.waterShare, contents.freezesAt);
}

Response responseOf(Hours thawed, double waterShare, Celsius freezesAt)
{
    const double heat = specificHeat(waterShare, heatOfWater);
    return { thawed, thawed * (specificHeat(waterShare, heatOfIce) / heat),
        std::max(leastLatent, thawed.count() * std::clamp(waterShare, 0.0, 1.0) * heatOfFusion / heat),
        freezesAt };
}

} // namespace gw
