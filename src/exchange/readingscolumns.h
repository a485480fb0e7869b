#pragma once

#include <string>
#include <vector>

#include "exchange/readingsshape.h"

namespace gw {

/// Which column is which, by the names in `layout.columns` and by what stands below them: fills the layout's
/// column members, its stamp and daily, and adds a doubt where several may hold the temperature. Errors:
/// BadInput: no time column, no temperature column, one of words, a choice that is not there.
Result<std::vector<ColumnName>> columnsOf(const std::string& file, const std::vector<HeadRow>& rows,
    const ReadingsChoices& choices, ReadingsLayout& layout, std::vector<Doubt>& doubts);

} // namespace gw
