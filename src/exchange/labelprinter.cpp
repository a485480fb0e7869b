#include "exchange/labelprinter.h"

#include <QPrinter>
#include <QPrinterInfo>

#include "measure/quoted.h"

namespace gw {

QStringList printerNames()
{
    QStringList names = QPrinterInfo::availablePrinterNames();
    const QString usual = QPrinterInfo::defaultPrinterName();
    if (names.removeOne(usual))
        names.prepend(usual);
    return names;
}

Result<LabelsPrinted> printLabels(
    const std::vector<Label>& labels, const LabelPrint& print, const QString& printer)
{
    // A printer that is not there would be a file in the present folder to Qt.
    const QPrinterInfo info = QPrinterInfo::printerInfo(printer);
    if (info.isNull())
        return fail(ErrorCode::NotFound,
            "There is no printer " + inQuotes(printer.toStdString())
                + "; choose another one, or save the labels as a PDF.");
    QPrinter device(info, QPrinter::HighResolution);
    device.setResolution(print.paper.dpi);
    device.setFullPage(true);
    device.setPageSize(QPageSize(pageOf(print), QPageSize::Millimeter, {}, QPageSize::ExactMatch));
    device.setPageMargins(QMarginsF(0, 0, 0, 0));
    device.setDocName(QStringLiteral("Labels"));
    device.setCreator(QStringLiteral("Gluewright"));
    auto printed = paintLabels(device, labels, print);
    if (printed && device.printerState() == QPrinter::Error)
        return fail(ErrorCode::FileUnwritable,
            "The printer " + inQuotes(printer.toStdString())
                + " did not take the labels; look whether it is on.");
    return printed;
}

} // namespace gw
