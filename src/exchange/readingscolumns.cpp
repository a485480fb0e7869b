#include "exchange/readingscolumns.h"

#include <algorithm>
#include <functional>
#include <set>

#include <QString>

#include "exchange/readingscells.h"
#include "measure/quoted.h"

namespace gw {

namespace {

using Columns = std::vector<std::size_t>;

/// What stands in a column.
struct Content {
    int filled = 0;
    int dates = 0; ///< calendar dates, with or without a time of day
    int clocks = 0; ///< times of day alone
    int withClock = 0; ///< of the dates, those with a time of day
    int numbers = 0;
    int withUnit = 0; ///< of the numbers, those with a unit of temperature
    int seconds = 0, milliseconds = 0, days = 0; ///< of the numbers, those that could be times
    int steps = 0; ///< rows one more than the row before: a count of the rows
    int strangeLine = 0; ///< the first cell that is neither number nor time
    std::string strange;

    bool mostly(int count) const { return filled > 0 && count * 2 >= filled; }
    bool counts() const { return filled > 2 && steps >= filled - 1; }
};

Content contentOf(const std::vector<HeadRow>& rows, std::size_t c)
{
    Content content;
    std::optional<double> before;
    for (const HeadRow& row : rows) {
        if (c >= row.cells.size() || bare(row.cells[c]).empty())
            continue;
        const std::string& cell = row.cells[c];
        ++content.filled;
        auto number = parseWrittenNumber(cell, '.');
        if (!number)
            number = parseWrittenNumber(cell, ',');
        if (number) {
            ++content.numbers;
            content.withUnit += number->unit ? 1 : 0;
            const StampForm form = numericStamp(cell);
            content.seconds += form == StampForm::UnixSeconds ? 1 : 0;
            content.milliseconds += form == StampForm::UnixMilliseconds ? 1 : 0;
            content.days += form == StampForm::SpreadsheetDays ? 1 : 0;
            content.steps += before && number->value == *before + 1 ? 1 : 0;
            before = number->value;
        } else if (const auto time = parseWrittenTime(cell)) {
            content.dates += time->date ? 1 : 0;
            content.withClock += time->date && time->clock ? 1 : 0;
            content.clocks += time->date ? 0 : 1;
        } else if (content.strangeLine == 0) {
            content.strangeLine = row.line;
            content.strange = cell;
        }
    }
    return content;
}

class Finder {
public:
    Finder(const std::string& file, const std::vector<HeadRow>& rows, ReadingsLayout& layout)
        : m_file(file)
        , m_rows(rows)
        , m_layout(layout)
    {
        for (std::size_t c = 0; c < layout.columns.size(); ++c) {
            m_names.push_back(layout.headerLine > 0 ? columnName(layout.columns[c]) : ColumnName {});
            m_content.push_back(contentOf(rows, c));
        }
    }

    Result<void> time(const std::optional<std::string>& choice);
    Result<void> temperature(const std::optional<std::string>& choice, std::vector<Doubt>& doubts);
    Result<void> humidity(const std::optional<std::string>& choice);
    std::vector<ColumnName> names() const { return m_names; }

private:
    Columns all(const std::function<bool(const ColumnName&, const Content&)>& test) const;
    Result<std::size_t> chosen(const std::string& choice) const;
    std::string columnList() const;
    Columns temperatureCandidates() const;
    bool onceADay() const;
    Result<void> holdsNumbers(std::size_t c) const;
    std::string line(int number) const { return m_file + " line " + std::to_string(number) + ": "; }

