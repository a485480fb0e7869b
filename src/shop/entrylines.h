#pragma once

#include <span>
#include <string>
#include <vector>

#include "shop/shelf.h"

namespace gw {

/// An entry in words, without a full stop: "Used 13 g", "Moved to lean-to". dimension is its container's.
std::string entryText(const Entry& entry, Dimension dimension, const Catalogue& catalogue, UnitSystem units);

/// A container's story for its page, newest first. entries in time order.
std::vector<EntryLine> entryLines(const ContainerRecord& container, std::span<const Entry> entries,
    const Catalogue& catalogue, const std::map<JobId, std::string>& jobNames, UnitSystem units);

} // namespace gw
