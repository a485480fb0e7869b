#pragma once

#include <string>
#include <utility>
#include <vector>

#include "measure/error.h"

class QPagedPaintDevice;
class QString;

namespace gw {

struct TreatmentMaterial {
    std::string name, kind; ///< "Hide glue", "Hide granules, 192 g"
    std::string lot; ///< empty: not known
    std::string amount; ///< in words
};

/// One glue-up, or one job, of a treatment.
struct TreatmentStep {
    std::string date, title;
    std::vector<TreatmentMaterial> materials;
    std::vector<std::pair<std::string, std::string>> conditions; ///< what, and how it was
    std::vector<std::string> comesApart; ///< empty: not known
    std::string note;
};

/// What was done to one piece, for its owner and the next restorer: a statement of what was written down, and
/// no promise.
struct Treatment {
    std::string piece;
    std::vector<TreatmentStep> steps; ///< oldest first
    std::vector<std::string> cautions;
    std::vector<std::string> pictograms; ///< "GHS07" ...
    std::string date; ///< of the print, in words
};

/// Draws it page by page onto a device, letters as letters. Errors: BadInput without a step.
Result<void> paintTreatment(QPagedPaintDevice& device, const Treatment& treatment);
/// As an A4 PDF, whole or not at all. Errors: those of paintTreatment() and saveFile(). Needs a
/// QGuiApplication.
Result<void> writeTreatmentPdf(const Treatment& treatment, const QString& path);

} // namespace gw
