#include <QJsonArray>

#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"
#include "shop/lotpieces.h"

namespace gw {

namespace {

Answer answerOf(const LotPieces& found, UnitSystem units)
{
    QJsonArray uses, pieces, labels;
    QList<QStringList> rows;
    for (const LotUse& use : found.uses) {
        uses.append(QJsonObject { { QStringLiteral("at"), jsonMoment(use.at) },
            { QStringLiteral("piece"), jsonText(use.piece) },
            { QStringLiteral("job"), jsonText(use.jobName) },
            { QStringLiteral("material"), jsonText(use.materialName) },
            { QStringLiteral("container"), jsonText(use.label) },
            { QStringLiteral("amount"), jsonAmount(use.amount) },
            { QStringLiteral("comes_apart"), jsonTextOrNull(use.comesApart) } });
        rows.append({ QString::fromStdString(formatDate(dateOf(use.at))), QString::fromStdString(use.piece),
            QString::fromStdString(use.materialName), QString::fromStdString(formatAmount(use.amount, units)),
            QString::fromStdString(use.label), QString::fromStdString(use.comesApart) });
    }
    for (const std::string& piece : found.pieces())
        pieces.append(jsonText(piece));
    for (const std::string& label : found.labels)
        labels.append(jsonText(label));
    Answer answer;
    answer.json[u"lot"] = jsonTextOrNull(found.lot);
    answer.json[u"on_hold"] = found.onHold;
    answer.json[u"containers"] = labels;
    answer.json[u"pieces"] = pieces;
    answer.json[u"used"] = uses;
    answer.json[u"uses_without_piece"] = found.withoutPiece;
    answer.plain
        = rows.isEmpty() ? QStringLiteral("No piece is recorded as having had any of it.\n") : columns(rows);
    if (found.lot.empty())
        answer.plain += QStringLiteral("The container carries no lot number: only it and what was decanted "
                                       "with it were looked through.\n");
    if (found.withoutPiece == 1)
        answer.plain += QStringLiteral("One more use names no piece: it may be in any.\n");
    else if (found.withoutPiece > 1)
        answer.plain
            += QStringLiteral("%1 more uses name no piece: they may be in any.\n").arg(found.withoutPiece);
    return answer;
}

} // namespace

void addRecordCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto name = std::make_shared<std::string>();
    auto* lot = program.add_subcommand("lot", "Which pieces had stock of a lot, or of a container's lot");
    lot->add_option("LOT", *name, "The lot number, or a container's label code")->required();
    lot->callback([&context, &pending, name] {
        pending = [&context, name] {
            return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
                const auto found = piecesWithLot(shop, *name, asOf);
                if (!found)
                    return tl::unexpected(found.error());
                return answerOf(*found, shop.units());
            });
        };
    });
}

} // namespace gw
