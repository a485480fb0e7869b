#pragma once

#include <string>
#include <vector>

#include "shop/shop.h"

namespace gw {

/// One taking of a lot for a job.
struct LotUse {
    Moment at;
    std::string piece; ///< the client's piece; the job's name where none was given
    std::string jobName;
    std::string materialName;
    std::string label; ///< of the container it came from
    Amount amount;
    std::string comesApart; ///< how the family is undone; empty: not known
};

/// Where a lot went, as far as it was written down.
struct LotPieces {
    std::string lot; ///< empty: the container asked about carries none
    std::vector<std::string> labels; ///< the containers looked through, by label
    std::vector<LotUse> uses; ///< newest first
    int withoutPiece = 0; ///< takings that name no job: they may be in any piece
    bool onHold = false;
    std::vector<std::string> pieces() const; ///< each once, the latest first
};

/// Which pieces had stock of a lot: asked by the lot number, or by a container's id or label code, which
/// means that container's material and lot. Where a container carries no lot, only it and what was decanted
/// from it or it from are looked through. Errors: NotFound for no such lot and no such container.
Result<LotPieces> piecesWithLot(const Shop& shop, const std::string& lotOrContainer, Moment asOf);

} // namespace gw
