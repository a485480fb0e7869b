#pragma once

#include <string>
#include <vector>

namespace gw {

/// What stands on one of our labels: a container's, or a batch's jar.
struct Label {
    std::string code; ///< our short code: drawn as Data Matrix, and written beside it
    std::string title; ///< what it is
    /// Most needed first: where there is no room, the last go first.
    std::vector<std::string> lines;
    std::vector<std::string> pictograms; ///< "GHS02" ...; for what no longer stands in its maker's bottle
    std::string signalWord; ///< "Danger", "Warning" or empty
    std::string hazardLine; ///< where the rest is to be read
};

/// The paper, in millimetres, and what prints on it.
struct LabelPaper {
    double widthMm = 50;
    double heightMm = 25;
    int dpi = 203; ///< dots per inch of the printer: a module of the symbol is a whole number of dots
};

/// Several labels on a sheet, from its upper left, row by row.
struct LabelSheet {
    double widthMm = 210, heightMm = 297;
    int columns = 3, rows = 8;
    double leftMm = 0, topMm = 0; ///< of the first label from the sheet's edge
    double acrossMm = 0, downMm = 0; ///< from one label to the next
    int firstFree = 0; ///< labels that are gone from a begun sheet
};

} // namespace gw
