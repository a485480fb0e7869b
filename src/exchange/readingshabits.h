#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/readingsnames.h"
#include "exchange/readingsshape.h"

namespace gw {

/// What the rows tell once it is known which column is which.
struct Looked {
    const std::string& file; ///< its name, for sentences
    std::string_view text; ///< the start of the file
    bool whole = false; ///< the text is all of it
    const std::vector<HeadRow>& head; ///< its first rows
    const std::vector<ColumnName>& names;
    Moment now;
    const ReadingsChoices& choices;
};

/// The decimal sign, the order of dates and of rows, the unit and the zone: fills the layout, and adds a
/// doubt for what stays open. Errors: BadInput where dates contradict each other or a choice, or a chosen
/// zone is not known.
Result<void> habitsOf(const Looked& looked, ReadingsLayout& layout, std::vector<Doubt>& doubts);

} // namespace gw
