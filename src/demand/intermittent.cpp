#include "demand/intermittent.h"

#include <cmath>

#include "measure/quoted.h"

namespace gw {

Result<IntermittentMethod> intermittentMethod(std::string_view name)
{
    if (name == "croston")
        return IntermittentMethod::Croston;
    if (name == "sba")
        return IntermittentMethod::SyntetosBoylan;
    if (name == "sbj")
        return IntermittentMethod::ShaleBoylanJohnston;
    return fail(ErrorCode::BadInput, "There is no method " + inQuotes(name) + "; use croston, sba or sbj.");
}

Result<IntermittentState> smoothIntermittent(const std::vector<double>& usage, double alpha)
{
    if (!(alpha >= 0 && alpha <= 1))
        return fail(ErrorCode::BadInput, "Alpha must lie in 0 to 1; 0.1 is usual.");
    if (usage.empty())
        return fail(ErrorCode::BadInput, "No periods are given; list the use of each, zeros too.");

    IntermittentState state;
    double sinceUse = 0;
    for (const double used : usage) {
        if (!std::isfinite(used) || used < 0)
            return fail(
                ErrorCode::BadInput, "The use of a period is negative or no number; give zero or more.");
        sinceUse += 1;
        if (used == 0)
            continue;
        if (state.interval == 0) {
            state = { used, sinceUse };
        } else {
            state.size += alpha * (used - state.size);
            state.interval += alpha * (sinceUse - state.interval);
        }
        sinceUse = 0;
    }
    return state;
}

Result<double> intermittentForecast(const std::vector<double>& usage, IntermittentMethod method, double alpha)
{
    const auto state = smoothIntermittent(usage, alpha);
    if (!state)
        return tl::unexpected(state.error());
    if (state->interval == 0)
        return 0.0;
    const double plain = state->size / state->interval;
    switch (method) {
    case IntermittentMethod::SyntetosBoylan:
        return plain * (1 - alpha / 2);
    case IntermittentMethod::ShaleBoylanJohnston:
        return plain * (1 - alpha / (2 - alpha));
    case IntermittentMethod::Croston:
        break;
    }
    return plain;
}

} // namespace gw
