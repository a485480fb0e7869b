#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/readingslook.h"
#include "exchange/readingsnames.h"

namespace gw {

/// A row with the line it starts on.
struct HeadRow {
    int line = 1;
    std::vector<std::string> cells;
    bool ended = true; ///< false for a last line without its end
};

/// The first rows of a text, at most so many; ended by a quotation mark that is never closed, whose line is
/// then told.
std::vector<HeadRow> headRows(
    std::string_view text, char delimiter, std::size_t most, int* openQuoteLine = nullptr);

/// What separates the cells: of comma, semicolon, tab and bar the one that makes the most rows out of a time
/// and a number; or what a first line "sep=;" says.
char delimiterOf(std::string_view text);

/// Where the rows begin and which column is which, from the first rows of a file: fills the layout's line
/// and column members and adds the doubts about columns. The names, units below the header included, are
/// returned. Errors: BadInput.
Result<std::vector<ColumnName>> shapeOf(const std::string& file, const std::vector<HeadRow>& rows,
    const ReadingsChoices& choices, ReadingsLayout& layout, std::vector<Doubt>& doubts);

/// A number with either decimal sign.
bool isNumber(std::string_view cell);
/// A calendar date, alone or with a time of day, or a number that counts seconds or days up to one.
bool isStamp(std::string_view cell);
/// The way in which a bare number could be a time; Calendar when in none.
StampForm numericStamp(std::string_view cell);

} // namespace gw
