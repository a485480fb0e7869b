#pragma once

#include <array>
#include <optional>
#include <string>

#include "measure/moment.h"
#include "measure/temperature.h"

namespace gw {

/// Where what is ordered waits to be brought in, and how cold it usually gets there.
struct Doorstep {
    std::string name;
    /// The usual low of each week of the year, the first from 1 January; none: nothing is known of it.
    std::array<std::optional<Celsius>, 53> lows {};

    std::optional<Celsius> low(Date day) const;
};

/// A delivery that would stand in the cold.
struct ColdArrival {
    Date arrives;
    Celsius low; ///< usual there then
    std::optional<Date>
        orderBy; ///< the last day to order so that it comes before the cold; none: too late for it
    std::optional<Date> warmFrom; ///< the first day after the cold; none: not within a year
};

/// Whether what is ordered on a day and takes so many days comes to a doorstep usually colder than what it
/// stands; a week either side counts too, as deliveries are early or late (own assumption). None: it is not,
/// or nothing is known of the doorstep then. Neither `orderBy` nor `warmFrom` counts weeks that are not known
/// as warm. `today`: nothing can be ordered before it.
std::optional<ColdArrival> coldArrival(
    const Doorstep& doorstep, Celsius limit, Date ordered, Days lead, Date today);

} // namespace gw
