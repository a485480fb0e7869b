#include "shop/stockplan.h"

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

#include <QString>
#include <QUuid>

#include "measure/quoted.h"
#include "shop/stock.h"
#include "shop/stockcellsof.h"

namespace gw {

namespace {

using Fate = StockPlanRow::Fate;

QString folded(const std::string& text) { return QString::fromStdString(text).simplified().toCaseFolded(); }

/// The shop as a stock file is held against it, read once.
class Planner {
public:
    Planner(const Shop& shop, Moment now)
        : m_shop(shop)
        , m_now(now)
    {
    }
    Result<void> read();
    Result<StockPlan> plan(const CsvTable& table);

private:
    void planRow(const StockCells& cells);
    void findContainer(const StockCells& cells, StockPlanRow& planned);
    bool saysTheSame(const StockCells& here, const StockColumn& column, const std::string& said) const;
    void compare(const StockCells& cells, StockPlanRow& planned);
    void takeUpAgain(StockPlanRow& planned);
    void findMaterial(StockPlanRow& planned);
    void findPack(StockPlanRow& planned);
    void notePlace(const std::string& name);
    ContainerId idWithoutLabel(const StockCells& cells);
    const ClassRecord* classNamed(const std::string& idOrName) const;
    void refuse(const StockPlanRow& planned, const char* column, std::string why)
    {
        m_plan.refusals.push_back({ planned.row.line, column, std::move(why) });
    }

