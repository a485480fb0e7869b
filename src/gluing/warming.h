#pragma once

#include <optional>
#include <string>

#include "measure/error.h"
#include "measure/range.h"
#include "measure/temperature.h"

namespace gw {

/// A piece of wood carried into a warmer room.
struct ColdPiece {
    Celsius wood; ///< as it comes in
    Celsius room;
    double thicknessMm = 25; ///< of its thickest part
};

/// How long until it has warmed to a temperature, in minutes, low to high; none when this room will never
/// bring it there. Lumped warming (Incropera, Fundamentals of Heat and Mass Transfer, chapter 5): the wood
/// is taken as one body of density 450 to 750 kg/m3 and 1.6 to 1.9 kJ/kg K (from memory of the Wood
/// Handbook, chapter 4), still air taking 5 to 10 W/m2 K (from memory), the quick end in air all round, the
/// slow end on a bench and so from one side; a third of the half thickness at 0.12 to 0.17 W/m K stands in
/// the way as well. Water that condenses on it warms it faster, which is left out: it must dry off anyway.
/// Errors: BadInput for a thickness outside 0.3 to 300 mm, temperatures outside -40 to 100 C.
Result<std::optional<Range<double>>> minutesToWarm(const ColdPiece& piece, Celsius to);

/// Lumped warming itself: the time from one temperature to another in surroundings, in units of the time
/// constant: ln((from - around) / (to - around)). None when it never gets there.
std::optional<double> lumpedTimes(Celsius from, Celsius to, Celsius around);

/// "1 to 3 h", "20 to 50 min": never finer than is known.
std::string waitWords(const Range<double>& minutes);

} // namespace gw
