#include "cli/commands.h"
#include "cli/json.h"
#include "cli/readingsoptions.h"
#include "cli/words.h"

namespace gw {

namespace {

struct FiguresOptions {
    std::string file, reference, freeze, thaw;
    std::optional<double> q10, activation, lifeDays;
    ReadingsOptions readings;
};

Result<ReadingsQuestion> questionOf(const FiguresOptions& options)
{
    ReadingsQuestion question;
    if (options.q10 || options.activation) {
        auto reference = parseTemperature(options.reference);
        if (!reference)
            return tl::unexpected(reference.error());
        if (options.q10 && !(*options.q10 >= 1 && *options.q10 <= 10))
            return fail(ErrorCode::BadInput, "Give --q10 as a number from 1 to 10, such as 2.");
        if (options.activation && !(*options.activation > 0 && *options.activation <= 500))
            return fail(ErrorCode::BadInput, "Give --ea in kJ/mol, above 0 and up to 500, such as 83.");
        question.rate = Rate { *reference, options.q10.value_or(1.0), options.activation, true };
    }
    if (options.lifeDays)
        question.life = Days { *options.lifeDays };
    if (!options.freeze.empty()) {
        auto freeze = parseTemperature(options.freeze);
        if (!freeze)
            return tl::unexpected(freeze.error());
        auto thaw = parseTemperature(options.thaw);
        if (!thaw)
            return tl::unexpected(thaw.error());
        question.freeze = *freeze;
        question.thaw = *thaw;
    }
    return question;
}

/// What a file holds, as the figures take it.
struct Taken {
    ReadingsLook look;
    ReadingsRead read;
    std::vector<Reading> readings;
    std::vector<DayReading> days;
};

Result<Taken> take(const FiguresOptions& options, Moment now)
{
    auto choices = choicesOf(options.readings);
    if (!choices)
        return tl::unexpected(choices.error());
    // Only durations count here: a file that names no zone is read as UTC, one that names no unit as Celsius.
    choices->unitWhereSilent = DegreeUnit::Celsius;
    const QString path = q(options.file);
    auto look = lookAtReadings(path, now, *choices);
    if (!look)
        return tl::unexpected(look.error());
    if (auto open = unanswered(look->doubts, look->name))
        return tl::unexpected(std::move(*open));
    Taken taken;
    taken.look = std::move(*look);
    const bool daily = taken.look.layout.daily;
    auto read = readReadings(
        path, taken.look.layout, now,
        [&](std::span<const Reading> readings) -> Result<void> {
            if (!daily)
                taken.readings.insert(taken.readings.end(), readings.begin(), readings.end());
            return {};
        },
        {},
        [&](std::span<const DayReading> days) -> Result<void> {
            taken.days.insert(taken.days.end(), days.begin(), days.end());
            return {};
        });
    if (!read)
        return tl::unexpected(read.error());
    taken.read = std::move(*read);
    return taken;
}

QString figuresText(const ReadingsFigures& figures, const ReadingsQuestion& question, UnitSystem units)
{
    const auto said = [units](Celsius value) { return q(formatTemperature(value, units)); };
    QString text = QStringLiteral("%1 from %2 to %3\n")
                       .arg(figures.count)
                       .arg(q(formatMoment(figures.from)), q(formatMoment(figures.to)));
    text += QStringLiteral("low %1, high %2, mean %3, mean kinetic temperature %4\n")
                .arg(said(figures.low), said(figures.high), said(figures.mean), said(figures.kinetic));
    if (figures.equivalent)
        text += QStringLiteral("as old as after %1 days at %2\n")
                    .arg(figures.equivalent->count(), 0, 'f', 1)
                    .arg(said(question.rate->reference));
    if (figures.lifeUsed)
        text += QStringLiteral("%1 % of the life used\n").arg(*figures.lifeUsed * 100, 0, 'f', 1);
    text += QStringLiteral("%1 freezings, %2 thawings, %3 h at or below %4\n")
                .arg(figures.freezes())
                .arg(figures.thaws())
                .arg(figures.below.count() * 24, 0, 'f', 1)
                .arg(said(question.freeze));
    if (figures.unwatched.count() > 0)
        text += QStringLiteral("%1 h unwatched, in none of these\n")
                    .arg(figures.unwatched.count() * 24, 0, 'f', 1);
    return text;
}

Result<Answer> figures(const FiguresOptions& options, Moment now, UnitSystem units)
{
    auto question = questionOf(options);
    if (!question)
        return tl::unexpected(question.error());
    auto taken = take(options, now);
    if (!taken)
        return tl::unexpected(taken.error());
    auto answered = taken->look.layout.daily ? figuresOf(std::move(taken->days), *question)
                                             : figuresOf(std::move(taken->readings), *question);
    if (!answered)
        return tl::unexpected(answered.error());

    Answer answer;
    QJsonObject& json = answer.json;
    json[u"count"] = static_cast<qint64>(answered->count);
    json[u"from"] = jsonMoment(answered->from);
    json[u"to"] = jsonMoment(answered->to);
    json[u"mean_c"] = answered->mean.value;
    json[u"mkt_c"] = answered->kinetic.value;
    json[u"equivalent_days"]
        = answered->equivalent ? QJsonValue(answered->equivalent->count()) : QJsonValue();
    json[u"life_used"] = jsonNumber(answered->lifeUsed);
    json[u"freezes"] = static_cast<qint64>(answered->freezes());
    json[u"thaws"] = static_cast<qint64>(answered->thaws());
    json[u"hours_below"] = answered->below.count() * 24;
    json[u"low_c"] = answered->low.value;
    json[u"high_c"] = answered->high.value;
    json[u"unwatched_hours"] = answered->unwatched.count() * 24;
    json[u"daily"] = taken->look.layout.daily;
    json[u"set_aside"] = static_cast<qint64>(taken->read.setAside);
    json[u"set_aside_rows"] = jsonSetAside(taken->read.listed);
    json[u"doubts"] = jsonDoubts(taken->look.doubts);
    answer.plain = figuresText(*answered, *question, units) + doubtsText(taken->look.doubts)
        + setAsideText(taken->read.listed, taken->read.setAside);
    return answer;
}

} // namespace

void addReadingsOptions(CLI::App& command, ReadingsOptions& options)
{
    const auto option = [&](DoubtKind kind, std::string& value, const char* what) {
        command.add_option(optionOf(kind), value, what);
    };
    option(DoubtKind::DateOrder, options.dateOrder, "How the file writes its dates");
    option(DoubtKind::Unit, options.unit, "C or F");
    option(DoubtKind::Zone, options.zone, "Whose clock its times are by: UTC, +02:00, or a zone's name");
    option(DoubtKind::Column, options.column, "The column with the temperature, by name or number");
    command.add_option("--time-column", options.timeColumn, "The column with the time, likewise");
    command.add_option("--humidity-column", options.humidityColumn, "The column with the humidity, likewise");
}

Result<ReadingsChoices> choicesOf(const ReadingsOptions& options)
{
    ReadingsChoices choices;
    for (const auto& [kind, value] :
        { std::pair(DoubtKind::DateOrder, options.dateOrder), std::pair(DoubtKind::Unit, options.unit),
            std::pair(DoubtKind::Zone, options.zone), std::pair(DoubtKind::Column, options.column) }) {
        if (value.empty())
            continue;
        if (auto set = setChoice(choices, kind, value); !set)
            return tl::unexpected(set.error());
    }
    if (!options.timeColumn.empty())
        choices.timeColumn = options.timeColumn;
    if (!options.humidityColumn.empty())
        choices.humidityColumn = options.humidityColumn;
    return choices;
}

QJsonArray jsonSetAside(const std::vector<SetAside>& rows)
{
    QJsonArray json;
    for (const SetAside& row : rows)
        json.append(QJsonObject { { QStringLiteral("line"), row.line },
            { QStringLiteral("text"), jsonText(row.text) }, { QStringLiteral("why"), jsonText(row.why) } });
    return json;
}

QJsonArray jsonDoubts(const std::vector<Doubt>& doubts)
{
    QJsonArray json;
    for (const Doubt& doubt : doubts) {
        json.append(QJsonObject { { QStringLiteral("question"), jsonText(doubt.question) },
            { QStringLiteral("option"), jsonText(optionOf(doubt.kind)) },
            { QStringLiteral("taken"),
                doubt.taken ? jsonText(doubt.values.at(*doubt.taken)) : QJsonValue() } });
    }
    return json;
}

QString setAsideText(const std::vector<SetAside>& rows, std::int64_t count)
{
    QString text;
    for (const SetAside& row : rows)
        text += QStringLiteral("Line %1 set aside: %2\n").arg(row.line).arg(q(row.why));
    if (count > static_cast<std::int64_t>(rows.size()))
        text += QStringLiteral("%1 rows were set aside in all.\n").arg(count);
    return text;
}

QString doubtsText(const std::vector<Doubt>& doubts)
{
    QString text;
    for (const Doubt& doubt : doubts) {
        if (doubt.taken)
            text += QStringLiteral("%1 Taken: %2 (%3 says otherwise).\n")
                        .arg(q(doubt.question), q(doubt.choices.at(*doubt.taken)), q(optionOf(doubt.kind)));
    }
    return text;
}

void addReadingsCommand(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto options = std::make_shared<FiguresOptions>();
    auto* command = program.add_subcommand("readings", "What a file of temperatures says by itself");
    command->add_option("FILE", options->file, "A logger's CSV, or days with their low and high")->required();
    auto* reference = command->add_option(
        "--ref", options->reference, "The temperature a life is given at, with --q10 or --ea: 23C");
    auto* q10 = command->add_option("--q10", options->q10, "How many times faster per 10 degrees")
                    ->needs(reference);
    command->add_option("--ea", options->activation, "Activation energy in kJ/mol")
        ->needs(reference)
        ->excludes(q10);
    command->add_option("--life-days", options->lifeDays, "The life at that temperature, in days")
        ->needs(reference);
    auto* freeze = command->add_option("--freeze", options->freeze, "Frozen at or below: -1C");
    freeze->needs(command->add_option("--thaw", options->thaw, "Thawed at or above: 1C")->needs(freeze));
    addReadingsOptions(*command, options->readings);
    command->callback([&context, &pending, options] {
        pending = [&context, options] { return figures(*options, context.now, context.units()); };
    });
}

} // namespace gw
