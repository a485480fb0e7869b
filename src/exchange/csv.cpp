#include "exchange/csv.h"

#include <algorithm>
#include <cctype>
#include <memory>
#include <set>

#include <QFile>
#include <QFileInfo>
#include <QStringDecoder>

#include <csv.h>

namespace gw {

namespace {

constexpr qint64 largestFile = 64LL * 1024 * 1024;

std::string place(const std::string& name, int line) { return name + " line " + std::to_string(line) + ": "; }

bool isUtf8(std::string_view bytes)
{
    QStringDecoder decoder(QStringDecoder::Utf8, QStringDecoder::Flag::Stateless);
    const QString text = decoder.decode(QByteArrayView(bytes.data(), qsizetype(bytes.size())));
    Q_UNUSED(text)
    return !decoder.hasError();
}

/// Comma, unless the header line has none outside quotes and has the other.
char separatorOf(std::string_view bytes)
{
    bool quoted = false;
    bool semicolon = false;
    bool tab = false;
    for (const char c : bytes) {
        if (c == '"')
            quoted = !quoted;
        if (quoted)
            continue;
        if (c == '\n' || c == '\r')
            break;
        if (c == ',')
            return ',';
        semicolon = semicolon || c == ';';
        tab = tab || c == '\t';
    }
    return semicolon ? ';' : (tab ? '\t' : ',');
}

struct Sheet {
    std::vector<std::vector<std::string>> rows;
    std::vector<int> lines;
    std::vector<std::string> row;
    int rowStart = 1;
};

// The parser is C: whatever a callback throws must not cross it, and the only thing thrown here is bad_alloc.
void onCell(void* text, std::size_t length, void* sheet) noexcept
{
    static_cast<Sheet*>(sheet)->row.emplace_back(static_cast<const char*>(text), length);
}

void onRow(int, void* sheet) noexcept
{
    auto& s = *static_cast<Sheet*>(sheet);
    s.rows.push_back(std::move(s.row));
    s.lines.push_back(s.rowStart);
    s.row.clear();
}

/// Blanks belong to the cell (RFC 4180 section 2.4); the parser would trim them.
int noBlank(unsigned char) { return 0; }

struct Parser {
    Parser(char separator) noexcept
    {
        csv_init(&csv, CSV_STRICT | CSV_STRICT_FINI | CSV_APPEND_NULL);
        csv_set_delim(&csv, static_cast<unsigned char>(separator));
        csv_set_space_func(&csv, noBlank);
    }
    Parser(const Parser&) = delete;
    Parser& operator=(const Parser&) = delete;
    ~Parser() { csv_free(&csv); }
    csv_parser csv {};
};

/// Fed line by line, so that a row knows the line it starts on.
Result<Sheet> parse(std::string_view bytes, const std::string& name)
{
    Parser parser(separatorOf(bytes));
    Sheet sheet;
    int line = 1;
    while (!bytes.empty()) {
        const auto end = bytes.find('\n');
        const auto piece = bytes.substr(0, end == std::string_view::npos ? bytes.size() : end + 1);
        const auto before = sheet.rows.size();
        if (csv_parse(&parser.csv, piece.data(), piece.size(), onCell, onRow, &sheet) != piece.size())
            return fail(ErrorCode::BadInput,
                place(name, line)
                    + "a quotation mark stands where none may; put the whole cell in quotes and double those "
                      "inside it.");
        ++line;
        if (sheet.rows.size() > before || (sheet.row.empty() && parser.csv.pstate == 0))
            sheet.rowStart = line;
        bytes.remove_prefix(piece.size());
    }
    if (csv_fini(&parser.csv, onCell, onRow, &sheet) != 0)
        return fail(
            ErrorCode::BadInput, place(name, sheet.rowStart) + "a quotation mark is never closed; close it.");
    return sheet;
}

bool isPlainNumber(std::string_view cell)
{
    std::size_t at = (cell.front() == '-' || cell.front() == '+') ? 1 : 0;
    int digits = 0;
    int points = 0;
    for (; at < cell.size(); ++at) {
        if (cell[at] >= '0' && cell[at] <= '9')
            ++digits;
        else if (cell[at] == '.')
            ++points;
        else
            return false;
    }
    return digits > 0 && points <= 1;
}

/// Apostrophes before it do not count: else a cell that really begins with one could not be told from a
/// guarded one.
bool looksLikeFormula(std::string_view cell)
{
    cell.remove_prefix(std::min(cell.find_first_not_of('\''), cell.size()));
    constexpr std::string_view starts = "=+-@\t\r\n";
    return !cell.empty() && starts.find(cell.front()) != std::string_view::npos && !isPlainNumber(cell);
}

void appendCell(std::string& out, const std::string& cell)
{
    const std::string text = looksLikeFormula(cell) ? '\'' + cell : cell;
    const bool blankAtEnd = !text.empty() && (text.front() == ' ' || text.back() == ' ');
    if (!blankAtEnd && text.find_first_of(",\"\r\n") == std::string::npos) {
        out += text;
        return;
    }
    const std::size_t length = csv_write(nullptr, 0, text.data(), text.size());
    const std::size_t start = out.size();
    out.resize(start + length);
    csv_write(out.data() + start, length, text.data(), text.size());
}

void appendRow(std::string& out, const std::vector<std::string>& row)
{
    for (std::size_t i = 0; i < row.size(); ++i) {
        if (i > 0)
            out += ',';
        appendCell(out, row[i]);
    }
    out += "\r\n";
}

} // namespace

std::optional<std::size_t> CsvTable::column(std::string_view columnName) const
{
    const auto found = std::find(columns.begin(), columns.end(), columnName);
    if (found == columns.end())
        return {};
    return static_cast<std::size_t>(found - columns.begin());
}

const std::string& CsvTable::cell(std::size_t row, std::string_view columnName) const
{
    static const std::string nothing;
    const auto at = column(columnName);
    return at ? rows[row][*at] : nothing;
}

Result<CsvTable> readCsv(std::string_view bytes, std::string name)
{
    if (bytes.starts_with("\xEF\xBB\xBF"))
        bytes.remove_prefix(3);
    // A zero byte is never text; UTF-16, which some spreadsheets save, is full of them.
    if (bytes.find('\0') != std::string_view::npos)
        return fail(ErrorCode::BadInput, name + " is not plain text; save it as CSV in UTF-8.");

    CsvTable table;
    QByteArray recoded;
    if (!isUtf8(bytes)) {
        recoded = QString::fromLatin1(bytes.data(), qsizetype(bytes.size())).toUtf8();
        bytes = { recoded.constData(), static_cast<std::size_t>(recoded.size()) };
        table.assumedLatin1 = true;
    }
    auto sheet = parse(bytes, name);
    if (!sheet)
        return tl::unexpected<Error>(sheet.error());
    if (sheet->rows.empty())
        return fail(
            ErrorCode::BadInput, name + " is empty; it wants a line of column names and rows below it.");

    table.columns = std::move(sheet->rows.front());
    const int headerLine = sheet->lines.front();
    std::set<std::string_view> known;
    for (const std::string& column : table.columns) {
        if (column.empty())
            return fail(ErrorCode::BadInput,
                place(name, headerLine) + "a column has no name; give every column one.");
        if (!known.insert(column).second)
            return fail(ErrorCode::BadInput,
                place(name, headerLine) + "two columns are named \"" + column + "\"; rename one.");
    }
    for (std::size_t i = 1; i < sheet->rows.size(); ++i) {
        if (sheet->rows[i].size() != table.columns.size())
            return fail(ErrorCode::BadInput,
                place(name, sheet->lines[i]) + std::to_string(sheet->rows[i].size())
                    + " cells where the header has " + std::to_string(table.columns.size())
                    + "; make them the same number.");
        table.rows.push_back(std::move(sheet->rows[i]));
        table.lines.push_back(sheet->lines[i]);
    }
    table.name = std::move(name);
    return table;
}

Result<CsvTable> readCsvFile(const QString& path)
{
    const std::string name = QFileInfo(path).fileName().toStdString();
    if (!QFileInfo::exists(path))
        return fail(ErrorCode::FileUnreadable, name + " was not found; check the name and the folder.");
    QFile file(path);
    if (!QFileInfo(path).isFile() || !file.open(QIODevice::ReadOnly))
        return fail(
            ErrorCode::FileUnreadable, name + " cannot be read; check that it is a file and may be read.");
    if (file.size() > largestFile)
        return fail(ErrorCode::FileUnreadable, name + " is larger than 64 MB; split it.");
    const QByteArray bytes = file.readAll();
    if (file.error() != QFileDevice::NoError)
        return fail(ErrorCode::FileUnreadable, name + " cannot be read to its end; copy it again.");
    return readCsv({ bytes.constData(), static_cast<std::size_t>(bytes.size()) }, name);
}

std::string_view withoutGuard(std::string_view cell)
{
    return cell.starts_with('\'') && looksLikeFormula(cell) ? cell.substr(1) : cell;
}

std::string writeCsv(const CsvTable& table)
{
    std::string out;
    appendRow(out, table.columns);
    for (const auto& row : table.rows)
        appendRow(out, row);
    return out;
}

} // namespace gw
