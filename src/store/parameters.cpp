#include "store/parameters.h"

#include <cmath>

#include <QSqlQuery>
#include <QStringDecoder>

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
    if (value.metaType() == QMetaType::fromType<QByteArray>())
        return static_cast<const QByteArray*>(value.constData())->toStdString();
    // PostgreSQL's NULL number would read as "0".
    return value.isNull() ? std::string() : value.toString().toStdString();
}

} // namespace

Parameter parameter(const std::string& text)
{
    QStringDecoder decoder(QStringDecoder::Utf8, QStringDecoder::Flag::Stateless);
    const QString decoded = decoder(QByteArrayView(text.data(), static_cast<qsizetype>(text.size())));
    // Written with question marks in it, it would not be the text that was sent.
    if (decoder.hasError())
        return { {}, "A text holds bytes that are no letters (not UTF-8); type it again." };
    return parameter(decoded);
}

Parameter parameter(const QString& text)
{
    if (text.contains(QChar(u'\0')))
        return { {}, "A text holds a zero byte; type it again without." };
    return { QVariant(text) };
}

Parameter parameter(std::int64_t number) { return { QVariant::fromValue(qlonglong { number }) }; }

Parameter parameter(double number)
{
    // SQLite would take it for "not known".
    if (!std::isfinite(number))
        return { {}, "A figure is no number; measure or type it again." };
    return { QVariant(number) };
}

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
