#include "cli/json.h"

#include <QJsonArray>

namespace gw {

namespace {

QString fromView(std::string_view text)
{
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QJsonObject jsonClock(const ClockUse& clock)
{
    QJsonObject json;
    const bool known = clock.applies && clock.known;
    json[u"used_low"] = known ? QJsonValue(clock.used.low) : QJsonValue();
    json[u"used_high"] = known ? QJsonValue(clock.used.high) : QJsonValue();
    json[u"applies"] = clock.applies;
    return json;
}

QJsonValue jsonMinutes(const std::optional<Range<double>>& range)
{
    if (!range)
        return {};
    return QJsonObject { { QStringLiteral("low"), range->low }, { QStringLiteral("high"), range->high } };
}

} // namespace

QJsonValue jsonText(const std::string& text) { return QString::fromStdString(text); }

QJsonValue jsonTextOrNull(const std::string& text) { return text.empty() ? QJsonValue() : jsonText(text); }

QJsonObject jsonAmount(Amount amount)
{
    return { { QStringLiteral("value"), amount.value() },
        { QStringLiteral("unit"), fromView(baseUnit(amount.dimension)) } };
}

QJsonValue jsonDate(const std::optional<Date>& date)
{
    return date ? jsonText(formatDate(*date)) : QJsonValue();
}

QJsonValue jsonMoment(const std::optional<Moment>& moment)
{
    return moment ? jsonText(formatMoment(*moment)) : QJsonValue();
}

QJsonValue jsonNumber(const std::optional<double>& number)
{
    return number ? QJsonValue(*number) : QJsonValue();
}

QJsonObject jsonShelfItem(const ShelfItem& item)
{
    QJsonArray reasons;
    for (const Reason& reason : item.judgement.reasons) {
        reasons.append(QJsonObject { { QStringLiteral("code"), jsonText(reason.code) },
            { QStringLiteral("text"), jsonText(reason.text) } });
    }
    QJsonObject json;
    json[u"id"] = jsonText(item.label);
    json[u"uuid"] = jsonText(item.id.text);
    json[u"material"] = jsonText(item.materialName);
    json[u"class"] = jsonText(item.classId.text);
    json[u"place"] = jsonTextOrNull(item.placeName);
    json[u"amount"] = jsonAmount(item.left);
    json[u"capacity"] = jsonAmount(item.capacity);
    json[u"lot"] = jsonTextOrNull(item.lot);
    json[u"made"] = jsonDate(item.made);
    json[u"arrived"] = jsonMoment(item.arrived);
    json[u"opened"] = jsonMoment(item.openedAt);
    json[u"retired"] = jsonMoment(item.retiredAt);
    json[u"on_hold"] = item.onHold;
    json[u"label_date"] = jsonDate(item.printed);
    json[u"verdict"] = fromView(word(item.judgement.verdict));
    json[u"reasons"] = reasons;
    json[u"sealed"] = jsonClock(item.judgement.sealed);
    json[u"opened_life"] = jsonClock(item.judgement.opened);
    // Null where nobody watched and it may have frozen, and for what frost does nothing to.
    json[u"frost_events"]
        = item.judgement.frostEvents ? QJsonValue(*item.judgement.frostEvents) : QJsonValue();
    json[u"frozen_now"] = item.judgement.frozenNow;
    json[u"good_until"] = jsonMoment(item.judgement.goodUntil);
    return json;
}

QJsonObject jsonContainerPage(const ContainerPage& page)
{
    QJsonArray entries;
    for (const EntryLine& line : page.entries) {
        entries.append(QJsonObject { { QStringLiteral("entry"), jsonText(line.entry.text) },
            { QStringLiteral("kind"), fromView(word(line.kind)) },
            { QStringLiteral("at"), jsonMoment(line.at) }, { QStringLiteral("text"), jsonText(line.text) },
            { QStringLiteral("after"), jsonAmount(line.after) }, { QStringLiteral("undone"), line.undone } });
    }
    QJsonArray figures;
    for (const Figure& figure : page.figures) {
        figures.append(QJsonObject { { QStringLiteral("figure"), jsonText(figure.figure) },
            { QStringLiteral("value"), jsonNumber(figure.value) },
            { QStringLiteral("low"), jsonNumber(figure.low) },
            { QStringLiteral("high"), jsonNumber(figure.high) },
            { QStringLiteral("text"), jsonTextOrNull(figure.text) },
            { QStringLiteral("unit"), jsonText(figure.unit) },
            { QStringLiteral("source"), jsonText(figure.source) },
            { QStringLiteral("confidence"), jsonText(figure.confidence) } });
    }
    QJsonArray steps;
    for (const std::string& step : page.benchTest)
        steps.append(jsonText(step));

    QJsonObject json = jsonShelfItem(page.item);
    json[u"entries"] = entries;
    json[u"history"] = QJsonObject { { QStringLiteral("made"), jsonDate(page.item.made) },
        { QStringLiteral("arrived"), jsonMoment(page.item.arrived) },
        { QStringLiteral("opened"), jsonMoment(page.item.openedAt) },
        { QStringLiteral("retired"), jsonMoment(page.item.retiredAt) },
        { QStringLiteral("decanted_from"), jsonTextOrNull(page.parentLabel) } };
    json[u"bench_test"] = steps;
    json[u"figures"] = figures;
    return json;
}

QJsonObject jsonCode(const Code& code)
{
    QJsonArray elements;
    for (const Element& element : code.elements) {
        elements.append(QJsonObject { { QStringLiteral("ai"), jsonText(element.ai) },
            { QStringLiteral("value"), jsonText(element.value) } });
    }
    QJsonArray amounts;
    for (const Amount& amount : code.amounts)
        amounts.append(jsonAmount(amount));
    QJsonArray warnings;
    for (const std::string& warning : code.warnings)
        warnings.append(jsonText(warning));

    constexpr std::string_view kinds[] = { "gs1", "gtin", "own_label", "digital_link", "plain" };
    QJsonObject json;
    json[u"kind"] = fromView(kinds[static_cast<int>(code.kind)]);
    json[u"text"] = jsonText(code.text);
    json[u"elements"] = elements;
    json[u"gtin"] = code.gtin ? jsonText(code.gtin->digits14) : QJsonValue();
    json[u"lot"] = jsonTextOrNull(code.lot);
    json[u"serial"] = jsonTextOrNull(code.serial);
    json[u"made"] = jsonDate(code.made);
    json[u"packed"] = jsonDate(code.packed);
    json[u"best_before"] = jsonDate(code.bestBefore);
    json[u"use_by"] = jsonDate(code.useBy);
    json[u"amounts"] = amounts;
    json[u"warnings"] = warnings;
    json[u"error"] = code.error
        ? QJsonValue(QJsonObject { { QStringLiteral("kind"), jsonText(code.error->kind) },
              { QStringLiteral("text"), jsonText(code.error->sentence) } })
        : QJsonValue();
    return json;
}

QJsonObject jsonGlueUp(const GlueUpAnswer& answer)
{
    QJsonArray gates;
    for (const Gate& gate : answer.gates) {
        gates.append(QJsonObject { { QStringLiteral("gate"), jsonText(gate.id) },
            { QStringLiteral("result"), fromView(word(gate.result)) },
            { QStringLiteral("text"), jsonText(gate.text) },
            { QStringLiteral("fix"), jsonTextOrNull(gate.fix) } });
    }
    QJsonArray use;
    for (const Take& take : answer.use) {
        use.append(QJsonObject { { QStringLiteral("container"), jsonText(take.label) },
            { QStringLiteral("amount"), jsonAmount(take.amount) },
            { QStringLiteral("why"), jsonText(take.why) } });
    }
    QJsonArray weighOut;
    for (const WeighLine& line : answer.weighOut) {
        weighOut.append(QJsonObject { { QStringLiteral("what"), jsonText(line.what) },
            { QStringLiteral("amount"), jsonAmount(line.amount) } });
    }
    QJsonObject json;
    json[u"answer"] = fromView(word(answer.answer));
    json[u"first_fix"] = jsonTextOrNull(answer.firstFix);
    json[u"gates"] = gates;
    json[u"stock"] = jsonTextOrNull(answer.stockName);
    json[u"batch"] = answer.batch
        ? QJsonValue(QJsonObject { { QStringLiteral("label"), jsonText(answer.batch->label) },
              { QStringLiteral("amount"), jsonAmount(answer.fromBatch) } })
        : QJsonValue();
    json[u"use"] = use;
    json[u"weigh_out"] = weighOut;
    json[u"need"] = jsonAmount(answer.need);
    json[u"short_by"] = answer.shortBy ? QJsonValue(jsonAmount(*answer.shortBy)) : QJsonValue();
    json[u"clocks"]
        = QJsonObject { { QStringLiteral("open_minutes"), jsonMinutes(answer.clocks.openMinutes) },
              { QStringLiteral("closed_minutes"), jsonMinutes(answer.clocks.closedMinutes) },
              { QStringLiteral("unclamp_minutes"), jsonNumber(answer.clocks.unclampMinutes) },
              { QStringLiteral("full_load_hours"), jsonNumber(answer.clocks.fullLoadHours) } };
    json[u"comes_apart"] = jsonTextOrNull(answer.reversibleWith);
    QJsonArray asks;
    for (const std::string& ask : answer.asks)
        asks.append(jsonText(ask));
    json[u"asks"] = asks;
    return json;
}

namespace {

QJsonValue jsonCold(const std::optional<ColdArrival>& cold)
{
    if (!cold)
        return {};
    return QJsonObject { { QStringLiteral("arrives"), jsonDate(cold->arrives) },
        { QStringLiteral("low_c"), cold->low.value }, { QStringLiteral("order_by"), jsonDate(cold->orderBy) },
        { QStringLiteral("warm_from"), jsonDate(cold->warmFrom) } };
}

QJsonArray jsonOrderLines(const std::vector<OrderLine>& lines)
{
    QJsonArray list;
    for (const OrderLine& line : lines) {
        QJsonArray packs;
        for (const PackCount& pack : line.packs) {
            packs.append(QJsonObject { { QStringLiteral("pack"), jsonText(pack.name) },
                { QStringLiteral("supplier"), jsonTextOrNull(pack.supplier) },
                { QStringLiteral("count"), pack.count } });
        }
        list.append(QJsonObject { { QStringLiteral("material"), jsonText(line.name) },
            { QStringLiteral("packs"), packs }, { QStringLiteral("need"), jsonAmount(line.need) },
            { QStringLiteral("usable"), jsonAmount(line.usable) },
            { QStringLiteral("ordered"), jsonAmount(line.ordered) },
            { QStringLiteral("why"), jsonText(line.why) },
            { QStringLiteral("latest_use"), jsonDate(line.latestUse) },
            { QStringLiteral("risk_without_percent"), 100 * line.riskWithout },
            { QStringLiteral("cold_arrival"), jsonCold(line.cold) } });
    }
    return list;
}

} // namespace

QJsonObject jsonOrder(const OrderPlan& plan, Date monthStart)
{
    QJsonArray notes;
    for (const std::string& note : plan.notes)
        notes.append(jsonText(note));
    QJsonArray totals;
    for (const Money& money : plan.totals) {
        totals.append(QJsonObject { { QStringLiteral("minor_units"), static_cast<qint64>(money.minorUnits) },
            { QStringLiteral("currency"), jsonText(money.currency) } });
    }
    QJsonObject json;
    json[u"month"] = jsonText(formatDate(monthStart).substr(0, 7));
    json[u"lines"] = jsonOrderLines(plan.lines);
    json[u"left"] = jsonOrderLines(plan.left);
    json[u"notes"] = notes;
    json[u"total"] = totals.isEmpty() ? QJsonValue() : totals.first();
    json[u"totals"] = totals;
    return json;
}

} // namespace gw
