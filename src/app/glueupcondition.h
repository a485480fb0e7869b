#pragma once

#include <optional>

#include <QObject>
#include <QString>
#include <QtQmlIntegration/qqmlintegration.h>

#include "measure/amount.h"
#include "measure/error.h"

namespace gw {

/// One thing a person can say about the glue-up to come: typed, stepped, or left unsaid. What cannot be read
/// counts as unsaid. Kept in degrees Celsius, percent, millimetres or hours; shown and typed in the person's
/// units.
class GlueUpCondition : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by GlueUpController")
    Q_PROPERTY(QString label READ label CONSTANT)
    Q_PROPERTY(QString unit READ unit NOTIFY changed)
    Q_PROPERTY(bool said READ said NOTIFY changed)
    Q_PROPERTY(QString text READ text NOTIFY changed) ///< without the unit; empty when nothing is said
    Q_PROPERTY(QString errorText READ errorText NOTIFY changed)

public:
    enum class Kind { Temperature, Humidity, WoodMoisture, Gap, SurfaceAge };

    GlueUpCondition(Kind kind, QString label, QObject* parent = nullptr);

    QString label() const { return m_label; }
    QString unit() const;
    bool said() const { return m_value.has_value(); }
    QString text() const { return m_text; }
    QString errorText() const { return m_errorText; }
    std::optional<double> value() const { return m_value; }

    void setUnits(UnitSystem units);

    /// One step up (1) or down (-1); from nothing said it starts at a usual figure.
    Q_INVOKABLE void step(int direction);
    Q_INVOKABLE void type(const QString& text);
    Q_INVOKABLE void forget();

Q_SIGNALS:
    void changed();

private:
    Result<double> read(const QString& text) const;
    double shown() const;
    void setShown(double shown);

    Kind m_kind;
    QString m_label;
    UnitSystem m_units = UnitSystem::Metric;
    std::optional<double> m_value;
    QString m_text, m_errorText;
};

} // namespace gw
