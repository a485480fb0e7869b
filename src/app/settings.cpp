#include "app/settings.h"

#include <algorithm>

#include <QGuiApplication>
#include <QPalette>

namespace gw {

namespace {

QString known(const QString& value, const QStringList& values)
{
    return values.contains(value) ? value : values.first();
}

const QStringList& themes()
{
    static const QStringList all { QStringLiteral("system"), QStringLiteral("light"),
        QStringLiteral("dark") };
    return all;
}

const QStringList& unitSystems()
{
    static const QStringList all { QStringLiteral("metric"), QStringLiteral("us") };
    return all;
}

} // namespace

Settings::Settings(const QString& file, QObject* parent)
    : QObject(parent)
    , m_kept(file.isEmpty() ? QSettings().fileName() : file, QSettings::IniFormat)
    , m_theme(known(m_kept.value(QStringLiteral("theme")).toString(), themes()))
    , m_units(known(m_kept.value(QStringLiteral("units")).toString(), unitSystems()))
{
}

void Settings::setTheme(const QString& theme)
{
    m_kept.setValue(QStringLiteral("theme"), known(theme, themes()));
    overrideTheme(theme);
}

void Settings::overrideTheme(const QString& theme)
{
    const QString wanted = known(theme, themes());
    if (wanted == m_theme)
        return;
    m_theme = wanted;
    Q_EMIT themeChanged();
}

bool Settings::dark() const
{
    if (m_theme != QLatin1String("system"))
        return m_theme == QLatin1String("dark");
    // Qt 6.4 does not tell the system's colour scheme; its window colour does.
    return QGuiApplication::palette().color(QPalette::Window).lightness() < 128;
}

void Settings::setUnits(const QString& units)
{
    const QString wanted = known(units, unitSystems());
    if (wanted == m_units)
        return;
    m_units = wanted;
    m_kept.setValue(QStringLiteral("units"), wanted);
    Q_EMIT unitsChanged();
}

UnitSystem Settings::unitSystem() const
{
    return m_units == QLatin1String("us") ? UnitSystem::Us : UnitSystem::Metric;
}

void Settings::setSound(bool on)
{
    if (on == sound())
        return;
    m_kept.setValue(QStringLiteral("sound"), on);
    Q_EMIT soundChanged();
}

void Settings::setBell(bool on)
{
    if (on == bell())
        return;
    m_kept.setValue(QStringLiteral("bell"), on);
    Q_EMIT bellChanged();
}

void Settings::putAlarmsAway(const QStringList& keys)
{
    constexpr qsizetype kept = 200;
    QStringList all = alarmsPutAway() + keys;
    all.removeDuplicates();
    m_kept.setValue(QStringLiteral("alarms_seen"), all.mid(std::max<qsizetype>(0, all.size() - kept)));
}

QString Settings::store() const { return m_kept.value(QStringLiteral("store")).toString(); }

void Settings::setStore(const QString& where) { m_kept.setValue(QStringLiteral("store"), where); }

} // namespace gw
