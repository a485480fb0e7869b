#include "exchange/labelfile.h"

#include <algorithm>

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>

#include "exchange/savefile.h"
#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

/// Where each label's corner lies on its page, in dots.
std::vector<QPoint> cornersOf(const LabelPrint& print)
{
    if (!print.sheet)
        return { QPoint(0, 0) };
    const LabelSheet& sheet = *print.sheet;
    const int dpi = print.paper.dpi;
    std::vector<QPoint> corners;
    for (int row = 0; row < sheet.rows; ++row) {
        for (int column = 0; column < sheet.columns; ++column)
            corners.emplace_back(dotsOf(sheet.leftMm + column * sheet.acrossMm, dpi),
                dotsOf(sheet.topMm + row * sheet.downMm, dpi));
    }
    return corners;
}

Result<void> holdsItsLabels(const LabelPrint& print)
{
    if (!print.sheet)
        return {};
    constexpr double slack = 0.05; // millimetres that rounding may take
    const LabelSheet& sheet = *print.sheet;
    const LabelPaper& paper = print.paper;
    if (sheet.columns < 1 || sheet.rows < 1 || sheet.columns > 20 || sheet.rows > 60)
        return fail(ErrorCode::BadInput, "A sheet has 1 to 20 columns and 1 to 60 rows of labels.");
    if (sheet.firstFree < 0 || sheet.firstFree >= sheet.columns * sheet.rows)
        return fail(ErrorCode::BadInput, "No label is left on a sheet that is begun so far; take a new one.");
    const double right = sheet.leftMm + (sheet.columns - 1) * sheet.acrossMm + paper.widthMm;
    const double foot = sheet.topMm + (sheet.rows - 1) * sheet.downMm + paper.heightMm;
    const bool apart = (sheet.columns == 1 || sheet.acrossMm >= paper.widthMm - slack)
        && (sheet.rows == 1 || sheet.downMm >= paper.heightMm - slack);
    if (!(sheet.leftMm >= -slack && sheet.topMm >= -slack && apart && right <= sheet.widthMm + slack
            && foot <= sheet.heightMm + slack))
        return fail(ErrorCode::BadInput,
            "The labels do not fit on the sheet; give fewer columns and rows, or a smaller label.");
    return {};
}

struct PlannedLabels {
    std::vector<LabelPlan> plans;
    LabelsPrinted printed;
};

Result<PlannedLabels> planLabels(const std::vector<Label>& labels, const LabelPrint& print)
{
    if (labels.empty())
        return fail(ErrorCode::BadInput, "There is nothing to print; choose at least one container.");
    if (auto holds = holdsItsLabels(print); !holds)
        return tl::unexpected(holds.error());
    PlannedLabels planned;
    std::vector<std::string>& leftOut = planned.printed.leftOut;
    for (const Label& label : labels) {
        auto plan = planLabel(label, print.paper);
        if (!plan)
            return tl::unexpected(plan.error());
        for (const std::string& word : plan->leftOut) {
            if (std::find(leftOut.begin(), leftOut.end(), word) == leftOut.end())
                leftOut.push_back(word);
        }
        planned.plans.push_back(std::move(*plan));
    }
    const auto count = static_cast<int>(labels.size());
    const int perPage = print.sheet ? print.sheet->columns * print.sheet->rows : 1;
    const int begun = print.sheet ? print.sheet->firstFree : 0;
    planned.printed.pages = (begun + count + perPage - 1) / perPage;
    return planned;
}

} // namespace

