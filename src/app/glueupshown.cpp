#include "app/glueupshown.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

#include "app/clock.h"
#include "app/shelfrow.h"
#include "app/words.h"
#include "shop/candidates.h"
#include "shop/cautions.h"
#include "shop/setup.h"

namespace gw {

namespace {

struct Says {
    Q_DECLARE_TR_FUNCTIONS(gw::GlueUp)
};

QString rangeText(const Range<double>& minutes)
{
    if (minutes.low == minutes.high)
        return durationText(minutes.low);
    if (minutes.high < 60 || minutes.low < 1)
        return Says::tr("%1 to %2").arg(numberText(minutes.low, 1), durationText(minutes.high));
    return Says::tr("%1 to %2").arg(durationText(minutes.low), durationText(minutes.high));
}

/// When something is over that begins now.
QString atText(Moment now, double minutes)
{
    const auto at = later(now, Days { minutes / (24 * 60) });
    const QDateTime local = QDateTime::fromMSecsSinceEpoch(toMilliseconds(at)).toLocalTime();
    const QString time = QLocale().toString(local.time(), QLocale::ShortFormat);
    const qint64 days = localDay(now).daysTo(local.date());
    if (days == 0)
        return Says::tr("about %1 if glued now").arg(time);
    if (days == 1)
        return Says::tr("about %1 tomorrow if glued now").arg(time);
    //: %1 is a day of the week
    return Says::tr("about %2 on %1 if glued now").arg(QLocale().dayName(local.date().dayOfWeek()), time);
}

std::vector<ShownRow> clockRows(const GlueUpClocks& clocks, Moment now)
{
    std::vector<ShownRow> rows;
    const auto add
        = [&rows](const char* key, const QString& label, const QString& value, const QString& note) {
              rows.push_back({ QString::fromLatin1(key), { label, value, note } });
          };
    if (clocks.openMinutes)
        add("open", Says::tr("Open"), rangeText(*clocks.openMinutes), Says::tr("from spreading to closing"));
    if (clocks.closedMinutes)
        add("closed", Says::tr("Closed"), rangeText(*clocks.closedMinutes),
            Says::tr("from closing to full pressure"));
    if (clocks.unclampMinutes)
        add("unclamp", Says::tr("Clamps off"), durationText(*clocks.unclampMinutes),
            atText(now, *clocks.unclampMinutes));
    if (clocks.fullLoadHours)
        add("load", Says::tr("Full load"), durationText(*clocks.fullLoadHours * 60),
            atText(now, *clocks.fullLoadHours * 60));
    return rows;
}

std::vector<ShownRow> gateRows(const std::vector<Gate>& gates)
{
    std::vector<ShownRow> rows;
    rows.reserve(gates.size());
    for (const Gate& gate : gates) {
        QString sentence = q(gate.text);
        // Of what stops, the answer itself says what to do; of what only wants care, nobody else does.
        if (gate.result == GateResult::Warn && !gate.fix.empty())
            sentence += u' ' + q(gate.fix);
        rows.push_back({ q(gate.id), { q(word(gate.result)), q(gate.name), sentence } });
    }
    return rows;
}

std::vector<ShownRow> weighRows(const GlueUpAnswer& answer, UnitSystem units)
{
    std::vector<ShownRow> rows;
    for (const WeighLine& line : answer.weighOut) {
        const QString place = QString::number(rows.size()); // two parts may be called the same
        rows.push_back({ place, { q(line.what), amountText(line.amount, units), QString() } });
    }
    if (rows.size() > 1)
        rows.push_back(
            { QStringLiteral("makes"), { Says::tr("Makes"), amountText(answer.need, units), QString() } });
    return rows;
}

/// The batch that is used first, beside the containers.
void addBatch(GlueUpShown& shown, const GlueUpAnswer& answer, UnitSystem units)
{
    if (!answer.batch || answer.fromBatch.milli <= 0)
        return;
    const BatchAtHand& batch = *answer.batch;
    const double level = answer.fromBatch.value() / std::max(batch.left.value(), answer.fromBatch.value());
    shown.uses.push_back({ q(batch.label),
        { q(batch.label), q(batch.name), amountText(answer.fromBatch, units),
            Says::tr("%1 · mixed already, %2 there").arg(q(batch.label), amountText(batch.left, units)),
            QStringLiteral("jar"), batch.isHotGlue ? QStringLiteral("hide") : QStringLiteral("resin"), level,
            true } });
    shown.fromBatches.push_back({ batch.label, answer.fromBatch });
}

/// The containers to use, as they look on the shelf, and what recording it would take from them.
Result<void> addUses(GlueUpShown& shown, std::vector<const ClassRecord*>& classes, const Shop& shop,
    const Catalogue& catalogue, const GlueUpAnswer& answer, Moment now)
{
    for (const Take& take : answer.use) {
        const auto page = containerPage(shop, take.container.text, now);
        if (!page)
            return tl::unexpected(page.error());
        const ShelfItem& item = page->item;
        const ClassRecord* cls = catalogue.classOf(item.material);
        if (std::find(classes.begin(), classes.end(), cls) == classes.end())
            classes.push_back(cls);
        QStringList note;
        for (const QString& part : { q(item.placeName), q(take.label), q(take.why) }) {
            if (!part.isEmpty())
                note.append(part);
        }
        shown.uses.push_back({ q(take.container.text),
            { q(take.label), q(item.materialName), amountText(take.amount, shop.units()),
                note.join(QStringLiteral(" · ")), q(item.vessel), contentsKind(cls), item.level(), false } });
        shown.takings.push_back({ take.container.text, take.amount });
    }
    return {};
}

/// What would be recorded as hazardous of these classes, in a line; the words are the label's and the sheet's
/// to give.
QString hazardText(const std::vector<const ClassRecord*>& classes)
{
    QStringList names;
    for (const ClassRecord* cls : classes) {
        if (cls && (!cls->pictograms.empty() || !cls->hazardNote.empty()))
            names.append(q(cls->name));
    }
    if (names.isEmpty())
        return {};
    return Says::tr(
        "Hazards are recorded for %1. Read the label and the safety data sheet before you begin; they "
        "decide, and so do local rules.")
        .arg(QLocale().createSeparatedList(names));
}

} // namespace

QString durationText(double minutes)
{
    if (minutes < 1)
        return Says::tr("%1 s").arg(numberText(std::round(minutes * 60), 0));
    if (minutes < 10)
        return Says::tr("%1 min").arg(numberText(minutes, 1));
    const auto whole = std::llround(minutes);
    if (whole < 60)
        return Says::tr("%1 min").arg(whole);
    if (whole < 48LL * 60) {
        const QString hours = Says::tr("%1 h").arg(whole / 60);
        return whole % 60 == 0 ? hours : Says::tr("%1 %2 min").arg(hours).arg(whole % 60);
    }
    const auto hoursInAll = std::llround(minutes / 60);
    const QString days = Says::tr("%1 days").arg(hoursInAll / 24); // two or more
    return hoursInAll % 24 == 0 ? days : Says::tr("%1 %2 h").arg(days).arg(hoursInAll % 24);
}

Result<GlueUpShown> glueUpShown(const Shop& shop, const GlueUpAsked& asked)
{
    const auto type = findJobType(shop, asked.jobType);
    if (!type)
        return tl::unexpected(type.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto answer = checkJob(shop, asked.jobType, asked.pieces, asked.conditions, asked.now);
    if (!answer)
        return tl::unexpected(answer.error());

    GlueUpShown shown;
    shown.answer = q(word(answer->answer));
    shown.firstFix = q(answer->firstFix);
    shown.warnings = static_cast<int>(std::count_if(answer->gates.begin(), answer->gates.end(),
        [](const Gate& gate) { return gate.result == GateResult::Warn; }));
    shown.stockName = q(answer->stockName);
    shown.gates = gateRows(answer->gates);
    shown.weigh = weighRows(*answer, shop.units());
    shown.clocks = clockRows(answer->clocks, asked.now);
    shown.clockNote = q(answer->clocks.note);
    shown.comesApart = q(answer->reversibleWith);
    shown.job.type = type->id;
    shown.job.name = type->name;

    addBatch(shown, *answer, shop.units());
    std::vector<const ClassRecord*> classes;
    if (auto added = addUses(shown, classes, shop, *catalogue, *answer, asked.now); !added)
        return tl::unexpected(added.error());
    shown.hazard = hazardText(classes);
    const auto cautions = cautionsFor(shop, classes, { "mixing", "gluing" });
    if (!cautions)
        return tl::unexpected(cautions.error());
    for (const std::string& caution : *cautions)
        shown.cautions.append(q(caution));
    return shown;
}

std::vector<ShownRow> glueRows(const WhichGlueAnswer& answer)
{
    std::vector<ShownRow> rows;
    for (const RankedGlue& glue : answer.glues) {
        QStringList reasons;
        for (const GlueReason& reason : glue.reasons)
            reasons.append(q(reason.text));
        // How it is undone is told once, whether or not it was a reason.
        if (std::ranges::find(glue.reasons, "undoing", &GlueReason::about) == glue.reasons.end())
            reasons.append(Says::tr("Comes apart: %1.").arg(q(glue.reversibleWith)));
        QString verdict = QStringLiteral("not_known");
        QString standing = Says::tr("Not known");
        if (glue.standing == GateResult::Pass) {
            verdict = QStringLiteral("good");
            standing = Says::tr("Right");
        } else if (glue.standing == GateResult::Warn) {
            verdict = QStringLiteral("test_first");
            standing = Says::tr("Possible");
        } else if (glue.standing == GateResult::Stop) {
            verdict = QStringLiteral("do_not_use");
            standing = Says::tr("Wrong");
        }
        rows.push_back({ q(glue.family.text), { q(glue.name), verdict, standing, reasons.join(u' ') } });
    }
    return rows;
}

Result<std::vector<ShownRow>> glueUpJobs(const Shop& shop)
{
    const auto types = shop.store().jobTypes();
    if (!types)
        return tl::unexpected(types.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    std::vector<ShownRow> glues, finishes;
    for (const JobTypeRecord& type : *types) {
        const auto family = catalogue->families.find(type.family);
        const auto cls = catalogue->classes.find(type.typicalClass);
        const bool glue = family != catalogue->families.end();
        const Amount one = needFor(jobTypeOf(type), 1);
        QStringList note;
        if (cls != catalogue->classes.end())
            note.append(q(cls->second.name));
        if (one.milli > 0)
            note.append(Says::tr("about %1 for one").arg(amountText(one, shop.units())));
        ShownRow row { q(type.id.text),
            { q(type.name), note.join(QStringLiteral(" · ")),
                glue ? q(family->second.name) : Says::tr("Finishes") } };
        (glue ? glues : finishes).push_back(std::move(row));
    }
    const auto before = [](const ShownRow& a, const ShownRow& b) {
        const int families = a.values[2].toString().localeAwareCompare(b.values[2].toString());
        return families != 0 ? families < 0
                             : a.values[0].toString().localeAwareCompare(b.values[0].toString()) < 0;
    };
    std::sort(glues.begin(), glues.end(), before);
    std::sort(finishes.begin(), finishes.end(), before);
    glues.insert(glues.end(), finishes.begin(), finishes.end());
    return glues;
}

} // namespace gw