    const std::string& m_file;
    const std::vector<HeadRow>& m_rows;
    ReadingsLayout& m_layout;
    std::vector<ColumnName> m_names;
    std::vector<Content> m_content;
};

Columns Finder::all(const std::function<bool(const ColumnName&, const Content&)>& test) const
{
    Columns found;
    for (std::size_t c = 0; c < m_names.size(); ++c)
        if (test(m_names[c], m_content[c]))
            found.push_back(c);
    return found;
}

std::string Finder::columnList() const
{
    std::string list;
    for (std::size_t c = 0; c < m_layout.columns.size() && c < 12; ++c)
        list += (c > 0 ? ", " : "") + inQuotes(m_layout.columns[c]);
    return list + (m_layout.columns.size() > 12 ? " and more" : "");
}

Result<std::size_t> Finder::chosen(const std::string& choice) const
{
    const QString wanted = QString::fromStdString(choice).trimmed();
    for (std::size_t c = 0; c < m_layout.columns.size(); ++c)
        if (QString::fromStdString(m_layout.columns[c]).compare(wanted, Qt::CaseInsensitive) == 0)
            return c;
    bool number = false;
    const auto at = wanted.toUInt(&number);
    if (number && at >= 1 && at <= m_layout.columns.size())
        return std::size_t(at) - 1;
    return fail(ErrorCode::BadInput,
        m_file + " has no column " + inQuotes(choice) + "; its columns are " + columnList() + ".");
}

Result<void> Finder::time(const std::optional<std::string>& choice)
{
    Columns found;
    if (choice) {
        const auto at = chosen(*choice);
        if (!at)
            return tl::unexpected<Error>(at.error());
        found = { *at };
    }
    if (found.empty())
        found = all([](auto& name, auto& content) { return name.time && content.mostly(content.dates); });
    if (found.empty())
        found = all([](auto&, auto& content) { return content.mostly(content.dates); });
    if (found.empty())
        found = all([](auto& name, auto& content) {
            return name.time
                && (content.mostly(content.seconds) || content.mostly(content.milliseconds)
                    || content.mostly(content.days));
        });
    // Seconds since 1970 show by their size alone; days of a spreadsheet could be any number.
    if (found.empty())
        found = all([](auto&, auto& content) {
            return content.filled > 0
                && (content.seconds == content.filled || content.milliseconds == content.filled);
        });
    if (found.empty()) {
        for (const std::size_t c : all([](auto& name, auto&) { return name.time; }))
            if (m_content[c].strangeLine > 0)
                return fail(ErrorCode::BadInput,
                    line(m_content[c].strangeLine) + "the column " + inQuotes(m_layout.columns[c]) + " holds "
                        + inQuotes(m_content[c].strange)
                        + ", which is no date and time; export it with date and time, such as 2026-05-25 "
                          "14:00.");
        return fail(ErrorCode::BadInput,
            m_file + " has no column of dates or times; its columns are " + columnList()
                + ". Export it with the time of each reading.");
    }
    m_layout.timeColumn = found.front();
    const Content& content = m_content[found.front()];
    if (content.mostly(content.dates))
        m_layout.stamp = StampForm::Calendar;
    else if (content.mostly(content.seconds))
        m_layout.stamp = StampForm::UnixSeconds;
    else if (content.mostly(content.milliseconds))
        m_layout.stamp = StampForm::UnixMilliseconds;
    else if (content.mostly(content.days))
        m_layout.stamp = StampForm::SpreadsheetDays;
    else
        return fail(ErrorCode::BadInput,
            m_file + ": the column " + inQuotes(m_layout.columns[found.front()])
                + " holds no dates and times; name another.");
    if (m_layout.stamp == StampForm::Calendar && content.withClock * 2 < content.dates) {
        const auto clocks = all([](auto&, auto& other) { return other.mostly(other.clocks); });
        if (!clocks.empty())
            m_layout.clockColumn = clocks.front();
    }
    return {};
}

Columns Finder::temperatureCandidates() const
{
    const auto free = [&](const Columns& columns) {
        Columns left;
        for (const std::size_t c : columns)
            if (c != m_layout.timeColumn && c != m_layout.clockColumn)
                left.push_back(c);
        return left;
    };
    auto found = free(all([](auto& name, auto&) {
        return name.temperature && !name.other && !name.mean && !name.low && !name.high;
    }));
    if (found.empty())
        found = free(all([](auto& name, auto&) { return name.temperature && name.mean && !name.other; }));
    if (found.empty())
        found = free(all([](auto& name, auto&) { return name.plainValue && !name.other; }));
    if (found.empty())
        found = free(all([](auto& name, auto& content) {
            return !name.other && !name.low && !name.high && content.mostly(content.withUnit);
        }));
    if (found.empty() && m_layout.headerLine == 0)
        found = free(
            all([](auto&, auto& content) { return content.mostly(content.numbers) && !content.counts(); }));
    return found;
}

/// Whether each row is a day of its own: dates alone, or each at the same time of its day.
bool Finder::onceADay() const
{
    if (m_layout.clockColumn || m_layout.stamp != StampForm::Calendar)
        return false;
    std::set<std::array<int, 3>> days;
    std::set<std::int64_t> clocks;
    int rows = 0;
    for (const HeadRow& row : m_rows) {
        const auto time = m_layout.timeColumn < row.cells.size()
            ? parseWrittenTime(row.cells[m_layout.timeColumn])
            : std::nullopt;
        if (!time || !time->date)
            continue;
        ++rows;
        days.insert(time->date->parts);
        clocks.insert(time->clock ? time->clock->count() : -1);
    }
    return rows > 0 && clocks.size() == 1 && (*clocks.begin() == -1 || int(days.size()) == rows);
}

Result<void> Finder::holdsNumbers(std::size_t c) const
{
    const Content& content = m_content[c];
    if (content.mostly(content.numbers))
        return {};
    if (content.strangeLine > 0)
        return fail(ErrorCode::BadInput,
            line(content.strangeLine) + "the column " + inQuotes(m_layout.columns[c]) + " holds "
                + inQuotes(content.strange) + " where a temperature should stand; export it with figures.");
    return fail(ErrorCode::BadInput,
        m_file + ": the column " + inQuotes(m_layout.columns[c])
            + " holds no temperatures; name another, or export the file again.");
}

Result<void> Finder::temperature(const std::optional<std::string>& choice, std::vector<Doubt>& doubts)
{
    if (choice) {
        const auto at = chosen(*choice);
        if (!at)
            return tl::unexpected<Error>(at.error());
        m_layout.temperatureColumn = *at;
        return holdsNumbers(*at);
    }
    auto found = temperatureCandidates();
    const auto extremes = [&](bool ColumnName::* which) {
        const auto fits = [&](const ColumnName& name, const Content& content) {
            return name.*which && !name.humidity && !name.other
                && (content.filled == 0 || content.mostly(content.numbers));
        };
        const auto surely
            = all([&](auto& name, auto& content) { return fits(name, content) && name.temperature; });
        return surely.empty() ? all(fits) : surely;
    };
    const auto lows = extremes(&ColumnName::low);
    const auto highs = extremes(&ColumnName::high);
    const bool pair = lows.size() == 1 && highs.size() == 1 && lows != highs;
    if (pair && onceADay()) {
        m_layout.lowColumn = lows.front();
        m_layout.highColumn = highs.front();
        m_layout.daily = true;
        const auto low = holdsNumbers(lows.front());
        return low ? holdsNumbers(highs.front()) : low;
    }
    if (found.empty())
        found.insert(found.end(), lows.begin(), lows.end());
    if (found == lows)
        for (const std::size_t c : highs)
            if (std::find(found.begin(), found.end(), c) == found.end())
                found.push_back(c);
    if (found.empty())
        return fail(ErrorCode::BadInput,
            m_file + " has no column of temperatures; its columns are " + columnList()
                + ". Name the column, or export the file with temperatures.");
    m_layout.temperatureColumn = found.front();
    if (found.size() > 1) {
        Doubt doubt { DoubtKind::Column, "Which column holds the temperature of the place?", {}, {}, {} };
        for (const std::size_t c : found) {
            doubt.choices.push_back(m_layout.columns[c]);
            doubt.values.push_back(std::to_string(c + 1));
        }
        doubts.push_back(std::move(doubt));
        return {};
    }
    return holdsNumbers(found.front());
}

Result<void> Finder::humidity(const std::optional<std::string>& choice)
{
    if (choice) {
        const auto at = chosen(*choice);
        if (!at)
            return tl::unexpected<Error>(at.error());
        if (!m_content[*at].mostly(m_content[*at].numbers))
            return fail(ErrorCode::BadInput,
                m_file + ": the column " + inQuotes(m_layout.columns[*at])
                    + " holds no figures of humidity; name another.");
        if (m_layout.daily)
            return fail(ErrorCode::BadInput,
                m_file
                    + " gives the low and high of each day, and humidity is not kept of whole days; leave "
                      "its column out.");
        m_layout.humidityColumn = *at;
        return {};
    }
    for (const std::size_t c : all([](auto& name, auto& content) {
             return name.humidity && !name.other && !name.low && !name.high && content.numbers > 0;
         }))
        if (!m_layout.humidityColumn && c != m_layout.temperatureColumn && c != m_layout.timeColumn)
            m_layout.humidityColumn = c;
    if (m_layout.daily)
        m_layout.humidityColumn.reset();
    return {};
}

} // namespace

Result<std::vector<ColumnName>> columnsOf(const std::string& file, const std::vector<HeadRow>& rows,
    const ReadingsChoices& choices, ReadingsLayout& layout, std::vector<Doubt>& doubts)
{
    Finder finder(file, rows, layout);
    if (auto time = finder.time(choices.timeColumn); !time)
        return tl::unexpected<Error>(time.error());
    if (auto temperature = finder.temperature(choices.column, doubts); !temperature)
        return tl::unexpected<Error>(temperature.error());
    if (auto humidity = finder.humidity(choices.humidityColumn); !humidity)
        return tl::unexpected<Error>(humidity.error());
    return finder.names();
}

} // namespace gw