Result<QSizeF> labelSizeOf(const std::string& text)
{
    const auto refused = [&] {
        return fail(ErrorCode::BadInput,
            inQuotes(text) + " is no size of a label; give width by height, such as 50x25mm.");
    };
    const auto width = leadingNumber(text);
    if (!width || width->value <= 0)
        return refused();
    std::string_view rest = width->rest;
    for (const std::string_view unit : { "mm", "in" }) {
        if (rest.starts_with(unit))
            rest = trimmed(rest.substr(unit.size())); // "4in x 2in": the last one counts
    }
    constexpr std::string_view times = "\u00D7";
    if (rest.starts_with(times))
        rest.remove_prefix(times.size());
    else if (rest.starts_with('x') || rest.starts_with('X'))
        rest.remove_prefix(1);
    else
        return refused();
    const auto height = leadingNumber(rest);
    if (!height || height->value <= 0)
        return refused();
    if (height->rest.empty() || height->rest == "mm")
        return QSizeF(width->value, height->value);
    if (height->rest == "in")
        return QSizeF(width->value, height->value) * 25.4;
    return refused();
}

Result<LabelSheet> sheetOf(
    const LabelPaper& paper, double sheetWidthMm, double sheetHeightMm, int columns, int rows)
{
    LabelSheet sheet;
    sheet.widthMm = sheetWidthMm;
    sheet.heightMm = sheetHeightMm;
    sheet.columns = columns;
    sheet.rows = rows;
    sheet.acrossMm = paper.widthMm;
    sheet.downMm = paper.heightMm;
    sheet.leftMm = (sheetWidthMm - columns * paper.widthMm) / 2;
    sheet.topMm = (sheetHeightMm - rows * paper.heightMm) / 2;
    if (auto holds = holdsItsLabels({ paper, sheet }); !holds)
        return tl::unexpected(holds.error());
    return sheet;
}

QSizeF pageOf(const LabelPrint& print)
{
    return print.sheet ? QSizeF(print.sheet->widthMm, print.sheet->heightMm)
                       : QSizeF(print.paper.widthMm, print.paper.heightMm);
}

Result<LabelsPrinted> paintLabels(
    QPagedPaintDevice& device, const std::vector<Label>& labels, const LabelPrint& print)
{
    auto planned = planLabels(labels, print);
    if (!planned)
        return tl::unexpected(planned.error());
    QPainter painter;
    if (!painter.begin(&device))
        return fail(ErrorCode::FileUnwritable, "The printer does not answer; look whether it is on.");
    const std::vector<QPoint> corners = cornersOf(print);
    std::size_t at = print.sheet ? static_cast<std::size_t>(print.sheet->firstFree) : 0;
    for (const LabelPlan& plan : planned->plans) {
        if (at == corners.size()) {
            if (!device.newPage())
                return fail(ErrorCode::FileUnwritable,
                    "The printer took no further page; look whether it has paper, then print again.");
            at = 0;
        }
        paintLabel(painter, corners[at++], plan);
    }
    painter.end();
    return planned->printed;
}

Result<LabelsPrinted> lookAtLabels(const std::vector<Label>& labels, const LabelPrint& print)
{
    return planLabels(labels, print).map([](PlannedLabels&& planned) { return std::move(planned.printed); });
}

Result<QImage> labelPicture(const Label& label, const LabelPaper& paper)
{
    return planLabel(label, paper).map([](const LabelPlan& plan) {
        QImage picture(plan.size, QImage::Format_RGB32);
        picture.fill(Qt::white);
        QPainter painter(&picture);
        paintLabel(painter, QPoint(0, 0), plan);
        return picture;
    });
}

Result<LabelsPrinted> writeLabelsPdf(
    const std::vector<Label>& labels, const LabelPrint& print, const QString& path)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    Result<LabelsPrinted> printed;
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(print.paper.dpi);
        writer.setPageSize(QPageSize(pageOf(print), QPageSize::Millimeter, {}, QPageSize::ExactMatch));
        writer.setPageMargins(QMarginsF(0, 0, 0, 0));
        writer.setTitle(QStringLiteral("Labels"));
        writer.setCreator(QStringLiteral("Gluewright"));
        printed = paintLabels(writer, labels, print);
    }
    if (!printed)
        return printed;
    if (auto saved = saveFile(path, std::string_view(bytes.constData(), std::size_t(bytes.size()))); !saved)
        return tl::unexpected(saved.error());
    return printed;
}

} // namespace gw
