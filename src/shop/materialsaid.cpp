#include "shop/materialsaid.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "measure/quoted.h"

namespace gw {

namespace {

constexpr std::array<std::string_view, 5> readOffLabels { "sealed_life", "opened_life", "storage_temperature",
    "pictograms", "signal_word" };

std::string otherPart(const std::string& part) { return part == "resin" ? "hardener" : "resin"; }

Result<void> isOtherHalf(
    const Catalogue& catalogue, const MaterialRecord& material, const MaterialId& partner)
{
    const MaterialRecord* other = catalogue.material(partner);
    const ClassRecord* cls = catalogue.classOf(partner);
    const auto own = catalogue.classes.find(material.classId);
    if (!other || !cls || own == catalogue.classes.end())
        return fail(ErrorCode::NotFound, "That material is not known in this shop; choose it again.");
    const std::string part = partOf(own->second);
    if (part.empty())
        return fail(ErrorCode::BadInput,
            inQuotes(material.name) + " is no half of a two-part glue; it has no partner.");
    if (partOf(*cls) != otherPart(part))
        return fail(ErrorCode::BadInput,
            inQuotes(other->name) + " is no " + otherPart(part) + "; choose what " + inQuotes(material.name)
                + " is mixed with.");
    return {};
}

} // namespace

bool isReadOffLabel(std::string_view figure)
{
    return std::ranges::find(readOffLabels, figure) != readOffLabels.end();
}

std::string partOf(const ClassRecord& cls)
{
    const auto part = std::ranges::find(cls.figures, "part", &Figure::figure);
    return part == cls.figures.end() ? std::string() : part->text;
}

std::vector<MaterialRecord> partnersFor(const Catalogue& catalogue, const ClassId& cls)
{
    const auto own = catalogue.classes.find(cls);
    const std::string part = own == catalogue.classes.end() ? std::string() : partOf(own->second);
    std::vector<MaterialRecord> partners;
    if (part.empty())
        return partners;
    const auto otherFamily = [&](const MaterialRecord& material) {
        return catalogue.classes.at(material.classId).family != own->second.family;
    };
    for (const auto& [id, material] : catalogue.materials) {
        const ClassRecord* its = catalogue.classOf(id);
        if (its && partOf(*its) == otherPart(part))
            partners.push_back(material);
    }
    std::ranges::sort(partners, {},
        [&](const MaterialRecord& material) { return std::tuple(otherFamily(material), material.name); });
    return partners;
}

Result<void> savePartners(Shop& shop, const Catalogue& catalogue, MaterialRecord& material,
    const std::optional<MaterialId>& partner)
{
    if (partner) {
        if (auto half = isOtherHalf(catalogue, material, *partner); !half)
            return half;
    }
    const auto before = material.partner;
    material.partner = partner;
    if (auto saved = shop.store().saveMaterial(material); !saved)
        return saved;
    const auto point = [&](const MaterialId& id, const std::optional<MaterialId>& to) -> Result<void> {
        MaterialRecord other = *catalogue.material(id);
        other.partner = to;
        return shop.store().saveMaterial(other);
    };
    // Of two hardeners for one resin, the resin keeps the one it named first.
    if (partner && !catalogue.material(*partner)->partner)
        return point(*partner, material.id);
    const MaterialRecord* left = before && before != partner ? catalogue.material(*before) : nullptr;
    if (left && left->partner == material.id)
        return point(left->id, {});
    return {};
}

Result<MaterialRecord> sayOfMaterial(Shop& shop, const MaterialId& id, const MaterialSaid& said)
{
    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const MaterialRecord* known = catalogue->material(id);
    if (!known)
        return fail(ErrorCode::NotFound, "That material is not known in this shop; choose it again.");
    MaterialRecord material = *known;
    std::erase_if(material.labelFigures, [](const Figure& figure) { return isReadOffLabel(figure.figure); });
    material.labelFigures.insert(
        material.labelFigures.end(), said.labelFigures.begin(), said.labelFigures.end());
    auto saved
        = shop.store().transact([&] { return savePartners(shop, *catalogue, material, said.partner); });
    if (!saved)
        return tl::unexpected(saved.error());
    return material;
}

} // namespace gw
