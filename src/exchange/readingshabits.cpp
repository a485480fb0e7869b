#include "exchange/readingshabits.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include <QString>

#include "exchange/readingsdates.h"
#include "exchange/readingsrow.h"
#include "exchange/readingszone.h"
#include "measure/quoted.h"

namespace gw {

namespace {

/// Counts numbers by whole steps, for their median.
class Median {
public:
    void add(double value)
    {
        ++m_counts[std::size_t(std::clamp(std::lround(value) + 200L, 0L, long(m_counts.size()) - 1))];
        ++m_all;
    }
    std::optional<double> value() const
    {
        int below = 0;
        for (std::size_t i = 0; i < m_counts.size(); ++i) {
            below += m_counts[i];
            if (below * 2 > m_all)
                return double(i) - 200;
        }
        return {};
    }

private:
    std::array<int, 701> m_counts {};
    int m_all = 0;
};

/// What a walk over the rows gathers.
struct Gathered {
    int points = 0, commas = 0; ///< decimal signs of the temperatures
    int celsius = 0, fahrenheit = 0; ///< units behind them
    int withOffset = 0, withoutOffset = 0;
    int up = 0, down = 0; ///< steps in time
    std::optional<Moment> before;
    bool beforeDoubled = false;
    std::set<std::chrono::year_month> months;
    int doubled = 0; ///< times that the zone's clocks show twice
    int leapt = 0; ///< times that they never show
    Median values;
};

std::array<std::size_t, 2> temperatureColumns(const ReadingsLayout& layout)
{
    const std::size_t low = layout.temperatureColumn.value_or(layout.lowColumn.value_or(0));
    return { low, layout.temperatureColumn.value_or(layout.highColumn.value_or(low)) };
}

void eachRow(
    const Looked& looked, const ReadingsLayout& layout, const std::function<void(const CsvRow&)>& use)
{
    CsvRows rows(layout.delimiter, [&](const CsvRow& row) {
        if (!row.tooLong && isDataRow(row, layout) && row.cells.size() >= layout.width)
            use(row);
        return true;
    });
    if (rows.feed(looked.text) && looked.whole)
        rows.finish();
}

void gatherSigns(const CsvRow& row, const ReadingsLayout& layout, Gathered& all)
{
    for (const std::size_t column : temperatureColumns(layout)) {
        if (column >= row.cells.size())
            continue;
        auto number = parseWrittenNumber(row.cells[column], '.');
        all.points += number && number->decimals > 0 ? 1 : 0;
        if (!number) {
            number = parseWrittenNumber(row.cells[column], ',');
            all.commas += number ? 1 : 0;
        }
        if (!number)
            continue;
        all.values.add(number->value);
        if (number->unit)
            (*number->unit == DegreeUnit::Celsius ? all.celsius : all.fahrenheit) += 1;
    }
}

void gatherTimes(
    const CsvRow& row, const ReadingsLayout& layout, const WallClock& clock, int thisYear, Gathered& all)
{
    const auto time = rowTime(row.cells, layout, thisYear);
    if (!time)
        return;
    const int year = int(time->day.year());
    if (year < firstYear || year > thisYear)
        return;
    (time->offset ? all.withOffset : all.withoutOffset) += 1;
    const int shown = time->offset ? 1 : clock.whenShowing(time->wall).count;
    all.doubled += shown == 2 ? 1 : 0;
    all.leapt += shown == 0 ? 1 : 0;
    // Within the hour that comes twice a step back is no sign of disorder.
    if (all.before && time->wall != *all.before && !(shown == 2 && all.beforeDoubled))
        (time->wall > *all.before ? all.up : all.down) += 1;
    all.before = time->wall;
    all.beforeDoubled = shown == 2;
    all.months.insert(time->day.year() / time->day.month());
}

std::string joined(const HeadRow& row)
{
    std::string text;
    for (const std::string& cell : row.cells)
        text += cell + ' ';
    return text;
}

/// A line above the header that tells of units, such as "Unit: C".
std::optional<DegreeUnit> unitAbove(const Looked& looked, const ReadingsLayout& layout)
{
    std::optional<DegreeUnit> found;
    for (const HeadRow& row : looked.head) {
        if (row.line >= std::max(layout.headerLine, 1))
            break;
        const QString text = QString::fromStdString(joined(row)).toLower();
        const auto unit = columnName(joined(row)).unit;
        if (!unit || !(text.contains(QStringLiteral("unit")) || text.contains(QStringLiteral("temp"))))
            continue;
        if (found && *found != *unit)
            return {};
        found = unit;
    }
    return found;
}

/// A line above the header that tells of the zone, such as "Time zone: UTC+1".
std::string zoneAbove(const Looked& looked, const ReadingsLayout& layout)
{
    for (const HeadRow& row : looked.head) {
        if (row.line >= std::max(layout.headerLine, 1))
            break;
        const QString text = QString::fromStdString(joined(row));
        if (!text.contains(QStringLiteral("zone"), Qt::CaseInsensitive))
            continue;
        if (auto zone = columnName(joined(row)).zone; !zone.empty())
            return zone;
        for (const QString& word : text.split(QLatin1Char(' '), Qt::SkipEmptyParts))
            if (word.contains(QLatin1Char('/')))
                if (const auto zone = zoneNamed(word.toStdString()))
                    return *zone;
    }
    return {};
}

/// The unit that values alone give away. A place where glue stands has its usual temperature between -25 and
/// 45 C, and over a year between -5 and 35 C (common practice, no source).
std::optional<DegreeUnit> unitOfValues(double median, bool year)
{
    const auto plausible = [year](Celsius usual) {
        return year ? usual.value >= -5 && usual.value <= 35 : usual.value >= -25 && usual.value <= 45;
    };
    const bool celsius = plausible({ median });
    const bool fahrenheit = plausible(toCelsius(median, DegreeUnit::Fahrenheit));
    if (celsius == fahrenheit)
        return {};
    return celsius ? DegreeUnit::Celsius : DegreeUnit::Fahrenheit;
}

void decideUnit(const Looked& looked, const Gathered& all, ReadingsLayout& layout, std::vector<Doubt>& doubts)
{
    std::optional<DegreeUnit> unit = looked.choices.unit;
    if (!unit && all.celsius != all.fahrenheit)
        unit = all.celsius > all.fahrenheit ? DegreeUnit::Celsius : DegreeUnit::Fahrenheit;
    for (const std::size_t column : temperatureColumns(layout))
        if (!unit && column < looked.names.size())
            unit = looked.names[column].unit;
    if (!unit)
        unit = unitAbove(looked, layout);
    const auto median = all.values.value();
    if (!unit && median)
        unit = unitOfValues(*median, all.months.size() >= 11);
    if (!unit)
        unit = looked.choices.unitWhereSilent;
    layout.unit = unit.value_or(DegreeUnit::Celsius);
    if (!unit)
        doubts.push_back({ DoubtKind::Unit,
            "Nothing in the file tells degrees Celsius from Fahrenheit"
                + (median ? ", and its usual value of " + std::to_string(std::lround(*median))
                            + " could be either"
                          : std::string())
                + ". Which are they?",
            { "degrees Celsius", "degrees Fahrenheit" }, { "C", "F" }, {} });
}

Result<void> decideZone(const Looked& looked, ReadingsLayout& layout, bool& assumed)
{
    assumed = false;
    if (looked.choices.zone) {
        const auto zone = zoneNamed(*looked.choices.zone);
        if (!zone)
            return fail(ErrorCode::BadInput,
                "There is no time zone " + inQuotes(*looked.choices.zone)
                    + "; give UTC, an offset such as +01:00, or a zone's name of the form Area/City.");
        layout.zone = *zone;
        return {};
    }
    for (const std::optional<std::size_t>& column :
        { std::optional<std::size_t>(layout.timeColumn), layout.clockColumn })
        if (layout.zone.empty() && column && *column < looked.names.size())
            layout.zone = looked.names[*column].zone;
    if (layout.zone.empty())
        layout.zone = zoneAbove(looked, layout);
    if (layout.zone.empty()) {
        assumed = true;
        layout.zone = zoneNamed(looked.choices.shopZone).value_or("");
    }
    return {};
}

/// An assumed zone is said so. It is asked for when its clocks show a time twice and the rows, being in no
/// order, cannot tell which.
void zoneDoubt(const Gathered& all, Moment now, ReadingsLayout& layout, std::vector<Doubt>& doubts)
{
    if (layout.stamp != StampForm::SpreadsheetDays && all.withoutOffset == 0) {
        layout.zone = "UTC";
        return;
    }
    const std::string shop = layout.zone;
    if (shop == "UTC")
        return;
    Doubt doubt { DoubtKind::Zone, "The file does not say in which time zone its times are. Which is it?", {},
        {}, {} };
    if (shop.empty()) {
        layout.zone = "UTC";
    } else {
        doubt.choices.push_back("the shop's own, " + shop);
        doubt.values.push_back(shop);
        if (all.leapt > 0) {
            const std::string winter = standardTime(shop, now);
            doubt.question = "The file has times that the clocks of " + shop
                + " leap over, so the logger's own clock may never change. Which time zone is it in?";
            doubt.choices.push_back("the shop's winter time all year, " + winter);
            doubt.values.push_back(winter);
        }
        if (layout.order != RowOrder::Mixed || all.doubled == 0)
            doubt.taken = 0;
        else
            doubt.question = "The clocks of " + shop
                + " show an hour twice in this file, and its rows, in no order of time, do not tell which is "
                  "meant. Which zone are the times in?";
    }
    doubt.choices.emplace_back("UTC");
    doubt.values.emplace_back("UTC");
    doubts.push_back(std::move(doubt));
}

RowOrder orderOf(const Gathered& all)
{
    // A few rows out of place do not make a file one without order.
    if (all.up >= 20 * all.down)
        return RowOrder::OldestFirst;
    return all.down >= 20 * all.up ? RowOrder::NewestFirst : RowOrder::Mixed;
}

} // namespace

Result<void> habitsOf(const Looked& looked, ReadingsLayout& layout, std::vector<Doubt>& doubts)
{
    Gathered all;
    DateOrders dates(looked.now);
    eachRow(looked, layout, [&](const CsvRow& row) {
        gatherSigns(row, layout, all);
        if (const auto date = rowDate(row.cells, layout))
            dates.add(*date, bare(row.cells[layout.timeColumn]), row.line);
    });
    layout.decimalSign = all.commas > all.points ? ',' : '.';
    if (auto decided = dates.decide(looked.file, looked.choices.dateOrder, looked.whole, layout, doubts);
        !decided)
        return decided;
    bool assumed = false;
    if (auto decided = decideZone(looked, layout, assumed); !decided)
        return decided;

    const WallClock clock(layout.zone, looked.now);
    const int thisYear = yearOf(looked.now);
    eachRow(looked, layout, [&](const CsvRow& row) { gatherTimes(row, layout, clock, thisYear, all); });
    layout.order = orderOf(all);
    decideUnit(looked, all, layout, doubts);
    if (assumed)
        zoneDoubt(all, looked.now, layout, doubts);
    return {};
}

} // namespace gw
