#include "store/readingspack.h"

#include <algorithm>
#include <functional>

#include <QtEndian>

namespace gw {

namespace {

constexpr char version = 1;
constexpr char evenSteps = 1, withHumidity = 2;
constexpr qsizetype headSize = 8;
constexpr std::size_t firstSize = sizeof(std::int64_t);

template <class T> void put(QByteArray& bytes, const T* values, std::size_t count)
{
    const qsizetype at = bytes.size();
    bytes.resize(at + static_cast<qsizetype>(count * sizeof(T)));
    qToLittleEndian<T>(values, static_cast<qsizetype>(count), bytes.data() + at);
}
template <class T> void put(QByteArray& bytes, T value) { put(bytes, &value, 1); }

template <class T> T get(const char*& from)
{
    const T value = qFromLittleEndian<T>(from);
    from += sizeof(T);
    return value;
}

bool isEven(const std::vector<std::int64_t>& seconds)
{
    if (seconds.size() < 2)
        return true;
    const std::int64_t step = seconds[1] - seconds[0];
    for (std::size_t i = 2; i < seconds.size(); ++i) {
        if (seconds[i] - seconds[i - 1] != step)
            return false;
    }
    return true;
}

std::size_t bytesFor(std::size_t count, char flags)
{
    const std::size_t times = flags & evenSteps ? sizeof(std::uint32_t) : count * sizeof(std::uint32_t);
    return headSize + firstSize + times + count * sizeof(std::int16_t) + (flags & withHumidity ? count : 0);
}

} // namespace

QByteArray packed(const ReadingColumns& columns)
{
    const std::size_t count = columns.size();
    const bool even = isEven(columns.seconds);
    const bool humid = !columns.halfPercents.empty();
    const auto flags = static_cast<char>((even ? evenSteps : 0) | (humid ? withHumidity : 0));
    QByteArray bytes;
    bytes.reserve(static_cast<qsizetype>(bytesFor(count, flags)));
    bytes.append('G').append('R').append(version).append(flags);
    put(bytes, static_cast<std::uint32_t>(count));
    const std::int64_t first = columns.seconds.front();
    put(bytes, first);
    if (even) {
        put(bytes, static_cast<std::uint32_t>(count > 1 ? columns.seconds[1] - first : 1));
    } else {
        for (const std::int64_t second : columns.seconds)
            put(bytes, static_cast<std::uint32_t>(second - first));
    }
    put(bytes, columns.hundredths.data(), count);
    if (humid)
        put(bytes, columns.halfPercents.data(), count);
    return bytes;
}

bool unpack(QByteArrayView bytes, ReadingColumns& columns)
{
    const char* from = bytes.data();
    if (bytes.size() < headSize || from[0] != 'G' || from[1] != 'R' || from[2] != version
        || (from[3] & ~(evenSteps | withHumidity)) != 0)
        return false;
    const char flags = from[3];
    from += 4;
    const std::size_t count = get<std::uint32_t>(from);
    if (count == 0 || static_cast<std::size_t>(bytes.size()) != bytesFor(count, flags))
        return false;
    const auto first = get<std::int64_t>(from);
    const std::size_t before = columns.size();
    if (before > 0 && first <= columns.seconds.back())
        return false;

    columns.seconds.resize(before + count);
    std::int64_t* const seconds = columns.seconds.data() + before;
    bool ascending = true;
    if (flags & evenSteps) {
        const auto step = std::int64_t { get<std::uint32_t>(from) };
        ascending = step > 0;
        for (std::size_t i = 0; i < count; ++i)
            seconds[i] = first + static_cast<std::int64_t>(i) * step;
    } else {
        for (std::size_t i = 0; i < count; ++i)
            seconds[i] = first + get<std::uint32_t>(from);
        ascending = seconds[0] == first
            && std::adjacent_find(seconds, seconds + count, std::greater_equal<>()) == seconds + count;
    }
    if (!ascending) {
        columns.seconds.resize(before);
        return false;
    }
    columns.hundredths.resize(before + count);
    qFromLittleEndian<std::int16_t>(from, static_cast<qsizetype>(count), columns.hundredths.data() + before);
    from += count * sizeof(std::int16_t);
    if (flags & withHumidity) {
        columns.halfPercents.resize(before, noHumidityKept);
        columns.halfPercents.insert(columns.halfPercents.end(), from, from + count);
    } else if (!columns.halfPercents.empty()) {
        columns.halfPercents.resize(before + count, noHumidityKept);
    }
    return true;
}

std::int64_t checksumOf(QByteArrayView bytes) { return qChecksum(bytes); }

} // namespace gw
