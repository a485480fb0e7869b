#include "exchange/readingszone.h"

#include <QDateTime>
#include <QTimeZone>

#include "exchange/readingscells.h"

namespace gw {

namespace {

constexpr Moment earliest { std::chrono::sys_days { std::chrono::January / 1 / 1989 } };
constexpr Moment never { std::chrono::sys_days { std::chrono::January / 1 / 2300 } };
/// No zone's clocks are further from UTC, nor leap further at once.
constexpr std::chrono::hours widest { 15 };

std::optional<std::chrono::minutes> fixedOffset(std::string_view text)
{
    text = bare(text);
    if (text.size() >= 3) {
        const QByteArray start = QByteArray::fromStdString(std::string(text.substr(0, 3))).toUpper();
        if (start == "UTC" || start == "GMT") {
            text = bare(text.substr(3));
            if (text.empty())
                return std::chrono::minutes { 0 };
        }
    }
    if (text == "Z" || text == "z")
        return std::chrono::minutes { 0 };
    return parseOffset(text);
}

std::string offsetName(std::chrono::minutes offset)
{
    if (offset.count() == 0)
        return "UTC";
    const auto total = static_cast<int>(std::chrono::abs(offset).count());
    return (QStringLiteral("UTC") + QLatin1Char(offset.count() < 0 ? '-' : '+')
        + QStringLiteral("%1:%2")
            .arg(total / 60, 2, 10, QLatin1Char('0'))
            .arg(total % 60, 2, 10, QLatin1Char('0')))
        .toStdString();
}

QDateTime utc(Moment moment)
{
    return QDateTime::fromMSecsSinceEpoch(toMilliseconds(moment), QTimeZone(QByteArrayLiteral("UTC")));
}

/// Qt takes any word for a zone of that name at UTC, after the rules of POSIX.
bool isAnyWord(const QTimeZone& zone)
{
    return zone.abbreviation(utc(earliest)).toLatin1() == zone.id() && zone.offsetFromUtc(utc(earliest)) == 0
        && !QTimeZone::isTimeZoneIdAvailable(zone.id());
}

} // namespace

std::optional<std::string> zoneNamed(const std::string& text)
{
    if (const auto offset = fixedOffset(text))
        return offsetName(*offset);
    const QByteArray id = QByteArray::fromStdString(std::string(bare(text)));
    if (id.isEmpty())
        return {};
    const QTimeZone zone(id);
    if (!zone.isValid() || isAnyWord(zone))
        return {};
    if (id.startsWith("Etc/") && zone.offsetFromUtc(utc(earliest)) == 0)
        return "UTC";
    return id.toStdString();
}

std::string standardTime(const std::string& zone, Moment now)
{
    if (const auto offset = fixedOffset(zone))
        return offsetName(*offset);
    const QTimeZone qt(QByteArray::fromStdString(zone));
    return offsetName(std::chrono::minutes { qt.isValid() ? qt.standardTimeOffset(utc(now)) / 60 : 0 });
}

WallClock::WallClock(const std::string& zone, Moment until)
{
    using std::chrono::milliseconds;
    if (const auto offset = fixedOffset(zone)) {
        m_spans.push_back({ earliest - widest, never, *offset });
        return;
    }
    const QTimeZone qt(QByteArray::fromStdString(zone));
    const auto offsetAt
        = [&](Moment at) { return milliseconds { qt.isValid() ? qt.offsetFromUtc(utc(at)) * 1000LL : 0 }; };
    m_spans.push_back({ earliest, never, offsetAt(earliest) });
    if (!qt.isValid())
        return;
    for (const auto& change : qt.transitions(utc(earliest), utc(until + std::chrono::hours(24 * 400)))) {
        const Moment at = fromMilliseconds(change.atUtc.toMSecsSinceEpoch());
        const milliseconds offset { change.offsetFromUtc * 1000LL };
        // Some changes are of the zone's name alone.
        if (at <= m_spans.back().from || offset == m_spans.back().offset)
            continue;
        m_spans.back().to = at;
        m_spans.push_back({ at, never, offset });
    }
}

WallClock::Shown WallClock::whenShowing(Moment wall) const
{
    Shown shown;
    const auto far = [&](const Span& span) {
        return wall - span.offset >= span.from + widest && wall - span.offset < span.to - widest;
    };
    if (far(m_spans[m_last])) {
        shown.at[0] = wall - m_spans[m_last].offset;
        shown.count = 1;
        return shown;
    }
    for (std::size_t i = 0; i < m_spans.size(); ++i) {
        const Moment at = wall - m_spans[i].offset;
        if (at >= m_spans[i].from && at < m_spans[i].to && shown.count < 2) {
            shown.at[std::size_t(shown.count++)] = at;
            m_last = i;
        }
    }
    return shown;
}

} // namespace gw
