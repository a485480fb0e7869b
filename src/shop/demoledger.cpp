#include <QRandomGenerator>
#include <QString>

#include "codes/ownlabel.h"
#include "exchange/referencefiles.h"
#include "shop/actbuilder.h"
#include "shop/demodata.h"

namespace gw {

namespace {

/// Turns the container and entry tables into the ledger a shop would have written itself.
class DemoLedger {
public:
    DemoLedger(Shop& shop, const DemoCatalogue& demo, Moment now)
        : m_shop(shop)
        , m_demo(demo)
        , m_days(now)
    {
    }

    Result<int> save(const std::vector<DemoRow>& containers, const std::vector<DemoRow>& entries)
    {
        for (const DemoRow& row : entries) {
            if (row.text("kind") == "decanted")
                m_filledBy.emplace(row.text("to_container"), row);
            else if (row.text("kind") == "mixed")
                m_filledBy.emplace(row.text("container_key"), row);
        }
        for (const DemoRow& row : containers) {
            if (auto done = addContainer(row); !done)
                return tl::unexpected(done.error());
        }
        for (const DemoRow& row : entries) {
            if (auto done = addEntry(row); !done)
                return tl::unexpected(done.error());
        }
        if (auto done = m_shop.store().append(m_entries); !done)
            return tl::unexpected(done.error());
        return static_cast<int>(m_stock.size());
    }

private:
    struct Stock {
        ContainerRecord record;
        std::string materialKey;
        std::optional<PlaceId> place;
        std::int64_t left = 0;
    };

    std::optional<PlaceId> place(const std::string& key) const
    {
        const auto found = m_demo.places.find(key);
        return found == m_demo.places.end() ? std::nullopt : std::optional(found->second);
    }

    std::optional<Date> printedDay(const DemoRow& row, std::string_view column) const
    {
        const auto days = row.number(column);
        return days ? std::optional<Date>(dateOf(later(m_days.now(), Days { *days }))) : std::nullopt;
    }

    Entry& add(EntryKind kind, const std::optional<ContainerId>& container, Moment at)
    {
        Entry entry;
        entry.id = EntryId { newUuid() };
        entry.act = ActId { newUuid() };
        entry.kind = kind;
        entry.container = container;
        entry.at = at;
        entry.recorded = at;
        entry.device = m_shop.device();
        return m_entries.emplace_back(std::move(entry));
    }

    Result<void> addContainer(const DemoRow& row)
    {
        const auto filled = m_filledBy.find(row.text("key"));
        const bool arrives = filled == m_filledBy.end();
        const std::string& material = row.text("material");
        const auto cls = m_demo.catalogue.classes.find(m_demo.materials.at(material).classId);
        if (cls == m_demo.catalogue.classes.end())
            return fail(
                ErrorCode::BadInput, "The demonstration data names an unknown class for " + material + ".");

        auto amount = m_demo.amount(material,
            arrives ? row.text("arrived_amount") : filled->second.text("amount"), cls->second.countedIn);
        if (!amount)
            return tl::unexpected(amount.error());

        Stock stock;
        stock.materialKey = material;
        stock.place = place(row.text("place"));
        ContainerRecord& container = stock.record;
        container.id = ContainerId { newUuid() };
        container.label = ownLabelCode(QRandomGenerator::system()->generate64());
        container.material = m_demo.materials.at(material).id;
        if (const auto pack = m_demo.packs.find(row.text("gtin")); pack != m_demo.packs.end())
            container.pack = pack->second;
        container.lot = row.text("lot");
        container.made = printedDay(row, "made_days");
        container.printed = printedDay(row, "label_date_days");
        container.printedIsUseBy = row.text("label_date_is_use_by") == "1";
        container.foundUndated = row.text("found_undated") == "1";
        container.capacity = *amount;
        if (!arrives && filled->second.text("kind") == "decanted") {
            const ContainerRecord& parent = m_stock.at(filled->second.text("container_key")).record;
            container.parent = parent.id;
            container.made = parent.made;
            container.printed = parent.printed;
            container.printedIsUseBy = parent.printedIsUseBy;
            container.lot = parent.lot;
        }
        const double firstDay
            = arrives ? row.number("arrived_days").value_or(0) : filled->second.number("days").value_or(0);
        container.created = m_days.at(firstDay);
        if (auto added = m_shop.store().addContainer(container); !added)
            return added;
        if (arrives) {
            Entry& arrived = add(EntryKind::Arrived, container.id, container.created);
            arrived.deltaMilli = amount->milli;
            arrived.place = stock.place;
            stock.left = amount->milli;
            if (const auto opened = row.number("opened_days"))
                add(EntryKind::Opened, container.id, m_days.at(*opened));
        }
        m_stock.emplace(row.text("key"), std::move(stock));
        return {};
    }

