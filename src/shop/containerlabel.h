#pragma once

#include <string>
#include <vector>

#include "exchange/label.h"
#include "shop/shop.h"

namespace gw {

/// What our label of a container says as of a moment: its name; opened since, or a line to write it on; keep
/// between; until when it is good, if it is opened today where it is sealed; its lot. One that was poured
/// over, and so lost its maker's label, says besides what it came from, its class's hazard pictograms (UN
/// GHS), a signal word, and where to read the rest.
///
/// The signal word is the material's own label figure "signal_word" where there is one; else the stronger one
/// that such pictograms can stand with: Warning where there is none but GHS07 and GHS09, else Danger (from
/// memory of GHS Rev. 9, annex 1). The maker's label decides.
/// Errors: NotFound.
Result<Label> containerLabel(const Shop& shop, const std::string& idOrLabel, Moment asOf);
Result<std::vector<Label>> containerLabels(
    const Shop& shop, const std::vector<std::string>& idsOrLabels, Moment asOf);

/// The label codes of all that stands on the shelf, by place and name: to label a whole shelf after a first
/// stock-taking.
Result<std::vector<std::string>> shelfLabelCodes(const Shop& shop, Moment asOf);

} // namespace gw
