#pragma once

#include <QObject>
#include <QSettings>
#include <QString>
#include <QStringList>
#include <QtQmlIntegration/qqmlintegration.h>

#include "measure/amount.h"

namespace gw {

/// What one person chose on this device: looks and units. Kept in a file of its own, not in the shop's store,
/// since another tablet on the same store may hang in other light.
class Settings : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made once, by the program")
    /// "system", "light" or "dark"
    Q_PROPERTY(QString theme READ theme WRITE setTheme NOTIFY themeChanged)
    Q_PROPERTY(bool dark READ dark NOTIFY themeChanged)
    /// "metric" or "us"
    Q_PROPERTY(QString units READ units WRITE setUnits NOTIFY unitsChanged)
    /// A tick to hear when the camera has read a code
    Q_PROPERTY(bool sound READ sound WRITE setSound NOTIFY soundChanged)
    /// A bell to hear when a pot or a joint is due
    Q_PROPERTY(bool bell READ bell WRITE setBell NOTIFY bellChanged)

public:
    /// In a file, for tests; empty: where the platform keeps settings.
    explicit Settings(const QString& file = {}, QObject* parent = nullptr);

    QString theme() const { return m_theme; }
    void setTheme(const QString& theme);
    /// For this run only: what the command line said.
    void overrideTheme(const QString& theme);
    bool dark() const;

    QString units() const { return m_units; }
    void setUnits(const QString& units);
    UnitSystem unitSystem() const;

    bool sound() const { return m_kept.value(QStringLiteral("sound"), true).toBool(); }
    void setSound(bool on);

    bool bell() const { return m_kept.value(QStringLiteral("bell"), true).toBool(); }
    void setBell(bool on);

    /// Who works at this device, as last said when something was mixed; may be empty.
    QString who() const { return m_kept.value(QStringLiteral("who")).toString(); }
    void setWho(const QString& name) { m_kept.setValue(QStringLiteral("who"), name); }

    /// What was due and has been seen, by PotAlarm::key; the oldest are forgotten.
    QStringList alarmsPutAway() const { return m_kept.value(QStringLiteral("alarms_seen")).toStringList(); }
    void putAlarmsAway(const QStringList& keys);

    /// The camera chosen last, by the system's name for it; empty when none was.
    QString camera() const { return m_kept.value(QStringLiteral("camera")).toString(); }
    void setCamera(const QString& id) { m_kept.setValue(QStringLiteral("camera"), id); }

    /// How labels were printed last, by what it is: "size", "page", "printer" ... Empty when they never were.
    QString labelHabit(const QString& what) const
    {
        return m_kept.value(QStringLiteral("labels/") + what).toString();
    }
    void setLabelHabit(const QString& what, const QString& value)
    {
        m_kept.setValue(QStringLiteral("labels/") + what, value);
    }

    /// The store chosen last; empty when none was.
    QString store() const;
    void setStore(const QString& where);

Q_SIGNALS:
    void themeChanged();
    void unitsChanged();
    void soundChanged();
    void bellChanged();

private:
    QSettings m_kept;
    QString m_theme;
    QString m_units;
};

} // namespace gw
