#pragma once

#include <QStringList>

#include "exchange/labelfile.h"

namespace gw {

/// The printers this machine knows, the usual one first. Asks the system's print service, which can take
/// seconds where one is out of reach: not on the thread of the window.
QStringList printerNames();

/// Sends labels to a printer, each page as large as the print says. Errors: NotFound when there is no such
/// printer; FileUnwritable when it takes nothing; those of paintLabels().
Result<LabelsPrinted> printLabels(
    const std::vector<Label>& labels, const LabelPrint& print, const QString& printer);

} // namespace gw
