#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string_view>

#include "exchange/readingscells.h"
#include "exchange/readingslook.h"
#include "exchange/readingsstream.h"

namespace gw {

/// No logger of this kind is older.
inline constexpr int firstYear = 1990;

/// The time of a row.
struct RowTime {
    /// What the clock on the wall showed, counted as if it were UTC; UTC itself for seconds since 1970. Noon
    /// where the row gives a day alone.
    Moment wall;
    Date day; ///< of the wall
    std::optional<std::chrono::minutes> offset; ///< zero for seconds since 1970
};

/// None when the row's time cannot be read in the layout's way.
std::optional<RowTime> rowTime(
    std::span<const std::string_view> cells, const ReadingsLayout& layout, int thisYear);

/// The written date of a row; none where it has none, as with seconds since 1970.
std::optional<WrittenDate> rowDate(std::span<const std::string_view> cells, const ReadingsLayout& layout);

/// Whether a row is one of readings: not above the first, not blank, no comment.
bool isDataRow(const CsvRow& row, const ReadingsLayout& layout);

/// Whether a cell holds a line break.
bool spansLines(const CsvRow& row);

/// The refusal of a file with a quotation mark that swallows what follows.
Error openQuote(const std::string& file, int line);

int yearOf(Moment moment);

} // namespace gw
