#include "app/figurewords.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <QCoreApplication>

#include "app/words.h"

namespace gw {

namespace {

struct FigureWords {
    Q_DECLARE_TR_FUNCTIONS(gw::FigureWords)
};
using F = FigureWords;

QString span(const std::optional<double>& low, const std::optional<double>& high, int decimals)
{
    if (low && high && *low != *high)
        return F::tr("%1 to %2").arg(numberText(*low, decimals), numberText(*high, decimals));
    if (low)
        return high ? numberText(*low, decimals) : F::tr("%1 or more").arg(numberText(*low, decimals));
    return F::tr("up to %1").arg(numberText(*high, decimals));
}

std::optional<double> times(const std::optional<double>& number, double factor)
{
    return number ? std::optional(*number * factor) : std::nullopt;
}

/// Long lives read better in years.
QString monthsText(const std::optional<double>& low, const std::optional<double>& high)
{
    if (low.value_or(*high) >= 24)
        return F::tr("%1 years").arg(span(times(low, 1 / 12.0), times(high, 1 / 12.0), 1));
    return F::tr("%1 months").arg(span(low, high, 1));
}

QString temperaturesText(
    const std::optional<double>& low, const std::optional<double>& high, UnitSystem units)
{
    const auto shown = [units](const std::optional<double>& celsius) -> std::optional<double> {
        if (!celsius || units == UnitSystem::Metric)
            return celsius;
        return std::round(*celsius * 9 / 5 + 32);
    };
    const QString unit = degreeUnit(units);
    return span(shown(low), shown(high), 1) + QChar::Nbsp + unit;
}

QString kindText(const std::string& text)
{
    if (text == "does_not_age")
        return F::tr("time does not use it up");
    if (text == "none")
        return F::tr("none");
    return q(text);
}

} // namespace

QString figureName(const std::string& figure)
{
    static const std::map<std::string, const char*> names {
        { "sealed_life", QT_TRANSLATE_NOOP("gw::FigureWords", "Keeps sealed") },
        { "opened_life", QT_TRANSLATE_NOOP("gw::FigureWords", "Keeps once opened") },
        { "life_kind", QT_TRANSLATE_NOOP("gw::FigureWords", "How it ages") },
        { "reference_temperature", QT_TRANSLATE_NOOP("gw::FigureWords", "Those lives hold at") },
        { "storage_temperature", QT_TRANSLATE_NOOP("gw::FigureWords", "Keep between") },
        { "freeze_tolerance", QT_TRANSLATE_NOOP("gw::FigureWords", "Frosts it stands") },
        { "water_share", QT_TRANSLATE_NOOP("gw::FigureWords", "Water in it") },
        { "freezing_point", QT_TRANSLATE_NOOP("gw::FigureWords", "Freezes at") },
        { "crystallises_between", QT_TRANSLATE_NOOP("gw::FigureWords", "May crystallise between") },
        { "use_temperature", QT_TRANSLATE_NOOP("gw::FigureWords", "Use at") },
        { "q10", QT_TRANSLATE_NOOP("gw::FigureWords", "Ages faster, for each 10 °C warmer") },
        { "activation_energy", QT_TRANSLATE_NOOP("gw::FigureWords", "Activation energy") },
        { "cold_credit", QT_TRANSLATE_NOOP("gw::FigureWords", "Cold makes it last longer") },
        { "density", QT_TRANSLATE_NOOP("gw::FigureWords", "Density") },
        { "solid_density", QT_TRANSLATE_NOOP("gw::FigureWords", "Density of the grain itself") },
        { "solids", QT_TRANSLATE_NOOP("gw::FigureWords", "Solids") },
        { "spread", QT_TRANSLATE_NOOP("gw::FigureWords", "Spread") },
        { "open_assembly", QT_TRANSLATE_NOOP("gw::FigureWords", "Open time") },
        { "clamp", QT_TRANSLATE_NOOP("gw::FigureWords", "Time in clamps") },
        { "full_cure", QT_TRANSLATE_NOOP("gw::FigureWords", "Full strength after") },
        { "water_ratio", QT_TRANSLATE_NOOP("gw::FigureWords", "Water to one part") },
        { "gel_strength", QT_TRANSLATE_NOOP("gw::FigureWords", "Gel strength") },
        { "mix_ratio_mass", QT_TRANSLATE_NOOP("gw::FigureWords", "Mixed by mass") },
        { "mix_ratio_volume", QT_TRANSLATE_NOOP("gw::FigureWords", "Mixed by volume") },
        { "moisture_content", QT_TRANSLATE_NOOP("gw::FigureWords", "Moisture content") },
        { "ph", QT_TRANSLATE_NOOP("gw::FigureWords", "pH") },
        { "time_in_trade", QT_TRANSLATE_NOOP("gw::FigureWords", "Usual age on arrival") },
        { "pictograms", QT_TRANSLATE_NOOP("gw::FigureWords", "Hazard pictograms") },
        { "signal_word", QT_TRANSLATE_NOOP("gw::FigureWords", "Signal word") },
        { "test_grant", QT_TRANSLATE_NOOP("gw::FigureWords", "What a passed test grants") },
    };
    const auto known = names.find(figure);
    return known == names.end() ? q(figure).replace(u'_', u' ')
                                : QCoreApplication::translate("gw::FigureWords", known->second);
}

QString figureValue(const Figure& figure, UnitSystem units)
{
    const auto low = figure.value ? figure.value : figure.low;
    const auto high = figure.value ? figure.value : figure.high;
    if (!low && !high)
        return figure.text.empty() ? F::tr("not known") : kindText(figure.text);
    if (figure.figure == "cold_credit")
        return low.value_or(*high) > 0.5 ? F::tr("yes") : F::tr("no");
    if (figure.figure == "water_share")
        return span(times(low, 100), times(high, 100), 0) + QChar::Nbsp + QStringLiteral("%");
    if (figure.unit == "month")
        return monthsText(low, high);
    if (figure.unit == "C")
        return temperaturesText(low, high, units);
    QString number = span(low, high, 2);
    if (figure.unit == "1")
        return F::tr("%1 times").arg(number);
    if (figure.unit.empty() || figure.unit == "count")
        return number;
    return number + QChar::Nbsp + q(figure.unit).replace(QStringLiteral("m2"), QStringLiteral("m²"));
}

QString sourceText(const Figure& figure, const std::map<std::string, std::string>& titles)
{
    if (figure.source == "label")
        return F::tr("the label");
    if (figure.source == "shop" || figure.changedByShop)
        return F::tr("this shop");
    QStringList named;
    for (const QString& key : q(figure.source).split(u';', Qt::SkipEmptyParts)) {
        const auto title = titles.find(key.trimmed().toStdString());
        named.append(title == titles.end() ? key.trimmed() : q(title->second));
    }
    return named.isEmpty() ? F::tr("no source") : named.join(QStringLiteral("; "));
}

QString confidenceText(const Figure& figure)
{
    if (figure.confidence == "high")
        return F::tr("high confidence");
    if (figure.confidence == "medium")
        return F::tr("medium confidence");
    if (figure.confidence == "low")
        return F::tr("low confidence");
    return q(figure.confidence);
}

QByteArrayList figureRoles() { return { "name", "value", "source", "confidence", "basis" }; }

std::vector<ShownRow> figureRows(
    const std::vector<Figure>& figures, const std::map<std::string, std::string>& titles, UnitSystem units)
{
    // What a verdict rests on comes first.
    static const std::vector<std::string> first { "sealed_life", "opened_life", "life_kind",
        "reference_temperature", "q10", "activation_energy", "cold_credit", "storage_temperature",
        "freeze_tolerance", "freezing_point", "water_share", "crystallises_between", "time_in_trade",
        "test_grant" };
    const auto rank = [](const Figure* figure) {
        return std::find(first.begin(), first.end(), figure->figure) - first.begin();
    };
    std::vector<const Figure*> ordered;
    ordered.reserve(figures.size());
    for (const Figure& figure : figures)
        ordered.push_back(&figure);
    std::stable_sort(
        ordered.begin(), ordered.end(), [&](const Figure* a, const Figure* b) { return rank(a) < rank(b); });

    std::vector<ShownRow> rows;
    rows.reserve(figures.size());
    for (const Figure* figure : ordered) {
        rows.push_back({ q(figure->figure),
            { figureName(figure->figure), figureValue(*figure, units), sourceText(*figure, titles),
                confidenceText(*figure), q(figure->basis) } });
    }
    return rows;
}

} // namespace gw