    Result<void> addEntry(const DemoRow& row)
    {
        Stock& stock = m_stock.at(row.text("container_key"));
        const auto kind = entryKindOfWord(row.text("kind"));
        if (!kind)
            return fail(ErrorCode::BadInput, "The demonstration data has an unknown kind of entry.");
        Amount amount { 0, stock.record.capacity.dimension };
        if (row.has("amount")) {
            auto read = m_demo.amount(stock.materialKey, row.text("amount"), amount.dimension);
            if (!read)
                return tl::unexpected(read.error());
            amount = *read;
        }
        const bool byLot = *kind == EntryKind::Held || *kind == EntryKind::Released;
        Entry& entry = add(*kind, byLot ? std::nullopt : std::optional(stock.record.id),
            m_days.next(row.number("days").value_or(0)));
        entry.note = row.text("note");
        entry.deltaMilli = change(*kind, amount, stock);
        stock.left += entry.deltaMilli;
        if (stock.left < 0)
            return fail(ErrorCode::BadInput,
                "The demonstration data takes more from " + row.text("container_key") + " than it holds.");
        if (byLot) {
            entry.lotMaterial = stock.record.material;
            entry.lot = stock.record.lot;
        }
        if (const auto job = m_demo.jobs.find(row.text("job")); job != m_demo.jobs.end())
            entry.job = job->second;
        if (const auto where = place(row.text("place")))
            entry.place = where;
        if (*kind == EntryKind::Mixed && !entry.place)
            entry.place = stock.place;
        if (*kind == EntryKind::Tested) {
            entry.passed = row.text("result") == "pass";
            entry.woodFailurePercent = row.number("wood_failure");
        }
        if (*kind == EntryKind::Decanted)
            pourInto(m_stock.at(row.text("to_container")), entry, amount);
        return {};
    }

    static std::int64_t change(EntryKind kind, Amount amount, const Stock& stock)
    {
        switch (kind) {
        case EntryKind::Used:
        case EntryKind::Decanted:
            return -amount.milli;
        case EntryKind::Mixed:
            return amount.milli;
        case EntryKind::Counted:
            return amount.milli - stock.left;
        case EntryKind::Retired:
            return -stock.left;
        default:
            return 0;
        }
    }

    void pourInto(Stock& child, Entry& out, Amount amount)
    {
        out.other = child.record.id;
        const Entry parent = out;
        Entry& in = add(EntryKind::Decanted, child.record.id, parent.at);
        in.act = parent.act;
        in.deltaMilli = amount.milli;
        in.other = parent.container;
        in.place = child.place;
        child.left += amount.milli;
    }

    Shop& m_shop;
    const DemoCatalogue& m_demo;
    DemoDays m_days;
    std::map<std::string, DemoRow> m_filledBy;
    std::map<std::string, Stock> m_stock;
    std::vector<Entry> m_entries;
};

} // namespace

std::optional<double> DemoRow::number(std::string_view column) const
{
    bool ok = false;
    const double value = QString::fromStdString(text(column)).toDouble(&ok);
    return ok ? std::optional<double>(value) : std::nullopt;
}

Result<std::vector<DemoRow>> demoRows(const std::vector<CsvTable>& tables, std::string_view name)
{
    const CsvTable* table = tableNamed(tables, name);
    if (!table)
        return fail(
            ErrorCode::FileUnreadable, "The demonstration data has no table of " + std::string(name) + ".");
    std::vector<DemoRow> rows;
    rows.reserve(table->rows.size());
    for (std::size_t i = 0; i < table->rows.size(); ++i)
        rows.emplace_back(*table, i);
    return rows;
}

Moment DemoDays::at(double days) const
{
    const auto today = std::chrono::floor<std::chrono::days>(m_now);
    const Moment noon = later(Moment { today + std::chrono::hours(12) }, Days { days });
    return noon < m_now ? noon : m_now;
}

Moment DemoDays::next(double days)
{
    m_minute = days == m_day ? m_minute + 1 : 1;
    m_day = days;
    const Moment moment = at(days) + std::chrono::minutes(m_minute);
    return moment < m_now ? moment : m_now;
}

Result<Amount> DemoCatalogue::amount(
    const std::string& materialKey, const std::string& text, Dimension own) const
{
    auto read = parseAmount(text);
    if (!read)
        return read;
    const MaterialRecord& material = materials.at(materialKey);
    const auto cls = catalogue.classes.find(material.classId);
    const auto converted = convert(
        *read, own, cls == catalogue.classes.end() ? std::nullopt : densityOf(cls->second, material));
    if (!converted)
        return fail(ErrorCode::BadInput, "The demonstration data counts " + material.name + " in two ways.");
    return *converted;
}

Result<int> saveDemoLedger(
    Shop& shop, const std::vector<CsvTable>& tables, const DemoCatalogue& catalogue, Moment now)
{
    auto containers = demoRows(tables, "containers");
    if (!containers)
        return tl::unexpected(containers.error());
    auto entries = demoRows(tables, "entries");
    if (!entries)
        return tl::unexpected(entries.error());
    return DemoLedger(shop, catalogue, now).save(*containers, *entries);
}

} // namespace gw
