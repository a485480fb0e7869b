#include "app/labeltext.h"

#include <algorithm>

#include <QRegularExpression>

#include "measure/number.h"
#include "measure/temperature.h"
#include "shop/setup.h"

namespace gw {

namespace {

bool hasLetter(const QString& text)
{
    return std::any_of(text.begin(), text.end(), [](QChar c) { return c.isLetter(); });
}

Figure fromLabel(const char* name, std::optional<double> value, std::optional<double> low,
    std::optional<double> high, const char* unit)
{
    return { name, value, low, high, {}, unit, "label", "high", {}, false };
}

Result<std::optional<double>> monthsOf(const QString& text)
{
    const QString plain = text.trimmed().toLower();
    if (plain.isEmpty())
        return std::optional<double> {};
    const std::string bytes = plain.toStdString();
    auto number = leadingNumber(bytes);
    if (!number)
        return tl::unexpected(number.error());
    double months = number->value;
    if (number->rest == "years" || number->rest == "year" || number->rest == "y")
        months *= 12;
    else if (!number->rest.empty() && number->rest != "months" && number->rest != "month"
        && number->rest != "m")
        return fail(ErrorCode::BadInput, "Give a life in months or years, such as 18 or 2 years.");
    if (!(months > 0 && months <= 600))
        return fail(ErrorCode::BadInput, "A life on a label lies between a part of a month and 600 months.");
    return std::optional(months);
}

Result<std::optional<Celsius>> degreesOf(const QString& text, UnitSystem units)
{
    const QString plain = text.trimmed();
    if (plain.isEmpty())
        return std::optional<Celsius> {};
    const QChar unit = units == UnitSystem::Us ? u'F' : u'C';
    auto degrees = parseTemperature((hasLetter(plain) ? plain : plain + unit).toStdString());
    if (!degrees)
        return tl::unexpected(degrees.error());
    return std::optional(*degrees);
}

} // namespace

Result<Range<Date>> readLabelDate(const QString& text)
{
    static const QRegularExpression month(QStringLiteral("^\\s*(\\d{4})-(\\d{1,2})\\s*$"));
    if (const auto match = month.match(text); match.hasMatch()) {
        const Date first = std::chrono::year(match.captured(1).toInt())
            / std::chrono::month(match.captured(2).toUInt()) / std::chrono::day(1);
        if (auto sound = parseDate(formatDate(first)); !sound || !first.ok())
            return fail(ErrorCode::BadInput,
                "There is no month " + match.captured(0).trimmed().toStdString()
                    + "; look at the label again.");
        const Date last
            = std::chrono::year_month_day_last { first.year() / first.month() / std::chrono::last };
        return Range<Date> { first, last };
    }
    auto date = parseDate(text.trimmed().toStdString());
    if (!date)
        return tl::unexpected(date.error());
    return Range<Date> { *date, *date };
}

Result<std::vector<Figure>> readLabelLives(const QString& sealed, const QString& opened)
{
    std::vector<Figure> figures;
    auto sealedMonths = monthsOf(sealed);
    if (!sealedMonths)
        return tl::unexpected(sealedMonths.error());
    auto openedMonths = monthsOf(opened);
    if (!openedMonths)
        return tl::unexpected(openedMonths.error());
    if (*sealedMonths)
        figures.push_back(fromLabel("sealed_life", *sealedMonths, {}, {}, "month"));
    if (*openedMonths)
        figures.push_back(fromLabel("opened_life", *openedMonths, {}, {}, "month"));
    return figures;
}

Result<std::vector<Figure>> readKeepBetween(const QString& low, const QString& high, UnitSystem units)
{
    auto from = degreesOf(low, units);
    if (!from)
        return tl::unexpected(from.error());
    auto to = degreesOf(high, units);
    if (!to)
        return tl::unexpected(to.error());
    std::vector<Figure> figures;
    if (!*from && !*to)
        return figures;
    if (*from && *to && **from > **to)
        return fail(ErrorCode::BadInput, "The lower temperature comes first; look at the label again.");
    const auto value = [](const std::optional<Celsius>& degrees) {
        return degrees ? std::optional(degrees->value) : std::nullopt;
    };
    figures.push_back(fromLabel("storage_temperature", {}, value(*from), value(*to), "C"));
    return figures;
}

Result<Celsius> readTemperature(const QString& text, UnitSystem units)
{
    auto degrees = degreesOf(text, units);
    if (!degrees)
        return tl::unexpected(degrees.error());
    if (!*degrees)
        return fail(ErrorCode::BadInput, "Type the temperature, such as -3.5.");
    return **degrees;
}

Result<std::optional<Money>> readPrice(const QString& text, const QString& currency)
{
    const QString plain = text.trimmed();
    if (plain.isEmpty())
        return std::optional<Money> {};
    auto price = parsePrice(
        (hasLetter(plain) || currency.isEmpty() ? plain : plain + u' ' + currency).toStdString());
    if (!price)
        return tl::unexpected(price.error());
    return std::optional(*price);
}

Result<Amount> readAmount(const QString& text, const QString& unit)
{
    const QString plain = text.trimmed();
    return parseAmount((hasLetter(plain) ? plain : plain + u' ' + unit).toStdString());
}

} // namespace gw
