#include <QJsonArray>

#include "cli/commands.h"
#include "cli/json.h"
#include "cli/readingsoptions.h"
#include "cli/words.h"
#include "shop/climate.h"
#include "shop/readingsimport.h"
#include "shop/tonight.h"

namespace gw {

namespace {

struct ClimateOptions {
    std::string place, file, day, low, high;
    ReadingsOptions readings;
};

QJsonValue degrees(const std::optional<Celsius>& temperature)
{
    return temperature ? QJsonValue(temperature->value) : QJsonValue();
}

QJsonValue hours(Days span) { return span.count() * 24; }

QJsonObject jsonClimate(const PlaceClimate& shown)
{
    QJsonArray stands;
    for (const StandsHere& here : shown.stands) {
        stands.append(QJsonObject { { QStringLiteral("id"), jsonText(here.label) },
            { QStringLiteral("material"), jsonText(here.materialName) },
            { QStringLiteral("keep_low_c"),
                here.keepBetween ? QJsonValue(here.keepBetween->low.value) : QJsonValue() },
            { QStringLiteral("keep_high_c"),
                here.keepBetween ? QJsonValue(here.keepBetween->high.value) : QJsonValue() } });
    }
    QJsonObject json;
    json[u"place"] = jsonText(shown.place.name);
    json[u"readings"] = static_cast<qint64>(shown.readings);
    json[u"from"] = jsonMoment(shown.first);
    json[u"to"] = jsonMoment(shown.last);
    json[u"low_c"] = degrees(shown.low);
    json[u"high_c"] = degrees(shown.high);
    json[u"mean_c"] = degrees(shown.mean);
    json[u"mkt_c"] = degrees(shown.kinetic);
    json[u"unwatched_hours"] = shown.first ? hours(shown.unwatched) : QJsonValue();
    json[u"hours_since_last"] = shown.last ? hours(daysBetween(*shown.last, shown.to)) : QJsonValue();
    json[u"follows"] = jsonTextOrNull(shown.followsName);
    json[u"frost"] = QJsonObject { { QStringLiteral("freezes"), shown.frost.freezes },
        { QStringLiteral("thaws"), shown.frost.thaws },
        { QStringLiteral("hours_below"), hours(shown.frost.below) },
        { QStringLiteral("last"), jsonMoment(shown.frost.last) } };
    json[u"stands"] = stands;
    return json;
}

QString climateText(const PlaceClimate& shown, UnitSystem units)
{
    const QString name = q(shown.place.name);
    QString text;
    if (!shown.first) {
        text = name
            + QStringLiteral(
                ": no readings yet. Import a logger's file, or type the low and high of a day.\n");
    } else {
        const auto said = [&](const std::optional<Celsius>& value) {
            return value ? q(formatTemperature(*value, units)) : QStringLiteral("not known");
        };
        text = QStringLiteral("%1: %2 readings from %3 to %4\n")
                   .arg(name)
                   .arg(shown.readings)
                   .arg(q(formatMoment(*shown.first)), q(formatMoment(*shown.last)));
        text += QStringLiteral("  low %1, high %2, mean %3, mean kinetic temperature %4\n")
                    .arg(said(shown.low), said(shown.high), said(shown.mean), said(shown.kinetic));
        text += QStringLiteral("  unwatched in between: %1 h; since the last reading: %2 h\n")
                    .arg(shown.unwatched.count() * 24, 0, 'f', 1)
                    .arg(daysBetween(*shown.last, shown.to).count() * 24, 0, 'f', 1);
        text += QStringLiteral("  the air froze %1 times and thawed %2 times, %3 h of frost\n")
                    .arg(shown.frost.freezes)
                    .arg(shown.frost.thaws)
                    .arg(shown.frost.below.count() * 24, 0, 'f', 1);
    }
    if (!shown.followsName.empty())
        text += QStringLiteral("  where nobody watched it goes with %1\n").arg(q(shown.followsName));
    QList<QStringList> rows;
    for (const StandsHere& here : shown.stands) {
        const QString limits = here.keepBetween ? QStringLiteral("keep between %1 and %2")
                                                      .arg(q(formatTemperature(here.keepBetween->low, units)),
                                                          q(formatTemperature(here.keepBetween->high, units)))
                                                : QStringLiteral("limits not known");
        rows.append({ QStringLiteral("  ") + q(here.label), q(here.materialName), limits });
    }
    return text + columns(rows);
}

Result<Answer> show(CommandContext& context, const ClimateOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto shown = climateShown(shop, options.place, asOf);
        if (!shown)
            return tl::unexpected(shown.error());
        return Answer { jsonClimate(*shown), climateText(*shown, shop.units()), {} };
    });
}

