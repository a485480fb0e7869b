#include "store/readingscheck.h"

#include <algorithm>

#include "measure/quoted.h"
#include "store/readingspack.h"

namespace gw {

namespace {

constexpr std::string_view everyMonth = R"(
    SELECT COALESCE(p.name, ''), m.month, m.readings, m.first_s, m.last_s, m.checksum, m.packed
    FROM reading_month m LEFT JOIN place p ON p.id = m.place_id ORDER BY m.place_id, m.month)";

constexpr std::int16_t coldest = -9000, warmest = 30000;
constexpr std::uint8_t wettest = 200;

bool possible(const ReadingColumns& columns)
{
    const auto [low, high] = std::ranges::minmax(columns.hundredths);
    return low >= coldest && high <= warmest
        && std::ranges::all_of(columns.halfPercents,
            [](std::uint8_t half) { return half <= wettest || half == noHumidityKept; });
}

} // namespace

Result<std::vector<std::string>> readingsProblems(Database& database)
{
    std::vector<std::string> problems;
    const auto walked = database.visit(everyMonth, [&](Row& row) -> Result<void> {
        const std::string place = row.text(), month = row.text();
        const std::int64_t count = row.integer(), first = row.integer(), last = row.integer();
        const std::int64_t checksum = row.integer();
        const QByteArray bytes = row.any().toByteArray();
        ReadingColumns columns;
        const bool whole = checksum == checksumOf(bytes) && unpack(bytes, columns)
            && count == static_cast<std::int64_t>(columns.size()) && first == columns.seconds.front()
            && last == columns.seconds.back() && readingsMonthOf(first) == month
            && readingsMonthOf(last) == month && possible(columns);
        if (!whole)
            problems.push_back("The readings of " + inQuotes(place) + " for " + month + " are damaged.");
        return {};
    });
    if (!walked)
        return tl::unexpected(walked.error());
    return problems;
}

} // namespace gw
