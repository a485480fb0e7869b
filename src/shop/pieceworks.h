#pragma once

#include <map>
#include <string>
#include <vector>

#include "shop/piecepage.h"

namespace gw {

/// Case and blanks do not make another piece.
std::string foldedPiece(const std::string& name);

/// All work there is, by the folded name of the piece, else of the job; newest first. Records are heads only
/// (Store::glueUps()).
struct WorksOfPiece {
    std::string name; ///< as last written
    std::vector<PieceWork> works;
};
Result<std::map<std::string, WorksOfPiece>> worksByPiece(const Shop& shop, Moment asOf);

} // namespace gw