    const Shop& m_shop;
    const Moment m_now;
    Catalogue m_catalogue;
    std::unordered_map<ContainerId, ContainerRecord> m_records;
    std::map<std::string, ContainerId> m_byLabel;
    std::unordered_map<ContainerId, Standing> m_standing;
    std::map<QString, MaterialId> m_materials; ///< by folded name
    std::map<QString, ClassId> m_newMaterials;
    std::set<QString> m_places;
    std::map<std::string, std::string> m_newNumbers; ///< GTINs that come, and the material's name
    std::map<std::string, int> m_alike; ///< lines without a label, by all their words
    std::map<std::string, int> m_labelLine;
    StockPlan m_plan;
};

Result<void> Planner::read()
{
    auto catalogue = m_shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    m_catalogue = std::move(*catalogue);
    auto records = m_shop.store().containers();
    if (!records)
        return tl::unexpected(records.error());
    auto standings = standingsAsOf(m_shop, m_now);
    if (!standings)
        return tl::unexpected(standings.error());
    for (ContainerRecord& record : *records) {
        m_byLabel.emplace(record.label, record.id);
        const ContainerId id = record.id;
        m_records.emplace(id, std::move(record));
    }
    for (Standing& standing : *standings) {
        const ContainerId id = standing.container.id;
        m_standing.emplace(id, std::move(standing));
    }
    for (const auto& [id, material] : m_catalogue.materials)
        m_materials.emplace(folded(material.name), id);
    for (const auto& [id, place] : m_catalogue.places)
        m_places.insert(folded(place.name));
    return {};
}

const ClassRecord* Planner::classNamed(const std::string& idOrName) const
{
    const auto known = m_catalogue.classes.find(ClassId { idOrName });
    if (known != m_catalogue.classes.end())
        return &known->second;
    for (const auto& [id, cls] : m_catalogue.classes) {
        if (folded(cls.name) == folded(idOrName))
            return &cls;
    }
    return nullptr;
}

/// The same words in the same turn among lines alike are the same container, in every import.
ContainerId Planner::idWithoutLabel(const StockCells& cells)
{
    static const QUuid stockLines(
        QStringLiteral("5b0d2f4e-8f0c-4c8e-9a77-0c3c2c0a9d11")); // drawn once for this
    std::string words;
    for (const StockColumn& column : stockColumns())
        words += cells.*column.cell + '\x1F';
    const int turn = m_alike[words]++;
    const std::string name = words + std::to_string(turn);
    return ContainerId { QUuid::createUuidV5(stockLines, QByteArray::fromStdString(name))
            .toString(QUuid::WithoutBraces)
            .toStdString() };
}

void Planner::findContainer(const StockCells& cells, StockPlanRow& planned)
{
    if (planned.row.label.empty()) {
        planned.container = idWithoutLabel(cells);
    } else {
        const auto [before, isFirst] = m_labelLine.emplace(planned.row.label, planned.row.line);
        if (!isFirst)
            refuse(planned, "label",
                planned.row.label + " stands on line " + std::to_string(before->second)
                    + " too; a code belongs to one container.");
        const auto known = m_byLabel.find(planned.row.label);
        if (known == m_byLabel.end())
            return;
        planned.container = known->second;
    }
    if (!m_records.contains(planned.container))
        return;
    if (!m_standing.contains(planned.container)) {
        planned.again = true;
        return;
    }
    planned.fate = Fate::Here;
    if (!planned.row.label.empty())
        compare(cells, planned);
}

/// Whether one cell says the same of a container, as it is read and not as it is typed.
bool Planner::saysTheSame(const StockCells& here, const StockColumn& column, const std::string& said) const
{
    if (said.empty() || said == here.*column.cell)
        return true;
    if (column.cell == &StockCells::cls) {
        const ClassRecord* cls = classNamed(said);
        return cls && cls->id.text == here.cls;
    }
    StockCells changed = here;
    changed.*column.cell = said;
    std::vector<StockRefusal> ignored;
    const Date today = dateOf(m_now);
    return readStockRow(changed, today, ignored) == readStockRow(here, today, ignored);
}

/// Cell by cell with the same container as it stands here; an empty cell says nothing.
void Planner::compare(const StockCells& cells, StockPlanRow& planned)
{
    const StockCells here = stockCellsOf(m_catalogue, m_standing.at(planned.container));
    for (const StockColumn& column : stockColumns()) {
        const std::string& said = cells.*column.cell;
        if (saysTheSame(here, column, said))
            continue;
        const std::string& known = here.*column.cell;
        planned.fate = Fate::Differs;
        planned.differs += (planned.differs.empty() ? "" : "; ") + std::string(column.name) + ": "
            + (known.empty() ? "nothing" : known) + " here, " + said + " in the file";
    }
}

/// A container is never changed once it is written: one whose booking-in was undone comes back as it was, or
/// another takes its place.
void Planner::takeUpAgain(StockPlanRow& planned)
{
    const ContainerRecord& was = m_records.at(planned.container);
    const StockRow& row = planned.row;
    const auto said = std::tuple(
        planned.material.value_or(MaterialId {}), row.lot, row.serial, row.made, row.printed, row.capacity);
    if (said == std::tuple(was.material, was.lot, was.serial, was.made, was.printed, was.capacity)
        && was.printedIsUseBy == row.printedIsUseBy && was.foundUndated == !row.arrived.has_value())
        return;
    if (!row.label.empty())
        return refuse(planned, "label",
            row.label
                + " was booked in otherwise, and that was undone; leave the cell empty for a new code.");
    planned.again = false;
    planned.container = {};
}

void Planner::findMaterial(StockPlanRow& planned)
{
    const StockRow& row = planned.row;
    const ClassRecord* cls = row.cls.empty() ? nullptr : classNamed(row.cls);
    if (!row.cls.empty() && !cls)
        return refuse(planned, "class",
            "There is no class " + inQuotes(row.cls) + "; the command \"classes\" lists them.");
    const auto differs = [&](const ClassId& id) {
        if (cls && cls->id != id)
            refuse(planned, "class",
                inQuotes(row.material) + " is of the class " + inQuotes(m_catalogue.classes.at(id).name)
                    + " here; correct the class, or give it another name.");
    };
    if (const auto known = m_materials.find(folded(row.material)); known != m_materials.end()) {
        planned.material = known->second;
        planned.cls = m_catalogue.materials.at(known->second).classId;
        return differs(planned.cls);
    }
    if (const auto coming = m_newMaterials.find(folded(row.material)); coming != m_newMaterials.end()) {
        planned.cls = coming->second;
        return differs(planned.cls);
    }
    if (!cls)
        return refuse(planned, "class",
            inQuotes(row.material) + " is new here: say which class of material it is, by id or name.");
    planned.cls = cls->id;
    m_newMaterials.emplace(folded(row.material), cls->id);
    m_plan.newMaterials.push_back(row.material);
}

void Planner::findPack(StockPlanRow& planned)
{
    if (!planned.row.gtin)
        return;
    const auto taken = [&](const std::string& name) {
        refuse(planned, "gtin",
            "The number " + printedForm(*planned.row.gtin) + " stands for " + inQuotes(name)
                + "; look again which it is.");
    };
    for (const auto& [id, pack] : m_catalogue.packs) {
        if (pack.gtin14 != planned.row.gtin->digits14)
            continue;
        planned.pack = id;
        if (planned.material != pack.material) {
            const auto* material = m_catalogue.material(pack.material);
            taken(material ? material->name : "another material");
        }
        return;
    }
    const auto [coming, isFirst] = m_newNumbers.emplace(planned.row.gtin->digits14, planned.row.material);
    if (!isFirst && folded(coming->second) != folded(planned.row.material))
        taken(coming->second);
}

void Planner::notePlace(const std::string& name)
{
    if (!name.empty() && m_places.insert(folded(name)).second)
        m_plan.newPlaces.push_back(name);
}

void Planner::planRow(const StockCells& cells)
{
    const auto refusedBefore = m_plan.refusals.size();
    StockPlanRow planned;
    planned.row = readStockRow(cells, dateOf(m_now), m_plan.refusals);
    if (m_plan.refusals.size() == refusedBefore) {
        findContainer(cells, planned);
        if (planned.fate == Fate::Coming) {
            findMaterial(planned);
            findPack(planned);
            notePlace(planned.row.place);
            if (planned.again)
                takeUpAgain(planned);
        }
    }
    m_plan.rows.push_back(std::move(planned));
}

Result<StockPlan> Planner::plan(const CsvTable& table)
{
    auto rows = stockCellsOf(table);
    if (!rows)
        return tl::unexpected(rows.error());
    if (rows->empty())
        return fail(ErrorCode::BadInput,
            table.name + " names its columns and has no line below them; add one line for each container.");
    if (rows->size() > mostStockRows)
        return fail(ErrorCode::BadInput,
            table.name + " has more than " + std::to_string(mostStockRows) + " lines; split it.");
    m_plan.file = table.name;
    for (const StockCells& cells : *rows)
        planRow(cells);
    return std::move(m_plan);
}

std::string many(int count, const char* one)
{
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

std::string listed(const std::vector<std::string>& names)
{
    constexpr std::size_t shown = 8;
    std::string text;
    for (std::size_t i = 0; i < names.size() && i < shown; ++i)
        text += (i == 0 ? "" : ", ") + names[i];
    return names.size() > shown ? text + " and " + std::to_string(names.size() - shown) + " more" : text;
}

} // namespace

int StockPlan::count(StockPlanRow::Fate fate) const
{
    return static_cast<int>(
        std::ranges::count_if(rows, [&](const StockPlanRow& row) { return row.fate == fate; }));
}

std::string StockPlan::said() const
{
    if (!refusals.empty())
        return many(static_cast<int>(refusals.size()), "thing")
            + " in the file cannot be; nothing comes in until they are put right.";
    std::string text = many(count(Fate::Coming), "container") + " would come in.";
    if (!newMaterials.empty())
        text += " New materials: " + listed(newMaterials) + ".";
    if (!newPlaces.empty())
        text += " New places: " + listed(newPlaces) + ".";
    if (const int here = count(Fate::Here))
        text += " " + many(here, "line") + (here == 1 ? " is" : " are") + " here already.";
    if (const int differ = count(Fate::Differs))
        text += " " + many(differ, "container") + (differ == 1 ? " stands" : " stand")
            + " here otherwise than in the file and " + (differ == 1 ? "stays" : "stay") + " as here.";
    return text;
}

Result<StockPlan> planStock(const Shop& shop, const CsvTable& table, Moment now)
{
    Planner planner(shop, now);
    if (auto read = planner.read(); !read)
        return tl::unexpected(read.error());
    return planner.plan(table);
}

} // namespace gw
