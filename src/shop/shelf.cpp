#include "shop/shelf.h"

#include <algorithm>
#include <unordered_map>

#include <QString>
#include <QStringList>

#include "shop/climateasof.h"
#include "shop/entrylines.h"
#include "shop/hazards.h"
#include "shop/shelfitems.h"
#include "shop/stock.h"

namespace gw {

namespace {

bool matches(const ShelfItem& item, const QString& text)
{
    if (text.isEmpty())
        return true;
    for (const std::string* field :
        { &item.materialName, &item.className, &item.lot, &item.label, &item.placeName }) {
        if (QString::fromStdString(*field).contains(text, Qt::CaseInsensitive))
            return true;
    }
    return false;
}

bool moreUrgent(const ShelfItem& a, const ShelfItem& b)
{
    const Moment never = Moment::max();
    return std::tuple(-static_cast<int>(a.judgement.verdict), a.judgement.goodUntil.value_or(never),
               a.materialName, a.label)
        < std::tuple(-static_cast<int>(b.judgement.verdict), b.judgement.goodUntil.value_or(never),
            b.materialName, b.label);
}

std::vector<std::string> stepsOf(const std::string& benchTest)
{
    std::vector<std::string> steps;
    const auto parts = QString::fromStdString(benchTest).split(QLatin1Char('|'), Qt::SkipEmptyParts);
    for (const QString& part : parts)
        steps.push_back(part.trimmed().toStdString());
    return steps;
}

/// The figures the answers rest on: the class's, with the label's in their place.
std::vector<Figure> figuresOf(const ClassRecord& cls, const MaterialRecord& material)
{
    std::vector<Figure> figures = material.labelFigures;
    for (const Figure& figure : cls.figures) {
        const bool onLabel = std::any_of(material.labelFigures.begin(), material.labelFigures.end(),
            [&](const Figure& label) { return label.figure == figure.figure; });
        if (!onLabel)
            figures.push_back(figure);
    }
    return figures;
}

} // namespace

double ShelfItem::level() const
{
    if (capacity.milli <= 0)
        return 0;
    return std::clamp(static_cast<double>(left.milli) / static_cast<double>(capacity.milli), 0.0, 1.0);
}

ShelfJudge::ShelfJudge(const Catalogue& catalogue, const Climate& climate)
    : m_catalogue(catalogue)
    , m_climate(climate)
{
}

const LifeFigures& ShelfJudge::figures(const MaterialId& id)
{
    const auto known = m_figures.find(id);
    if (known != m_figures.end())
        return known->second;
    const auto* cls = m_catalogue.classOf(id);
    const auto* material = m_catalogue.material(id);
    return m_figures.emplace(id, cls && material ? lifeFiguresOf(*cls, *material) : LifeFigures {})
        .first->second;
}

ShelfItem ShelfJudge::item(const ContainerRecord& container, const StockState& state, Moment asOf)
{
    ShelfItem item;
    item.id = container.id;
    item.label = container.label;
    item.material = container.material;
    item.place = state.place;
    item.placeName = m_catalogue.placeName(state.place);
    item.left = state.left;
    item.capacity = container.capacity;
    item.lot = container.lot;
    item.made = container.made;
    item.printed = container.printed;
    item.printedIsUseBy = container.printedIsUseBy;
    item.arrived = state.arrived;
    item.openedAt = state.history.opened;
    item.retiredAt = state.history.retired;
    item.onHold = state.history.hold.has_value();
    item.vessel = container.vessel;
    if (const auto* material = m_catalogue.material(container.material)) {
        item.materialName = material->name;
        item.classId = material->classId;
        if (item.vessel.empty())
            item.vessel = material->vessel;
    }
    if (const auto* cls = m_catalogue.classOf(container.material)) {
        item.className = cls->name;
        if (item.vessel.empty())
            item.vessel = cls->vessel;
    }
    item.judgement = judge(state.history, figures(container.material), m_climate, asOf);
    return item;
}

Result<std::vector<ShelfItem>> shelf(const Shop& shop, const ShelfQuery& query)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto standings = standingsAsOf(shop, query.asOf);
    if (!standings)
        return tl::unexpected(standings.error());

    const auto climate = ClimateAsOf::of(shop, *catalogue, query.asOf);
    if (!climate)
        return tl::unexpected(climate.error());
    ShelfJudge judge(*catalogue, **climate);
    const QString text = QString::fromStdString(query.text).trimmed();
    std::vector<ShelfItem> items;
    items.reserve(standings->size());
    for (const Standing& standing : *standings) {
        if (standing.state.history.retired && !query.retiredToo)
            continue;
        if (standing.state.left.milli <= 0 && !query.emptyToo)
            continue;
        if (query.place && standing.state.place != *query.place)
            continue;
        ShelfItem item = judge.item(standing.container, standing.state, query.asOf);
        if (query.verdict && item.judgement.verdict != *query.verdict)
            continue;
        if (matches(item, text))
            items.push_back(std::move(item));
    }
    std::sort(items.begin(), items.end(), moreUrgent);
    return items;
}

Result<ContainerPage> containerPage(const Shop& shop, const std::string& idOrLabel, Moment asOf)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto standing = standingOf(shop, idOrLabel, asOf);
    if (!standing)
        return tl::unexpected(standing.error());
    const auto& [container, state] = *standing;
    auto entries = shop.store().entriesOf(container.id, asOf);
    if (!entries)
        return tl::unexpected(entries.error());
    auto jobs = shop.store().jobs();
    if (!jobs)
        return tl::unexpected(jobs.error());
    std::map<JobId, std::string> jobNames;
    for (const JobRecord& job : *jobs)
        jobNames.emplace(job.id, job.name);

    const auto climate = ClimateAsOf::of(shop, *catalogue, asOf);
    if (!climate)
        return tl::unexpected(climate.error());

    ContainerPage page;
    page.item = ShelfJudge(*catalogue, **climate).item(container, state, asOf);
    page.entries = entryLines(container, *entries, *catalogue, jobNames, shop.units());
    if (const auto* cls = catalogue->classOf(container.material)) {
        page.benchTest = stepsOf(cls->benchTest);
        page.spoilageSigns = cls->spoilageSigns;
        page.pictograms = hazardsOf(*cls, *catalogue->material(container.material)).pictograms;
        page.hazardNote = cls->hazardNote;
        page.figures = figuresOf(*cls, *catalogue->material(container.material));
    }
    if (container.parent) {
        auto parent = shop.store().container(*container.parent);
        if (!parent)
            return tl::unexpected(parent.error());
        if (*parent)
            page.parentLabel = (*parent)->label;
    }
    return page;
}

} // namespace gw
