#include "exchange/readingsshape.h"

#include <algorithm>
#include <array>
#include <map>
#include <tuple>

#include "exchange/readingscells.h"
#include "exchange/readingscolumns.h"
#include "exchange/readingsrow.h"
#include "exchange/readingsstream.h"

namespace gw {

namespace {

constexpr std::size_t longestPreamble = 120;

bool isBlank(std::string_view cell) { return bare(cell).empty(); }

/// A time and, beside it, a number.
bool isReadingRow(const HeadRow& row)
{
    bool stamp = false;
    int numbers = 0;
    for (const std::string& cell : row.cells) {
        if (!stamp && isStamp(cell))
            stamp = true;
        else if (isNumber(cell))
            ++numbers;
    }
    return stamp && numbers > 0;
}

bool hasStamp(const HeadRow& row)
{
    return row.cells.size() > 1 && std::any_of(row.cells.begin(), row.cells.end(), isStamp);
}

bool isWords(const HeadRow& row)
{
    const auto words = [](const std::string& cell) {
        return isBlank(cell) || (!isStamp(cell) && !isNumber(cell) && !parseWrittenTime(cell));
    };
    const auto filled
        = std::count_if(row.cells.begin(), row.cells.end(), [](auto& c) { return !isBlank(c); });
    return filled > 1 && std::all_of(row.cells.begin(), row.cells.end(), words);
}

/// Whether the names in a row are those of a time and of a temperature, each in a cell of its own.
bool namesReadings(const HeadRow& row)
{
    if (!isWords(row))
        return false;
    bool time = false;
    bool low = false;
    bool high = false;
    bool temperature = false;
    for (const std::string& cell : row.cells) {
        // A longer text is a sentence about the file.
        if (cell.size() > 60)
            continue;
        const ColumnName name = columnName(cell);
        time = time || name.time;
        temperature = temperature || name.temperature || name.plainValue;
        low = low || (name.low && !name.humidity);
        high = high || (name.high && !name.humidity);
    }
    return time && (temperature || (low && high));
}

bool isUnitRow(const HeadRow& row)
{
    return std::all_of(row.cells.begin(), row.cells.end(), isUnitCell)
        && std::any_of(row.cells.begin(), row.cells.end(), [](auto& cell) { return !isBlank(cell); });
}

template <class Test> std::optional<std::size_t> firstRow(const std::vector<HeadRow>& rows, Test test)
{
    const auto found = std::find_if(rows.begin(), rows.end(), test);
    if (found == rows.end())
        return {};
    return std::size_t(found - rows.begin());
}

std::optional<std::size_t> headerRow(
    const std::vector<HeadRow>& rows, std::optional<std::size_t> firstReading)
{
    const auto named = firstRow(rows, namesReadings);
    if (named && *named < longestPreamble && (!firstReading || *named < *firstReading))
        return named;
    if (firstReading && *firstReading > 0) {
        const HeadRow& above = rows[*firstReading - 1];
        if (isWords(above) && above.cells.size() + 1 >= rows[*firstReading].cells.size())
            return *firstReading - 1;
    }
    // No row reads as one: names alone, or rows of words.
    if (!firstReading && !rows.empty() && isWords(rows.front()))
        return 0;
    return {};
}

/// Of whole lines; where there is none, as wide as the header.
std::size_t usualWidth(const std::vector<HeadRow>& rows, std::size_t from, std::size_t headerWidth)
{
    std::map<std::size_t, int> widths;
    for (std::size_t i = from; i < rows.size(); ++i)
        if (hasStamp(rows[i]) && (rows[i].ended || headerWidth == 0))
            ++widths[rows[i].cells.size()];
    std::size_t usual = headerWidth;
    int most = 0;
    for (const auto& [width, count] : widths)
        if (count >= most) {
            usual = width;
            most = count;
        }
    return usual;
}

} // namespace

std::vector<HeadRow> headRows(std::string_view text, char delimiter, std::size_t most, int* openQuoteLine)
{
    std::vector<HeadRow> rows;
    int openQuote = 0;
    CsvRows csv(delimiter, [&](const CsvRow& row) {
        if (row.openQuote && spansLines(row)) {
            openQuote = row.line;
            return false;
        }
        HeadRow head { row.line, {}, row.ended };
        head.cells.assign(row.cells.begin(), row.cells.end());
        if (!std::all_of(head.cells.begin(), head.cells.end(), [](auto& cell) { return isBlank(cell); }))
            rows.push_back(std::move(head));
        return rows.size() < most;
    });
    if (csv.feed(text))
        csv.finish();
    if (openQuoteLine != nullptr)
        *openQuoteLine = std::max(openQuote, csv.openQuoteLine());
    return rows;
}

StampForm numericStamp(std::string_view cell)
{
    const auto number = parseWrittenNumber(cell, '.');
    if (!number || number->unit)
        return StampForm::Calendar;
    for (const StampForm form :
        { StampForm::UnixSeconds, StampForm::UnixMilliseconds, StampForm::SpreadsheetDays })
        if (stampOf(number->value, form))
            return form;
    return StampForm::Calendar;
}

bool isNumber(std::string_view cell)
{
    return parseWrittenNumber(cell, '.').has_value() || parseWrittenNumber(cell, ',').has_value();
}

bool isStamp(std::string_view cell)
{
    const auto time = parseWrittenTime(cell);
    return time ? time->date.has_value() : numericStamp(cell) != StampForm::Calendar;
}

char delimiterOf(std::string_view text)
{
    if (text.starts_with("sep=") && text.size() > 5 && (text[5] == '\r' || text[5] == '\n'))
        return text[4];
    char best = ',';
    std::tuple<int, int, int, int> most { 0, 0, 0, 0 };
    for (const char delimiter : { ',', ';', '\t', '|' }) {
        const auto rows = headRows(text, delimiter, 300);
        std::tuple<int, int, int, int> found { 0, 0, 0, 0 };
        for (const HeadRow& row : rows) {
            std::get<0>(found) += isReadingRow(row) ? 1 : 0;
            std::get<1>(found) += namesReadings(row) ? 1 : 0;
            std::get<2>(found) += hasStamp(row) ? 1 : 0;
            std::get<3>(found) += row.cells.size() > 1 ? 1 : 0;
        }
        if (found > most) {
            most = found;
            best = delimiter;
        }
    }
    return best;
}

Result<std::vector<ColumnName>> shapeOf(const std::string& file, const std::vector<HeadRow>& rows,
    const ReadingsChoices& choices, ReadingsLayout& layout, std::vector<Doubt>& doubts)
{
    auto firstReading = firstRow(rows, isReadingRow);
    if (!firstReading)
        firstReading = firstRow(rows, hasStamp);
    const auto header = headerRow(rows, firstReading);
    std::size_t first = header ? *header + 1 : firstReading.value_or(0);

    std::vector<std::string> names = header ? rows[*header].cells : std::vector<std::string> {};
    layout.headerLine = header ? rows[*header].line : 0;
    for (int i = 0; header && i < 2 && first < rows.size() && isUnitRow(rows[first]); ++i, ++first)
        for (std::size_t c = 0; c < std::min(names.size(), rows[first].cells.size()); ++c)
            if (!isBlank(rows[first].cells[c]))
                names[c] += " " + rows[first].cells[c];
    if (first >= rows.size())
        return fail(ErrorCode::BadInput,
            file + " has no readings below its first lines; export it again, or choose another file.");
    layout.firstRowLine = rows[first].line;
    layout.width = usualWidth(rows, first, names.size());
    if (header && layout.width > names.size()) {
        const auto wide
            = std::find_if(rows.begin() + std::ptrdiff_t(first), rows.end(), [&](const HeadRow& row) {
                  return row.cells.size() > names.size()
                      && std::any_of(row.cells.begin() + std::ptrdiff_t(names.size()), row.cells.end(),
                          [](auto& cell) { return !isBlank(cell); });
              });
        if (wide != rows.end())
            return fail(ErrorCode::BadInput,
                file + " line " + std::to_string(wide->line) + ": " + std::to_string(wide->cells.size())
                    + " cells where the header has " + std::to_string(names.size())
                    + "; if commas stand both for the decimals and between the cells, export the file again "
                      "with semicolons.");
    }
    names.resize(std::max(layout.width, names.size()));
    for (std::size_t c = 0; c < names.size(); ++c) {
        names[c] = std::string(bare(names[c]));
        if (names[c].empty())
            names[c] = "column " + std::to_string(c + 1);
    }
    layout.columns = names;
    if (names.empty())
        return fail(ErrorCode::BadInput,
            file
                + " is not a table of readings: no line of it has a time and a temperature side by side; "
                  "export "
                  "the readings as CSV.");
    return columnsOf(file, { rows.begin() + std::ptrdiff_t(first), rows.end() }, choices, layout, doubts);
}

} // namespace gw
