#pragma once

#include <optional>
#include <string>
#include <vector>

#include "gluing/howmuch.h"
#include "gluing/whichglue.h"
#include "shop/suitability.h"

namespace gw {

/// What a person can say when asking for a glue; empty and none are not said.
struct GlueAsked {
    std::string joint; ///< as Conditions has it
    std::string residue;
    std::optional<bool> period, mustComeApart;
    std::optional<double> gapMm;
    std::optional<ServicePlace> place;
    std::optional<Load> load;
};

/// Every family ranked for it. Errors: NotFound for the joint or residue, BadInput for the gap.
Result<WhichGlueAnswer> whichGlueFor(const Shop& shop, const GlueAsked& asked);

/// What one pot is to do: joints by their sizes, with lost wood, and jobs of known types beside them.
struct PotAsked {
    FamilyId family; ///< id, or its name
    std::string name; ///< of the joints' job; empty: "These joints"
    std::vector<JointWork> joints;
    double fillCm3 = 0;
    int pieces = 1;
    struct Other {
        std::string jobType; ///< key or name
        int pieces = 1;
    };
    std::vector<Other> others; ///< on the same pot
};

struct PotAnswer {
    FamilyRecord family;
    SpreadFigures figures;
    PotNeed need;
    std::string source, confidence; ///< of the spread
    std::vector<std::string> notes; ///< sentences
};

/// Errors: NotFound for the family (naming those there are) or a job type; BadInput for what cannot be, and
/// for a job type of another family, which wants a pot of its own.
Result<PotAnswer> needOnePot(const Shop& shop, const PotAsked& asked);

/// A job type made of joints, so that it can be checked and planned. Its name must be new, or one the shop
/// made so before. Errors: those of needOnePot(); BadInput without a name; Refused for a name of the
/// reference data's own.
Result<JobTypeRecord> saveJobTypeOf(Shop& shop, const PotAsked& asked, Moment now);

} // namespace gw
