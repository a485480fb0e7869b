#include "app/glueupcondition.h"

#include <algorithm>
#include <cmath>

#include "app/words.h"
#include "measure/number.h"
#include "measure/temperature.h"

namespace gw {

namespace {

/// How a figure is stepped, in the unit it is shown in. The ends are those within which the check takes a
/// figure.
struct Scale {
    const char* unit;
    double step, start, low, high;
    int decimals;
};

Scale scaleOf(GlueUpCondition::Kind kind, UnitSystem units)
{
    switch (kind) {
    case GlueUpCondition::Kind::Temperature:
        return units == UnitSystem::Us ? Scale { "°F", 1, 68, -40, 140, 1 }
                                       : Scale { "°C", 1, 20, -40, 60, 1 };
    case GlueUpCondition::Kind::Humidity:
        return { "%", 1, 50, 0, 100, 1 };
    case GlueUpCondition::Kind::WoodMoisture:
        return { "%", 0.5, 9, 0, 250, 1 };
    case GlueUpCondition::Kind::SurfaceAge:
        return { "h ago", 1, 1, 0, 8760, 1 };
    case GlueUpCondition::Kind::Gap:
        break;
    }
    return { "mm", 0.05, 0.1, 0, 25, 2 };
}

} // namespace

GlueUpCondition::GlueUpCondition(Kind kind, QString label, QObject* parent)
    : QObject(parent)
    , m_kind(kind)
    , m_label(std::move(label))
{
}

QString GlueUpCondition::unit() const { return QString::fromUtf8(scaleOf(m_kind, m_units).unit); }

void GlueUpCondition::setUnits(UnitSystem units)
{
    if (units == m_units)
        return;
    m_units = units;
    if (m_value)
        m_text = numberText(shown(), scaleOf(m_kind, m_units).decimals);
    Q_EMIT changed();
}

double GlueUpCondition::shown() const
{
    return m_kind == Kind::Temperature ? degreesShown(Celsius { *m_value }, m_units) : *m_value;
}

void GlueUpCondition::setShown(double shown)
{
    m_value = m_kind == Kind::Temperature ? celsiusOf(shown, m_units).value : shown;
    m_text = numberText(shown, scaleOf(m_kind, m_units).decimals);
    m_errorText.clear();
    Q_EMIT changed();
}

void GlueUpCondition::step(int direction)
{
    const Scale scale = scaleOf(m_kind, m_units);
    if (!m_value) {
        setShown(scale.start);
        return;
    }
    // To the next whole step, so that 20.3 goes to 21 and not to 21.3; a hair of tolerance for binary
    // fractions.
    constexpr double hair = 1e-6;
    const double steps = shown() / scale.step;
    const double next = direction > 0 ? std::floor(steps + hair) + 1 : std::ceil(steps - hair) - 1;
    setShown(std::clamp(next * scale.step, scale.low, scale.high));
}

Result<double> GlueUpCondition::read(const QString& text) const
{
    std::string typed = text.trimmed().toStdString();
    if (typed.ends_with('.') || typed.ends_with(','))
        typed.pop_back(); // the decimals are still to come
    const auto number = leadingNumber(typed);
    if (!number)
        return tl::unexpected(number.error());
    if (m_kind == Kind::Temperature) {
        if (number->rest.empty())
            typed += m_units == UnitSystem::Us ? "F" : "C";
        return parseTemperature(typed).map([](Celsius temperature) { return temperature.value; });
    }
    if (!number->rest.empty() && number->rest != scaleOf(m_kind, m_units).unit)
        return fail(ErrorCode::BadInput, "Type a number alone, in " + unit().toStdString() + ".");
    return number->value;
}

void GlueUpCondition::type(const QString& text)
{
    if (text == m_text)
        return;
    m_text = text;
    m_value.reset();
    m_errorText.clear();
    if (!text.trimmed().isEmpty()) {
        if (const auto number = read(text))
            m_value = *number;
        else
            m_errorText = q(number.error().sentence);
    }
    Q_EMIT changed();
}

void GlueUpCondition::forget() { type({}); }

} // namespace gw
