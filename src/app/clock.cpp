#include "app/clock.h"

#include <utility>

#include <QDateTime>

namespace gw {

namespace {

Moment machineTime()
{
    return std::chrono::floor<std::chrono::milliseconds>(std::chrono::system_clock::now());
}

qint64 minuteOf(Moment moment) { return toMilliseconds(moment) / 60000; }

} // namespace

Clock::Clock(QObject* parent)
    : Clock(&machineTime, parent)
{
}

Clock::Clock(Source source, QObject* parent)
    : QObject(parent)
    , m_source(std::move(source))
    , m_day(today())
    , m_minute(minuteOf(now()))
{
    // A machine that slept wakes with its timers late, so it looks often rather than once at midnight.
    m_timer.setInterval(std::chrono::seconds(5));
    m_timer.setTimerType(Qt::CoarseTimer);
    connect(&m_timer, &QTimer::timeout, this, &Clock::look);
    m_timer.start();
}

QDate Clock::today() const { return localDay(now()); }

void Clock::look()
{
    const QDate day = today();
    const qint64 minute = minuteOf(now());
    if (minute != m_minute) {
        m_minute = minute;
        Q_EMIT minutePassed();
    }
    if (day != m_day) {
        m_day = day;
        Q_EMIT dayChanged();
    }
}

QDate toQDate(Date date)
{
    return QDate(static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
        static_cast<int>(static_cast<unsigned>(date.day())));
}

Date fromQDate(QDate date)
{
    return std::chrono::year(date.year()) / std::chrono::month(static_cast<unsigned>(date.month()))
        / std::chrono::day(static_cast<unsigned>(date.day()));
}

QDate localDay(Moment moment)
{
    return QDateTime::fromMSecsSinceEpoch(toMilliseconds(moment)).toLocalTime().date();
}

} // namespace gw
