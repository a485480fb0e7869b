#pragma once

#include <optional>
#include <vector>

#include "gluing/glueup.h"
#include "gluing/partstock.h"

/// A candidate held against the need, and the gates that come of it; nobody outside the room needs it.
namespace gw {

struct HeldAgainst {
    const StockCandidate* candidate = nullptr;
    Amount need; ///< ready glue; zero means it is not known
    std::vector<PartStock> parts; ///< in the candidate's order

    bool isTwoPart() const { return candidate->partnerMissing || candidate->parts.size() > 1; }
    PartState worst() const; ///< of the parts; None when there are none
    Amount shortBy() const; ///< ready glue that good stock does not cover
};

HeldAgainst holdAgainst(const StockCandidate& candidate, Amount need, Moment now);

Gate partnerGate(const HeldAgainst& held); ///< meant for two-part candidates
Gate ageGate(const GlueUpQuestion& question, const HeldAgainst& held, Moment now);
Gate amountGate(const GlueUpQuestion& question, const HeldAgainst& held);

} // namespace gw
