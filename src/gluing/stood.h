#pragma once

#include <optional>
#include <string>
#include <vector>

#include "measure/moment.h"
#include "measure/range.h"
#include "measure/temperature.h"

namespace gw {

/// A reading of the air where the wood stood.
struct AirReading {
    Moment at;
    Celsius temperature;
    std::optional<double> humidity; ///< percent
};

/// What wood holds after standing in a place, estimated from its air.
struct StoodMoisture {
    std::optional<Range<double>> percent; ///< none: not known
    std::string why; ///< a sentence: what it rests on, or what is missing
    double watchedShare = 0; ///< of the weeks looked at
};

/// The Wood Handbook's equilibrium (measure/moistair.h) of the place's air, each moment counting the less
/// the longer it is past: over four days for a thin part and three weeks for a thick one (days for thin
/// parts, weeks for a seat board: common practice, no source). The range is from the one to the other with a
/// point more on either side, for species and history (the handbook warns of both). Looked at are six weeks
/// up to `now`; with readings of temperature and humidity for less than half of that time, or none in the
/// last three days, it is not known. A reading speaks for six hours at most.
StoodMoisture moistureWhereItStood(const std::vector<AirReading>& readings, Moment now);

} // namespace gw
