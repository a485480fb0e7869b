#pragma once

#include <optional>
#include <string>
#include <vector>

#include "demand/coldarrival.h"
#include "measure/amount.h"
#include "measure/error.h"
#include "measure/id.h"
#include "measure/moment.h"
#include "measure/money.h"
#include "measure/range.h"

namespace gw {

/// A pack on offer.
struct PackOffer {
    PackId pack;
    std::string name; ///< "500 g bottle"
    Amount amount; ///< over zero
    std::optional<Money> price;
    std::string supplier;
    double leadDays = 7;
    int soldBy = 1; ///< only so many together, a case; over zero
    int least = 1; ///< fewer are not delivered; over zero
    std::string gtin {}; ///< empty when it carries none
};

/// What one container can still give, and until when it will pass.
struct UsableLot {
    Amount left;
    std::optional<Moment> usableUntil; ///< none: no limit known of
    bool opened = false;
};

/// One kind of work that takes this material: how many a month, and how much each.
struct UseOfJob {
    std::string jobName;
    double jobsPerMonth = 0; ///< as the shop expects; zero where it said nothing
    double amountPerJob = 0; ///< as estimated: base units of the material itself (dry granules, resin ...)
    double jobsSeen = 0; ///< so many came in the months watched
    double monthsSeen = 0;
    std::vector<double> weighed {}; ///< what jobs took of it by the shop's own entries, oldest first
    std::string type {}; ///< key of the job type, to tell kinds apart
    double morePerMonth = 0; ///< what if so many more came
    std::vector<Date> planned {}; ///< the days of those planned with a date, one for each
};

/// One material and all that is known of its use.
struct MaterialDemand {
    MaterialId material;
    std::string name;
    Dimension dimension = Dimension::Mass;
    std::vector<UseOfJob> jobs;
    std::vector<double> usedPerMonth; ///< whole months before the plan, oldest first: what left the shelf
    std::vector<double> otherUsePerMonth; ///< of that, what no planned job type explains, oldest first
    std::vector<UsableLot> stock; ///< only what passes today; and what is on order
    Amount onOrder; ///< of the stock, what is ordered and has not come
    std::vector<PackOffer> packs;
    std::optional<Range<Days>>
        sealedLife; ///< at the shop's usual climate; none when it does not age or is not known
    std::optional<Range<Days>> openedLife;
    std::optional<Celsius> frostHarmsBelow; ///< what is spoilt by frost, and from where on it may freeze
    std::optional<MaterialId> partner;
    double partnerPerUnit = 0; ///< units of the partner used for each unit of this
};

struct PlanRequest {
    Date monthStart; ///< first day of the month the list is for
    Moment now;
    double servicePercent = 95; ///< over 0, under 100
    double reviewDays = 30.436875; ///< until the next list
    std::optional<Doorstep> doorstep {}; ///< where deliveries wait; none: nobody said
    std::optional<Money> budget {}; ///< at most this is spent; what can wait is left for the next list
};

struct PackCount {
    PackId pack;
    std::string name;
    std::string supplier;
    int count = 0;
    std::optional<Money> price; ///< of one
    std::string gtin {};
    Amount amount {}; ///< of one
};

struct OrderLine {
    MaterialId material;
    std::string name;
    std::vector<PackCount>
        packs; ///< empty with a need: nothing is on offer that would be used in time, see why
    Amount need; ///< over lead time and review, at the service asked for
    Amount usable; ///< of the stock, what will still pass when it is needed
    Amount ordered;
    std::optional<Date> latestUse; ///< when what is ordered would go off
    std::string why; ///< a sentence or two with the figures
    std::optional<ColdArrival> cold {}; ///< it would come to a freezing doorstep
    double riskWithout = 0; ///< the chance, 0 to 1, of running short before the next list's goods are in if
                            ///< nothing is bought
};

struct OrderPlan {
    std::vector<OrderLine> lines; ///< only what wants buying, or wants it and cannot be had
    std::vector<OrderLine> left; ///< what a budget leaves for the next list, the least risk first
    std::vector<Money> totals; ///< one for each currency
    std::vector<std::string> notes; ///< one-sided stock, no packs known, no history ...
};

/// What to buy for a month. Use is jobs x amount plus what other use was seen; need covers the longest lead
/// time on offer and review at the service level by the compound Poisson of the jobs; usable stock is used
/// first-to-expire, for a later month after the use until then; the packs are those that cover the gap with
/// the least expected cost: price, what would go off before it is used, and being caught short
/// (packchoice.h). More stock never orders more, and a higher service level never less. With a budget the
/// lines whose money buys the least cover wait, partners together. Errors: BadInput (service level, month, a
/// pack of zero, a budget below zero, a figure that cannot be); the sentence names the material.
Result<OrderPlan> planOrder(const PlanRequest& request, const std::vector<MaterialDemand>& materials);

} // namespace gw
