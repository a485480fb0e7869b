#include "exchange/orderpapers.h"

#include <algorithm>
#include <map>

#include <QBuffer>
#include <QByteArray>
#include <QPdfWriter>
#include <QTextDocument>

#include "exchange/paperfont.h"
#include "exchange/savefile.h"

namespace gw {

namespace {

QString q(const std::string& text) { return QString::fromStdString(text); }
QString html(const std::string& text) { return q(text).toHtmlEscaped(); }

void add(std::vector<Money>& totals, const Money& money)
{
    const auto same = std::find_if(
        totals.begin(), totals.end(), [&](const Money& total) { return total.currency == money.currency; });
    if (same == totals.end())
        totals.push_back(money);
    else
        same->minorUnits += money.minorUnits;
}

bool hasPrice(const PackCount& pack) { return pack.price && pack.price->minorUnits > 0; }

Money together(const PackCount& pack)
{
    return { pack.price->minorUnits * pack.count, pack.price->currency };
}

QString sumText(const std::vector<Money>& totals)
{
    QStringList texts;
    for (const Money& total : totals)
        texts.append(q(formatMoney(total)));
    return texts.join(QStringLiteral(" + "));
}

QString monthText(Date month)
{
    const std::string spoken = spokenDate(month);
    return q(spoken.substr(spoken.find(' ') + 1)); // without the day
}

std::string shownSupplier(const std::string& supplier)
{
    return supplier.empty() ? "Supplier not known" : supplier;
}

const QLatin1String style(
    "body, td, p { color: #2b2118; }"
    "h1 { font-size: 18pt; margin-bottom: 0; } h2 { font-size: 13pt; margin-bottom: 2px; }"
    ".quiet { color: #6b5d4f; } .why { color: #6b5d4f; font-size: 8.5pt; }"
    ".name { font-weight: 600; font-size: 10.5pt; }");

QString packRow(const OrderLine& line, const PackCount& pack, bool first)
{
    return QStringLiteral("<tr><td width='12%' align='right'>%1 ×&nbsp;</td><td width='30%'>%2%3</td>"
                          "<td width='34%' class='name'>%4</td><td width='24%' align='right'>%5</td></tr>")
        .arg(pack.count)
        .arg(html(pack.name),
            pack.gtin.empty() ? QString()
                              : QStringLiteral("<br/><span class='why'>GTIN %1</span>").arg(html(pack.gtin)),
            first ? html(line.name) : QString(),
            hasPrice(pack) ? html(formatMoney(together(pack))) : QStringLiteral("price not known"));
}

QString itemHtml(const SupplierOrder::Item& item)
{
    QString text = QStringLiteral("<table width='100%' cellspacing='0' cellpadding='1'>");
    for (const PackCount* pack : item.packs)
        text += packRow(*item.line, *pack, pack == item.packs.front());
    return text
        + QStringLiteral("<tr><td></td><td colspan='3' class='why'>%1<br/></td></tr></table>")
              .arg(html(item.line->why));
}

QString supplierHtml(const SupplierOrder& order)
{
    QString text = QStringLiteral("<h2>%1</h2>").arg(html(shownSupplier(order.supplier)));
    for (const SupplierOrder::Item& item : order.items)
        text += itemHtml(item);
    if (!order.totals.empty())
        text += QStringLiteral("<p align='right'>%1: <b>%2</b></p>")
                    .arg(order.unpriced ? QStringLiteral("Together, without what has no known price")
                                        : QStringLiteral("Together"),
                        sumText(order.totals));
    return text;
}

QString linesHtml(const QString& title, const std::vector<const OrderLine*>& lines)
{
    if (lines.empty())
        return {};
    QString text = QStringLiteral("<h2>%1</h2>").arg(title);
    for (const OrderLine* line : lines)
        text += QStringLiteral("<p><span class='name'>%1</span><br/><span class='why'>%2</span></p>")
                    .arg(html(line->name), html(line->why));
    return text;
}

QString pageHtml(const OrderPlan& plan, const OrderHeading& heading)
{
    QString text = QStringLiteral("<html><body><h1>Order list for %1</h1><p class='quiet'>%2Written %3</p>")
                       .arg(monthText(heading.monthStart),
                           heading.shop.empty() ? QString() : html(heading.shop) + QStringLiteral(" · "),
                           q(spokenDate(heading.written)));
    const std::vector<SupplierOrder> orders = bySupplier(plan);
    for (const SupplierOrder& order : orders)
        text += supplierHtml(order);
    if (orders.empty())
        text += QStringLiteral("<p>Nothing wants buying.</p>");
    if (orders.size() > 1 && !plan.totals.empty())
        text += QStringLiteral("<p align='right'>The whole list: <b>%1</b></p>").arg(sumText(plan.totals));
    std::vector<const OrderLine*> missing, left;
    for (const OrderLine& line : plan.lines) {
        if (line.packs.empty())
            missing.push_back(&line);
    }
    for (const OrderLine& line : plan.left)
        left.push_back(&line);
    text += linesHtml(QStringLiteral("Needed, but not to be had"), missing);
    text += linesHtml(QStringLiteral("Left for the next list"), left);
    if (!plan.notes.empty()) {
        text += QStringLiteral("<h2>Notes</h2><ul>");
        for (const std::string& note : plan.notes)
            text += QStringLiteral("<li>%1</li>").arg(html(note));
        text += QStringLiteral("</ul>");
    }
    return text + QStringLiteral("</body></html>");
}

} // namespace

std::vector<SupplierOrder> bySupplier(const OrderPlan& plan)
{
    std::map<std::pair<bool, std::string>, SupplierOrder> orders; // those not known last
    std::vector<const OrderLine*> lines;
    for (const OrderLine& line : plan.lines)
        lines.push_back(&line);
    std::stable_sort(
        lines.begin(), lines.end(), [](const OrderLine* a, const OrderLine* b) { return a->name < b->name; });
    for (const OrderLine* line : lines) {
        for (const PackCount& pack : line->packs) {
            SupplierOrder& order = orders[{ pack.supplier.empty(), pack.supplier }];
            order.supplier = pack.supplier;
            if (order.items.empty() || order.items.back().line != line)
                order.items.push_back({ line, {} });
            order.items.back().packs.push_back(&pack);
            if (hasPrice(pack))
                add(order.totals, together(pack));
            else
                order.unpriced = true;
        }
    }
    std::vector<SupplierOrder> all;
    for (auto& [key, order] : orders)
        all.push_back(std::move(order));
    return all;
}

std::string orderMessage(const OrderPlan& plan, const OrderHeading& heading)
{
    std::string text;
    for (const SupplierOrder& order : bySupplier(plan)) {
        text += (text.empty() ? "" : "\n") + shownSupplier(order.supplier) + "\n";
        text += "Order" + (heading.shop.empty() ? "" : " of " + heading.shop) + ", "
            + spokenDate(heading.written) + "\n";
        for (const SupplierOrder::Item& item : order.items) {
            for (const PackCount* pack : item.packs)
                text += std::to_string(pack->count) + " × " + pack->name + "  " + item.line->name
                    + (pack->gtin.empty() ? "" : "  (GTIN " + pack->gtin + ")") + "\n";
        }
    }
    return text.empty() ? "Nothing wants buying.\n" : text;
}

QByteArray orderPdf(const OrderPlan& plan, const OrderHeading& heading)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageMargins(QMarginsF(18, 16, 18, 16), QPageLayout::Millimeter);
    writer.setResolution(300);
    writer.setTitle(QStringLiteral("Order list for %1").arg(monthText(heading.monthStart)));
    writer.setCreator(QStringLiteral("Gluewright"));
    QTextDocument document;
    document.setDefaultFont(paperFont(9.5));
    document.setDefaultStyleSheet(style);
    document.setDocumentMargin(0);
    document.setHtml(pageHtml(plan, heading));
    document.print(&writer);
    buffer.close();
    return bytes;
}

Result<void> writeOrderPdf(const OrderPlan& plan, const OrderHeading& heading, const QString& path)
{
    const QByteArray bytes = orderPdf(plan, heading);
    return saveFile(path, { bytes.constData(), static_cast<std::size_t>(bytes.size()) });
}

} // namespace gw
