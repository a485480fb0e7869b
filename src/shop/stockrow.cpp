#include "shop/stockrow.h"

#include <QString>

#include "codes/ownlabel.h"
#include "measure/quoted.h"
#include "shop/setup.h"

namespace gw {

namespace {

QString simple(const std::string& text) { return QString::fromStdString(text).simplified(); }

/// One line's cells on their way to a row, collecting what is wrong with them.
class RowReader {
public:
    RowReader(const StockCells& cells, Date today, std::vector<StockRefusal>& refusals)
        : m_cells(cells)
        , m_today(today)
        , m_refusals(refusals)
    {
    }
    StockRow read();

private:
    void refuse(const char* column, std::string why)
    {
        m_refusals.push_back({ m_cells.line, column, std::move(why) });
    }
    /// What a cell says by one of the readers; none for an empty cell and for one that is refused.
    template <class T, class Reader>
    std::optional<T> cell(const char* column, const std::string& text, Reader reader)
    {
        if (text.empty())
            return {};
        Result<T> value = reader(text);
        if (value)
            return std::move(*value);
        refuse(column, value.error().sentence);
        return {};
    }
    std::optional<Date> day(const char* column, const std::string& text);
    void readLabel();
    void readAmounts();
    void readOpened();
    void readDates();
    void compareDates();

    const StockCells& m_cells;
    Date m_today;
    std::vector<StockRefusal>& m_refusals;
    StockRow m_row;
};

/// A day that is over or is today.
std::optional<Date> RowReader::day(const char* column, const std::string& text)
{
    const auto date = cell<Date>(column, text, [](const std::string& typed) { return parseDate(typed); });
    // A day of grace: the day begins earlier east of here.
    if (date && startOf(*date) > later(startOf(m_today), Days { 1 })) {
        refuse(column, spokenDate(*date) + " is still to come; give the day it was.");
        return {};
    }
    return date;
}

void RowReader::readLabel()
{
    if (m_cells.label.empty())
        return;
    if (const auto label = parseOwnLabel(m_cells.label))
        m_row.label = *label;
    else
        refuse("label",
            inQuotes(m_cells.label)
                + " is no label code of ours; look at it again, or leave the cell empty for a new one.");
}

void RowReader::readAmounts()
{
    const auto amount = [](const std::string& typed) { return parseAmount(typed); };
    if (m_cells.capacity.empty())
        refuse("capacity", "Say what it holds when full, such as 500 g.");
    const auto capacity = cell<Amount>("capacity", m_cells.capacity, amount);
    if (capacity && capacity->milli <= 0)
        refuse("capacity", "A container holds more than nothing; give its size.");
    const auto left = cell<Amount>("left", m_cells.left, amount);
    if (!capacity || capacity->milli <= 0)
        return;
    m_row.capacity = *capacity;
    m_row.left = left.value_or(*capacity);
    if (m_row.left.dimension != m_row.capacity.dimension)
        refuse("left", "Give what is left in the unit of what it holds when full.");
    else if (m_row.left.milli <= 0)
        refuse("left", "There is nothing left in it; take the line out.");
    else if (m_row.left > m_row.capacity)
        refuse("left", "There cannot be more left than it holds when full; correct one of the two.");
}

void RowReader::readOpened()
{
    const QString opened = simple(m_cells.opened).toLower();
    if (opened == QLatin1String("yes") || opened == QLatin1String("unknown"))
        m_row.open = true;
    else if (opened != QLatin1String("no")) {
        m_row.opened = day("opened", m_cells.opened);
        m_row.open = m_row.opened.has_value();
    }
    // Whoever took some out has opened it, whether anybody wrote that down or not.
    if (m_row.left < m_row.capacity)
        m_row.open = true;
}

void RowReader::readDates()
{
    m_row.made = day("made", m_cells.made);
    m_row.printed = cell<Date>(
        "label_date", m_cells.labelDate, [](const std::string& typed) { return parseDate(typed); });
    const QString is = simple(m_cells.labelDateIs).toLower();
    m_row.printedIsUseBy = is == QLatin1String("use by");
    if (!is.isEmpty() && !m_row.printedIsUseBy && is != QLatin1String("best before"))
        refuse(
            "label_date_is", inQuotes(m_cells.labelDateIs) + " is neither \"best before\" nor \"use by\".");
    m_row.arrived = day("arrived", m_cells.arrived);
    m_row.failedTest = day("failed_test", m_cells.failedTest);
}

void RowReader::compareDates()
{
    if (m_row.made && m_row.printed && startOf(*m_row.printed) < startOf(*m_row.made))
        refuse("label_date", "It lies before the day it was made; look at the label again.");
    if (m_row.made && m_row.arrived && startOf(*m_row.arrived) < startOf(*m_row.made))
        refuse("arrived", "It lies before the day it was made; look at the label again.");
    if (m_row.arrived && m_row.opened && startOf(*m_row.opened) < startOf(*m_row.arrived))
        refuse("opened", "It lies before the day it came; leave arrived empty if it came open.");
    if (m_row.made && m_row.opened && startOf(*m_row.opened) < startOf(*m_row.made))
        refuse("opened", "It lies before the day it was made; look at the label again.");
    if (m_row.arrived && m_row.failedTest && startOf(*m_row.failedTest) < startOf(*m_row.arrived))
        refuse("failed_test", "It lies before the day it came; correct one of the two.");
}

StockRow RowReader::read()
{
    m_row.line = m_cells.line;
    readLabel();
    m_row.material = simple(m_cells.material).toStdString();
    if (m_row.material.empty())
        refuse("material", "Say what it is: the material's name.");
    m_row.cls = simple(m_cells.cls).toStdString();
    m_row.articleCode = m_cells.articleCode;
    m_row.gtin = cell<Gtin>("gtin", m_cells.gtin, [](const std::string& typed) { return parseGtin(typed); });
    readAmounts();
    m_row.place = simple(m_cells.place).toStdString();
    m_row.lot = m_cells.lot;
    m_row.serial = m_cells.serial;
    readDates();
    readOpened();
    compareDates();
    m_row.hold = m_cells.hold;
    if (!m_row.hold.empty() && m_row.lot.empty())
        refuse("hold", "Only a lot can be held back; say which lot it is, or leave hold empty.");
    m_row.price
        = cell<Money>("price", m_cells.price, [](const std::string& typed) { return parsePrice(typed); });
    return std::move(m_row);
}

} // namespace

std::string refusalText(const StockRefusal& refusal)
{
    return "line " + std::to_string(refusal.line) + ", " + refusal.column + ": " + refusal.why;
}

StockRow readStockRow(const StockCells& cells, Date today, std::vector<StockRefusal>& refusals)
{
    return RowReader(cells, today, refusals).read();
}

} // namespace gw
