#pragma once

#include <compare>
#include <functional>
#include <string>

namespace gw {

/// An identifier that cannot be taken for another kind of identifier. Made by the device as a UUID,
/// except for classes, families, job types and recipes, whose ids are the keys of the reference data.
template <class Tag> struct Id {
    std::string text;
    friend auto operator<=>(const Id&, const Id&) = default;
    bool empty() const { return text.empty(); }
};

using ClassId = Id<struct ClassTag>;
using FamilyId = Id<struct FamilyTag>;
using MaterialId = Id<struct MaterialTag>;
using PackId = Id<struct PackTag>;
using ContainerId = Id<struct ContainerTag>;
using PlaceId = Id<struct PlaceTag>;
using EntryId = Id<struct EntryTag>;
using ActId = Id<struct ActTag>;
using JobTypeId = Id<struct JobTypeTag>;
using JobId = Id<struct JobTag>;
using BatchId = Id<struct BatchTag>;

} // namespace gw

template <class Tag> struct std::hash<gw::Id<Tag>> {
    std::size_t operator()(const gw::Id<Tag>& id) const noexcept
    {
        return std::hash<std::string> {}(id.text);
    }
};
