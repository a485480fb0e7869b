#include "app/potalarms.h"

#include <algorithm>

namespace gw {

namespace {

constexpr std::chrono::hours longestWait { 6 }; // a timer that runs longer is set again

} // namespace

PotAlarms::PotAlarms(QObject* parent)
    : Controller(parent)
    , m_bell(QStringLiteral("bell.wav"))
{
    m_next.setSingleShot(true);
    m_next.setTimerType(Qt::PreciseTimer);
    connect(&m_next, &QTimer::timeout, this, &PotAlarms::look);
}

void PotAlarms::begin()
{
    connect(&services()->shop(), &ShopThread::changed, this, &PotAlarms::look);
    connect(&services()->shop(), &ShopThread::opened, this, &PotAlarms::look);
    // After a sleep the timer is late; the clock is not.
    connect(&services()->clock(), &Clock::minutePassed, this, &PotAlarms::look);
    // The store may be open already: ask rather than miss the signal. One that is not is no trouble.
    whenDone(services()->shop().standing(), this, [this](const Result<ShopThread::Standing>& standing) {
        if (standing)
            look();
    });
}

void PotAlarms::look()
{
    const Moment now = services()->clock().now();
    const QDate today = services()->clock().today();
    take(services()->shop().run([now, today](const Shop& shop) { return potsShown(shop, now, today); }),
        [this, now](PotsShown pots) { tell(std::move(pots.alarms), now); });
}

void PotAlarms::tell(std::vector<PotAlarm> alarms, Moment now)
{
    const QStringList away = services()->settings()->alarmsPutAway();
    std::vector<PotAlarm> due;
    bool isNew = false;
    m_next.stop();
    for (PotAlarm& alarm : alarms) {
        if (alarm.at > now) {
            if (!m_next.isActive())
                m_next.start(std::min<std::chrono::milliseconds>(alarm.at - now, longestWait));
            continue;
        }
        if (away.contains(alarm.key))
            continue;
        isNew = isNew || !m_told.contains(alarm.key);
        m_told.insert(alarm.key);
        due.push_back(std::move(alarm));
    }
    m_due = std::move(due);
    Q_EMIT told();
    if (!isNew)
        return;
    if (services()->settings()->bell())
        m_bell.play();
    Q_EMIT rang();
}

void PotAlarms::putAway()
{
    QStringList keys;
    for (const PotAlarm& alarm : m_due)
        keys.append(alarm.key);
    services()->settings()->putAlarmsAway(keys);
    m_due.clear();
    Q_EMIT told();
}

} // namespace gw
