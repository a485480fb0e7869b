#pragma once

#include "app/rowsmodel.h"
#include "shop/work.h"

namespace gw {

struct GlueUpAsked {
    std::string jobType;
    int pieces = 1;
    Conditions conditions;
    Moment now;
};

/// The answer of a check, ready for the screen.
struct GlueUpShown {
    QString answer; ///< "go", "fix_first", "stop", "not_known"; empty when nothing was asked
    QString firstFix;
    int warnings = 0;
    QString stockName;
    std::vector<ShownRow> gates; ///< glueUpGateRoles; key: the gate's id
    std::vector<ShownRow> uses; ///< glueUpUseRoles; key: the container's id, or a batch's label
    std::vector<ShownRow> weigh; ///< glueUpNumberRoles
    std::vector<ShownRow> clocks; ///< glueUpNumberRoles
    QString clockNote;
    QString comesApart;
    QString hazard; ///< which of the materials carry hazards; empty when none is recorded
    QStringList cautions;
    JobRecord job; ///< what recording it would write, with
    std::vector<Taking> takings;
    std::vector<Taking> fromBatches; ///< by label code
};

inline const QByteArrayList glueUpGateRoles { "result", "name", "sentence" };
inline const QByteArrayList glueUpUseRoles { "label", "name", "amount", "note", "shape", "contents", "level",
    "mixed" };
inline const QByteArrayList glueUpNumberRoles { "label", "value", "note" };
inline const QByteArrayList glueUpGlueRoles { "name", "verdict", "standing", "reasons" };
inline const QByteArrayList glueUpJobRoles { "name", "note", "family" };

/// Runs the check and writes its answer out. Runs on the shop's thread.
Result<GlueUpShown> glueUpShown(const Shop& shop, const GlueUpAsked& asked);

/// Which glue, as rows of glueUpGlueRoles; key: the family's id.
std::vector<ShownRow> glueRows(const WhichGlueAnswer& answer);

/// Every job type by family, those without (finishes) last. Runs on the shop's thread.
Result<std::vector<ShownRow>> glueUpJobs(const Shop& shop);

/// "35 min", "2 h 30 min", "1 day 4 h": never finer than a person waits.
QString durationText(double minutes);

} // namespace gw
