#include "shop/shop.h"

#include <algorithm>

#include <QString>
#include <QSysInfo>

#include "exchange/referencefiles.h"

namespace gw {

namespace {

/// The reference data goes in once, and again when this program carries another edition of it.
Result<void> bringReferenceUpToDate(Store& store)
{
    const std::string edition = referenceEdition();
    auto present = store.referenceEdition();
    if (!present)
        return tl::unexpected(present.error());
    if (*present == edition)
        return {};

    auto files = readReference();
    if (!files)
        return tl::unexpected(files.error());
    std::vector<ReferenceTable> tables;
    tables.reserve(files->size());
    for (auto& file : *files)
        tables.push_back({ std::move(file.name), std::move(file.columns), std::move(file.rows) });
    return store.refreshReference(tables, edition);
}

template <class Key, class Record, class KeyOf>
Result<std::map<Key, Record>> byKey(Result<std::vector<Record>> records, KeyOf keyOf)
{
    if (!records)
        return tl::unexpected(records.error());
    std::map<Key, Record> map;
    for (auto& record : *records) {
        const Key key = keyOf(record);
        map.emplace(key, std::move(record));
    }
    return map;
}

/// The speeds of everything the shop buys, each once.
std::vector<Rate> ratesOf(const Catalogue& catalogue)
{
    std::vector<Rate> rates;
    for (const auto& [id, material] : catalogue.materials) {
        const auto* cls = catalogue.classOf(id);
        if (!cls)
            continue;
        const Rate rate = lifeFiguresOf(*cls, material).rate;
        if (std::find(rates.begin(), rates.end(), rate) == rates.end())
            rates.push_back(rate);
    }
    return rates;
}

constexpr auto ownId = [](const auto& record) { return record.id; };

} // namespace

const MaterialRecord* Catalogue::material(const MaterialId& id) const
{
    const auto found = materials.find(id);
    return found == materials.end() ? nullptr : &found->second;
}

const ClassRecord* Catalogue::classOf(const MaterialId& id) const
{
    const auto* of = material(id);
    if (!of)
        return nullptr;
    const auto found = classes.find(of->classId);
    return found == classes.end() ? nullptr : &found->second;
}

std::string Catalogue::placeName(const PlaceId& id) const
{
    const auto found = places.find(id);
    return found == places.end() ? std::string() : found->second.name;
}

Shop::Shop(std::unique_ptr<Store> store)
    : m_store(std::move(store))
    , m_device(QSysInfo::machineHostName().toStdString())
{
}

Result<std::unique_ptr<Shop>> Shop::open(const StoreLocation& location, const OpenOptions& options)
{
    auto store = Store::open(location, options);
    if (!store)
        return tl::unexpected(store.error());
    std::unique_ptr<Shop> shop(new Shop(std::move(*store)));
    if (auto done = shop->refreshReference(); !done)
        return tl::unexpected(done.error());
    return shop;
}

Result<void> Shop::refreshReference()
{
    forgetReference();
    return bringReferenceUpToDate(*m_store);
}

Result<const WatchedClimate*> Shop::climate(const Catalogue& catalogue) const
{
    return m_climate.of(*m_store, catalogue.places, [&catalogue] { return ratesOf(catalogue); });
}

Result<Catalogue> Shop::catalogue() const
{
    if (!m_reference) {
        auto classes = byKey<ClassId>(m_store->classes(), ownId);
        if (!classes)
            return tl::unexpected(classes.error());
        auto families = byKey<FamilyId>(m_store->families(), ownId);
        if (!families)
            return tl::unexpected(families.error());
        m_reference = Reference { std::move(*classes), std::move(*families) };
    }

    auto materials = byKey<MaterialId>(m_store->materials(), ownId);
    if (!materials)
        return tl::unexpected(materials.error());
    auto packs = byKey<PackId>(m_store->packs(), ownId);
    if (!packs)
        return tl::unexpected(packs.error());
    auto places = byKey<PlaceId>(m_store->places(), ownId);
    if (!places)
        return tl::unexpected(places.error());
    return Catalogue { m_reference->classes, m_reference->families, std::move(*materials), std::move(*packs),
        std::move(*places) };
}

} // namespace gw
