#include "cli/commands.h"
#include "cli/json.h"
#include "cli/mixoptions.h"
#include "cli/words.h"

#include <array>

#include <QJsonArray>

#include "measure/number.h"
#include "measure/quoted.h"
#include "measure/ratio.h"

namespace gw {

namespace {

Result<std::pair<double, double>> pairOf(const std::string& text, const char* option)
{
    auto pair = parseRatio(text);
    if (!pair)
        return fail(ErrorCode::BadInput,
            std::string("Give ") + option + " as two numbers such as 2:1, not " + inQuotes(text) + ".");
    return pair;
}

template <class T, std::size_t N>
T oneOf(const std::string& word, const std::array<std::pair<const char*, T>, N>& words)
{
    for (const auto& [name, value] : words) {
        if (word == name)
            return value;
    }
    return words.front().second;
}

Result<void> readRatio(MixAsked& asked, const MixOptions& options)
{
    TwoPartRatio& ratio = asked.ratio;
    if (!options.massRatio.empty()) {
        const bool alone = options.massRatio.find(':') == std::string::npos;
        const auto mass = pairOf(alone ? "100:" + options.massRatio : options.massRatio, "--mass-ratio");
        if (!mass)
            return tl::unexpected(mass.error());
        if (!(mass->first > 0))
            return fail(ErrorCode::BadInput, "A mix with no resin cannot be: take the ratio from the label.");
        ratio.hardenerPer100 = 100 * mass->second / mass->first;
    }
    if (!options.ratio.empty()) {
        const auto volumes = pairOf(options.ratio, "--ratio");
        if (!volumes)
            return tl::unexpected(volumes.error());
        if (!(volumes->first > 0 && volumes->second > 0))
            return fail(ErrorCode::BadInput,
                "A mix of " + options.ratio + " by volume cannot be: take the ratio from the label.");
        ratio.resinVolumes = volumes->first;
        ratio.hardenerVolumes = volumes->second;
        // The reference data names its usual densities by ratio and kind of hardener.
        const std::string name = numberWords(volumes->first / volumes->second, 2) + ":1";
        ratio.name = name == "2:1" ? name + (options.hardener == "fast" ? ", fast" : ", slow")
            : name == "1:1"        ? name + ", 5-minute"
                                   : name;
    }
    if (!options.densities.empty()) {
        const auto both = pairOf(options.densities, "--densities");
        if (!both)
            return tl::unexpected(both.error());
        ratio.resin = { both->first };
        ratio.hardener = { both->second };
    }
    return {};
}

QJsonArray texts(const std::vector<std::string>& all)
{
    QJsonArray array;
    for (const std::string& text : all)
        array.append(jsonText(text));
    return array;
}

QJsonArray jsonTakes(const PartSource& source)
{
    QJsonArray takes;
    for (const Take& take : source.takes)
        takes.append(QJsonObject { { QStringLiteral("container"), jsonText(take.label) },
            { QStringLiteral("amount"), jsonAmount(take.amount) },
            { QStringLiteral("why"), jsonText(take.why) } });
    return takes;
}

const PartSource* sourceFor(const MixAnswer& mix, const MixPart& part)
{
    for (const PartSource& source : mix.sources) {
        if (source.key == part.key)
            return &source;
    }
    return nullptr;
}

QJsonObject jsonMix(const MixAnswer& mix)
{
    QJsonArray parts;
    for (const MixPart& part : mix.plan.parts) {
        QJsonObject json { { QStringLiteral("part"), jsonText(part.key) },
            { QStringLiteral("material"), jsonText(part.what) },
            { QStringLiteral("amount"), jsonAmount(part.amount) },
            { QStringLiteral("loose_volume"),
                part.volume ? QJsonValue(jsonAmount(*part.volume)) : QJsonValue() } };
        if (const PartSource* source = sourceFor(mix, part)) {
            json[u"from"] = jsonTextOrNull(source->material);
            json[u"take"] = jsonTakes(*source);
            json[u"stock"] = q(word(source->result));
            json[u"stock_text"] = jsonTextOrNull(source->text);
        }
        parts.append(json);
    }
    QJsonObject limits;
    for (const MixLimit& limit : mix.plan.limits)
        limits[q(limit.key)] = QJsonObject { { QStringLiteral("low"), limit.range.low },
            { QStringLiteral("high"), limit.range.high }, { QStringLiteral("unit"), jsonText(limit.unit) },
            { QStringLiteral("text"), jsonText(limit.text) } };
    return { { QStringLiteral("recipe"), jsonText(mix.plan.recipe) },
        { QStringLiteral("name"), jsonText(mix.plan.name) },
        { QStringLiteral("makes"), jsonAmount(mix.plan.makes) }, { QStringLiteral("parts"), parts },
        { QStringLiteral("steps"), texts(mix.plan.steps) }, { QStringLiteral("limits"), limits },
        { QStringLiteral("warnings"), texts(mix.plan.warnings) },
        { QStringLiteral("pictograms"), texts(mix.pictograms) },
        { QStringLiteral("cautions"), texts(mix.cautions) } };
}

QString mixText(const MixAnswer& mix, UnitSystem units)
{
    QString text = q(mix.plan.name) + QStringLiteral(", ") + q(formatAmount(mix.plan.makes, units)) + u'\n';
    QList<QStringList> rows;
    for (const MixPart& part : mix.plan.parts) {
        QString from;
        if (const PartSource* source = sourceFor(mix, part)) {
            QStringList takes;
            for (const Take& take : source->takes)
                takes.append(q(take.label) + QStringLiteral(" (") + q(take.why) + u')');
            from = takes.isEmpty()
                ? q(source->text)
                : QStringLiteral("from %1 %2").arg(q(source->material), takes.join(QStringLiteral(", ")))
                    + (source->text.empty() ? QString() : u' ' + q(source->text));
        }
        rows.append({ QStringLiteral("  ") + q(part.what), q(formatAmount(part.amount, units)), from });
    }
    text += columns(rows);
    int step = 0;
    for (const std::string& line : mix.plan.steps)
        text += QStringLiteral("%1. %2\n").arg(++step).arg(q(line));
    for (const MixLimit& limit : mix.plan.limits)
        text += q(limit.text) + u'\n';
    for (const std::string& warning : mix.plan.warnings)
        text += QStringLiteral("! ") + q(warning) + u'\n';
    for (const std::string& caution : mix.cautions)
        text += QStringLiteral("Caution: ") + q(caution) + u'\n';
    if (!mix.hazards.empty())
        text += QStringLiteral(
            "Read the label and the safety data sheet before you begin; they decide, and so do "
            "local rules.\n");
    return text;
}

} // namespace

Result<MixAsked> mixAskedOf(const MixOptions& options)
{
    MixAsked asked;
    asked.recipe = options.recipe;
    for (auto& [text, into] :
        { std::pair { &options.need, &asked.need }, std::pair { &options.have, &asked.have } }) {
        if (text->empty())
            continue;
        auto amount = parseAmount(*text);
        if (!amount)
            return tl::unexpected(amount.error());
        *into = *amount;
    }
    if (!options.scale.empty()) {
        auto step = parseAmount(options.scale);
        if (!step || step->dimension != Dimension::Mass)
            return fail(ErrorCode::BadInput,
                "Give what the scale shows as a mass such as 0.1g, not " + inQuotes(options.scale) + ".");
        asked.scaleStep = step->value();
    }
    if (!options.room.empty()) {
        auto room = parseTemperature(options.room);
        if (!room)
            return tl::unexpected(room.error());
        asked.room = *room;
    }
    asked.form = oneOf<GlueForm>(options.form,
        std::array { std::pair { "granules", GlueForm::Granules }, std::pair { "pearls", GlueForm::Pearls },
            std::pair { "cake", GlueForm::Cake } });
    asked.filler = oneOf<Filler>(options.filler,
        std::array { std::pair { "none", Filler::None }, std::pair { "silica", Filler::Silica },
            std::pair { "wood_flour", Filler::WoodFlour }, std::pair { "microspheres", Filler::Microspheres },
            std::pair { "whiting", Filler::Whiting } });
    asked.consistency = oneOf<Consistency>(options.consistency,
        std::array { std::pair { "mayonnaise", Consistency::Mayonnaise },
            std::pair { "syrup", Consistency::Syrup }, std::pair { "ketchup", Consistency::Ketchup },
            std::pair { "peanut_butter", Consistency::PeanutButter } });
    if (auto read = readRatio(asked, options); !read)
        return tl::unexpected(read.error());
    asked.hardenerKind = options.hardener;
    asked.grade = options.grade;
    asked.assemblySeconds = options.assembly;
    asked.waterRatio = options.water;
    asked.extraWater = options.extraWater;
    if (options.urea)
        asked.ureaShare = *options.urea / 100;
    asked.size = options.size;
    asked.dyePercent = options.dye.value_or(0);
    asked.pigmentPercent = options.pigment.value_or(0);
    asked.alcohol = options.alcohol;
    asked.potLifeMinutes = options.potLife;
    asked.cut = options.cut;
    asked.fromCut = options.fromCut;
    asked.waxy = options.waxy;
    asked.gramsPerLitre = options.strength;
    return asked;
}

Result<MixRecording> mixRecordingOf(const MixOptions& options)
{
    MixRecording recording { options.place, options.who, options.note, {} };
    for (const std::string& text : options.from) {
        const auto equals = text.find('=');
        if (equals == std::string::npos || equals == 0 || equals + 1 == text.size())
            return fail(ErrorCode::BadInput,
                "Give --from as part=container such as granules=GWABC123, or granules=- when it did not come "
                "off the shelf; not "
                    + inQuotes(text) + ".");
        recording.from[text.substr(0, equals)] = text.substr(equals + 1);
    }
    return recording;
}

void addMixCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto o = std::make_shared<MixOptions>();
    auto* command
        = program.add_subcommand("mix", "What to weigh for a batch, the steps, and from which containers");
    command
        ->add_option("RECIPE", o->recipe,
            "hot_hide, hot_hide_syringe, epoxy_neat, epoxy_thick, shellac, casein, uf or dye_solution")
        ->required();
    command->add_option("--need", o->need, "How much is to be ready: 50g, 250 ml");
    command->add_option("--scale", o->scale, "What the scale shows: 0.1g, 0.01g");
    command->add_option("--room", o->room, "The room's temperature: 18C, 65F");
    command->add_option("--grade", o->grade, "Hide glue: gel strength, grams by the 12.5 % method");
    command->add_option("--assembly", o->assembly, "Hide glue: seconds from spreading to pressure");
    command->add_option("--form", o->form, "Hide glue: what the dry glue is like")
        ->check(CLI::IsMember({ "granules", "pearls", "cake" }));
    command->add_option("--water", o->water, "Parts of water to one of dry glue or powder, by mass");
    command->add_option(
        "--extra-water", o->extraWater, "Hide glue for the syringe: kg more per kg of dry glue");
    command->add_option("--urea", o->urea, "Hide glue: percent of the dry glue, for a longer open time");
    command->add_flag("--size", o->size, "Hide glue: thin, to size end grain");
    command->add_option("--ratio", o->ratio, "Epoxy: resin to hardener by volume, 2:1");
    command->add_option("--densities", o->densities, "Epoxy: of resin and hardener, g/ml, 1.15:0.95");
    command->add_option("--mass-ratio", o->massRatio, "Epoxy: by mass, 100:41.3");
    command->add_option("--hardener", o->hardener, "Epoxy: the kind of hardener")
        ->check(CLI::IsMember({ "slow", "fast" }));
    command->add_option("--filler", o->filler, "Epoxy: the filler")
        ->check(CLI::IsMember({ "none", "silica", "wood_flour", "microspheres", "whiting" }));
    command->add_option("--consistency", o->consistency, "Epoxy: how it is to stand")
        ->check(CLI::IsMember({ "syrup", "ketchup", "mayonnaise", "peanut_butter" }));
    command->add_option("--dye", o->dye, "Epoxy: dry dye powder, percent of the mix");
    command->add_option("--pigment", o->pigment, "Epoxy: dry pigment, percent of the mix");
    command->add_option("--alcohol", o->alcohol, "Epoxy: grams of alcohol to be added");
    command->add_option("--pot-life", o->potLife, "Epoxy: the label's minutes for 100 g at 25 C");
    command->add_option("--cut", o->cut, "Shellac: pounds to the US gallon of alcohol");
    command->add_option("--from-cut", o->fromCut, "Shellac: the cut there is, to change it");
    command->add_option("--have", o->have, "Shellac: how much there is of that cut");
    command->add_flag("--waxy", o->waxy, "Shellac: waxy flakes");
    command->add_option("--strength", o->strength, "Dye: grams to the litre of alcohol");
    command->add_flag("--record", o->record, "Record it as mixed: takes the parts out of their containers");
    command->add_option(
        "--from", o->from, "To record: where a part came from, granules=GW..., or granules=-");
    command->add_option("--place", o->place, "To record: where it stands");
    command->add_option("--who", o->who, "To record: who mixed it");
    command->add_option("--note", o->note, "To record: a remark");
    command->callback([&context, &pending, o] {
        pending = [&context, o] {
            return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
                auto asked = mixAskedOf(*o);
                if (!asked)
                    return tl::unexpected(asked.error());
                if (o->record) {
                    const auto recording = mixRecordingOf(*o);
                    if (!recording)
                        return tl::unexpected(recording.error());
                    const ActTime time { asOf, context.now };
                    return actAnswer(shop, mixBatch(shop, *asked, *recording, time), context.now);
                }
                auto mix = mixFromShelf(shop, *asked, asOf);
                if (!mix)
                    return tl::unexpected(mix.error());
                return Answer { jsonMix(*mix), mixText(*mix, shop.units()), {} };
            });
        };
    });
}

} // namespace gw
