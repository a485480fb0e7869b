#pragma once

#include <optional>
#include <vector>

#include <QImage>
#include <QSizeF>

#include "exchange/labelpaint.h"

class QPagedPaintDevice;
class QString;

namespace gw {

/// Labels as they go out: each on a page of its own, or on sheets.
struct LabelPrint {
    LabelPaper paper;
    std::optional<LabelSheet> sheet;
};

/// A size as people write it, in millimetres: "50x25mm", "63,5 x 38,1", "4 x 2 in". Errors: BadInput.
Result<QSizeF> labelSizeOf(const std::string& text);

/// Sheets whose labels lie without gaps in the middle of it. Errors: BadInput when so many do not fit.
Result<LabelSheet> sheetOf(
    const LabelPaper& paper, double sheetWidthMm, double sheetHeightMm, int columns, int rows);

/// What printing did.
struct LabelsPrinted {
    int pages = 0;
    std::vector<std::string> leftOut; ///< what found no room on some label, in words
};

/// The page of a print, in millimetres.
QSizeF pageOf(const LabelPrint& print);
/// Draws all labels onto a device whose page is pageOf() without margins and whose resolution is the paper's
/// dpi. Every label's corner is on a whole dot. Errors: BadInput for no labels, or a sheet that does not hold
/// its labels; those of planLabel().
Result<LabelsPrinted> paintLabels(
    QPagedPaintDevice& device, const std::vector<Label>& labels, const LabelPrint& print);

/// What printing would do, without printing. Errors: those of paintLabels().
Result<LabelsPrinted> lookAtLabels(const std::vector<Label>& labels, const LabelPrint& print);
/// One label, dot by dot as the printer puts it. Errors: those of planLabel().
Result<QImage> labelPicture(const Label& label, const LabelPaper& paper);

/// As a PDF file, whole or not at all. Errors: those of paintLabels() and saveFile().
Result<LabelsPrinted> writeLabelsPdf(
    const std::vector<Label>& labels, const LabelPrint& print, const QString& path);

} // namespace gw
