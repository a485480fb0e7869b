#pragma once

#include <functional>

#include <QDate>
#include <QObject>
#include <QTimer>

#include "measure/moment.h"

namespace gw {

/// What time it is, for everything on the GUI thread. It ticks, so that a screen left open over midnight
/// shows the new day; a test hands in a source of its own and calls look().
class Clock : public QObject {
    Q_OBJECT

public:
    using Source = std::function<Moment()>;

    explicit Clock(QObject* parent = nullptr);
    explicit Clock(Source source, QObject* parent = nullptr);

    Moment now() const { return m_source(); }
    QDate today() const; ///< in the person's time zone

public Q_SLOTS:
    /// Looks at the time and says what has turned over since the last look.
    void look();

Q_SIGNALS:
    void minutePassed();
    void dayChanged();

private:
    Source m_source;
    QTimer m_timer;
    QDate m_day;
    qint64 m_minute = 0;
};

/// A day of the calendar and back; a moment's day in the person's time zone.
QDate toQDate(Date date);
Date fromQDate(QDate date);
QDate localDay(Moment moment);

} // namespace gw