Result<Answer> import(CommandContext& context, const ClimateOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto choices = choicesOf(options.readings);
        if (!choices)
            return tl::unexpected(choices.error());
        auto done = importReadings(shop, options.place, options.file, *choices, context.now);
        if (!done)
            return tl::unexpected(done.error());
        auto shown = climateShown(shop, done->place.id.text, asOf);
        if (!shown)
            return tl::unexpected(shown.error());
        Answer answer;
        answer.json = jsonClimate(*shown);
        answer.json[u"added"] = static_cast<qint64>(done->added);
        answer.json[u"already_there"] = static_cast<qint64>(done->alreadyThere);
        answer.json[u"different"] = static_cast<qint64>(done->different);
        answer.json[u"set_aside"] = static_cast<qint64>(done->setAside);
        answer.json[u"set_aside_rows"] = jsonSetAside(done->listed);
        answer.json[u"layout"] = jsonText(done->layout);
        answer.json[u"doubts"] = jsonDoubts(done->doubts);
        answer.plain = q(done->said) + u'\n' + q(done->layout) + u'\n' + doubtsText(done->doubts)
            + setAsideText(done->listed, done->setAside) + u'\n' + climateText(*shown, shop.units());
        return answer;
    });
}

Result<Answer> lowHigh(CommandContext& context, const ClimateOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto day = parseDate(options.day);
        if (!day)
            return tl::unexpected(day.error());
        auto low = parseTemperature(options.low);
        if (!low)
            return tl::unexpected(low.error());
        auto high = parseTemperature(options.high);
        if (!high)
            return tl::unexpected(high.error());
        auto typed = typeLowHigh(shop, options.place, *day, *low, *high, asOf);
        if (!typed)
            return tl::unexpected(typed.error());
        Answer answer;
        answer.json[u"place"] = jsonText(typed->place.name);
        answer.json[u"day"] = jsonDate(*day);
        answer.json[u"low_c"] = low->value;
        answer.json[u"high_c"] = high->value;
        answer.json[u"added"] = static_cast<qint64>(typed->readings.added);
        answer.plain = q(typed->said) + u'\n';
        return answer;
    });
}

QJsonArray jsonCold(const Tonight& tonight)
{
    QJsonArray places;
    for (const ColdPlace& place : tonight.places) {
        QJsonArray containers;
        for (const ColdContainer& cold : place.containers) {
            constexpr const char* harms[] = { "spoils", "comes_back", "below_limit", "none" };
            containers.append(QJsonObject { { QStringLiteral("id"), jsonText(cold.label) },
                { QStringLiteral("material"), jsonText(cold.materialName) },
                { QStringLiteral("amount"), jsonAmount(cold.left) },
                { QStringLiteral("harm"), QString::fromUtf8(harms[static_cast<int>(cold.risk.harm)]) },
                { QStringLiteral("hours_to_freezing"), jsonNumber(cold.risk.hoursToFreezing) },
                { QStringLiteral("hours_to_frost_event"), jsonNumber(cold.risk.hoursToEvent) },
                { QStringLiteral("text"), jsonText(cold.text) } });
        }
        places.append(QJsonObject { { QStringLiteral("place"), jsonTextOrNull(place.name) },
            { QStringLiteral("containers"), containers } });
    }
    return places;
}

Result<Answer> coldNight(CommandContext& context, const ClimateOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto low = parseTemperature(options.low);
        if (!low)
            return tl::unexpected(low.error());
        auto cold = tonight(shop, options.place, *low, asOf);
        if (!cold)
            return tl::unexpected(cold.error());
        Answer answer;
        answer.json[u"as_of"] = jsonMoment(cold->asOf);
        answer.json[u"low_c"] = cold->low.value;
        answer.json[u"places"] = jsonCold(*cold);
        answer.json[u"said"] = jsonText(cold->said);
        answer.plain = q(cold->said) + u'\n';
        for (const ColdPlace& place : cold->places) {
            QList<QStringList> rows;
            for (const ColdContainer& container : place.containers)
                rows.append({ QStringLiteral("  ") + q(container.label), q(container.materialName),
                    q(formatAmount(container.left, shop.units())), q(container.text) });
            answer.plain += columns(rows);
        }
        return answer;
    });
}

} // namespace

void addClimateCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto options = std::make_shared<ClimateOptions>();
    auto* climate = program.add_subcommand("climate", "The temperature of the places");
    climate->require_subcommand(1);
    const auto command = [&](const char* name, const char* what, auto run) {
        auto* sub = climate->add_subcommand(name, what);
        sub->fallthrough();
        sub->add_option("PLACE", options->place, "The place")->required();
        sub->callback([&context, &pending, options, run] {
            pending = [&context, options, run] { return run(context, *options); };
        });
        return sub;
    };
    auto* importCommand = command("import", "Takes a logger's file into a place", import);
    importCommand->add_option("FILE", options->file, "The file")->required();
    addReadingsOptions(*importCommand, options->readings);
    command("show", "What a place was like, and what stands there", show);
    auto* tonightCommand = command("tonight", "What must come in before a cold night", coldNight);
    tonightCommand->add_option("LOW", options->low, "Tonight's low: -8C, 18F")->required();
    auto* typed = command("low-high", "The low and high of a day, off a min/max thermometer", lowHigh);
    typed->add_option("DATE", options->day, "The day: 2026-11-24")->required();
    typed->add_option("LOW", options->low, "Its low: -3C, 27F")->required();
    typed->add_option("HIGH", options->high, "Its high")->required();
}

} // namespace gw
