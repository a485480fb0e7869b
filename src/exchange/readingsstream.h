#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <QFile>
#include <QStringDecoder>

#include "exchange/readingslook.h"
#include "measure/error.h"

struct csv_parser;

namespace gw {

/// One row of a file, alive during the call that hands it over.
struct CsvRow {
    int line = 1; ///< the line that it starts on
    std::span<const std::string_view> cells;
    bool ended = true; ///< false: the file ended before the line did
    bool openQuote = false; ///< and that inside a quoted cell
    bool tooLong = false; ///< more than 64 kB and given up; it has no cells
};

/// Splits text that comes in pieces into rows, with libcsv, and keeps the count of lines.
class CsvRows {
public:
    /// `row` answers whether to go on.
    CsvRows(char delimiter, std::function<bool(const CsvRow&)> row);
    ~CsvRows();
    CsvRows(const CsvRows&) = delete;
    CsvRows& operator=(const CsvRows&) = delete;

    /// False once `row` said to stop.
    bool feed(std::string_view piece);
    /// Hands over the last row, should its line have no end.
    void finish();
    /// The line of a quotation mark that nothing closes; 0 when there is none.
    int openQuoteLine() const { return m_openQuoteLine; }

private:
    static void onCell(void* text, std::size_t length, void* self) noexcept;
    static void onRow(int end, void* self) noexcept;
    void hand(bool ended, bool openQuote, bool tooLong);
    bool feedLine(std::string_view line, bool whole);

    std::function<bool(const CsvRow&)> m_row;
    std::unique_ptr<csv_parser> m_parser;
    std::string m_text; ///< the cells of the row, one behind the other
    std::vector<std::size_t> m_ends;
    std::vector<std::string_view> m_cells;
    std::size_t m_rowBytes = 0;
    int m_line = 1;
    int m_rowLine = 1;
    int m_openQuoteLine = 0;
    char m_lineEnd = 0; ///< not known before the first piece
    bool m_rowDone = false;
    bool m_skipping = false;
    bool m_finishing = false;
    bool m_goOn = true;
    bool m_finishQuote = false;
};

/// A file's text in UTF-8 or what passes for it, piece by piece: UTF-16 is turned into UTF-8 and a byte order
/// mark dropped; all else is as it stands.
class TextPieces {
public:
    /// Errors: FileUnreadable.
    static Result<std::unique_ptr<TextPieces>> open(const QString& path);

    /// The next piece; empty at the end. Errors: FileUnreadable.
    Result<std::string_view> next();

    const std::string& name() const { return m_name; }
    std::int64_t bytes() const { return m_file.size(); }
    std::int64_t done() const { return m_file.pos(); }
    /// Utf8 for every text of single bytes; which, shows in the text.
    TextEncoding encoding() const { return m_encoding; }

private:
    explicit TextPieces(const QString& path);

    QFile m_file;
    std::string m_name;
    TextEncoding m_encoding = TextEncoding::Utf8;
    QStringDecoder m_decoder;
    QByteArray m_raw;
    QByteArray m_recoded;
    bool m_first = true;
};

/// Outside text as UTF-8, without control characters, cut when it is longer than `most` characters.
std::string shownText(std::string_view text, TextEncoding encoding, int most = 120);

} // namespace gw
