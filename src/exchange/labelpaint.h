#pragma once

#include <string>
#include <vector>

#include <QPoint>
#include <QRect>
#include <QSize>

#include "exchange/label.h"
#include "exchange/labelsymbol.h"
#include "measure/error.h"

class QPainter;

namespace gw {

/// Where everything of a label stands, in dots of the printer from the label's upper left.
///
/// The symbol never gives way: its modules are whole dots, 0.25 mm (what a tablet's camera still reads; own
/// figure) to 0.8 mm, with two modules of quiet zone where ISO/IEC 16022 asks for one. The title shrinks and
/// is then cut; lines that have no room are left out from the last on, then pictograms shrink to 5 mm, and
/// are left out after the hazard line. What had to go is named, so that a person can take a larger label.
struct LabelPlan {
    struct Text {
        QRect box;
        int pixels = 0; ///< size of the letters
        bool bold = false;
        std::string text; ///< cut where it must be
    };
    struct Pictogram {
        QRect box;
        std::string code;
    };
    QSize size;
    SymbolModules symbol;
    QPoint symbolAt; ///< of its first module
    int moduleDots = 0;
    std::vector<Text> texts; ///< the code first, then the title
    std::vector<Pictogram> pictograms;
    std::vector<std::string> leftOut; ///< words of what found no room
};

/// Errors: BadInput for a paper outside 20 x 10 to 300 x 300 mm, a printer outside 150 to 1200 dots per inch,
/// a label without code or title, or a paper too small for the symbol; those of dataMatrixOf().
Result<LabelPlan> planLabel(const Label& label, const LabelPaper& paper);

/// Draws a plan with the painter's unit being one dot. The paper is white already.
void paintLabel(QPainter& painter, QPoint at, const LabelPlan& plan);

/// Dots of a length.
int dotsOf(double mm, int dpi);

} // namespace gw
