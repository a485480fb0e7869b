#include "exchange/treatment.h"

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgRenderer>
#include <QTextDocument>
#include <QUrl>

#include "exchange/paperfont.h"
#include "exchange/savefile.h"

namespace gw {

namespace {

constexpr int pictogramPixels = 240;

QImage pictureOf(const std::string& code)
{
    QImage picture(pictogramPixels, pictogramPixels, QImage::Format_ARGB32);
    picture.fill(Qt::transparent);
    QSvgRenderer drawing(QStringLiteral(":/gluewright/hazards/%1.svg").arg(QString::fromStdString(code)));
    QPainter painter(&picture);
    drawing.render(&painter);
    return picture;
}

QString cell(const std::string& text) { return QString::fromStdString(text).toHtmlEscaped(); }

QString known(const std::string& text)
{
    return text.empty() ? QStringLiteral("<i>not recorded</i>") : cell(text);
}

QString listOf(const std::vector<std::string>& texts)
{
    QString items;
    for (const std::string& text : texts)
        items += QStringLiteral("<li>%1</li>").arg(cell(text));
    return items.isEmpty() ? QString() : QStringLiteral("<ul>%1</ul>").arg(items);
}

QString materialsOf(const TreatmentStep& step)
{
    if (step.materials.empty())
        return QStringLiteral("<p>No material is recorded.</p>");
    QString rows = QStringLiteral("<tr><th align=\"left\">Material</th><th align=\"left\">Kind</th>"
                                  "<th align=\"left\">Lot</th><th align=\"right\">Amount</th></tr>");
    for (const TreatmentMaterial& material : step.materials)
        rows += QStringLiteral("<tr><td>%1</td><td>%2</td><td>%3</td><td align=\"right\">%4</td></tr>")
                    .arg(cell(material.name), known(material.kind), known(material.lot),
                        cell(material.amount));
    return QStringLiteral("<table width=\"100%\" cellpadding=\"3\">%1</table>").arg(rows);
}

QString conditionsOf(const TreatmentStep& step)
{
    if (step.conditions.empty())
        return QStringLiteral("<p>Conditions: <i>not recorded</i></p>");
    QString text;
    for (const auto& [what, how] : step.conditions)
        text += (text.isEmpty() ? QString() : QStringLiteral(" · "))
            + QStringLiteral("%1 %2").arg(cell(what), cell(how));
    return QStringLiteral("<p>Conditions: %1</p>").arg(text);
}

QString stepOf(const TreatmentStep& step)
{
    QString html = QStringLiteral("<h2>%1: %2</h2>").arg(cell(step.date), cell(step.title));
    html += materialsOf(step) + conditionsOf(step);
    html += QStringLiteral("<p><b>Comes apart with:</b></p>");
    html += step.comesApart.empty() ? QStringLiteral("<p><i>not recorded</i></p>") : listOf(step.comesApart);
    if (!step.note.empty())
        html += QStringLiteral("<p>Note: %1</p>").arg(cell(step.note));
    return html;
}

QString cautionsOf(const Treatment& treatment)
{
    QString html = QStringLiteral("<h2>Cautions</h2>");
    QString pictures;
    for (const std::string& code : treatment.pictograms)
        pictures += QStringLiteral("<img src=\"%1\" width=\"44\" height=\"44\"/> ").arg(cell(code));
    if (!pictures.isEmpty())
        html += QStringLiteral("<p>%1</p><p>These signs are usual on the materials as they come, before they "
                               "have set.</p>")
                    .arg(pictures);
    html += listOf(treatment.cautions);
    return html
        + QStringLiteral(
            "<p>These are the usual cautions and not all there are. The labels and the safety data "
            "sheets of the materials, local rules and licensed practice come before anything "
            "written here.</p>");
}

QString htmlOf(const Treatment& treatment)
{
    QString html
        = QStringLiteral("<h1>%1</h1><p>Treatment record, printed %2. It states what was written down "
                         "when the work was done; what is not recorded is not known.</p>")
              .arg(cell(treatment.piece), cell(treatment.date));
    for (const TreatmentStep& step : treatment.steps)
        html += stepOf(step);
    return html + cautionsOf(treatment);
}

} // namespace

Result<void> paintTreatment(QPagedPaintDevice& device, const Treatment& treatment)
{
    if (treatment.steps.empty())
        return fail(ErrorCode::BadInput,
            "Nothing is recorded for " + treatment.piece + " yet, so there is nothing to print.");
    QTextDocument document;
    document.setDefaultFont(paperFont(10));
    document.setDefaultStyleSheet(QStringLiteral("h1 { font-size: 18pt; } h2 { font-size: 12pt; }"));
    for (const std::string& code : treatment.pictograms)
        document.addResource(
            QTextDocument::ImageResource, QUrl(QString::fromStdString(code)), pictureOf(code));
    document.setHtml(htmlOf(treatment));
    document.print(&device);
    return {};
}

Result<void> writeTreatmentPdf(const Treatment& treatment, const QString& path)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setPageSize(QPageSize(QPageSize::A4));
        writer.setTitle(QString::fromStdString(treatment.piece));
        writer.setCreator(QStringLiteral("Gluewright"));
        if (auto painted = paintTreatment(writer, treatment); !painted)
            return painted;
    }
    return saveFile(path, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

} // namespace gw
