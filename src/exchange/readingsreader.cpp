#include "exchange/readingsreader.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "measure/quoted.h"

namespace gw {

namespace {

constexpr std::size_t batchSize = 4096;
constexpr std::size_t mostListed = 200;
constexpr double spikeDegrees = 15; ///< common practice, no source; as are the two below
constexpr double spikeAgreement = 3;
constexpr std::chrono::hours spikeTime { 1 };
constexpr std::chrono::hours lowHour { 5 };
constexpr std::chrono::hours highHour { 15 };

std::string degrees(Celsius celsius) { return formatTemperature({ std::round(celsius.value * 10) / 10 }); }

} // namespace

ReadingsReader::ReadingsReader(std::string file, const ReadingsLayout& layout, Moment now,
    const TakeReadings& take, const TakeDays& takeDays)
    : m_file(std::move(file))
    , m_layout(layout)
    , m_take(take)
    , m_takeDays(takeDays)
    , m_clock(layout.zone, now)
    , m_latest(now + std::chrono::hours(24))
    , m_thisYear(yearOf(now))
{
    m_batch.reserve(batchSize + 2);
    m_read.daily = layout.daily;
}

bool ReadingsReader::add(const CsvRow& row)
{
    if (!isDataRow(row, m_layout))
        return true;
    ++m_read.rows;
    if (row.tooLong) {
        setAside(row, "The line is longer than 64 kB, which no reading is.", true);
        return true;
    }
    if (row.openQuote && spansLines(row)) {
        m_error = openQuote(m_file, row.line);
        return false;
    }
    if (!row.ended && wasCut(row)) {
        setAside(row, "The file ends in the middle of this line, or may have been cut there.", false);
        return true;
    }
    if (row.cells.size() < m_layout.width) {
        setAside(row,
            "The row has " + std::to_string(row.cells.size()) + " cells where the others have "
                + std::to_string(m_layout.width) + ".",
            true);
        return true;
    }
    const auto time = rowTime(row.cells, m_layout, m_thisYear);
    if (!time) {
        if (contradicts(row))
            return false;
        setAside(row, inQuotes(row.cells[m_layout.timeColumn]) + " cannot be read as a time.", true);
        return true;
    }
    const int year = int(time->day.year());
    if (year < firstYear || year > m_thisYear + 1) {
        setAside(row,
            "The year " + std::to_string(year) + " cannot be right; look at the clock of the logger.", false);
        return true;
    }
    remember(row.cells);
    if (m_layout.daily)
        return addDay(row, *time);
    const auto at = momentOf(row, *time);
    const auto found = at ? temperature(row, *m_layout.temperatureColumn) : std::nullopt;
    if (!found)
        return true;
    watchOrder(*at);
    Waiting next { { *at, found->value, humidity(row.cells) }, row.line, {} };
    if (m_waiting && std::abs(found->value.value - m_waiting->reading.temperature.value) > spikeDegrees)
        next.text = textOf(row.cells);
    return wait(std::move(next));
}

bool ReadingsReader::addDay(const CsvRow& row, const RowTime& time)
{
    const auto low = temperature(row, *m_layout.lowColumn);
    const auto high = low ? temperature(row, *m_layout.highColumn) : std::nullopt;
    if (!high)
        return true;
    if (low->value > high->value) {
        setAside(row, "The low of the day is above its high.", false);
        return true;
    }
    RowTime early = time;
    RowTime late = time;
    early.wall = startOf(time.day) + lowHour;
    late.wall = startOf(time.day) + highHour;
    if (early.wall > m_latest) {
        setAside(row, "The day has not come yet; look at the clock of the logger.", false);
        return true;
    }
    const auto lowAt = momentOf(row, early);
    const auto highAt = lowAt ? momentOf(row, late) : std::nullopt;
    if (!highAt)
        return true;
    watchOrder(*lowAt);
    ++m_read.taken;
    if (m_takeDays)
        m_days.push_back({ time.day, low->value, high->value });
    return accept({ *lowAt, low->value, {} }) && accept({ *highAt, high->value, {} });
}

/// The moment that a row's time means. An hour that comes twice is told apart by the row before: in time
/// order the first pass is the earlier one, until a time comes again.
std::optional<Moment> ReadingsReader::momentOf(const CsvRow& row, const RowTime& time)
{
    std::optional<Moment> at;
    if (time.offset) {
        at = time.wall - *time.offset;
    } else {
        const auto shown = m_clock.whenShowing(time.wall);
        if (shown.count == 0) {
            setAside(row,
                "The clocks of " + m_layout.zone
                    + " leap over this time; if the logger's own clock never changes, give its offset from "
                      "UTC as "
                      "the zone.",
                false);
            return {};
        }
        const auto unplaced = std::exchange(m_unplaced, {});
        if (shown.count == 1
            || (unplaced && m_layout.order == RowOrder::NewestFirst && time.wall >= *unplaced))
            at = shown.at[0];
        else if (unplaced && m_layout.order == RowOrder::OldestFirst && time.wall <= *unplaced)
            at = shown.at[1];
        else if (m_before && m_layout.order == RowOrder::OldestFirst && shown.at[1] > *m_before)
            at = shown.at[0] > *m_before ? shown.at[0] : shown.at[1];
        else if (m_before && m_layout.order == RowOrder::NewestFirst && shown.at[0] < *m_before)
            at = shown.at[1] < *m_before ? shown.at[1] : shown.at[0];
        if (!at) {
            m_unplaced = time.wall;
            setAside(row,
                "The clocks of " + m_layout.zone
                    + " show this time twice, and the rows before do not tell which is meant.",
                false);
            return {};
        }
    }
    if (*at > m_latest && !m_layout.daily) {
        setAside(row, "The time has not come yet; look at the clock of the logger.", false);
        return {};
    }
    return at;
}

std::optional<ReadingsReader::Temperature> ReadingsReader::temperature(const CsvRow& row, std::size_t column)
{
    const auto cell = column < row.cells.size() ? row.cells[column] : std::string_view {};
    const auto number = parseWrittenNumber(cell, m_layout.decimalSign);
    if (!number) {
        // A row without a figure is an event of the logger's own, no sign of a wrong layout.
        const bool blank = bare(cell).empty();
        setAside(row,
            blank ? std::string("The row has no temperature.") : inQuotes(cell) + " is no temperature.",
            !blank);
        return {};
    }
    const Celsius value = toCelsius(number->value, number->unit.value_or(m_layout.unit));
    if (!(value >= possibleAir.low && value <= possibleAir.high)) {
        setAside(row,
            degrees(value) + " cannot be right: what is below " + degrees(possibleAir.low) + " or above "
                + degrees(possibleAir.high) + " is a fault of the logger.",
            false);
        return {};
    }
    return Temperature { value, number->decimals, number->unit.has_value() };
}

std::optional<double> ReadingsReader::humidity(Cells cells)
{
    if (!m_layout.humidityColumn || *m_layout.humidityColumn >= cells.size())
        return {};
    const auto cell = cells[*m_layout.humidityColumn];
    const auto number = parseWrittenNumber(cell, m_layout.decimalSign);
    if (number && !number->unit && number->value >= 0 && number->value <= 100)
        return number->value;
    m_read.humidityDropped += bare(cell).empty() ? 0 : 1;
    return {};
}

/// A date that only fits another order shows that the ones before were read wrongly.
bool ReadingsReader::contradicts(const CsvRow& row)
{
    const auto date = rowDate(row.cells, m_layout);
    if (!date || date->plain())
        return false;
    for (const DateOrder order : { DateOrder::DayFirst, DateOrder::MonthFirst }) {
        const auto day = dayOf(*date, order, m_thisYear);
        if (order == m_layout.dateOrder || !day || int(day->year()) < firstYear)
            continue;
        m_error = Error { ErrorCode::BadInput,
            m_file + " line " + std::to_string(row.line) + ": " + inQuotes(row.cells[m_layout.timeColumn])
                + " shows that the dates are written with the "
                + (order == DateOrder::DayFirst ? "day first; choose --date-order day-month."
                                                : "month first; choose --date-order month-day.") };
        return true;
    }
    return false;
}

void ReadingsReader::watchOrder(Moment at)
{
    if (m_before) {
        m_read.repeated += at == *m_before ? 1 : 0;
        m_read.outOfOrder
            += (m_layout.order == RowOrder::NewestFirst ? at > *m_before : at < *m_before) ? 1 : 0;
    }
    m_before = at;
}

bool ReadingsReader::isSpike(const Reading& next) const
{
    if (!m_accepted || m_waiting->text.empty())
        return false;
    const Reading& here = m_waiting->reading;
    const double up = here.temperature.value - m_accepted->temperature.value;
    const double down = here.temperature.value - next.temperature.value;
    return std::abs(up) > spikeDegrees && std::abs(down) > spikeDegrees && up * down > 0
        && std::abs(up - down) <= spikeAgreement && std::chrono::abs(here.at - m_accepted->at) <= spikeTime
        && std::chrono::abs(next.at - here.at) <= spikeTime;
}

bool ReadingsReader::wait(Waiting next)
{
    bool goOn = true;
    if (m_waiting && isSpike(next.reading))
        setAside({ m_waiting->line, std::move(m_waiting->text),
            "A spike: " + degrees(m_waiting->reading.temperature) + " between "
                + degrees(m_accepted->temperature) + " and " + degrees(next.reading.temperature) + "." });
    else if (m_waiting) {
        ++m_read.taken;
        m_accepted = m_waiting->reading;
        goOn = accept(m_waiting->reading);
    }
    m_waiting = std::move(next);
    return goOn;
}

bool ReadingsReader::accept(const Reading& reading)
{
    m_read.from = std::min(m_read.from.value_or(reading.at), reading.at);
    m_read.to = std::max(m_read.to.value_or(reading.at), reading.at);
    m_batch.push_back(reading);
    return m_batch.size() < batchSize || flush();
}

bool ReadingsReader::flush()
{
    Result<void> done;
    if (m_take && !m_batch.empty())
        done = m_take(m_batch);
    if (done && m_takeDays && !m_days.empty())
        done = m_takeDays(m_days);
    m_batch.clear();
    m_days.clear();
    if (!done)
        m_error = done.error();
    return done.has_value();
}

Result<ReadingsRead> ReadingsReader::finish(bool cancelled)
{
    if (!m_error && m_waiting) {
        ++m_read.taken;
        accept(m_waiting->reading);
        m_waiting.reset();
    }
    if (!m_error)
        flush();
    if (m_error)
        return tl::unexpected<Error>(*m_error);
    m_read.cancelled = cancelled;
    if (cancelled)
        return std::move(m_read);
    if (m_read.rows == 0)
        return fail(ErrorCode::BadInput, m_file + " has no readings below its header; export it again.");
    if (m_firstUnreadable && (mostlyUnreadable() || m_read.taken == 0))
        return fail(ErrorCode::BadInput,
            m_file + " line " + std::to_string(m_firstUnreadable->line) + ": " + m_firstUnreadable->why + " "
                + std::to_string(m_unreadable) + " of " + std::to_string(m_read.rows)
                + " rows cannot be read, so none is taken; export the file again.");
    if (m_read.taken == 0 && !m_read.listed.empty())
        return fail(ErrorCode::BadInput,
            m_file + " line " + std::to_string(m_read.listed.front().line) + ": " + m_read.listed.front().why
                + " No row of the file can be taken.");
    return std::move(m_read);
}

void ReadingsReader::setAside(const CsvRow& row, std::string why, bool unreadable)
{
    const bool first = unreadable && !m_firstUnreadable;
    m_unreadable += unreadable ? 1 : 0;
    if (!first && m_read.listed.size() >= mostListed) {
        ++m_read.setAside;
        return;
    }
    SetAside aside { row.line, textOf(row.cells), std::move(why) };
    if (first)
        m_firstUnreadable = aside;
    setAside(std::move(aside));
}

/// A spike shows a row late, so the list is kept in order by hand.
void ReadingsReader::setAside(SetAside aside)
{
    ++m_read.setAside;
    auto& listed = m_read.listed;
    const auto later = std::upper_bound(listed.begin(), listed.end(), aside.line,
        [](int line, const SetAside& one) { return line < one.line; });
    listed.insert(later, std::move(aside));
    if (listed.size() > mostListed)
        listed.pop_back();
}

std::string ReadingsReader::textOf(Cells cells) const
{
    std::string text;
    for (std::size_t i = 0; i < cells.size() && text.size() < 500; ++i) {
        if (i > 0)
            text += m_layout.delimiter;
        text += cells[i].substr(0, 500);
    }
    return shownText(text, m_layout.encoding);
}

} // namespace gw
