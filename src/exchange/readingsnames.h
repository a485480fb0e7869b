#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/readingslook.h"

namespace gw {

/// What the name of a column says of it.
struct ColumnName {
    bool time = false; ///< a date, a time of day, or both
    bool temperature = false;
    bool plainValue = false; ///< "value", "reading": whatever it may be of
    bool low = false;
    bool high = false;
    bool humidity = false;
    bool mean = false;
    bool other = false; ///< a dew point, an alarm limit: no reading, whatever else the name says
    std::optional<DegreeUnit> unit;
    std::string zone; ///< what follows UTC or GMT, with it: "UTC", "UTC+02:00"; empty when it names none
};

/// Reads the words of a column's name, in the languages that the program's users write.
ColumnName columnName(std::string_view name);

/// Whether a cell holds nothing but a unit or a blank, as in a line of units below the header.
bool isUnitCell(std::string_view cell);

} // namespace gw
