#include <QJsonArray>

#include "cli/checkoptions.h"
#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"
#include "measure/quoted.h"
#include "scan/picturefile.h"
#include "shop/glueuprecord.h"
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

struct RecordOptions {
    CheckOptions check;
    std::string piece, who, note;
    std::vector<std::string> used, photos;
    std::optional<double> assembly, clamped;
};

/// "G-7K2M=13 g": a container and how much of it.
Result<Taking> takingOf(const std::string& text)
{
    const auto sign = text.find('=');
    if (sign == std::string::npos || sign == 0)
        return fail(ErrorCode::BadInput,
            "Give what was used as a container and an amount, such as G-7K2M=13g, not " + inQuotes(text)
                + ".");
    const auto amount = parseAmount(text.substr(sign + 1));
    if (!amount)
        return tl::unexpected(amount.error());
    return Taking { text.substr(0, sign), *amount };
}

Result<std::string> photoOf(const std::string& file)
{
    const auto picture = loadPicture(q(file));
    if (!picture)
        return tl::unexpected(picture.error());
    std::string jpeg = smallJpeg(*picture, LabelPhoto::mostBytes);
    if (jpeg.empty())
        return fail(ErrorCode::BadInput, "The picture " + inQuotes(file) + " cannot be kept; take another.");
    return jpeg;
}

Result<GlueUpSaid> saidOf(const RecordOptions& options)
{
    auto conditions = conditionsOf(options.check);
    if (!conditions)
        return tl::unexpected(conditions.error());
    GlueUpSaid said;
    said.jobType = options.check.jobType;
    said.pieces = options.check.pieces;
    said.conditions = std::move(*conditions);
    said.piece = options.piece;
    said.who = options.who;
    said.note = options.note;
    said.assemblyMinutes = options.assembly;
    said.clampedMinutes = options.clamped;
    for (const std::string& text : options.used) {
        auto taking = takingOf(text);
        if (!taking)
            return tl::unexpected(taking.error());
        said.takings.push_back(std::move(*taking));
    }
    for (const std::string& file : options.photos) {
        auto jpeg = photoOf(file);
        if (!jpeg)
            return tl::unexpected(jpeg.error());
        said.photos.push_back(std::move(*jpeg));
    }
    return said;
}

Result<Answer> record(CommandContext& context, const RecordOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        const auto said = saidOf(options);
        if (!said)
            return tl::unexpected(said.error());
        return actAnswer(shop, recordGlueUp(shop, *said, { asOf, context.now }), context.now);
    });
}

void addRecordCommand(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto o = std::make_shared<RecordOptions>();
    auto* command = program.add_subcommand(
        "record", "Keep a glue-up that was done: what was used, said and judged, for the next restorer");
    addCheckOptions(*command, o->check);
    command->add_option("--piece", o->piece, "The client's piece: \"Hall table, Linden\"")->required();
    command->add_option("--piece-is", o->check.period, "An old piece or a modern one")
        ->check(CLI::IsMember({ "period", "modern" }));
    command->add_option("--used", o->used,
        "A container and how much of it (G-7K2M=13g), once for each; else what the check says to use");
    command->add_option("--who", o->who, "Who did it");
    command->add_option("--assembly", o->assembly, "Minutes from spreading to pressure");
    command->add_option("--clamped", o->clamped, "Minutes in clamps");
    command->add_option("--note", o->note, "What else the next restorer should know");
    command->add_option("--photo", o->photos, "A picture file, once for each");
    command->callback([&context, &pending, o] { pending = [&context, o] { return record(context, *o); }; });
}

} // namespace

void addRecordCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    addRecordCommand(program, context, pending);
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
