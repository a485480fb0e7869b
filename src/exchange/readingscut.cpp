// Whether the last line of a file, which has no end, is whole: a reading of 18.5 cut down to 1 must not be
// taken, and a file that merely lacks its last line break must not lose a reading.
#include "exchange/readingsreader.h"

#include <algorithm>
#include <cctype>

namespace gw {

namespace {

/// The same characters, digits and letters each standing for any of their kind.
bool sameShape(std::string_view a, std::string_view b)
{
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) {
        const auto isDigit = [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; };
        const auto isLetter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
        return x == y || (isDigit(x) && isDigit(y)) || (isLetter(x) && isLetter(y));
    });
}

} // namespace

void ReadingsReader::remember(Cells cells)
{
    const std::size_t last = cells.size() - 1;
    m_lastCell.assign(cells[last]);
    if (last == m_layout.timeColumn || last == m_layout.clockColumn)
        return;
    const auto sign = m_lastCell.find(m_layout.decimalSign);
    const auto end = sign == std::string::npos ? sign : m_lastCell.find_first_not_of("0123456789", sign + 1);
    const auto decimals = sign == std::string::npos ? 0 : int(std::min(end, m_lastCell.size()) - sign - 1);
    m_fewestDecimals = m_fewestDecimals < 0 ? decimals : std::min(m_fewestDecimals, decimals);
    m_mostDecimals = std::max(m_mostDecimals, decimals);
}

bool ReadingsReader::couldBeLonger(Cells cells, std::size_t column) const
{
    const auto number = parseWrittenNumber(cells[column], m_layout.decimalSign);
    const auto before = parseWrittenNumber(m_lastCell, m_layout.decimalSign);
    if (!number || m_mostDecimals < 0)
        return true;
    if (number->unit)
        return false;
    if (before && before->unit)
        return true;
    // What may follow a first decimal changes less than loggers are true to.
    if (number->decimals > 0)
        return number->decimals < m_fewestDecimals;
    if (m_mostDecimals > 0)
        return true;
    // A whole number is whole when no reading could have one digit more.
    if (column == m_layout.humidityColumn)
        return number->value * 10 <= 100;
    const Celsius longer = toCelsius(number->value * 10, m_layout.unit);
    return longer >= possibleAir.low && longer <= possibleAir.high;
}

bool ReadingsReader::wasCut(const CsvRow& row) const
{
    if (row.openQuote || row.cells.size() < m_layout.width)
        return true;
    const std::size_t last = row.cells.size() - 1;
    if (last == m_layout.timeColumn || last == m_layout.clockColumn)
        return !sameShape(bare(row.cells[last]), bare(m_lastCell));
    const bool used = last == m_layout.temperatureColumn || last == m_layout.lowColumn
        || last == m_layout.highColumn || last == m_layout.humidityColumn;
    return used && couldBeLonger(row.cells, last);
}

} // namespace gw
