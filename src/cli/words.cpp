#include "cli/words.h"

namespace gw {

namespace {

QString amountText(Amount amount, UnitSystem units) { return q(formatAmount(amount, units)); }

QString minutesText(const Range<double>& range)
{
    if (range.low == range.high)
        return QStringLiteral("%1 min").arg(range.low);
    return QStringLiteral("%1 to %2 min").arg(range.low).arg(range.high);
}

QString heading(GlueUpVerdict verdict)
{
    switch (verdict) {
    case GlueUpVerdict::Go:
        return QStringLiteral("Go.");
    case GlueUpVerdict::FixFirst:
        return QStringLiteral("Fix first.");
    case GlueUpVerdict::Stop:
        return QStringLiteral("Stop.");
    case GlueUpVerdict::NotKnown:
        return QStringLiteral("Not known yet.");
    }
    return {};
}

} // namespace

QString spoken(Verdict verdict) { return q(word(verdict)).replace(u'_', u' '); }

QString columns(const QList<QStringList>& rows)
{
    QList<qsizetype> widths;
    for (const QStringList& row : rows) {
        for (qsizetype i = 0; i < row.size(); ++i) {
            if (i == widths.size())
                widths.append(0);
            widths[i] = std::max(widths.at(i), row.at(i).size());
        }
    }
    QString text;
    for (const QStringList& row : rows) {
        for (qsizetype i = 0; i < row.size(); ++i)
            text += i + 1 == row.size() ? row.at(i) : row.at(i).leftJustified(widths.at(i) + 2);
        text += u'\n';
    }
    return text;
}

QString shelfTable(const std::vector<ShelfItem>& items, UnitSystem units)
{
    if (items.empty())
        return QStringLiteral("Nothing stands on the shelf.\n");
    QList<QStringList> rows;
    for (const ShelfItem& item : items) {
        const auto& reasons = item.judgement.reasons;
        rows.append({ q(item.label), q(item.materialName), amountText(item.left, units),
            item.placeName.empty() ? QStringLiteral("-") : q(item.placeName), spoken(item.judgement.verdict),
            reasons.empty() ? QString() : q(reasons.front().text) });
    }
    return columns(rows);
}

QString containerText(const ContainerPage& page, UnitSystem units)
{
    QString text = QStringLiteral("%1  %2, %3 of %4\n")
                       .arg(q(page.item.label), q(page.item.materialName), amountText(page.item.left, units),
                           amountText(page.item.capacity, units));
    text += spoken(page.item.judgement.verdict) + u'\n';
    for (const Reason& reason : page.item.judgement.reasons)
        text += QStringLiteral("  ") + q(reason.text) + u'\n';
    QList<QStringList> rows;
    for (const EntryLine& line : page.entries) {
        rows.append({ q(formatMoment(line.at)),
            q(line.text) + (line.undone ? QStringLiteral(" (undone)") : QString()),
            amountText(line.after, units), q(line.entry.text) });
    }
    return text + u'\n' + columns(rows);
}

QString glueUpText(const GlueUpAnswer& answer, UnitSystem units)
{
    QString text = heading(answer.answer);
    if (!answer.firstFix.empty())
        text += u' ' + q(answer.firstFix);
    text += u'\n';
    QList<QStringList> rows;
    for (const Gate& gate : answer.gates)
        rows.append({ QStringLiteral("  ") + q(word(gate.result)), q(gate.name), q(gate.text) });
    text += columns(rows);
    if (answer.batch && answer.fromBatch.milli > 0)
        text += QStringLiteral("Use %1 of the batch %2\n")
                    .arg(amountText(answer.fromBatch, units), q(answer.batch->label));
    for (const Take& take : answer.use) {
        text += QStringLiteral("Use %1 of %2 (%3)\n")
                    .arg(amountText(take.amount, units), q(take.label), q(take.why));
    }
    for (const WeighLine& line : answer.weighOut)
        text += QStringLiteral("Weigh out %1 %2\n").arg(amountText(line.amount, units), q(line.what));
    if (answer.clocks.openMinutes)
        text += QStringLiteral("Open time %1 at 20 °C\n").arg(minutesText(*answer.clocks.openMinutes));
    if (answer.clocks.unclampMinutes)
        text += QStringLiteral("Unclamp after %1 min\n").arg(std::round(*answer.clocks.unclampMinutes));
    if (answer.clocks.fullLoadHours)
        text += QStringLiteral("Full load after %1 h\n").arg(*answer.clocks.fullLoadHours);
    if (!answer.reversibleWith.empty())
        text += QStringLiteral("Comes apart again with: %1\n").arg(q(answer.reversibleWith));
    for (const std::string& ask : answer.asks)
        text += QStringLiteral("To know more: %1\n").arg(q(ask));
    return text;
}

QString orderText(const OrderPlan& plan, Date monthStart, UnitSystem units)
{
    QString text = QStringLiteral("Order list for %1\n").arg(q(formatDate(monthStart).substr(0, 7)));
    if (plan.lines.empty())
        text += QStringLiteral("Nothing wants buying.\n");
    for (const OrderLine& line : plan.lines) {
        QStringList packs;
        for (const PackCount& pack : line.packs) {
            packs.append(QStringLiteral("%1 x %2%3")
                    .arg(pack.count)
                    .arg(q(pack.name),
                        pack.supplier.empty() ? QString() : QStringLiteral(" from ") + q(pack.supplier)));
        }
        text += QStringLiteral("%1: %2 (need %3, usable %4)\n  %5\n")
                    .arg(q(line.name),
                        packs.isEmpty() ? QStringLiteral("no pack") : packs.join(QStringLiteral(", ")),
                        amountText(line.need, units), amountText(line.usable, units), q(line.why));
    }
    for (const Money& money : plan.totals)
        text += QStringLiteral("Total %1\n").arg(q(formatMoney(money)));
    for (const std::string& note : plan.notes)
        text += q(note) + u'\n';
    return text;
}

QString todayText(const Today& today)
{
    QString text = QStringLiteral("%1 containers on the shelf").arg(today.containers);
    for (const auto& [verdict, count] : today.counts)
        text += QStringLiteral(", %1 %2").arg(count).arg(spoken(verdict));
    text += QStringLiteral(".\n");
    QList<QStringList> rows;
    for (const TodayItem& item : today.items)
        rows.append({ q(item.label), q(item.title), q(item.text) });
    return text + columns(rows);
}

} // namespace gw
