#pragma once

#include <string>
#include <vector>

#include "measure/error.h"

namespace gw {

/// The modules of a square symbol, row by row, without its quiet zone.
struct SymbolModules {
    int size = 0; ///< modules along one side
    std::vector<bool> dark;
    bool at(int x, int y) const
    {
        return dark[static_cast<std::size_t>(y) * static_cast<std::size_t>(size)
            + static_cast<std::size_t>(x)];
    }
};

/// One of our codes as a square Data Matrix (ISO/IEC 16022, ECC 200), drawn by Zint. Errors: BadInput for an
/// empty text or one that is too long for a label.
Result<SymbolModules> dataMatrixOf(const std::string& text);

} // namespace gw
