#pragma once

#include <QList>
#include <QObject>
#include <QString>
#include <QtQmlIntegration/qqmlintegration.h>

#include "measure/moment.h"
#include "measure/range.h"

namespace gw {

/// Marks of an axis: where, and what stands there.
struct AxisTicks {
    QList<double> at;
    QList<QString> texts;
};

/// Everything a chart against time is drawn from, ready to draw: times in days since its beginning, values in
/// the person's unit. A band is a flat list of time, low, high; two of one time are a step.
struct ChartDrawn {
    double span = 1; ///< of time, above 0
    double now = -1; ///< the present; negative: not in it
    Range<double> values { 0, 1 };
    QList<double> solid; ///< what is known
    QList<double> pale; ///< what is assumed, or to come
    QList<double> zone; ///< low, high of what is wanted; empty: none
    double limit = -1; ///< a line not to go over; negative: none
    AxisTicks times, levels;
    QString spoken; ///< the whole as a sentence or two
};

/// A chart of one quantity against time, as the drawing part takes it.
class TimeChart : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by the controllers")
    Q_PROPERTY(double span READ span NOTIFY drawn)
    Q_PROPERTY(double now READ now NOTIFY drawn)
    Q_PROPERTY(double low READ low NOTIFY drawn)
    Q_PROPERTY(double high READ high NOTIFY drawn)
    Q_PROPERTY(double limit READ limit NOTIFY drawn)
    Q_PROPERTY(QList<double> solid READ solid NOTIFY drawn)
    Q_PROPERTY(QList<double> pale READ pale NOTIFY drawn)
    Q_PROPERTY(QList<double> zone READ zone NOTIFY drawn)
    Q_PROPERTY(QList<double> timesAt READ timesAt NOTIFY drawn)
    Q_PROPERTY(QList<QString> timeTexts READ timeTexts NOTIFY drawn)
    Q_PROPERTY(QList<double> levelsAt READ levelsAt NOTIFY drawn)
    Q_PROPERTY(QList<QString> levelTexts READ levelTexts NOTIFY drawn)
    Q_PROPERTY(QString spoken READ spoken NOTIFY drawn)

public:
    using QObject::QObject;

    double span() const { return m_drawn.span; }
    double now() const { return m_drawn.now; }
    double low() const { return m_drawn.values.low; }
    double high() const { return m_drawn.values.high; }
    double limit() const { return m_drawn.limit; }
    QList<double> solid() const { return m_drawn.solid; }
    QList<double> pale() const { return m_drawn.pale; }
    QList<double> zone() const { return m_drawn.zone; }
    QList<double> timesAt() const { return m_drawn.times.at; }
    QList<QString> timeTexts() const { return m_drawn.times.texts; }
    QList<double> levelsAt() const { return m_drawn.levels.at; }
    QList<QString> levelTexts() const { return m_drawn.levels.texts; }
    QString spoken() const { return m_drawn.spoken; }

    void draw(ChartDrawn drawn);

Q_SIGNALS:
    void drawn();

private:
    ChartDrawn m_drawn;
};

} // namespace gw
