#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "measure/error.h"

namespace gw {

/// What an amount measures. Amounts of different dimensions never mix without a density.
enum class Dimension { Mass, Volume, Count, Length };

/// Unit system of the person, used only when writing amounts out.
enum class UnitSystem { Metric, Us };

/// Density of a material, grams per millilitre (bulk density for powders and granules).
struct GramsPerMillilitre {
    double value = 0;
};

/// An amount as the ledger keeps it: whole thousandths of gram, millilitre, piece or metre, so that sums are
/// exact.
struct Amount {
    std::int64_t milli = 0;
    Dimension dimension = Dimension::Mass;

    friend auto operator<=>(const Amount&, const Amount&) = default;
    double value() const { return static_cast<double>(milli) / 1000.0; } ///< in g, ml, pieces or m
};

Amount amountOf(double value, Dimension dimension); ///< rounds to the nearest thousandth
inline Amount grams(double value) { return amountOf(value, Dimension::Mass); }
inline Amount millilitres(double value) { return amountOf(value, Dimension::Volume); }
inline Amount pieces(double value) { return amountOf(value, Dimension::Count); }

/// Both must have one dimension; anything else is a programming error (asserted).
Amount operator+(Amount a, Amount b);
Amount operator-(Amount a, Amount b);

/// An amount as people type it: "500g", "1.5 kg", "2,5 l", "8 fl oz", "1 lb", "2 qt", "12 each", "12 pcs", "3
/// pr", "0.5 m". A comma or a point may stand for the decimals. Errors: BadInput for no unit, an unknown
/// unit, a negative or absurdly large number (over 10^9 base units), or text that is no number. Zero is
/// allowed.
Result<Amount> parseAmount(std::string_view text);

/// "500 g", "1.5 kg", "237 ml", "12 pieces", "8.0 fl oz". At most three significant decimals, never a
/// rounding to zero of something that is not zero. Decimal point always "."; the screens localise.
std::string formatAmount(Amount amount, UnitSystem system = UnitSystem::Metric);

/// "g", "ml", "each", "m": the ledger's own unit, as in the JSON answers.
std::string_view baseUnit(Dimension dimension);
std::optional<Dimension> dimensionOfUnit(std::string_view baseUnit); ///< for "g", "ml", "each", "m" only

/// The same stuff in another dimension, through its density. None when the two cannot be turned into each
/// other.
std::optional<Amount> convert(Amount amount, Dimension to, std::optional<GramsPerMillilitre> density);

} // namespace gw
