#pragma once

#include <optional>
#include <string>

#include "ageing/clocks.h"

namespace gw {

/// The first thing to come that ends a good verdict.
struct Limit {
    Moment at;
    std::string code; ///< of the reason that will speak then
};

/// When the age reasons, good now, stop being good where it stands now: the printed date or what warmth
/// leaves of it, or a pessimistic clock reaching the low end of its life in the warm end of the place's usual
/// range, month by month. None within a hundred years: none.
std::optional<Limit> ageLimit(const AgeCase& item, const Clock& sealed, const Clock& opened);

/// When heat or frost, of no account now, may count where it stands now, within the year.
std::optional<Limit> weatherLimit(const AgeCase& item);

/// The earlier of two; one that is there is earlier than none.
std::optional<Limit> earlier(std::optional<Limit> a, std::optional<Limit> b);

} // namespace gw
