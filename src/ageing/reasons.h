#pragma once

#include <string>
#include <vector>

#include "ageing/clocks.h"
#include "ageing/frosts.h"
#include "ageing/verdict.h"

namespace gw {

/// What nothing lifts: retired, lot on hold, a failed or grainy bench test.
std::vector<Reason> standingReasons(const AgeCase& item);
/// Printed date, both clocks, and what is not known of them: what one passed bench test may lift for a while.
/// Never empty.
std::vector<Reason> ageReasons(const AgeCase& item, const Clock& sealed, const Clock& opened);
/// Too hot and frost since the last passed bench test.
std::vector<Reason> weatherReasons(const AgeCase& item, const Frosts& frosts);
/// The frost among them, and resin that may have crystallised.
std::vector<Reason> frostReasons(const AgeCase& item, const Frosts& frosts);
/// What a printed date says alone, by the days its label has left (LabelClock).
Verdict labelVerdict(const AgeCase& item, Days left);
/// Below this a resin that crystallises is to be looked at: its storage limit, else where it crystallises.
Celsius lookBelow(const LifeFigures& figures);
/// "Passed the bench test on 3 May 2026 with 80 % wood failure"
std::string testWords(const BenchTest& test);

/// How far above the storage limit heat is left to the clock alone, which counts it.
inline constexpr double heatLeftToClock = 5.0; // C: assumption, no source

} // namespace gw
