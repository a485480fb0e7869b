#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/treatment.h"
#include "shop/shop.h"

namespace gw {

/// One taking for a piece.
struct PieceUse {
    ContainerId container;
    std::string label; ///< of the container
    std::string lot; ///< empty: not known
    std::string batch; ///< label code of the batch it went in by; empty: straight from the container
    std::string materialName, className;
    ClassId classId;
    Amount amount;
    std::string comesApart; ///< how its family is undone; empty: not known, or no glue
    std::optional<Verdict> verdict; ///< as it stood then; none: no record was kept
    std::string reason;
};

/// One piece of work: a glue-up with its record, or a job of which only the takings are known.
struct PieceWork {
    Moment at;
    std::string jobName;
    std::vector<PieceUse> uses;
    std::optional<GlueUpRecord> record;

    /// As the record has it, else as the takings' families have it; empty: not known.
    std::vector<std::string> comesApart() const;
};

/// Everything that went into one piece of a client's, and how it comes apart again.
struct PiecePage {
    std::string piece; ///< as it was last written
    std::vector<PieceWork> work; ///< newest first; what was undone is not in the piece
    std::vector<std::string> cautions; ///< for who takes it apart or works on it, each once
    std::vector<std::string> pictograms; ///< of what went in, as it was in the bottle
};

/// By the piece's name, else the job's; case and blanks do not matter. As of a moment. Errors: NotFound for a
/// piece nobody wrote down, BadInput for an empty name.
Result<PiecePage> piecePage(const Shop& shop, const std::string& piece, Moment asOf);

/// One piece in a list.
struct PieceLine {
    std::string name;
    Moment first, last; ///< of the work on it
    int works = 0;
    int photos = 0;
    std::vector<std::string> materials; ///< what went in, latest first, each once
};
/// Every piece that something was recorded for, the latest first; text matches the piece, what was done, a
/// material, a lot or a label code.
Result<std::vector<PieceLine>> pieceLines(const Shop& shop, const std::string& text, Moment asOf);

/// A page as the client is given it: materials by class and lot, conditions, how it comes apart, cautions.
Treatment treatmentOf(const PiecePage& page, UnitSystem units, Moment printed);

} // namespace gw
