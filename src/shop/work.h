#pragma once

#include <optional>
#include <string>
#include <vector>

#include "demand/orderplan.h"
#include "gluing/glueup.h"
#include "shop/acts.h"

namespace gw {

/// What a person can say about the glue-up to come; what is not said stays unknown.
struct Conditions {
    std::optional<Celsius> air, wood;
    std::optional<double> humidity, woodMoisture, gapMm;
};

/// The check for a job type (by id or name) and so many pieces. Errors: NotFound for the job type, with the
/// names there are.
Result<GlueUpAnswer> checkJob(
    const Shop& shop, const std::string& jobType, int pieces, const Conditions& conditions, Moment asOf);

/// The order list for the month that begins on a day. Errors: BadInput (month past, service level).
Result<OrderPlan> orderForMonth(const Shop& shop, Date monthStart, double servicePercent, Moment now);

/// What went into one piece of a client's, newest first.
struct PieceLine {
    Moment at;
    std::string jobName;
    std::string materialName;
    std::string label;
    std::string lot;
    Amount amount;
    std::string comesApart; ///< how this family is undone
};
Result<std::vector<PieceLine>> pieceRecord(const Shop& shop, const std::string& piece);

} // namespace gw
