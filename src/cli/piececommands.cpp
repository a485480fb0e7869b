#include <QJsonArray>

#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"
#include "shop/glueuprecord.h"
#include "shop/piecepage.h"

namespace gw {

namespace {

QJsonArray texts(const std::vector<std::string>& all)
{
    QJsonArray array;
    for (const std::string& text : all)
        array.append(jsonText(text));
    return array;
}

QJsonObject jsonUse(const PieceUse& use, const PieceWork& work)
{
    return { { QStringLiteral("at"), jsonMoment(work.at) }, { QStringLiteral("job"), jsonText(work.jobName) },
        { QStringLiteral("material"), jsonText(use.materialName) },
        { QStringLiteral("class"), jsonText(use.className) },
        { QStringLiteral("container"), jsonText(use.label) },
        { QStringLiteral("lot"), jsonTextOrNull(use.lot) },
        { QStringLiteral("batch"), jsonTextOrNull(use.batch) },
        { QStringLiteral("amount"), jsonAmount(use.amount) },
        { QStringLiteral("verdict_then"), use.verdict ? QJsonValue(q(word(*use.verdict))) : QJsonValue() },
        { QStringLiteral("reason_then"), jsonTextOrNull(use.reason) },
        { QStringLiteral("comes_apart"), jsonTextOrNull(use.comesApart) } };
}

void addRecord(QJsonObject& json, const GlueUpRecord& record)
{
    QJsonObject said;
    for (const GlueUpFact& fact : record.facts)
        said[q(fact.fact)] = fact.value ? QJsonValue(*fact.value) : jsonText(fact.text);
    QJsonArray gates;
    for (const GlueUpGateRecord& gate : record.gates)
        gates.append(QJsonObject { { QStringLiteral("gate"), jsonText(gate.gate) },
            { QStringLiteral("result"), jsonText(gate.result) },
            { QStringLiteral("text"), jsonText(gate.text) } });
    json[u"answer"] = jsonText(record.answer);
    json[u"first_fix"] = jsonTextOrNull(record.firstFix);
    json[u"said"] = said;
    json[u"gates"] = gates;
    json[u"note"] = jsonTextOrNull(record.note);
    json[u"photos"] = record.photos;
}

QJsonObject jsonWork(const PieceWork& work)
{
    QJsonArray used;
    for (const PieceUse& use : work.uses)
        used.append(jsonUse(use, work));
    QJsonObject json { { QStringLiteral("at"), jsonMoment(work.at) },
        { QStringLiteral("job"), jsonText(work.jobName) },
        { QStringLiteral("recorded"), work.record.has_value() }, { QStringLiteral("used"), used },
        { QStringLiteral("comes_apart"), texts(work.comesApart()) } };
    if (work.record)
        addRecord(json, *work.record);
    return json;
}

QString useText(const PieceUse& use, UnitSystem units)
{
    QString text
        = QStringLiteral("  %1 of %2 (%3), %4, from %5")
              .arg(q(formatAmount(use.amount, units)), q(use.materialName), q(use.className),
                  use.lot.empty() ? QStringLiteral("lot not known") : QStringLiteral("lot ") + q(use.lot),
                  q(use.label));
    if (use.verdict)
        text += QStringLiteral("; then %1: %2").arg(spoken(*use.verdict), q(use.reason));
    return text + u'\n';
}

QString recordText(const GlueUpRecord& record, UnitSystem units)
{
    QStringList said;
    for (const FactKind& kind : factKinds) {
        if (const GlueUpFact* fact = record.fact(std::string(kind.key)))
            said << q(kind.name) + QStringLiteral(" ") + q(factWords(*fact, units));
    }
    QString text = QStringLiteral("  %1\n").arg(
        said.isEmpty() ? QStringLiteral("No condition was said.") : said.join(QStringLiteral(" · ")));
    for (const GlueUpGateRecord& gate : record.gates) {
        if (gate.result != "pass")
            text += QStringLiteral("  Check then: %1, %2: %3\n")
                        .arg(q(gate.result), q(gate.name), q(gate.text));
    }
    if (!record.note.empty())
        text += QStringLiteral("  Note: %1\n").arg(q(record.note));
    if (record.photos > 0)
        text += QStringLiteral("  Photographs: %1\n").arg(record.photos);
    return text;
}

QString workText(const PieceWork& work, UnitSystem units)
{
    QString text = QStringLiteral("%1  %2\n").arg(q(formatDate(dateOf(work.at))), q(work.jobName));
    for (const PieceUse& use : work.uses)
        text += useText(use, units);
    if (work.record)
        text += recordText(*work.record, units);
    const auto ways = work.comesApart();
    if (ways.empty())
        text += QStringLiteral("  How it comes apart is not known.\n");
    for (const std::string& way : ways)
        text += QStringLiteral("  Comes apart with: %1\n").arg(q(way));
    return text;
}

Answer answerOf(const PiecePage& page, UnitSystem units)
{
    QJsonArray work, used;
    QString plain;
    for (const PieceWork& one : page.work) {
        work.append(jsonWork(one));
        for (const PieceUse& use : one.uses)
            used.append(jsonUse(use, one));
        plain += workText(one, units);
    }
    if (plain.isEmpty())
        plain = QStringLiteral("No stock is recorded as used on it.\n");
    for (const std::string& caution : page.cautions)
        plain += QStringLiteral("Caution: %1\n").arg(q(caution));
    if (!page.cautions.empty())
        plain += QStringLiteral("Label, safety data sheet and local rules come first.\n");
    return { { { QStringLiteral("piece"), jsonText(page.piece) }, { QStringLiteral("used"), used },
                 { QStringLiteral("work"), work }, { QStringLiteral("cautions"), texts(page.cautions) },
                 { QStringLiteral("pictograms"), texts(page.pictograms) } },
        plain, {} };
}

Result<Answer> piece(Shop& shop, const std::string& name, const std::string& pdf, Moment asOf)
{
    const auto page = piecePage(shop, name, asOf);
    if (!page)
        return tl::unexpected(page.error());
    Answer answer = answerOf(*page, shop.units());
    if (pdf.empty())
        return answer;
    if (auto written = writeTreatmentPdf(treatmentOf(*page, shop.units(), asOf), q(pdf)); !written)
        return tl::unexpected(written.error());
    answer.json[u"pdf"] = jsonText(pdf);
    answer.plain += QStringLiteral("Written to %1\n").arg(q(pdf));
    return answer;
}

Result<Answer> pieces(Shop& shop, const std::string& text, Moment asOf)
{
    const auto lines = pieceLines(shop, text, asOf);
    if (!lines)
        return tl::unexpected(lines.error());
    QJsonArray json;
    QList<QStringList> rows;
    for (const PieceLine& line : *lines) {
        QString materials;
        for (const std::string& material : line.materials)
            materials += (materials.isEmpty() ? QString() : QStringLiteral(", ")) + q(material);
        json.append(QJsonObject { { QStringLiteral("piece"), jsonText(line.name) },
            { QStringLiteral("first"), jsonMoment(line.first) },
            { QStringLiteral("last"), jsonMoment(line.last) }, { QStringLiteral("works"), line.works },
            { QStringLiteral("photos"), line.photos },
            { QStringLiteral("materials"), texts(line.materials) } });
        rows.append({ q(formatDate(dateOf(line.last))), q(line.name), materials });
    }
    Answer answer;
    answer.json[u"pieces"] = json;
    answer.plain = rows.isEmpty() ? QStringLiteral("No such piece is recorded.\n") : columns(rows);
    return answer;
}

} // namespace

void addPieceCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto name = std::make_shared<std::string>(), pdf = std::make_shared<std::string>();
    auto* pieceCommand
        = program.add_subcommand("piece", "What went into a piece, and how it comes apart again");
    pieceCommand->add_option("NAME", *name, "The client's piece or the job")->required();
    pieceCommand->add_option("--pdf", *pdf, "Write it as a treatment record for the client");
    pieceCommand->callback([&context, &pending, name, pdf] {
        pending = [&context, name, pdf] {
            return withShop(context, [&](Shop& shop, Moment asOf) { return piece(shop, *name, *pdf, asOf); });
        };
    });

    auto text = std::make_shared<std::string>();
    auto* piecesCommand
        = program.add_subcommand("pieces", "The pieces there are, the latest worked on first");
    piecesCommand->add_option("TEXT", *text, "A part of a piece, a material, a lot or a label code");
    piecesCommand->callback([&context, &pending, text] {
        pending = [&context, text] {
            return withShop(context, [&](Shop& shop, Moment asOf) { return pieces(shop, *text, asOf); });
        };
    });
}

} // namespace gw
