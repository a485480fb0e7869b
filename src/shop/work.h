#pragma once

#include <optional>
#include <string>
#include <vector>

#include "demand/orderplan.h"
#include "exchange/orderpapers.h"
#include "gluing/glueup.h"
#include "gluing/whichglue.h"
#include "shop/acts.h"
#include "shop/monthdemands.h"

namespace gw {

/// What a person can say about the glue-up to come; what is not said stays unknown.
struct Conditions {
    std::optional<Celsius> air {}, wood {};
    std::optional<double> humidity {}, woodMoisture {}, gapMm {};
    std::string joint {}; ///< kind of joint, by key, name or a part of it; empty: as the job type has it
    std::string residue {}; ///< what is still in the joint, the same way; empty: nothing was said
    std::optional<bool> period {}; ///< an old piece, or a modern one
    std::optional<bool> barrier {}; ///< a barrier coat of hide glue is laid
    std::optional<ServicePlace> servicePlace {}; ///< where the piece will stand
    std::optional<Load> load {};
    std::optional<double> surfaceAgeHours {};
    std::optional<double> otherMoisture {}; ///< percent, of the other part
    std::optional<double> thicknessMm {};
    std::optional<Celsius> glue {};
    std::optional<bool> ventilated {};
    std::string woodStood {}; ///< name of the place the wood stood in; empty: not said
    /// The batch that will be used, by label code or id; "-": none. Empty: of the batches of that family the
    /// best that covers the need, else the best.
    std::string batch {};
};

/// The check for a job type (by id or name) and so many pieces. Errors: NotFound for the job type, with the
/// names there are, and so for the joint, the residue, the place the wood stood in and the batch; BadInput
/// for a batch of another family.
Result<GlueUpAnswer> checkJob(
    const Shop& shop, const std::string& jobType, int pieces, const Conditions& conditions, Moment asOf);

/// What is asked of an order list.
struct OrderAsked {
    Date monthStart; ///< first day of the month it is for
    double servicePercent = 95; ///< over 0, under 100
    std::optional<Money> budget {};
    std::string doorstep {}; ///< name of the place deliveries wait in; empty: as the shop said, if it did
    WhatIf whatIf {};
};

/// The order list for a month. Errors: BadInput (month past, service level, budget); NotFound for the
/// doorstep.
Result<OrderPlan> orderForMonth(const Shop& shop, const OrderAsked& asked, Moment now);

/// What stands over a list written at a moment.
Result<OrderHeading> orderHeading(const Shop& shop, Date monthStart, Moment now);

} // namespace gw
