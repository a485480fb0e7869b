#include "store/readingspack.h"

#include <optional>

#include <QtEndian>

#include "ageing/trace.h"

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

/// Where the parts of packed readings lie.
struct Parts {
    std::size_t count = 0;
    std::int64_t first = 0;
    std::int64_t step = 0; ///< 0: each has its own time
    const char* times = nullptr;
    const char* hundredths = nullptr;
    const char* halfPercents = nullptr; ///< null: none

    std::int64_t second(std::size_t i) const
    {
        if (step > 0)
            return first + static_cast<std::int64_t>(i) * step;
        return first + qFromLittleEndian<std::uint32_t>(times + i * sizeof(std::uint32_t));
    }
};

/// None when they are not whole, or their times do not rise.
std::optional<Parts> partsOf(QByteArrayView bytes)
{
    const char* from = bytes.data();
    if (bytes.size() < headSize || from[0] != 'G' || from[1] != 'R' || from[2] != version
        || (from[3] & ~(evenSteps | withHumidity)) != 0)
        return std::nullopt;
    const char flags = from[3];
    from += 4;
    Parts parts;
    parts.count = get<std::uint32_t>(from);
    if (parts.count == 0 || static_cast<std::size_t>(bytes.size()) != bytesFor(parts.count, flags))
        return std::nullopt;
    parts.first = get<std::int64_t>(from);
    if (flags & evenSteps) {
        parts.step = get<std::uint32_t>(from);
        if (parts.step == 0)
            return std::nullopt;
    } else {
        parts.times = from;
        from += parts.count * sizeof(std::uint32_t);
        bool rises = parts.second(0) == parts.first;
        for (std::size_t i = 1; i < parts.count; ++i)
            rises = rises && parts.second(i - 1) < parts.second(i);
        if (!rises)
            return std::nullopt;
    }
    parts.hundredths = from;
    if (flags & withHumidity)
        parts.halfPercents = from + parts.count * sizeof(std::int16_t);
    return parts;
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
    const auto parts = partsOf(bytes);
    const std::size_t before = columns.size();
    if (!parts || (before > 0 && parts->first <= columns.seconds.back()))
        return false;
    columns.seconds.resize(before + parts->count);
    for (std::size_t i = 0; i < parts->count; ++i)
        columns.seconds[before + i] = parts->second(i);
    columns.hundredths.resize(before + parts->count);
    qFromLittleEndian<std::int16_t>(
        parts->hundredths, static_cast<qsizetype>(parts->count), columns.hundredths.data() + before);
    if (parts->halfPercents) {
        columns.halfPercents.resize(before, noHumidityKept);
        columns.halfPercents.insert(
            columns.halfPercents.end(), parts->halfPercents, parts->halfPercents + parts->count);
    } else if (!columns.halfPercents.empty()) {
        columns.halfPercents.resize(before + parts->count, noHumidityKept);
    }
    return true;
}

bool unpack(QByteArrayView bytes, Trace& trace)
{
    const auto parts = partsOf(bytes);
    if (!parts)
        return false;
    std::vector<std::int16_t> hundredths(parts->count);
    qFromLittleEndian<std::int16_t>(
        parts->hundredths, static_cast<qsizetype>(parts->count), hundredths.data());
    std::vector<std::uint8_t> halfPercents;
    if (parts->halfPercents)
        halfPercents.assign(parts->halfPercents, parts->halfPercents + parts->count);
    if (parts->step > 0)
        return trace.append(parts->first, parts->step, hundredths, halfPercents);
    std::vector<std::int64_t> seconds(parts->count);
    for (std::size_t i = 0; i < parts->count; ++i)
        seconds[i] = parts->second(i);
    return trace.append(seconds, hundredths, halfPercents);
}

std::int64_t checksumOf(QByteArrayView bytes) { return qChecksum(bytes); }

} // namespace gw
