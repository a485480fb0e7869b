#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "ageing/life.h"
#include "ageing/watched.h"
#include "shop/climatecache.h"
#include "store/store.h"

namespace gw {

/// The reference data and what the shop buys, as the shop's acts need them: by key.
struct Catalogue {
    std::map<ClassId, ClassRecord> classes;
    std::map<FamilyId, FamilyRecord> families;
    std::map<MaterialId, MaterialRecord> materials;
    std::map<PackId, PackRecord> packs;
    std::map<PlaceId, PlaceRecord> places;

    const ClassRecord* classOf(const MaterialId& material) const; ///< null when unknown
    const MaterialRecord* material(const MaterialId& id) const;
    std::string placeName(const PlaceId& id) const; ///< empty when unknown
};

/// One shop on its store. Everything a person does goes through functions that take it; they run on the
/// store's thread.
class Shop {
public:
    /// Opens the store at a location (made when there is none), puts the reference data in or refreshes it.
    static Result<std::unique_ptr<Shop>> open(const StoreLocation& location, const OpenOptions& options);

    Store& store() { return *m_store; }
    const Store& store() const { return *m_store; }

    /// The catalogue as it stands now. Classes and families are read once and again after forgetReference().
    Result<Catalogue> catalogue() const;
    void forgetReference() { m_reference.reset(); }
    /// Puts this program's edition of the reference data in when the store has another, as after a restore.
    Result<void> refreshReference();

    /// The climate of the catalogue's places: their readings are kept in memory, and read again where they
    /// changed. It stands until the next call. Errors: those of Store::readings().
    Result<const WatchedClimate*> climate(const Catalogue& catalogue) const;

    const std::string& device() const { return m_device; }

    /// How the person reads amounts and temperatures; only sentences depend on it.
    UnitSystem units() const { return m_units; }
    void setUnits(UnitSystem units) { m_units = units; }

private:
    explicit Shop(std::unique_ptr<Store> store);
    std::unique_ptr<Store> m_store;
    std::string m_device;
    UnitSystem m_units = UnitSystem::Metric;
    struct Reference {
        std::map<ClassId, ClassRecord> classes;
        std::map<FamilyId, FamilyRecord> families;
    };
    mutable std::optional<Reference> m_reference;
    mutable ClimateCache m_climate;
};

/// A class's figures with the material's label figures put over them, for the life models.
LifeFigures lifeFiguresOf(const ClassRecord& cls, const MaterialRecord& material);
/// One figure, label before class; none when neither has it.
std::optional<Figure> figureOf(
    const ClassRecord& cls, const MaterialRecord& material, std::string_view figure);
std::optional<GramsPerMillilitre> densityOf(const ClassRecord& cls, const MaterialRecord& material);

} // namespace gw
