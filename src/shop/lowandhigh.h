#pragma once

#include <array>

#include "ageing/trace.h"
#include "exchange/readingszone.h"

namespace gw {

/// A day's low and high as two readings, at the usual hours of a day's coldest and warmest air by a clock on
/// the wall: 05:00 and 15:00; common practice, no source. Where the clock leaps over an hour, the next.
std::array<Reading, 2> lowAndHigh(const WallClock& clock, Date day, Celsius low, Celsius high);

} // namespace gw
