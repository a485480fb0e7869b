#include "shop/shop.h"

#include <algorithm>

#include "ageing/contents.h"

namespace gw {

namespace {

const Figure* find(const std::vector<Figure>& figures, std::string_view key)
{
    const auto found
        = std::find_if(figures.begin(), figures.end(), [key](const Figure& f) { return f.figure == key; });
    return found == figures.end() ? nullptr : &*found;
}

/// A figure's range; a single value is a range of no width.
std::optional<Range<double>> rangeOf(const std::optional<Figure>& figure)
{
    if (!figure)
        return std::nullopt;
    const auto low = figure->low ? figure->low : figure->value;
    const auto high = figure->high ? figure->high : figure->value;
    if (!low && !high)
        return std::nullopt;
    return Range<double> { low.value_or(*high), high.value_or(*low) };
}

std::optional<double> valueOf(const std::optional<Figure>& figure)
{
    if (!figure)
        return std::nullopt;
    if (figure->value)
        return figure->value;
    return figure->low ? figure->low : figure->high;
}

Life lifeOf(const std::optional<Figure>& figure, const std::optional<Figure>& kind)
{
    // The label's own months beat a class that says it does not age.
    if (const auto months = rangeOf(figure); months && months->low > 0)
        return { Life::Kind::Ages, { months->low * meanMonth, months->high * meanMonth } };
    if (kind && kind->text == "does_not_age")
        return { Life::Kind::DoesNotAge, {} };
    return {};
}

/// A label may name one limit only; the other is then the class's.
std::optional<Range<Celsius>> keepBetween(const ClassRecord& cls, const MaterialRecord& material)
{
    const Figure* onLabel = find(material.labelFigures, "storage_temperature");
    const Figure* ofClass = find(cls.figures, "storage_temperature");
    const auto end = [&](std::optional<double> Figure::* which) {
        if (onLabel && onLabel->*which)
            return onLabel->*which;
        return ofClass ? ofClass->*which : std::nullopt;
    };
    const auto low = end(&Figure::low);
    const auto high = end(&Figure::high);
    if (!low || !high)
        return std::nullopt;
    return Range<Celsius> { Celsius { *low }, Celsius { *high } };
}

} // namespace

std::optional<Figure> figureOf(
    const ClassRecord& cls, const MaterialRecord& material, std::string_view figure)
{
    if (const Figure* onLabel = find(material.labelFigures, figure))
        return *onLabel;
    if (const Figure* ofClass = find(cls.figures, figure))
        return *ofClass;
    return std::nullopt;
}

std::optional<GramsPerMillilitre> densityOf(const ClassRecord& cls, const MaterialRecord& material)
{
    const auto density = valueOf(figureOf(cls, material, "density"));
    if (!density || *density <= 0)
        return std::nullopt;
    return GramsPerMillilitre { *density };
}

namespace {

/// Ranges count by the end that freezes sooner: less water, and a warmer freezing point.
void addFrost(const ClassRecord& cls, const MaterialRecord& material, LifeFigures& figures)
{
    const auto figure = [&](std::string_view key) { return figureOf(cls, material, key); };
    if (const auto density = densityOf(cls, material))
        figures.density = density->value;
    figures.vessel
        = vesselOfWord(material.vessel.empty() ? cls.vessel : material.vessel).value_or(Vessel::Bottle);
    if (const auto water = rangeOf(figure("water_share")))
        figures.waterShare = water->low;
    if (const auto freezes = rangeOf(figure("freezing_point")))
        figures.freezesAt = Celsius { freezes->high };
    if (const auto stands = valueOf(figure("freeze_tolerance")); stands && *stands >= 0)
        figures.freezeTolerance = static_cast<int>(*stands);
    if (const auto between = rangeOf(figure("crystallises_between")))
        figures.crystallisesBetween = Range<Celsius> { { between->low }, { between->high } };
}

} // namespace

LifeFigures lifeFiguresOf(const ClassRecord& cls, const MaterialRecord& material)
{
    const auto figure = [&](std::string_view key) { return figureOf(cls, material, key); };

    LifeFigures figures;
    const auto kind = figure("life_kind");
    figures.sealed = lifeOf(figure("sealed_life"), kind);
    figures.opened = lifeOf(figure("opened_life"), kind);
    figures.rate.reference = Celsius { valueOf(figure("reference_temperature")).value_or(20.0) };
    figures.rate.q10 = std::max(1.0, valueOf(figure("q10")).value_or(1.0));
    figures.rate.activationEnergy = valueOf(figure("activation_energy"));
    figures.rate.coldCredit = valueOf(figure("cold_credit")).value_or(0.0) > 0.5;
    figures.keepBetween = keepBetween(cls, material);
    if (cls.frost == "harms")
        figures.frost = Frost::Harms;
    else if (cls.frost == "recoverable")
        figures.frost = Frost::Recoverable;
    if (const auto trade = rangeOf(figure("time_in_trade")))
        figures.timeInTrade = { trade->low * meanMonth, trade->high * meanMonth };
    if (const auto grant = valueOf(figure("test_grant")))
        figures.testGrant = *grant;
    addFrost(cls, material, figures);
    return figures;
}

} // namespace gw
