#pragma once

#include <string_view>
#include <vector>

#include "measure/error.h"

namespace gw {

/// How use that comes now and then is forecast. The last two take off the bias of the first.
enum class IntermittentMethod {
    Croston, ///< z/p (Croston 1972)
    SyntetosBoylan, ///< z/p (1 - a/2) (Syntetos and Boylan 2005)
    ShaleBoylanJohnston, ///< z/p (1 - a/(2 - a)) (Shale, Boylan and Johnston 2006)
};

/// "croston", "sba" or "sbj". Errors: BadInput for any other word.
Result<IntermittentMethod> intermittentMethod(std::string_view name);

/// The smoothed size of a use and the smoothed number of periods from one to the next.
struct IntermittentState {
    double size = 0; ///< z, zero when nothing was ever used
    double interval = 0; ///< p, one when used in every period
};

/// Use per period, oldest first, smoothed with alpha: both start at the first use (its size, and its place
/// counted from 1) and change only in periods with use. Errors: BadInput for no periods, a negative use, or
/// alpha outside 0 to 1.
Result<IntermittentState> smoothIntermittent(const std::vector<double>& usage, double alpha);

/// Expected use per period from the same; zero when nothing was ever used. Errors as above.
Result<double> intermittentForecast(
    const std::vector<double>& usage, IntermittentMethod method, double alpha);

} // namespace gw
