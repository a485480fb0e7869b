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

Contents contentsOf(const LifeFigures& figures, const Filling& filling)
{
    Contents contents;
    contents.millilitres = filling.millilitres;
    contents.capacity = filling.capacity;
    contents.vessel = filling.vessel;
    contents.density = figures.density > 0 ? figures.density : 1.0;
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
    const double water = std::clamp(contents.waterShare, 0.0, 1.0);
    const double kilograms = contents.density * 1000 * bulk.cubicMetres;
    const double wattsADegree = surfaceTransfer * bulk.squareMetres;
    const auto hours = [&](double heat) { return kilograms * heat / wattsADegree / secondsAnHour; };
    Response response;
    response.thawed = Hours { hours(water * heatOfWater + (1 - water) * heatOfTheRest) };
    response.frozen = Hours { hours(water * heatOfIce + (1 - water) * heatOfTheRest) };
    response.latent = std::max(leastLatent, hours(water * heatOfFusion));
    response.freezesAt = contents.freezesAt;
    return response;
}

} // namespace gw
