#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ageing/verdict.h"
#include "gluing/family.h"
#include "gluing/glueup.h"

namespace gw {

/// What is recorded of a joint that failed, and what its faces show. Not said is not known.
struct JointFacts {
    Family family;
    std::optional<Verdict> stock; ///< of the containers as they stood then, the worst of them
    std::string stockReason; ///< the reason's sentence
    std::optional<int> frostEvents;
    std::optional<double> heatDoseHours; ///< hot glue: hours at 60 C when it was used
    std::optional<Celsius> air, wood;
    std::optional<double> humidity; ///< percent
    std::optional<double> woodMoisture; ///< percent
    std::optional<double> gapMm;
    std::optional<double> surfaceAgeHours;
    std::optional<Suitability> residue; ///< under the new glue
    std::optional<Suitability> joint; ///< whether the family is right for it
    std::optional<double> assemblyMinutes; ///< from spreading to pressure
    std::optional<double> clampedMinutes; ///< until the clamps came off
    std::optional<double> loadedAfterHours; ///< until it carried its full load
    std::optional<double> ratioErrorPercent; ///< two-part: how far the hardener was off, either way
    // What the faces show now
    std::optional<double> woodFailurePercent; ///< share of the face that tore in the wood
    std::optional<bool> glueStillSoft, glueOnOneFaceOnly, glueThickAndBubbly, glueGlassyUnbroken;
    UnitSystem units = UnitSystem::Metric; ///< of the sentences
};

enum class Likelihood { Likely, Possible, NotKnown, Unlikely };
std::string_view word(Likelihood likelihood); ///< "likely", "possible", "not_known", "unlikely"

/// One thing that may have made a joint fail. id is stable: "stock", "frost", "heat_dose", "cold",
/// "moisture", "gap", "residue", "surface", "assembly", "clamp", "load", "ratio", "joint", "humidity",
/// "wood_gave". The weight ranks within a likelihood and is no probability.
struct Cause {
    std::string id;
    std::string name; ///< "Taken out of the clamps too soon"
    Likelihood likelihood = Likelihood::NotKnown;
    double weight = 0;
    std::string why; ///< a sentence with the recorded figure, or what is not recorded
    std::string test; ///< what would tell it apart
};

/// Every cause that can be for the family, the likeliest first. Likely is a recorded figure the family's
/// limit forbids, possible one it warns of; a fact that is not recorded makes its cause not known, and never
/// unlikely. What the faces show weighs for or against (common practice, no source). Errors: BadInput for a
/// figure that cannot be.
Result<std::vector<Cause>> causesOf(const JointFacts& facts);

} // namespace gw
