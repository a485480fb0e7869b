#include "cli/batchwords.h"

#include <algorithm>
#include <array>

#include <QJsonArray>

#include "cli/json.h"
#include "cli/words.h"
#include "measure/number.h"

namespace gw {

namespace {

constexpr std::array standsWords { "out", "soaking", "hot", "cold", "frozen" };
constexpr std::array bandWords { "not_known", "early", "late", "over" };

template <class Enum, std::size_t N> const char* wordOf(Enum value, const std::array<const char*, N>& words)
{
    return words.at(static_cast<std::size_t>(value));
}

QJsonObject jsonRange(const Range<double>& range)
{
    return { { QStringLiteral("low"), range.low }, { QStringLiteral("high"), range.high } };
}

Result<std::string> labelOf(const Shop& shop, const BatchPart& part)
{
    if (!part.container)
        return std::string();
    const auto container = shop.store().container(*part.container);
    if (!container)
        return tl::unexpected(container.error());
    return *container ? (*container)->label : part.container->text;
}

QJsonArray jsonDue(const std::vector<PotDue>& all)
{
    QJsonArray due;
    for (const PotDue& one : all)
        due.append(QJsonObject { { QStringLiteral("key"), jsonText(one.key) },
            { QStringLiteral("from"), jsonMoment(one.when.low) },
            { QStringLiteral("to"), jsonMoment(one.when.high) },
            { QStringLiteral("text"), jsonText(one.text) } });
    return due;
}

QJsonArray jsonNotes(const std::vector<BatchNoteLine>& lines)
{
    QJsonArray notes;
    for (const BatchNoteLine& line : lines)
        notes.append(QJsonObject { { QStringLiteral("entry"), jsonText(line.id.text) },
            { QStringLiteral("kind"), q(word(line.kind)) }, { QStringLiteral("at"), jsonMoment(line.at) },
            { QStringLiteral("text"), jsonText(line.text) },
            { QStringLiteral("who"), jsonTextOrNull(line.who) }, { QStringLiteral("undone"), line.undone } });
    return notes;
}

QJsonArray jsonJoints(const std::vector<BatchJoint>& all)
{
    QJsonArray joints;
    for (const BatchJoint& joint : all)
        joints.append(QJsonObject { { QStringLiteral("entry"), jsonText(joint.note.text) },
            { QStringLiteral("spread"), jsonMoment(joint.spread) },
            { QStringLiteral("job"), jsonTextOrNull(joint.jobName) },
            { QStringLiteral("due"), jsonDue(joint.due) } });
    return joints;
}

QJsonObject jsonFigures(const std::vector<BatchFigure>& all)
{
    QJsonObject figures;
    for (const BatchFigure& figure : all)
        figures[q(figure.figure)] = QJsonObject { { QStringLiteral("low"), jsonNumber(figure.low) },
            { QStringLiteral("high"), jsonNumber(figure.high) },
            { QStringLiteral("text"), jsonTextOrNull(figure.text) },
            { QStringLiteral("unit"), jsonTextOrNull(figure.unit) } };
    return figures;
}

QJsonObject jsonHotGlue(const PotState& pot)
{
    return { { QStringLiteral("stands"), q(std::string(wordOf(pot.stands, standsWords))) },
        { QStringLiteral("since"), jsonMoment(pot.standsSince) },
        { QStringLiteral("heat_since"), jsonMoment(pot.heatSince) },
        { QStringLiteral("temperature_c"),
            pot.temperature ? QJsonValue(pot.temperature->value) : QJsonValue() },
        { QStringLiteral("dose_h_at_60c"), jsonNumber(pot.doseHours) },
        { QStringLiteral("dose_range"), jsonRange(pot.doseRange) },
        { QStringLiteral("dose_band"), q(std::string(wordOf(pot.band, bandWords))) },
        { QStringLiteral("reheats"), pot.reheats }, { QStringLiteral("cold_days"), pot.chilledFor.count() },
        { QStringLiteral("top_up_g"), jsonNumber(pot.topUpGrams) },
        { QStringLiteral("keeping_used"), jsonRange(pot.spoilage) } };
}

/// "hot since 2026-03-02T13:00:00Z at 60 °C, dose 2.1 h at 60 °C (early), 1 time warmed again"
QString hotGlueText(const PotState& pot, UnitSystem units)
{
    QString text = q(std::string(wordOf(pot.stands, standsWords)));
    if (pot.standsSince)
        text += QStringLiteral(" since ") + q(formatMoment(*pot.standsSince));
    if (pot.temperature)
        text += QStringLiteral(" at ") + q(formatTemperature(*pot.temperature, units));
    text += pot.doseHours
        ? QStringLiteral(", heat so far %1 h at 60 °C (%2)")
              .arg(q(numberWords(*pot.doseHours, 1)), q(std::string(wordOf(pot.band, bandWords))))
        : QStringLiteral(", heat so far not known");
    if (pot.reheats > 0)
        text += QStringLiteral(", warmed again: %1").arg(pot.reheats);
    if (pot.chilledFor.count() > 0)
        text += QStringLiteral(", days in the cold: %1").arg(q(numberWords(pot.chilledFor.count(), 1)));
    if (pot.topUpGrams && *pot.topUpGrams > 0)
        text += QStringLiteral(", wants %1 g of hot water").arg(q(numberWords(*pot.topUpGrams, 1)));
    return text;
}

QString dueText(const PotDue& due)
{
    const QString from = q(formatMoment(due.when.low)), to = q(formatMoment(due.when.high));
    return (from == to ? from : from + QStringLiteral(" to ") + to) + QStringLiteral("  ") + q(due.text);
}

const PotDue* nextDue(const PotState& pot, Moment asOf)
{
    const auto next = std::ranges::find_if(pot.due, [&](const PotDue& due) { return due.when.high > asOf; });
    return next == pot.due.end() ? nullptr : &*next;
}

} // namespace

Result<QJsonObject> jsonBatch(const Shop& shop, const BatchState& state)
{
    const BatchRecord& batch = state.batch;
    QJsonArray parts, words;
    for (const BatchPart& part : batch.parts) {
        const auto label = labelOf(shop, part);
        if (!label)
            return tl::unexpected(label.error());
        parts.append(QJsonObject { { QStringLiteral("part"), jsonText(part.key) },
            { QStringLiteral("material"), jsonText(part.what) },
            { QStringLiteral("amount"), jsonAmount(part.amount) },
            { QStringLiteral("container"), jsonTextOrNull(*label) },
            { QStringLiteral("entry"), part.entry ? jsonText(part.entry->text) : QJsonValue() } });
    }
    for (const std::string& text : state.words)
        words.append(jsonText(text));
    return QJsonObject { { QStringLiteral("id"), jsonText(batch.id.text) },
        { QStringLiteral("label"), jsonText(batch.label) },
        { QStringLiteral("recipe"), jsonText(batch.recipe) },
        { QStringLiteral("name"), jsonText(batch.name) },
        { QStringLiteral("family"), jsonTextOrNull(state.family.text) },
        { QStringLiteral("mixed"), jsonMoment(batch.made) },
        { QStringLiteral("made"), jsonAmount(batch.amount) },
        { QStringLiteral("left"), jsonAmount(state.left) },
        { QStringLiteral("place"), jsonTextOrNull(state.placeName) },
        { QStringLiteral("who"), jsonTextOrNull(batch.who) }, { QStringLiteral("gone"), state.gone },
        { QStringLiteral("verdict"), q(word(state.verdict)) }, { QStringLiteral("words"), words },
        { QStringLiteral("hot_glue"),
            state.isHotGlue() && !state.gone ? QJsonValue(jsonHotGlue(state.pot)) : QJsonValue() },
        { QStringLiteral("due"), jsonDue(state.pot.due) }, { QStringLiteral("parts"), parts },
        { QStringLiteral("joints"), jsonJoints(state.joints) },
        { QStringLiteral("figures"), jsonFigures(batch.figures) },
        { QStringLiteral("notes"), jsonNotes(state.notes) } };
}

Result<QString> batchText(const Shop& shop, const BatchState& state)
{
    const BatchRecord& batch = state.batch;
    const UnitSystem units = shop.units();
    QString text = q(batch.label) + QStringLiteral("  ") + q(batch.name) + QStringLiteral(", ")
        + q(formatAmount(state.left, units)) + QStringLiteral(" left: ") + spoken(state.verdict) + u'\n';
    for (const std::string& word : state.words)
        text += q(word) + u'\n';
    if (state.isHotGlue() && !state.gone)
        text += QStringLiteral("It is ") + hotGlueText(state.pot, units) + QStringLiteral(".\n");
    for (const PotDue& due : state.pot.due)
        text += dueText(due) + u'\n';
    for (const BatchJoint& joint : state.joints) {
        text += QStringLiteral("Spread ") + q(formatMoment(joint.spread))
            + (joint.jobName.empty() ? QString() : QStringLiteral(" on ") + q(joint.jobName))
            + QStringLiteral(":\n");
        for (const PotDue& due : joint.due)
            text += QStringLiteral("  ") + dueText(due) + u'\n';
    }
    QList<QStringList> rows;
    for (const BatchPart& part : batch.parts) {
        const auto label = labelOf(shop, part);
        if (!label)
            return tl::unexpected(label.error());
        rows.append({ QStringLiteral("  ") + q(part.what), q(formatAmount(part.amount, units)), q(*label) });
    }
    text += columns(rows);
    QList<QStringList> notes;
    for (const BatchNoteLine& line : state.notes)
        notes.append({ q(formatMoment(line.at)),
            q(line.text) + (line.undone ? QStringLiteral(" (undone)") : QString()), q(line.id.text) });
    return text + columns(notes);
}

QString batchTable(const std::vector<BatchState>& states, UnitSystem units, Moment asOf)
{
    if (states.empty())
        return QStringLiteral("Nothing is mixed.\n");
    QList<QStringList> rows;
    for (const BatchState& state : states) {
        const PotDue* next = nextDue(state.pot, asOf);
        rows.append({ q(state.batch.label), q(state.batch.name), q(formatAmount(state.left, units)),
            state.gone ? QStringLiteral("gone") : spoken(state.verdict),
            state.gone || !state.isHotGlue() ? QString()
                                             : q(std::string(wordOf(state.pot.stands, standsWords))),
            next ? dueText(*next) : QString() });
    }
    return columns(rows);
}

} // namespace gw
