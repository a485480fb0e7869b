#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include <algorithm>

#include <QJsonArray>

#include "measure/number.h"
#include "measure/quoted.h"
#include "shop/gluechoice.h"

namespace gw {

namespace {

struct WhichOptions {
    std::string joint, residue, piece, undo, place, load;
    std::optional<double> gap;
};

struct HowMuchOptions {
    std::vector<std::string> joints, with;
    std::string family, saveAs;
    double fill = 0;
    int pieces = 1;
};

QJsonArray texts(const std::vector<std::string>& all)
{
    QJsonArray array;
    for (const std::string& text : all)
        array.append(jsonText(text));
    return array;
}

QString standing(GateResult result)
{
    switch (result) {
    case GateResult::Pass:
        return QStringLiteral("right");
    case GateResult::Warn:
        return QStringLiteral("possible");
    case GateResult::Stop:
        return QStringLiteral("wrong");
    case GateResult::Unknown:
        break;
    }
    return QStringLiteral("not_known");
}

Result<Answer> which(Shop& shop, const WhichOptions& options)
{
    auto found = whichGlueFor(shop,
        { options.joint, options.residue, periodOfWord(options.piece), yesOrNo(options.undo), options.gap,
            servicePlaceOfWord(options.place), loadOfWord(options.load) });
    if (!found)
        return tl::unexpected(found.error());
    Answer answer;
    QJsonArray glues;
    for (const RankedGlue& glue : found->glues) {
        QJsonArray reasons;
        answer.plain
            += QStringLiteral("%1: %2\n").arg(q(glue.name), standing(glue.standing).replace(u'_', u' '));
        for (const GlueReason& reason : glue.reasons) {
            reasons.append(QJsonObject { { QStringLiteral("about"), jsonText(reason.about) },
                { QStringLiteral("result"), q(word(reason.result)) },
                { QStringLiteral("text"), jsonText(reason.text) } });
            answer.plain += QStringLiteral("  %1\n").arg(q(reason.text));
        }
        // The reason about undoing has said so already.
        if (std::ranges::find(glue.reasons, "undoing", &GlueReason::about) == glue.reasons.end())
            answer.plain += QStringLiteral("  Comes apart with: %1\n").arg(q(glue.reversibleWith));
        glues.append(QJsonObject { { QStringLiteral("family"), jsonText(glue.family.text) },
            { QStringLiteral("name"), jsonText(glue.name) },
            { QStringLiteral("standing"), standing(glue.standing) }, { QStringLiteral("reasons"), reasons },
            { QStringLiteral("comes_apart"), jsonTextOrNull(glue.reversibleWith) } });
    }
    answer.json = QJsonObject { { QStringLiteral("families"), glues },
        { QStringLiteral("asks"), texts(found->wouldAsk) },
        { QStringLiteral("note"), jsonText(found->note) } };
    for (const std::string& ask : found->wouldAsk)
        answer.plain += QStringLiteral("To know more: %1\n").arg(q(ask));
    answer.plain += q(found->note) + u'\n';
    return answer;
}

/// "chair_full" or "chair_full:2": a job type and how many.
Result<PotAsked::Other> otherOf(const std::string& text)
{
    const auto colon = text.rfind(':');
    if (colon == std::string::npos)
        return PotAsked::Other { text, 1 };
    const auto count = leadingNumber(text.substr(colon + 1));
    if (!count || !count->rest.empty() || count->value != static_cast<int>(count->value))
        return fail(ErrorCode::BadInput,
            "Give a job on the same pot as its job type and how many, such as chair_full:2, not "
                + inQuotes(text) + ".");
    return PotAsked::Other { text.substr(0, colon), static_cast<int>(count->value) };
}

Result<PotAsked> potAskedOf(const HowMuchOptions& options)
{
    PotAsked asked;
    asked.family = { options.family };
    asked.name = options.saveAs;
    asked.fillCm3 = options.fill;
    asked.pieces = options.pieces;
    for (const std::string& text : options.joints) {
        auto joint = parseJointWork(text);
        if (!joint)
            return tl::unexpected(joint.error());
        asked.joints.push_back(*joint);
    }
    for (const std::string& text : options.with) {
        auto other = otherOf(text);
        if (!other)
            return tl::unexpected(other.error());
        asked.others.push_back(*other);
    }
    return asked;
}

QJsonObject jsonPot(const PotAnswer& pot)
{
    QJsonArray jobs;
    for (const PotShare& share : pot.need.shares)
        jobs.append(QJsonObject { { QStringLiteral("name"), jsonText(share.name) },
            { QStringLiteral("area_cm2"), share.areaCm2 }, { QStringLiteral("net_g"), share.net },
            { QStringLiteral("waste_g"), share.waste }, { QStringLiteral("fill_g"), share.fill },
            { QStringLiteral("fixed_g"), share.fixed }, { QStringLiteral("grams"), share.whole },
            { QStringLiteral("alone_g"), share.alone } });
    return { { QStringLiteral("family"), jsonText(pot.family.id.text) },
        { QStringLiteral("spread_g_m2"), pot.figures.spread }, { QStringLiteral("waste"), pot.figures.waste },
        { QStringLiteral("area_cm2"), pot.need.areaCm2 }, { QStringLiteral("net_g"), pot.need.net },
        { QStringLiteral("waste_g"), pot.need.waste }, { QStringLiteral("fill_g"), pot.need.fill },
        { QStringLiteral("fixed_g"), pot.need.fixed },
        { QStringLiteral("need"), jsonAmount(grams(pot.need.whole)) },
        { QStringLiteral("saved_g"), pot.need.saved }, { QStringLiteral("jobs"), jobs },
        { QStringLiteral("notes"), texts(pot.notes) }, { QStringLiteral("source"), jsonText(pot.source) },
        { QStringLiteral("confidence"), jsonText(pot.confidence) } };
}

QString potText(const PotAnswer& pot)
{
    const auto number = [](double value) { return q(numberWords(value, 1)); };
    QList<QStringList> rows { { QStringLiteral("work"), QStringLiteral("cm2"), QStringLiteral("spread g"),
        QStringLiteral("waste g"), QStringLiteral("fill g"), QStringLiteral("pot g"),
        QStringLiteral("in all g") } };
    for (const PotShare& share : pot.need.shares)
        rows.append({ q(share.name), number(share.areaCm2), number(share.net), number(share.waste),
            number(share.fill), number(share.fixed), number(share.whole) });
    QString text = columns(rows);
    text += QStringLiteral("Make %1 g of %2 ready to use (spread %3 g/m2, source %4, confidence %5)\n")
                .arg(number(pot.need.whole), q(pot.family.name), number(pot.figures.spread), q(pot.source),
                    q(pot.confidence));
    for (const std::string& note : pot.notes)
        text += q(note) + u'\n';
    return text;
}

Result<Answer> howMuch(Shop& shop, const HowMuchOptions& options, Moment now)
{
    auto asked = potAskedOf(options);
    if (!asked)
        return tl::unexpected(asked.error());
    auto pot = needOnePot(shop, *asked);
    if (!pot)
        return tl::unexpected(pot.error());
    Answer answer { jsonPot(*pot), potText(*pot), {} };
    if (!options.saveAs.empty()) {
        auto saved = saveJobTypeOf(shop, *asked, now);
        if (!saved)
            return tl::unexpected(saved.error());
        answer.json[u"job_type"] = jsonText(saved->id.text);
        answer.plain += QStringLiteral("Kept as job type %1 (%2)\n").arg(q(saved->name), q(saved->id.text));
    }
    return answer;
}

} // namespace

std::optional<bool> periodOfWord(const std::string& word)
{
    return word.empty() ? std::nullopt : std::optional(word == "period");
}

std::optional<bool> yesOrNo(const std::string& word)
{
    return word.empty() ? std::nullopt : std::optional(word == "yes");
}

void addPieceOptions(CLI::App& command, std::string& place, std::string& load)
{
    command.add_option("--place", place, "Where the piece will stand")
        ->check(CLI::IsMember({ "dry", "damp", "outdoor", "hot" }));
    command
        .add_option(
            "--load", load, "What the joint carries: little, a load that stays on, knocks and racking")
        ->check(CLI::IsMember({ "light", "lasting", "shock" }));
}

void addGlueCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto w = std::make_shared<WhichOptions>();
    auto* whichCommand = program.add_subcommand("which", "Which glue for a joint, each with its reasons");
    whichCommand->add_option("--joint", w->joint, "The kind of joint, by key, name or a part of it");
    whichCommand->add_option("--residue", w->residue, "What is still in the joint");
    whichCommand->add_option("--gap", w->gap, "The widest gap of the dry joint, mm");
    whichCommand->add_option("--piece", w->piece, "An old piece or a modern one")
        ->check(CLI::IsMember({ "period", "modern" }));
    whichCommand->add_option("--undo", w->undo, "Whether it must come apart again")
        ->check(CLI::IsMember({ "yes", "no" }));
    addPieceOptions(*whichCommand, w->place, w->load);
    whichCommand->callback([&context, &pending, w] {
        pending = [&context, w] {
            return withShop(context, [&](Shop& shop, Moment) { return which(shop, *w); });
        };
    });

    auto h = std::make_shared<HowMuchOptions>();
    auto* howMuchCommand = program.add_subcommand("howmuch", "How much glue joints take, from their sizes");
    howMuchCommand->add_option("JOINT", h->joints, "Such as \"8 tenon 30x40x10\", \"edge 900x22\", in mm");
    howMuchCommand
        ->add_option("--family", h->family, "The family of glue (hot_hide, pva_white, epoxy_thick ...)")
        ->required();
    howMuchCommand->add_option("--fill", h->fill, "Lost wood to fill, cm3");
    howMuchCommand->add_option("--pieces", h->pieces, "How many pieces with these joints");
    howMuchCommand->add_option("--with", h->with, "Other jobs on the same pot: chair_full:2");
    howMuchCommand->add_option("--save-as", h->saveAs, "Keep it as a job type of this name");
    howMuchCommand->callback([&context, &pending, h] {
        pending = [&context, h] {
            return withShop(context, [&](Shop& shop, Moment asOf) { return howMuch(shop, *h, asOf); });
        };
    });
}

} // namespace gw
