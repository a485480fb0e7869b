#include <algorithm>
#include <map>

#include <QString>

#include "shop/actbuilder.h"
#include "shop/ownlabels.h"
#include "shop/stockplan.h"

namespace gw {

namespace {

/// Writes what a plan brings, within one act.
class StockBringer {
public:
    StockBringer(ActBuilder& act, const StockPlan& plan)
        : m_act(act)
        , m_plan(plan)
    {
    }
    Result<std::string> bringIn(const std::function<void(int)>& progress);

private:
    Result<void> bring(const StockPlanRow& planned);
    Result<MaterialId> materialOf(const StockPlanRow& planned);
    Result<std::optional<PackId>> packOf(const StockPlanRow& planned, const MaterialId& material);
    Result<ContainerId> containerOf(const StockPlanRow& planned, const MaterialId& material);
    void writeEntries(const StockRow& row, const ContainerId& container, const std::optional<PlaceId>& place);
    Moment firstSeen(const StockRow& row) const;
    Result<void> readHolds();
    void hold(const StockRow& row, const MaterialId& material);
    /// A day of the file as a moment of the ledger, which knows no time to come.
    Moment on(Date day) const { return std::min(startOf(day), m_act.time().now); }

    ActBuilder& m_act;
    const StockPlan& m_plan;
    std::map<QString, MaterialId> m_newMaterials; ///< by folded name
    std::map<std::string, PackId> m_newPacks; ///< by GTIN
    LotHolds m_holds;
};

Result<MaterialId> StockBringer::materialOf(const StockPlanRow& planned)
{
    if (planned.material)
        return *planned.material;
    const QString name = QString::fromStdString(planned.row.material).toCaseFolded();
    if (const auto known = m_newMaterials.find(name); known != m_newMaterials.end())
        return known->second;
    MaterialRecord material;
    material.id = MaterialId { newUuid() };
    material.name = planned.row.material;
    material.classId = planned.cls;
    material.articleCode = planned.row.articleCode;
    if (auto saved = m_act.shop().store().saveMaterial(material); !saved)
        return tl::unexpected(saved.error());
    m_newMaterials.emplace(name, material.id);
    return material.id;
}

Result<std::optional<PackId>> StockBringer::packOf(const StockPlanRow& planned, const MaterialId& material)
{
    if (planned.pack || !planned.row.gtin)
        return planned.pack;
    const std::string& number = planned.row.gtin->digits14;
    if (const auto known = m_newPacks.find(number); known != m_newPacks.end())
        return std::optional(known->second);
    PackRecord pack;
    pack.id = PackId { newUuid() };
    pack.material = material;
    pack.gtin14 = number;
    pack.amount = planned.row.capacity;
    pack.price = planned.row.price;
    if (auto saved = m_act.shop().store().savePack(pack); !saved)
        return tl::unexpected(saved.error());
    m_newPacks.emplace(number, pack.id);
    return std::optional(pack.id);
}

Result<ContainerId> StockBringer::containerOf(const StockPlanRow& planned, const MaterialId& material)
{
    const StockRow& row = planned.row;
    auto pack = packOf(planned, material);
    if (!pack)
        return tl::unexpected(pack.error());
    auto label = row.label.empty() ? freeOwnLabel(m_act.shop().store()) : Result<std::string>(row.label);
    if (!label)
        return tl::unexpected(label.error());
    ContainerRecord container;
    container.id = planned.container.empty() ? ContainerId { newUuid() } : planned.container;
    container.label = std::move(*label);
    container.material = material;
    container.pack = *pack;
    container.lot = row.lot;
    container.serial = row.serial;
    container.made = row.made;
    container.printed = row.printed;
    container.printedIsUseBy = row.printedIsUseBy;
    container.foundUndated = !row.arrived;
    container.capacity = row.capacity;
    container.price = row.price;
    container.created = m_act.time().now;
    if (auto added = m_act.shop().store().addContainer(container); !added)
        return tl::unexpected(added.error());
    return container.id;
}

/// Met here, but opened or tested on a known day: it was there that day, and where it stood since nobody
/// knows.
Moment StockBringer::firstSeen(const StockRow& row) const
{
    if (row.arrived)
        return on(*row.arrived);
    Moment first = m_act.time().now;
    for (const auto& seen : { row.opened, row.failedTest }) {
        if (seen)
            first = std::min(first, on(*seen));
    }
    return first;
}

void StockBringer::writeEntries(
    const StockRow& row, const ContainerId& container, const std::optional<PlaceId>& place)
{
    const Moment now = m_act.time().now;
    const Moment came = firstSeen(row);
    const bool placeSince = row.arrived || came == now;

    Entry& arrived = m_act.add(EntryKind::Arrived, container);
    arrived.at = came;
    arrived.deltaMilli = row.left.milli;
    if (placeSince)
        arrived.place = place;
    if (row.open) {
        Entry& opened = m_act.add(EntryKind::Opened, container);
        // In one moment with the arrival it says: met open, since when nobody knows.
        opened.at = row.opened
            ? std::min(std::max(on(*row.opened), came + std::chrono::milliseconds { 1 }), now)
            : came;
        if (!row.opened)
            opened.note = "found open";
    }
    if (row.failedTest) {
        Entry& failed = m_act.add(EntryKind::Tested, container);
        failed.at = std::max(on(*row.failedTest), came);
        failed.passed = false;
    }
    if (!placeSince && place) {
        Entry& moved = m_act.add(EntryKind::Moved, container);
        moved.at = now;
        moved.place = place;
    }
}

Result<void> StockBringer::readHolds()
{
    auto entries = m_act.shop().store().entriesUpTo(m_act.time().now);
    if (!entries)
        return tl::unexpected(entries.error());
    m_holds = holdsAmong(*entries, reversedAmong(*entries));
    return {};
}

void StockBringer::hold(const StockRow& row, const MaterialId& material)
{
    if (row.hold.empty()
        || !m_holds.try_emplace({ material, row.lot }, Hold { m_act.time().now, row.hold }).second)
        return;
    Entry& held = m_act.add(EntryKind::Held, std::nullopt);
    held.lotMaterial = material;
    held.lot = row.lot;
    held.note = row.hold;
}

Result<void> StockBringer::bring(const StockPlanRow& planned)
{
    auto material = materialOf(planned);
    if (!material)
        return tl::unexpected(material.error());
    auto place = m_act.placeNamed(planned.row.place);
    if (!place)
        return tl::unexpected(place.error());
    ContainerId container = planned.container;
    if (!planned.again) {
        auto added = containerOf(planned, *material);
        if (!added)
            return tl::unexpected(added.error());
        container = *added;
    }
    writeEntries(planned.row, container, *place);
    hold(planned.row, *material);
    return {};
}

Result<std::string> StockBringer::bringIn(const std::function<void(int)>& progress)
{
    if (auto holds = readHolds(); !holds)
        return tl::unexpected(holds.error());
    constexpr int often = 100; // lines between two words of it
    int done = 0, came = 0;
    for (const StockPlanRow& planned : m_plan.rows) {
        if (planned.fate == StockPlanRow::Fate::Coming) {
            if (auto brought = bring(planned); !brought)
                return tl::unexpected(brought.error());
            ++came;
        }
        if (++done % often == 0 && progress)
            progress(done);
    }
    return "Brought in " + std::to_string(came) + (came == 1 ? " container" : " containers") + " from "
        + m_plan.file + ".";
}

Result<void> mayComeIn(const StockPlan& plan)
{
    if (!plan.refusals.empty()) {
        const auto more = plan.refusals.size() - 1;
        return fail(ErrorCode::BadInput,
            plan.file + " " + refusalText(plan.refusals.front())
                + (more == 0 ? "" : " " + std::to_string(more) + " more cannot be; look at the file first.")
                + " Nothing was brought in.");
    }
    if (plan.count(StockPlanRow::Fate::Coming) == 0)
        return fail(ErrorCode::Refused, "Nothing comes in: all of " + plan.file + " is here already.");
    return {};
}

} // namespace

Result<ActDone> bringInStock(
    Shop& shop, const CsvTable& table, ActTime time, const std::function<void(int)>& progress)
{
    return ActBuilder::run(shop, time, [&](ActBuilder& act) -> Result<std::string> {
        auto plan = planStock(shop, table, time.now);
        if (!plan)
            return tl::unexpected(plan.error());
        if (auto may = mayComeIn(*plan); !may)
            return tl::unexpected(may.error());
        return StockBringer(act, *plan).bringIn(progress);
    });
}

} // namespace gw
