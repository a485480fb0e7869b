#pragma once

#include <optional>
#include <string>
#include <vector>

#include "gluing/glueup.h"

namespace gw {

/// One family with what the reference tables say of it for what is asked.
struct GlueCandidate {
    Family family;
    std::optional<Suitability> joint; ///< none: the joint was not named
    std::optional<Suitability> place; ///< none: the place was not said
    std::optional<Suitability> load; ///< none: the load was not said
    std::optional<Suitability> residue; ///< none: none was named
};

enum class ServicePlace { Dry, Damp, Outdoor, Hot };
enum class Load { Light, Lasting, Shock }; ///< hardly any; weight that stays on; knocks and racking
std::optional<ServicePlace> servicePlaceOfWord(std::string_view word); ///< "dry", "damp", "outdoor", "hot"
std::optional<Load> loadOfWord(std::string_view word); ///< "light", "lasting", "shock"
std::string_view word(ServicePlace place);
std::string_view word(Load load);

struct WhichGlueQuestion {
    std::string jointName; ///< empty: not said
    std::optional<bool> period; ///< an old piece, or a modern one
    std::optional<bool> mustComeApart; ///< none: as the piece asks, which for a period piece is yes
    std::optional<double> gapMm;
    std::optional<ServicePlace> place;
    std::optional<Load> load;
    std::vector<GlueCandidate> candidates;
};

struct GlueReason {
    std::string about; ///< "joint", "gap", "undoing", "place", "load", "residue"
    GateResult result = GateResult::Unknown;
    std::string text;
};

struct RankedGlue {
    FamilyId family;
    std::string name;
    GateResult standing = GateResult::Unknown; ///< the worst reason: right, possible, wrong, not known
    std::vector<GlueReason> reasons; ///< never empty
    Undoing undoing = Undoing::NotKnown;
    std::string reversibleWith;
};

struct WhichGlueAnswer {
    std::vector<RankedGlue> glues; ///< best first; the wrong ones last, with why
    std::vector<std::string> wouldAsk; ///< what would narrow it, as sentences
    std::string note; ///< who decides
};

/// The families for a joint, ranked with their reasons. A wrong comes last whatever else speaks for it; a
/// fact the tables lack leaves a family not known, above the wrong and below the possible. Among equals the
/// one that comes apart more readily wins, for a joint returns sooner or later. Errors: BadInput for a gap
/// that cannot be, or no candidates.
Result<WhichGlueAnswer> whichGlue(const WhichGlueQuestion& question);

} // namespace gw
