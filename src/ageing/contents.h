#pragma once

#include <chrono>
#include <optional>
#include <string_view>

#include "ageing/life.h"
#include "measure/amount.h"
#include "measure/moment.h"
#include "measure/temperature.h"

namespace gw {

/// "bottle", "jar", "tin", "bag", "tube", "box"; none for anything else.
std::optional<Vessel> vesselOfWord(std::string_view word);

/// How full a container was from a moment on, until the next filling. Levels, not amounts: the contents are
/// no less than that share of its capacity, and freeze no sooner than those would.
struct Filling {
    Moment from;
    double level = 1; ///< above 0, at most 1
    Amount capacity {}; ///< what it holds when full; nothing, pieces or metres: not known
    std::optional<Vessel> vessel {}; ///< none: as its material
    friend bool operator==(const Filling&, const Filling&) = default;
};
/// The level an amount is counted as: full, or the next lower of a few, so that a drop taken out changes
/// nothing.
double levelOf(Amount left, Amount capacity);

/// What stands in a container, as far as frost cares.
struct Contents {
    double millilitres = 0; ///< 0: not known, and then the smallest usual, 50 ml, which freezes soonest
    double capacity = 0; ///< ml; 0: no more than the contents
    Vessel vessel = Vessel::Bottle;
    double density = 1.0; ///< g/ml
    double waterShare = 0; ///< 0 to 1, by mass; 0 sets as soon as it is cold through: nothing holds it up
    Celsius freezesAt { 0.0 };
    friend bool operator==(const Contents&, const Contents&) = default;
};

/// What a material's figures and a filling make of a container. A water share that is not known counts as
/// none: so it freezes soonest.
Contents contentsOf(const LifeFigures& figures, const Filling& filling);

/// Volume and outer surface of the contents. A bottle, jar or tin keeps its width and empties downward; the
/// rest shrinks.
struct Bulk {
    double cubicMetres = 0;
    double squareMetres = 0;
};
/// An upright cylinder, both ends counted; metres.
Bulk cylinder(double diameter, double height);
/// The proportions are our own assumption, from common packs: height to width 15:7 for a bottle, 1:1 a jar,
/// 3:4 a tin or tub, 4:1 a tube; 4:3:1 for a bag or box.
Bulk bulkOf(const Contents& contents);

/// A span of hours, fractions allowed.
using Hours = std::chrono::duration<double, std::ratio<3600>>;

/// How the contents answer to the air: lumped, one temperature for all of them, and so without conduction
/// inside. That makes them freeze sooner than they do, never later.
struct Response {
    Hours thawed { 0 }; ///< time constant rho c V/(h A) while liquid; above 0
    Hours frozen { 0 }; ///< the same once frozen through; above 0
    double latent = 0; ///< degree-hours between freezing through and not at all: rho V w L/(h A); above 0
    Celsius freezesAt {};
    friend bool operator==(const Response&, const Response&) = default;
};
/// h = 8 W/m2K for standing air indoors (own assumption). Specific heat by mixture: water 4186, ice 2100, the
/// rest 1500 J/kgK (from memory, near what is tabulated for poly(vinyl acetate)). Heat of fusion of the
/// water: 333.6 kJ/kg (CRC-type table).
Response responseOf(const Contents& contents);
/// The same for a time constant handed in, in place of size and surface.
Response responseOf(Hours thawed, double waterShare, Celsius freezesAt);

} // namespace gw
