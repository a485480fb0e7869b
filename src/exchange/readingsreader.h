#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/readingsfile.h"
#include "exchange/readingsrow.h"
#include "exchange/readingszone.h"

namespace gw {

/// Turns the rows of one file, handed over one by one, into readings, and keeps the account of them.
class ReadingsReader {
public:
    ReadingsReader(std::string file, const ReadingsLayout& layout, Moment now, const TakeReadings& take,
        const TakeDays& takeDays);

    /// Whether to go on.
    bool add(const CsvRow& row);
    std::int64_t rows() const { return m_read.rows; }
    bool mostlyUnreadable() const { return m_unreadable * 2 > m_read.rows; }
    Result<ReadingsRead> finish(bool cancelled);

private:
    using Cells = std::span<const std::string_view>;

    /// A reading whose next neighbour is still to come.
    struct Waiting {
        Reading reading;
        int line = 0;
        std::string text; ///< only of one far off the reading before
    };
    struct Temperature {
        Celsius value;
        int decimals = 0;
        bool unit = false;
    };

    bool addDay(const CsvRow& row, const RowTime& time);
    std::optional<Moment> momentOf(const CsvRow& row, const RowTime& time);
    std::optional<Temperature> temperature(const CsvRow& row, std::size_t column);
    std::optional<double> humidity(Cells cells);
    bool contradicts(const CsvRow& row);
    bool wasCut(const CsvRow& row) const;
    bool couldBeLonger(Cells cells, std::size_t column) const;
    void remember(Cells cells);
    void watchOrder(Moment at);
    bool isSpike(const Reading& next) const;
    bool wait(Waiting next);
    bool accept(const Reading& reading);
    bool flush();
    void setAside(const CsvRow& row, std::string why, bool unreadable);
    void setAside(SetAside aside);
    std::string textOf(Cells cells) const;

    std::string m_file;
    const ReadingsLayout& m_layout;
    const TakeReadings& m_take;
    const TakeDays& m_takeDays;
    WallClock m_clock;
    Moment m_latest; ///< nothing later can be true
    int m_thisYear;

    ReadingsRead m_read;
    std::int64_t m_unreadable = 0;
    std::optional<SetAside> m_firstUnreadable;
    std::optional<Error> m_error;
    std::optional<Moment> m_before; ///< of the row before
    std::optional<Moment> m_unplaced; ///< wall time of a row just before, in a doubled hour nobody can place
    std::optional<Reading> m_accepted; ///< the last
    std::optional<Waiting> m_waiting;
    std::vector<Reading> m_batch;
    std::vector<DayReading> m_days;

    // How the last column has been written so far: a last line without an end is measured by it.
    std::string m_lastCell;
    int m_fewestDecimals = -1;
    int m_mostDecimals = -1;
};

} // namespace gw
