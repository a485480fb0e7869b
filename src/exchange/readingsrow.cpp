#include "exchange/readingsrow.h"

#include <algorithm>

namespace gw {

namespace {

std::string_view cellAt(std::span<const std::string_view> cells, std::size_t column)
{
    return column < cells.size() ? cells[column] : std::string_view {};
}

} // namespace

bool spansLines(const CsvRow& row)
{
    return std::any_of(row.cells.begin(), row.cells.end(),
        [](auto& cell) { return cell.find_first_of("\r\n") != std::string_view::npos; });
}

Error openQuote(const std::string& file, int line)
{
    return { ErrorCode::BadInput,
        file + " line " + std::to_string(line)
            + ": a quotation mark is opened and never closed; take it out or close it." };
}

int yearOf(Moment moment) { return int(dateOf(moment).year()); }

std::optional<WrittenDate> rowDate(std::span<const std::string_view> cells, const ReadingsLayout& layout)
{
    if (layout.stamp != StampForm::Calendar)
        return {};
    const auto time = parseWrittenTime(cellAt(cells, layout.timeColumn));
    return time ? time->date : std::nullopt;
}

std::optional<RowTime> rowTime(
    std::span<const std::string_view> cells, const ReadingsLayout& layout, int thisYear)
{
    using std::chrono::milliseconds;
    RowTime row;
    const auto cell = cellAt(cells, layout.timeColumn);
    if (layout.stamp != StampForm::Calendar) {
        auto number = parseWrittenNumber(cell, '.');
        if (!number)
            number = parseWrittenNumber(cell, ',');
        const auto at = number ? stampOf(number->value, layout.stamp) : std::nullopt;
        if (!at)
            return {};
        row.wall = *at;
        row.day = dateOf(*at);
        if (layout.stamp != StampForm::SpreadsheetDays)
            row.offset = std::chrono::minutes { 0 };
        return row;
    }
    auto time = parseWrittenTime(cell);
    if (!time || !time->date)
        return {};
    if (layout.clockColumn) {
        const auto clock = parseWrittenTime(cellAt(cells, *layout.clockColumn));
        if (!clock || !clock->clock || clock->date)
            return {};
        time->clock = clock->clock;
        time->offset = clock->offset;
    }
    const auto day = dayOf(*time->date, layout.dateOrder, thisYear);
    if (!day)
        return {};
    row.day = *day;
    row.wall = startOf(*day) + time->clock.value_or(std::chrono::hours(12));
    row.offset = time->offset;
    return row;
}

bool isDataRow(const CsvRow& row, const ReadingsLayout& layout)
{
    if (row.line < layout.firstRowLine)
        return false;
    if (row.tooLong)
        return true;
    if (!row.cells.empty() && row.cells.front().starts_with('#'))
        return false;
    return !std::all_of(row.cells.begin(), row.cells.end(), [](auto& cell) { return bare(cell).empty(); });
}

} // namespace gw
