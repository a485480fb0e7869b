#include "store/parameters.h"

#include <QSqlQuery>

namespace gw {

namespace {

// Most texts here are ids, words and codes: plain ASCII is copied across in one pass.
std::string toUtf8(const QString& text)
{
    std::string out(static_cast<std::size_t>(text.size()), '\0');
    const QChar* from = text.constData();
    for (char& to : out) {
        const char16_t unit = from++->unicode();
        if (unit >= 0x80)
            return text.toStdString();
        to = static_cast<char>(unit);
    }
    return out;
}

std::string toUtf8(const QVariant& value)
{
    if (value.metaType() == QMetaType::fromType<QString>())
        return toUtf8(*static_cast<const QString*>(value.constData()));
    // PostgreSQL's NULL number would read as "0".
    return value.isNull() ? std::string() : value.toString().toStdString();
}

} // namespace

Parameter parameter(const std::string& text)
{
    return { QVariant(QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()))),
        text.find('\0') != std::string::npos };
}

Parameter parameter(const QString& text) { return { QVariant(text), text.contains(QChar(u'\0')) }; }
Parameter parameter(std::int64_t number) { return { QVariant::fromValue(qlonglong { number }), false }; }
Parameter parameter(double number) { return { QVariant(number), false }; }
Parameter parameter(Date date) { return parameter(formatDate(date)); }

std::optional<std::string> orNull(const std::string& text)
{
    return text.empty() ? std::nullopt : std::optional(text);
}

std::string Row::text() { return toUtf8(m_query.value(m_column++)); }

std::optional<std::string> Row::textOrNone()
{
    const QVariant value = m_query.value(m_column++);
    return value.isNull() ? std::nullopt : std::optional(toUtf8(value));
}

std::int64_t Row::integer() { return m_query.value(m_column++).toLongLong(); }

std::optional<std::int64_t> Row::integerOrNone()
{
    const QVariant value = m_query.value(m_column++);
    return value.isNull() ? std::nullopt : std::optional(std::int64_t { value.toLongLong() });
}

std::optional<double> Row::realOrNone()
{
    const QVariant value = m_query.value(m_column++);
    return value.isNull() ? std::nullopt : std::optional(value.toDouble());
}

std::optional<bool> Row::flagOrNone()
{
    const auto value = integerOrNone();
    return value ? std::optional(*value != 0) : std::nullopt;
}

std::optional<Moment> Row::momentOrNone()
{
    const auto value = integerOrNone();
    return value ? std::optional(fromMilliseconds(*value)) : std::nullopt;
}

std::optional<Date> Row::dateOrNone()
{
    const auto value = textOrNone();
    if (!value)
        return std::nullopt;
    const auto date = parseDate(*value);
    return date ? std::optional(*date) : std::nullopt;
}

QVariant Row::any() { return m_query.value(m_column++); }

} // namespace gw
