#pragma once

#include <optional>
#include <string>

#include "measure/amount.h"
#include "measure/id.h"
#include "measure/range.h"
#include "measure/temperature.h"

namespace gw {

/// How a family comes apart again: by warmth and water, with force or harsh means, or not at all.
enum class Undoing { NotKnown, Ready, Hard, None };

/// What an adhesive family wants before it goes on; each figure none when the reference data has none.
struct Family {
    FamilyId id;
    std::string name;
    std::optional<Range<Celsius>> glueTemperature;
    std::optional<Celsius> airMin, airMax;
    std::optional<Range<Celsius>> airBest;
    std::optional<Celsius> woodMin;
    std::optional<Range<Celsius>> woodBest;
    std::optional<Range<double>> woodMoisture; ///< percent of dry mass
    std::optional<Range<double>> humidity; ///< percent relative humidity
    std::optional<double> gapBestMm, gapMaxMm;
    std::optional<double> surfaceAgeMaxHours;
    std::optional<Range<double>> openMinutes, closedMinutes; ///< at 20 C
    std::optional<double> unclampMinutes, fullLoadHours; ///< at 20 C
    double coldClampFactor = 1.0; ///< clamp time factor for each 10 C below 20
    std::string facesToSpread;
    std::string reversibleWith;
    Undoing undoing = Undoing::NotKnown;
};

/// A kind of work with what it usually takes. estimate(n) = n x (area x spread x (1 + waste) + extra) +
/// fixedLoss.
struct JobType {
    JobTypeId id;
    std::string name;
    FamilyId family; ///< empty for finishes, which go by class
    ClassId typicalClass; ///< may be empty
    Dimension dimension = Dimension::Mass; ///< grams, or millilitres for finishes
    double areaCm2 = 0;
    double spread = 0; ///< base units per square metre of glue line, both faces together, all coats
    double waste = 0; ///< share
    double fixedLoss = 0; ///< base units once each time: what stays in pot, cup and brush
    double extra = 0; ///< base units for each piece, such as fill for lost wood
    double perMonth = 0; ///< how many the shop expects in a month
    std::string source; ///< of the estimate
    std::string confidence;
};

/// The mixed or ready glue that so many pieces take in one go. Zero for no pieces, and for a job type
/// with no estimate: then it is not known how much the job takes, which is not the same as nothing.
Amount needFor(const JobType& job, int pieces);

} // namespace gw
