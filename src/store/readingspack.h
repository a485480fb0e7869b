#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include <QByteArray>

#include "measure/error.h"
#include "measure/id.h"

namespace gw {

class Database;
class Trace;

/// The half percents of a reading without humidity.
inline constexpr std::uint8_t noHumidityKept = 255;

/// The readings of one month as columns of equal length, in time order, no two at one second.
struct ReadingColumns {
    std::vector<std::int64_t> seconds; ///< since 1970
    std::vector<std::int16_t> hundredths; ///< of a degree Celsius
    std::vector<std::uint8_t> halfPercents; ///< of humidity, 255 for none; empty when no reading has any

    std::size_t size() const { return seconds.size(); }
};

/// Columns as bytes, after 8 of a head: 'G' 'R', version 1, flags (1: even steps, 2: humidity), count as
/// uint32. Then the first second as int64 and, of even steps, the step as uint32, else the seconds past the
/// first as uint32 each; temperatures as int16; humidities as uint8. All low byte first. Not empty; the last
/// lies less than 2^32 s after the first.
QByteArray packed(const ReadingColumns& columns);
/// Puts the bytes' readings behind those that are there; false, and nothing put, when they are not whole or
/// do not come after them.
bool unpack(QByteArrayView bytes, ReadingColumns& columns);
/// The same, behind the readings of a trace; even steps are not written out.
bool unpack(QByteArrayView bytes, Trace& trace);
/// CRC-16 of ISO/IEC 3309, as Qt has it.
std::int64_t checksumOf(QByteArrayView bytes);

/// The month of UTC a second lies in, as it is kept: "2026-11".
std::string readingsMonthOf(std::int64_t second);
/// The fault of a month of readings that cannot be read.
Error damagedReadings(Database& database, const PlaceId& place, const std::string& month);

} // namespace gw
