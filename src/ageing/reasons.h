#pragma once

#include <string>
#include <vector>

#include "ageing/clocks.h"
#include "ageing/verdict.h"

namespace gw {

/// What nothing lifts: retired, lot on hold, a failed or grainy bench test.
std::vector<Reason> standingReasons(const AgeCase& item);
/// Printed date, both clocks, and what is not known of them: what one passed bench test may lift for a while.
/// Never empty.
std::vector<Reason> ageReasons(const AgeCase& item, const Clock& sealed, const Clock& opened);
/// Too hot and frost since the last passed bench test.
std::vector<Reason> weatherReasons(const AgeCase& item);
/// "Passed the bench test on 3 May 2026 with 80 % wood failure"
std::string testWords(const BenchTest& test);

/// How far above the storage limit heat is left to the clock alone, which counts it.
inline constexpr double heatLeftToClock = 5.0; // C: assumption, no source
/// Below this the contents may freeze: emulsions and protein liquids freeze a little under it.
inline constexpr Celsius freezing { 0.0 };

} // namespace gw
