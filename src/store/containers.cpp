#include "store/rows.h"

namespace gw {

namespace {

constexpr std::string_view insertContainer = R"(
    INSERT INTO container (id, label, material_id, pack_id, lot, serial, made, printed, printed_is_use_by,
        found_undated, capacity_milli, dimension, vessel, parent_id, price_minor, currency, created_ms)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO NOTHING)";

// $ as in Database: these are read by the ten thousand.
constexpr std::string_view selectContainers = R"(
    SELECT $id, $label, $material_id, $pack_id, $lot, $serial, $made, $printed, printed_is_use_by, found_undated,
        capacity_milli, $dimension, $vessel, $parent_id, price_minor, $currency, created_ms
    FROM container)";

ContainerRecord readContainer(Row& row)
{
    ContainerRecord record;
    record.id = row.id<ContainerId>();
    record.label = row.text();
    record.material = row.id<MaterialId>();
    record.pack = row.idOrNone<PackId>();
    record.lot = row.text();
    record.serial = row.text();
    record.made = row.dateOrNone();
    record.printed = row.dateOrNone();
    record.printedIsUseBy = row.flag();
    record.foundUndated = row.flag();
    record.capacity = amountIn(row);
    record.vessel = row.text();
    record.parent = row.idOrNone<ContainerId>();
    record.price = moneyIn(row);
    record.created = row.moment();
    return record;
}

bool same(const ContainerRecord& a, const ContainerRecord& b)
{
    const auto all = [](const ContainerRecord& c) {
        return std::tie(c.id, c.label, c.material, c.pack, c.lot, c.serial, c.made, c.printed,
            c.printedIsUseBy, c.foundUndated, c.capacity, c.vessel, c.parent, c.price, c.created);
    };
    return all(a) == all(b);
}

} // namespace

Result<void> Store::addContainer(const ContainerRecord& container)
{
    const auto added = m_database->run(insertContainer, container.id, container.label, container.material,
        container.pack, container.lot, container.serial, container.made, container.printed,
        container.printedIsUseBy, container.foundUndated, container.capacity.milli,
        unitOf(container.capacity.dimension), container.vessel, container.parent, minorOf(container.price),
        currencyOf(container.price), container.created);
    if (!added)
        return tl::unexpected(added.error());
    if (*added == 1)
        return {};
    // An arrival sent again brings its container again.
    const auto there = this->container(container.id);
    if (!there)
        return tl::unexpected(there.error());
    if (*there && same(**there, container))
        return {};
    return m_database->spoil(
        { ErrorCode::Conflict, "Another container has that id already; book the arrival in again." });
}

Result<std::vector<ContainerRecord>> Store::containers() const
{
    return m_database->list(selectContainers, readContainer);
}

Result<std::optional<ContainerRecord>> Store::container(const ContainerId& id) const
{
    return m_database->first(std::string(selectContainers) + " WHERE id = ?", readContainer, id);
}

Result<std::optional<ContainerRecord>> Store::containerByLabel(const std::string& label) const
{
    return m_database->first(std::string(selectContainers) + " WHERE label = ?", readContainer, label);
}

Result<void> Store::lockContainer(const ContainerId& id)
{
    const auto taken = m_database->run("UPDATE container SET rev = rev + 1 WHERE id = ?", id);
    if (!taken)
        return tl::unexpected(taken.error());
    if (*taken == 0)
        return fail(ErrorCode::NotFound, "That container is not in the store; scan its label again.");
    return {};
}

} // namespace gw
