#pragma once

#include <optional>
#include <string>

#include "shop/shop.h"

namespace gw {

/// What a person says of a place; what is not said stays as it was.
struct PlaceChange {
    AssumedRanges assumed {};
    std::optional<std::string>
        follows {}; ///< the name of the place it goes with; an empty one: none any more
    double warmer = 0, damped = 0; ///< as Follow has it
};
/// Makes a place of a name, or changes what the one there is taken to be. Errors: BadInput (no name), and
/// those of savePlaceClimate().
Result<PlaceRecord> savePlaceNamed(Shop& shop, const std::string& name, const PlaceChange& change);
/// The same, for what it is taken to be over the year.
Result<PlaceRecord> savePlaceNamed(Shop& shop, const std::string& name, const Range<Celsius>& year);

/// How many of a job type (key or name) the shop expects in a month, 0 to 10,000. Errors: NotFound, BadInput.
Result<JobTypeRecord> setJobRate(Shop& shop, const std::string& jobType, double perMonth, Moment now);
/// The job type of a key or name. Errors: NotFound, naming those there are.
Result<JobTypeRecord> findJobType(const Shop& shop, const std::string& idOrName);

/// A pack as a person tells of it; empty texts are not known.
struct PackOffered {
    std::string material; ///< name or id
    std::string amount; ///< "500 g"
    std::string gtin;
    std::string price; ///< "12.50 EUR"
    std::string supplier;
    std::optional<double> leadDays; ///< 0 to 365
    std::optional<int> soldBy {}; ///< only so many together, 1 to 1000
    std::optional<int> least {}; ///< fewer are not delivered, 1 to 1000
    std::string pack = {}; ///< id of the one these are all the figures of; empty: found by what is told
};
/// Learns a pack, or what has changed of the one with that number (else of that amount and supplier): what is
/// then not told stays as it was. Of a pack named by its id everything is told, and what is not is not known.
/// Errors: NotFound for the material or the pack, BadInput for a figure that cannot be, Conflict when another
/// pack carries the number.
Result<PackRecord> savePackOffered(Shop& shop, const PackOffered& offered);

/// "12.50 EUR", "12,50 eur": a price with its ISO 4217 currency. Errors: BadInput.
Result<Money> parsePrice(const std::string& text);

} // namespace gw
