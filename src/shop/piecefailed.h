#pragma once

#include <optional>
#include <string>
#include <vector>

#include "gluing/causes.h"
#include "shop/lotpieces.h"

namespace gw {

/// A joint that came apart: where, what its faces show, and what is remembered now and was not written down.
struct FailedJoint {
    std::string piece; ///< as piecePage() finds it
    std::optional<Date> on; ///< the day of the glue-up; none: the latest
    std::optional<double> woodFailurePercent;
    std::optional<bool> stillSoft, oneFaceOnly, thickAndBubbly, glassyUnbroken;
    std::optional<double> assemblyMinutes, clampedMinutes, loadedAfterHours, gapMm, ratioErrorPercent;
};

struct WhyFailed {
    std::string piece;
    Moment at; ///< of the glue-up
    std::string jobName, glue;
    bool recorded = false; ///< its conditions were kept; else only what was used is known
    std::vector<Cause> causes; ///< likeliest first, each with the test that tells it apart
    struct OtherPiece {
        std::string piece, materialName, lot, label;
        Moment at;
    };
    std::vector<OtherPiece> others; ///< that had stock of the same lots, the latest first
    int usesWithoutPiece = 0; ///< of the same lots: they may be in any piece
    std::string note; ///< what this can and cannot tell
};

/// Why a joint may have failed, from what was kept of its glue-up. A recorded figure is never overruled by
/// what is remembered. Errors: those of piecePage(), piecesWithLot() and causesOf(); NotFound where no glue
/// is recorded on that piece, or none on that day (the sentence names the days there are).
Result<WhyFailed> whyFailed(const Shop& shop, const FailedJoint& joint, Moment asOf);

} // namespace gw
