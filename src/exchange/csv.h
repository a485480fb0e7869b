#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/error.h"

class QString;

namespace gw {

/// A table with a header line, every cell as text.
struct CsvTable {
    std::string name; ///< the file's name, for sentences
    std::vector<std::string> columns;
    std::vector<std::vector<std::string>> rows; ///< each as wide as columns
    std::vector<int> lines; ///< the line of the file that each row starts on, the header being line 1
    bool assumedLatin1
        = false; ///< the bytes were not UTF-8 and were taken as ISO 8859-1, as older loggers write

    std::optional<std::size_t> column(std::string_view columnName) const;
    /// The cell of a row by its column's name; empty when the table has no such column. The row must exist.
    const std::string& cell(std::size_t row, std::string_view columnName) const;
};

/// Reads comma-separated values (RFC 4180): a header line, then rows as wide as it; empty lines are passed
/// over. A header that holds semicolons or tabs and no comma says what separates the cells instead. A byte
/// order mark is dropped. Errors: BadInput with the name and the line: no header, a column named twice or not
/// at all, a stray or unclosed quote, a row of another width, bytes that are no text.
Result<CsvTable> readCsv(std::string_view bytes, std::string name);

/// The same for a file of at most 64 MB. Errors: also FileUnreadable.
Result<CsvTable> readCsvFile(const QString& path);

/// The table by RFC 4180: commas, CR LF, quotes where they are needed. A cell of text that a spreadsheet
/// would run as a formula (it starts with = + - @, a tab or a line break, apostrophes before them aside) gets
/// an apostrophe before it; plain numbers stay as they are.
std::string writeCsv(const CsvTable& table);

/// A cell as it was before writeCsv() put an apostrophe before it; any other cell as it is.
std::string_view withoutGuard(std::string_view cell);

} // namespace gw
