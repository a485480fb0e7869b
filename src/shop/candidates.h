#pragma once

#include <optional>
#include <vector>

#include "gluing/glueup.h"
#include "shop/shelf.h"
#include "store/records.h"

namespace gw {

Family familyOf(const FamilyRecord& record);
JobType jobTypeOf(const JobTypeRecord& record);

/// How one material covers a job's need: its parts with their shares, without stock.
struct PartShare {
    MaterialId material;
    double perUnit = 1.0; ///< in the part's own unit for each gram or millilitre of ready glue
};
struct Coverage {
    std::string name;
    bool typical = false;
    bool partnerMissing = false;
    std::vector<PartShare> parts;
    double waterPerUnit = 0;
};

/// One part with the containers there are of it.
StockPart stockOf(const PartShare& share, const Catalogue& catalogue, const std::vector<ShelfItem>& items);

/// Grams of hardener to 100 g of resin by the labels, else by the classes; none when neither says.
std::optional<double> hardenerPer100(
    const Catalogue& catalogue, const MaterialRecord& resin, const MaterialRecord& hardener);

/// Every way this shop's materials could cover a job type, the typical class's first.
std::vector<Coverage> coveragesFor(const JobTypeRecord& job, const Catalogue& catalogue);

} // namespace gw
