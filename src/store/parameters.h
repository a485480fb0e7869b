#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <QVariant>

#include "measure/id.h"
#include "measure/moment.h"

class QSqlQuery;

/// What goes into a statement and what comes out of a row, in the few types both engines share.
namespace gw {

struct Parameter {
    QVariant value;
    const char* fault
        = nullptr; ///< why the engines could not both keep it as it is; none is given such a value
};

Parameter parameter(const std::string& text);
Parameter parameter(const QString& text);
Parameter parameter(std::int64_t number);
Parameter parameter(double number);
Parameter parameter(Date date);
inline Parameter parameter(int number) { return parameter(std::int64_t { number }); }
inline Parameter parameter(bool flag) { return parameter(std::int64_t { flag ? 1 : 0 }); }
inline Parameter parameter(Moment moment) { return parameter(toMilliseconds(moment)); }
inline Parameter parameter(const QVariant& value) { return { value }; }

template <class Tag> Parameter parameter(const Id<Tag>& id) { return parameter(id.text); }

template <class T> Parameter parameter(const std::optional<T>& value)
{
    return value ? parameter(*value) : Parameter {};
}

/// An empty text or id that means "none", as NULL: what a foreign or a unique key needs.
std::optional<std::string> orNull(const std::string& text);
template <class Tag> std::optional<std::string> orNull(const Id<Tag>& id) { return orNull(id.text); }

/// One row of an answer, read from the left, one call per column.
class Row {
public:
    explicit Row(const QSqlQuery& query)
        : m_query(query)
    {
    }

    std::string text(); ///< NULL reads as an empty text
    std::optional<std::string> textOrNone();
    std::int64_t integer();
    std::optional<std::int64_t> integerOrNone();
    std::optional<double> realOrNone();
    bool flag() { return integer() != 0; }
    std::optional<bool> flagOrNone();
    Moment moment() { return fromMilliseconds(integer()); }
    std::optional<Moment> momentOrNone();
    std::optional<Date> dateOrNone();
    QVariant any();

    template <class IdType> IdType id() { return IdType { text() }; }
    template <class IdType> std::optional<IdType> idOrNone()
    {
        auto value = textOrNone();
        return value ? std::optional(IdType { std::move(*value) }) : std::nullopt;
    }

private:
    const QSqlQuery& m_query;
    int m_column = 0;
};

} // namespace gw
