#pragma once

#include <optional>

#include "measure/moment.h"
#include "measure/range.h"
#include "measure/temperature.h"

namespace gw {

/// How a life clock's speed depends on temperature, relative to 1 at the reference temperature.
/// Q10: rate(T) = q10^((T - reference)/10). Arrhenius when an activation energy is given:
/// rate(T) = exp(-(Ea/R)(1/T - 1/Tref)), T in kelvin, R = 8.314462618e-3 kJ/(mol K).
/// Below the reference the rate counts as 1 unless coldCredit: cold slows chemistry, but other things go
/// wrong.
struct Rate {
    Celsius reference { 20.0 };
    double q10 = 1.0; ///< 1 or more; less counts as 1, for nothing keeps better in the heat
    std::optional<double> activationEnergy; ///< kJ/mol, replaces q10
    bool coldCredit = false;
    friend bool operator==(const Rate&, const Rate&) = default;
};

/// The speed of the clock at one temperature; always positive. 1 below the reference, unless the class has
/// cold credit.
double speedAt(Celsius temperature, const Rate& rate);
/// The same without the floor: the bare formula, as handbooks and standards tabulate it.
double rawSpeedAt(Celsius temperature, const Rate& rate);
/// The mean of speedAt() over a stretch in which the temperature goes evenly from a to b: exact, no sampling.
double meanSpeed(Celsius a, Celsius b, const Rate& rate);
/// The mean of rawSpeedAt() alike.
double meanRawSpeed(Celsius a, Celsius b, const Rate& rate);
/// Whether temperature matters to the clock at all: q10 above 1, or an activation energy above 0.
bool agesByTemperature(const Rate& rate);

/// One clock's life: a range of days, or a thing that time alone does not use up, or nothing known.
struct Life {
    enum class Kind { Ages, DoesNotAge, NotKnown };
    Kind kind = Kind::NotKnown;
    Range<Days> span {}; ///< when Ages: low > 0, low <= high
    friend bool operator==(const Life&, const Life&) = default;
};

enum class Frost { Never, Harms, Recoverable };

/// How a container is shaped, as far as heat cares.
enum class Vessel { Bottle, Jar, Tin, Bag, Tube, Box };

/// Everything the models need to know of a material: its class's figures with the label's put over them.
struct LifeFigures {
    Life sealed;
    Life opened;
    Rate rate;
    std::optional<Range<Celsius>> keepBetween; ///< storage limits
    Frost frost = Frost::Never;
    /// Age on arrival when the made date is not known. A high end of 0 means the class has no such figure,
    /// and then the age on arrival is not known.
    Range<Days> timeInTrade { Days { 0 }, Days { 0 } };
    double testGrant = 0.25; ///< share of the opened low life that one passed bench test grants, once
    double density = 1.0; ///< g/ml, of the contents
    Vessel vessel = Vessel::Bottle; ///< the usual one of the material
    std::optional<double> waterShare; ///< 0 to 1, by mass; none: not known
    Celsius freezesAt { 0.0 }; ///< the warmest at which it may freeze, or set in the cold
    /// Frost events it stands, by label or class. None: none for what frost harms; for what comes back, no
    /// count limits it.
    std::optional<int> freezeTolerance;
    /// Where the resin may crystallise without any frost; instead of freezing.
    std::optional<Range<Celsius>> crystallisesBetween;
};

} // namespace gw
