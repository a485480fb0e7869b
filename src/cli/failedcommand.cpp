#include <CLI/CLI.hpp>
#include <QJsonArray>

#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"
#include "shop/piecefailed.h"

namespace gw {

namespace {

struct FailedOptions {
    FailedJoint joint;
    std::string on, soft, oneFace, bubbly, glassy;
};

Answer answerOf(const WhyFailed& why)
{
    QJsonArray causes, others;
    QString plain
        = QStringLiteral("%1, %2 with %3\n").arg(q(formatDate(dateOf(why.at))), q(why.jobName), q(why.glue));
    if (!why.recorded)
        plain += QStringLiteral("No record was kept of this glue-up: only what was used is known.\n");
    for (const Cause& cause : why.causes) {
        const QString likelihood = q(word(cause.likelihood));
        causes.append(QJsonObject { { QStringLiteral("cause"), jsonText(cause.id) },
            { QStringLiteral("name"), jsonText(cause.name) }, { QStringLiteral("likelihood"), likelihood },
            { QStringLiteral("why"), jsonText(cause.why) },
            { QStringLiteral("test"), jsonText(cause.test) } });
        plain
            += QStringLiteral("%1: %2\n  %3\n  To tell: %4\n")
                   .arg(QString(likelihood).replace(u'_', u' '), q(cause.name), q(cause.why), q(cause.test));
    }
    plain += q(why.note) + u'\n';
    QList<QStringList> rows;
    for (const WhyFailed::OtherPiece& other : why.others) {
        others.append(QJsonObject { { QStringLiteral("piece"), jsonText(other.piece) },
            { QStringLiteral("at"), jsonMoment(other.at) },
            { QStringLiteral("material"), jsonText(other.materialName) },
            { QStringLiteral("lot"), jsonTextOrNull(other.lot) },
            { QStringLiteral("container"), jsonText(other.label) } });
        rows.append({ q(formatDate(dateOf(other.at))), q(other.piece), q(other.materialName),
            other.lot.empty() ? QStringLiteral("lot not known") : QStringLiteral("lot ") + q(other.lot) });
    }
    if (!rows.isEmpty())
        plain += QStringLiteral("Other pieces with the same stock:\n") + columns(rows);
    if (why.usesWithoutPiece > 0)
        plain += QStringLiteral("Uses of it that name no piece: %1\n").arg(why.usesWithoutPiece);
    return { { { QStringLiteral("piece"), jsonText(why.piece) }, { QStringLiteral("at"), jsonMoment(why.at) },
                 { QStringLiteral("job"), jsonText(why.jobName) },
                 { QStringLiteral("glue"), jsonText(why.glue) }, { QStringLiteral("recorded"), why.recorded },
                 { QStringLiteral("causes"), causes }, { QStringLiteral("other_pieces"), others },
                 { QStringLiteral("uses_without_piece"), why.usesWithoutPiece },
                 { QStringLiteral("note"), jsonText(why.note) } },
        plain, {} };
}

Result<Answer> failed(CommandContext& context, const FailedOptions& options)
{
    FailedJoint joint = options.joint;
    if (!options.on.empty()) {
        const auto day = parseDate(options.on);
        if (!day)
            return tl::unexpected(day.error());
        joint.on = *day;
    }
    joint.stillSoft = yesOrNo(options.soft);
    joint.oneFaceOnly = yesOrNo(options.oneFace);
    joint.thickAndBubbly = yesOrNo(options.bubbly);
    joint.glassyUnbroken = yesOrNo(options.glassy);
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        const auto why = whyFailed(shop, joint, asOf);
        return why ? Result<Answer>(answerOf(*why)) : tl::unexpected(why.error());
    });
}

} // namespace

void addFailedCommand(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto o = std::make_shared<FailedOptions>();
    auto* command = program.add_subcommand(
        "failed", "Why a joint may have come apart, what would tell, and which other pieces had the stock");
    command->add_option("PIECE", o->joint.piece, "The client's piece")->required();
    command->add_option("--on", o->on, "The day of the glue-up; else the latest");
    command->add_option(
        "--wood-failure", o->joint.woodFailurePercent, "How much of the face tore in the wood, percent");
    const auto seen = [command](const char* name, std::string& into, const char* what) {
        command->add_option(name, into, what)->check(CLI::IsMember({ "yes", "no" }));
    };
    seen("--soft", o->soft, "The glue is still soft");
    seen("--one-face", o->oneFace, "The glue sits on one face only");
    seen("--bubbly", o->bubbly, "The line is thick and bubbly");
    seen("--glassy", o->glassy, "The glue is glassy and unbroken");
    const auto remembered = [command](const char* name, std::optional<double>& into, const char* what) {
        command->add_option(name, into, what);
    };
    remembered("--assembly", o->joint.assemblyMinutes, "Minutes from spreading to pressure, if not recorded");
    remembered("--clamped", o->joint.clampedMinutes, "Minutes in clamps, if not recorded");
    remembered("--loaded-after", o->joint.loadedAfterHours, "Hours until it carried its load");
    remembered("--gap", o->joint.gapMm, "The widest gap in mm, if not recorded");
    remembered("--ratio-off", o->joint.ratioErrorPercent, "How far the hardener was off, percent");
    command->callback([&context, &pending, o] { pending = [&context, o] { return failed(context, *o); }; });
}

} // namespace gw
