#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exchange/label.h"
#include "shop/shop.h"

namespace gw {

/// What our label of a container says as of a moment: its name; opened since, or a line to write it on; keep
/// between; until when it is good, if it is opened today where it is sealed; its lot. One that was poured
/// over, and so lost its maker's label, says besides what it came from, its hazards (shop/hazards.h), and
/// where to read the rest: the maker's label decides.
/// Errors: NotFound.
Result<Label> containerLabel(const Shop& shop, const std::string& idOrLabel, Moment asOf);
Result<std::vector<Label>> containerLabels(
    const Shop& shop, const std::vector<std::string>& idsOrLabels, Moment asOf);

/// The label codes of all that stands on the shelf, or in one place, by place and name: to label a whole
/// shelf after a first stock-taking.
Result<std::vector<std::string>> shelfLabelCodes(
    const Shop& shop, Moment asOf, const std::optional<PlaceId>& place = {});

} // namespace gw
