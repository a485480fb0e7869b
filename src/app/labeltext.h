#pragma once

#include <optional>
#include <vector>

#include <QString>

#include "measure/range.h"
#include "store/records.h"

/// What a person copies from a label, read as they write it. Errors: BadInput, with what to write instead.
namespace gw {

/// "2027-05-31", or a month "2027-05" as many labels give it: from its first to its last day.
Result<Range<Date>> readLabelDate(const QString& text);

/// Lives as a label gives them, in months ("18", "18 months", "2 years"), as a material's own figures. An
/// empty text gives none.
Result<std::vector<Figure>> readLabelLives(const QString& sealed, const QString& opened);

/// "Keep between" two temperatures, either may be empty; without a unit they are in the person's own.
Result<std::vector<Figure>> readKeepBetween(const QString& low, const QString& high, UnitSystem units);

/// One temperature as read off a thermometer; without a unit it is in the person's own.
Result<Celsius> readTemperature(const QString& text, UnitSystem units);

/// A price; without a currency it is in the shop's. An empty text gives none.
Result<std::optional<Money>> readPrice(const QString& text, const QString& currency);

/// An amount; without a unit it is in the one given.
Result<Amount> readAmount(const QString& text, const QString& unit);

} // namespace gw
