#include "shop/containerlabel.h"

#include <algorithm>
#include <tuple>

#include "ageing/verdict.h"
#include "ageing/wording.h"
#include "shop/climateasof.h"
#include "shop/hazards.h"
#include "shop/shelf.h"
#include "shop/stock.h"

namespace gw {

namespace {

std::string keepText(const Range<Celsius>& keep, UnitSystem units)
{
    const auto figure = [units](Celsius limit) {
        const std::string text = formatTemperature(limit, units);
        return text.substr(0, text.find(' '));
    };
    return "Keep " + figure(keep.low) + " to " + formatTemperature(keep.high, units);
}

void addHazards(Label& label, const ClassRecord& cls, const MaterialRecord& material)
{
    const Hazards hazards = hazardsOf(cls, material);
    label.pictograms = hazards.pictograms;
    label.signalWord = hazards.signalWord;
    label.hazardLine = "See the maker's label and the safety data sheet";
}

/// The labels of one shop: catalogue and climate are read once for all.
class Labels {
public:
    Labels(const Shop& shop, const Catalogue& catalogue, const Climate& climate, Moment asOf)
        : m_shop(shop)
        , m_catalogue(catalogue)
        , m_climate(climate)
        , m_asOf(asOf)
    {
    }
    Result<Label> of(const Standing& standing) const;

private:
    const Shop& m_shop;
    const Catalogue& m_catalogue;
    const Climate& m_climate;
    Moment m_asOf;
};

Result<Label> Labels::of(const Standing& standing) const
{
    const auto& [container, state] = standing;
    const auto* material = m_catalogue.material(container.material);
    const auto* cls = m_catalogue.classOf(container.material);
    if (!material || !cls)
        return fail(ErrorCode::NotFound, "The material of " + container.label + " is not known any more.");
    const LifeFigures figures = lifeFiguresOf(*cls, *material);
    const auto& opened = state.history.opened;

    Label label;
    label.code = container.label;
    label.title = material->name;
    label.lines.push_back(opened ? "Opened " + onDay(*opened) : "Opened ______________");
    if (figures.keepBetween)
        label.lines.push_back(keepText(*figures.keepBetween, m_shop.units()));
    if (const auto until = goodUntilIfOpened(state.history, figures, m_climate, m_asOf))
        label.lines.push_back((opened ? "Good until " : "Opened today: good until ") + onDay(*until));
    if (!container.lot.empty())
        label.lines.push_back("Lot " + container.lot);
    if (container.parent) {
        auto parent = m_shop.store().container(*container.parent);
        if (!parent)
            return tl::unexpected(parent.error());
        if (*parent)
            label.lines.push_back("Poured over from " + (*parent)->label);
        addHazards(label, *cls, *material);
    }
    return label;
}

template <class Steps>
auto withLabels(const Shop& shop, Moment asOf, Steps&& steps)
    -> decltype(steps(std::declval<const Labels&>()))
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto climate = ClimateAsOf::of(shop, *catalogue, asOf);
    if (!climate)
        return tl::unexpected(climate.error());
    return steps(Labels(shop, *catalogue, **climate, asOf));
}

} // namespace

Result<Label> containerLabel(const Shop& shop, const std::string& idOrLabel, Moment asOf)
{
    return withLabels(shop, asOf, [&](const Labels& labels) -> Result<Label> {
        auto standing = standingOf(shop, idOrLabel, asOf);
        if (!standing)
            return tl::unexpected(standing.error());
        return labels.of(*standing);
    });
}

Result<std::vector<Label>> containerLabels(
    const Shop& shop, const std::vector<std::string>& idsOrLabels, Moment asOf)
{
    return withLabels(shop, asOf, [&](const Labels& labels) -> Result<std::vector<Label>> {
        std::vector<Label> all;
        for (const std::string& one : idsOrLabels) {
            auto standing = standingOf(shop, one, asOf);
            if (!standing)
                return tl::unexpected(standing.error());
            auto label = labels.of(*standing);
            if (!label)
                return tl::unexpected(label.error());
            all.push_back(std::move(*label));
        }
        return all;
    });
}

Result<std::vector<std::string>> shelfLabelCodes(
    const Shop& shop, Moment asOf, const std::optional<PlaceId>& place)
{
    auto items = shelf(shop, { asOf, place, {}, {}, false, false });
    if (!items)
        return tl::unexpected(items.error());
    std::ranges::sort(*items, {},
        [](const ShelfItem& item) { return std::tie(item.placeName, item.materialName, item.label); });
    std::vector<std::string> codes;
    for (const ShelfItem& item : *items)
        codes.push_back(item.label);
    return codes;
}

} // namespace gw
