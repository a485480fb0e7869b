#pragma once

#include "measure/error.h"
#include "measure/temperature.h"

namespace gw {

/// Relative humidity of the air, percent, 0 to 100.
struct RelativeHumidity {
    double percent = 0;
    friend auto operator<=>(const RelativeHumidity&, const RelativeHumidity&) = default;
};

/// Water in wood, percent of its dry mass.
struct WoodMoisture {
    double percent = 0;
    friend auto operator<=>(const WoodMoisture&, const WoodMoisture&) = default;
};

/// The moisture content that wood left long enough in such air settles at.
/// USDA Wood Handbook (FPL-GTR-282, 2021) equation 4-5, Celsius constants. Its table spans -1.1 to 132.2 C
/// and 5 to 95 %; outside that the equation is stretched (see inHandbookTable). The handbook itself warns
/// that a tenth of a percent has no physical meaning: a real piece differs by species and history. Errors:
/// BadInput outside -40 to 132.5 C (hotter, the equation turns back on itself) or 0 to 100 %, or when either
/// is no number.
Result<WoodMoisture> equilibriumMoisture(Celsius air, RelativeHumidity humidity);

/// Whether the handbook's table itself covers such air, so that the answer is not stretched.
bool inHandbookTable(Celsius air, RelativeHumidity humidity);

/// The temperature at which water begins to condense out of such air, over water (not ice) below 0 C too.
/// Alduchov and Eskridge 1996 (Magnus form), within 0.02 C of the IAPWS line from 0 to 40 C.
/// Errors: BadInput outside -40 to 60 C, above 100 %, at or below 0 % (dry air has no dew point), or when
/// either is no number.
Result<Celsius> dewPoint(Celsius air, RelativeHumidity humidity);

/// Saturation vapour pressure over water, pascal; same source. Meant for -40 to 60 C.
double saturationPressurePascal(Celsius air);

} // namespace gw
