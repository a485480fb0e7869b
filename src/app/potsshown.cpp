#include "app/potsshown.h"

#include <algorithm>

#include <QCoreApplication>

#include "app/glueupshown.h"
#include "app/words.h"

namespace gw {

namespace {

constexpr Days jointsWatched { 7 };
constexpr double minutesADay = 24 * 60;

struct Pots {
    Q_DECLARE_TR_FUNCTIONS(gw::Pots)
};

QString stateText(const BatchState& state, Moment now, QDate today)
{
    const PotState& pot = state.pot;
    QString mixed = Pots::tr("Mixed %1").arg(momentText(state.batch.made, today));
    if (!state.isHotGlue() || !pot.standsSince)
        return mixed;
    const QString since = durationText(daysBetween(*pot.standsSince, now).count() * minutesADay);
    switch (pot.stands) {
    case PotStands::Soaking:
        return Pots::tr("Soaking for %1").arg(since);
    case PotStands::Hot:
        return pot.temperature
            ? Pots::tr("On the heat for %1, last read %2").arg(since, q(formatTemperature(*pot.temperature)))
            : Pots::tr("On the heat for %1, temperature not read").arg(since);
    case PotStands::Cold:
        return Pots::tr("In the refrigerator for %1").arg(since);
    case PotStands::Frozen:
        return Pots::tr("In the freezer for %1").arg(since);
    case PotStands::Out:
        break;
    }
    return Pots::tr("Off the heat for %1").arg(since);
}

QString heatText(const BatchState& state)
{
    const PotState& pot = state.pot;
    QStringList parts;
    if (pot.doseHours)
        parts.append(Pots::tr("Heat so far: %1 hours at 60 °C, somewhere in %2 to %3")
                .arg(numberText(*pot.doseHours, 1), numberText(pot.doseRange.low, 1),
                    numberText(pot.doseRange.high, 1)));
    else
        parts.append(Pots::tr("Heat so far: not known"));
    if (pot.reheats > 0)
        parts.append(Pots::tr("warmed again %n time(s)", nullptr, pot.reheats));
    if (pot.chilledFor.count() > 0)
        parts.append(Pots::tr("%1 days in the cold").arg(numberText(pot.chilledFor.count(), 1)));
    if (pot.topUpGrams && *pot.topUpGrams > 0)
        parts.append(Pots::tr("wants %1 g of hot water").arg(numberText(*pot.topUpGrams, 1)));
    return parts.join(QStringLiteral(" · "));
}

QString bandKey(DoseBand band)
{
    switch (band) {
    case DoseBand::Early:
        return QStringLiteral("good");
    case DoseBand::Late:
    case DoseBand::Over:
        return QStringLiteral("test_first");
    case DoseBand::NotKnown:
        break;
    }
    return QStringLiteral("not_known");
}

QString rangeText(const Range<Moment>& when, QDate today)
{
    if (when.low == when.high)
        return whenText(when.low, today);
    return Pots::tr("%1 to %2").arg(whenText(when.low, today), whenText(when.high, today));
}

QStringList dueLines(const std::vector<PotDue>& due, QDate today)
{
    QStringList lines;
    for (const PotDue& one : due)
        lines.append(Pots::tr("%1: %2").arg(rangeText(one.when, today), q(one.text)));
    return lines;
}

/// What is left to wait for at the joints.
QStringList jointLines(const std::vector<BatchJoint>& joints, Moment now, QDate today)
{
    QStringList lines;
    for (const BatchJoint& joint : joints) {
        QStringList parts;
        for (const PotDue& due : joint.due) {
            if (due.when.high > now)
                parts.append(Pots::tr("%1: %2").arg(whenText(due.when.high, today), q(due.text)));
        }
        if (parts.isEmpty())
            continue;
        const QString spread = whenText(joint.spread, today);
        const QString head = joint.jobName.empty() ? Pots::tr("Spread %1").arg(spread)
                                                   : Pots::tr("%1, spread %2").arg(q(joint.jobName), spread);
        lines.append(head + u'\n' + parts.join(u'\n'));
    }
    return lines;
}

using Kind = BatchNoteKind;

/// What may be noted of it now, the likeliest first.
std::vector<Kind> actsOf(const BatchState& state)
{
    if (!state.isHotGlue())
        return { Kind::Used, Kind::UsedUp, Kind::Spoiled, Kind::ThrownAway };
    switch (state.pot.stands) {
    case PotStands::Soaking:
        if (state.pot.dueFor("soaked"))
            return { Kind::Soaked, Kind::HeatOn, Kind::Spoiled, Kind::ThrownAway };
        break;
    case PotStands::Hot:
        return { Kind::Used, Kind::HeatRead, Kind::Weighed, Kind::ToppedUp, Kind::HeatOff, Kind::Chilled,
            Kind::UsedUp, Kind::Spoiled, Kind::ThrownAway };
    case PotStands::Out:
        return { Kind::HeatOn, Kind::Used, Kind::Chilled, Kind::Frozen, Kind::UsedUp, Kind::Spoiled,
            Kind::ThrownAway };
    case PotStands::Cold:
    case PotStands::Frozen:
        break;
    }
    return { Kind::HeatOn, Kind::UsedUp, Kind::Spoiled, Kind::ThrownAway };
}

QString actText(Kind kind)
{
    switch (kind) {
    case Kind::Soaked:
        return Pots::tr("Soaked through");
    case Kind::HeatOn:
        return Pots::tr("On the heat");
    case Kind::HeatRead:
        return Pots::tr("Read temperature");
    case Kind::HeatOff:
        return Pots::tr("Off the heat");
    case Kind::ToppedUp:
        return Pots::tr("Topped up");
    case Kind::Weighed:
        return Pots::tr("Weighed");
    case Kind::Chilled:
        return Pots::tr("Into the cold");
    case Kind::Frozen:
        return Pots::tr("Into the freezer");
    case Kind::Used:
        return Pots::tr("Use some");
    case Kind::UsedUp:
        return Pots::tr("Used up");
    case Kind::Spoiled:
        return Pots::tr("Smells bad");
    case Kind::ThrownAway:
        return Pots::tr("Thrown away");
    case Kind::Mixed:
    case Kind::Remark:
    case Kind::Reversed:
        break;
    }
    return {};
}

QString partsText(const Shop& shop, const BatchState& state)
{
    QStringList parts;
    for (const BatchPart& part : state.batch.parts)
        parts.append(Pots::tr("%1 %2").arg(amountText(part.amount, shop.units()), q(part.what)));
    QStringList line { parts.join(QStringLiteral(" + ")) };
    if (!state.placeName.empty())
        line.append(q(state.placeName));
    if (!state.batch.who.empty())
        line.append(Pots::tr("mixed by %1").arg(q(state.batch.who)));
    return line.join(QStringLiteral(" · "));
}

QString contentsOf(const BatchRecord& batch)
{
    if (batch.recipe.starts_with("hot_hide"))
        return QStringLiteral("hide");
    if (batch.recipe.starts_with("epoxy"))
        return QStringLiteral("resin");
    if (batch.recipe == "shellac")
        return QStringLiteral("shellac");
    return batch.recipe == "dye_solution" ? QStringLiteral("dye") : QStringLiteral("powder");
}

ShownRow rowOf(const Shop& shop, const BatchState& state, Moment now, QDate today)
{
    QStringList words, acts, actTexts;
    for (const std::string& word : state.words)
        words.append(q(word));
    if (!state.gone) {
        for (const Kind kind : actsOf(state)) {
            acts.append(q(word(kind)));
            actTexts.append(actText(kind));
        }
    }
    const bool hot = state.isHotGlue() && !state.gone;
    return { q(state.batch.id.text),
        { q(state.batch.label), q(state.batch.name), verdictKey(state.verdict),
            amountText(state.left, shop.units()),
            state.gone ? words.join(u' ') : stateText(state, now, today),
            state.gone ? QString() : words.join(u'\n'), hot ? heatText(state) : QString(),
            hot ? bandKey(state.pot.band) : QString(), dueLines(state.pot.due, today),
            jointLines(state.joints, now, today), partsText(shop, state), acts, actTexts,
            state.left.value() / state.batch.amount.value(), state.pot.heatSince.has_value(),
            contentsOf(state.batch), state.gone, q(baseUnit(state.batch.amount.dimension)) } };
}

/// How long after it was due a bell still tells anybody anything.
Days worthRinging(const std::string& key)
{
    if (key == "open" || key == "closed")
        return std::chrono::minutes(5);
    return key == "unclamp" || key == "full_load" ? Days(1) : Days(100'000);
}

void addAlarms(std::vector<PotAlarm>& alarms, const BatchState& state, Moment now)
{
    const QString name = Pots::tr("%1, %2").arg(q(state.batch.name), q(state.batch.label));
    const auto add = [&](const std::string& about, const QString& of, const PotDue& due) {
        if (daysBetween(due.when.low, now) <= worthRinging(due.key))
            alarms.push_back(
                { q(about + "/" + due.key), due.when.low, Pots::tr("%1: %2").arg(of, q(due.text)) });
    };
    const std::string about = state.batch.id.text + "/" + std::to_string(state.notes.size());
    for (const PotDue& due : state.pot.due)
        add(about, name, due);
    for (const BatchJoint& joint : state.joints) {
        for (const PotDue& due : joint.due)
            add(joint.note.text, joint.jobName.empty() ? name : q(joint.jobName), due);
    }
}

} // namespace

Result<PotsShown> potsShown(const Shop& shop, Moment now, QDate today)
{
    const auto states = batchesAsOf(shop, now, jointsWatched);
    if (!states)
        return tl::unexpected(states.error());
    PotsShown shown;
    for (const BatchState& state : *states) {
        addAlarms(shown.alarms, state, now);
        ShownRow row = rowOf(shop, state, now, today);
        const bool waits = !row.values.at(potRoles.indexOf("joints")).toStringList().isEmpty();
        if (!state.gone || waits)
            shown.pots.push_back(std::move(row));
        shown.standing += state.gone ? 0 : 1;
    }
    std::ranges::stable_sort(shown.alarms, {}, &PotAlarm::at);
    return shown;
}

} // namespace gw
