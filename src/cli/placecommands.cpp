#include <QJsonArray>

#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"
#include "shop/setup.h"

namespace gw {

namespace {

constexpr std::array<const char*, 4> quarterOptions { "--dec-feb", "--mar-may", "--jun-aug", "--sep-nov" };
constexpr std::array<const char*, 4> quarterKeys { "dec_feb", "mar_may", "jun_aug", "sep_nov" };
constexpr std::array<const char*, 4> quarterWords { "December to February", "March to May", "June to August",
    "September to November" };

struct PlaceOptions {
    std::string place, low, high;
    std::array<std::vector<std::string>, 4> quarters;
    std::optional<std::string> follows;
    bool alone = false;
    double warmer = 0, damped = 0;
};

Result<Range<Celsius>> rangeOf(const std::string& lowText, const std::string& highText)
{
    auto low = parseTemperature(lowText);
    if (!low)
        return tl::unexpected(low.error());
    auto high = parseTemperature(highText);
    if (!high)
        return tl::unexpected(high.error());
    return Range<Celsius> { *low, *high };
}

Result<PlaceChange> changeOf(const PlaceOptions& options)
{
    PlaceChange change;
    if (!options.low.empty()) {
        auto year = rangeOf(options.low, options.high);
        if (!year)
            return tl::unexpected(year.error());
        change.assumed.year = *year;
    }
    for (std::size_t i = 0; i < options.quarters.size(); ++i) {
        if (options.quarters[i].size() != 2)
            continue;
        auto quarter = rangeOf(options.quarters[i][0], options.quarters[i][1]);
        if (!quarter)
            return tl::unexpected(quarter.error());
        change.assumed.quarters[i] = *quarter;
    }
    change.follows = options.alone ? std::optional<std::string>("") : options.follows;
    change.warmer = options.warmer;
    change.damped = options.damped;
    return change;
}

QJsonValue jsonRange(const std::optional<Range<Celsius>>& range)
{
    if (!range)
        return {};
    return QJsonObject { { QStringLiteral("low_c"), range->low.value },
        { QStringLiteral("high_c"), range->high.value } };
}

QString rangeText(const Range<Celsius>& range, UnitSystem units)
{
    return QStringLiteral("%1 and %2")
        .arg(q(formatTemperature(range.low, units)), q(formatTemperature(range.high, units)));
}

QString placeText(const PlaceRecord& place, const std::string& follows, UnitSystem units)
{
    const auto& year = place.assumed.year;
    QString text = q(place.name)
        + (year ? QStringLiteral(": taken to be between %1 where nobody watches.\n")
                      .arg(rangeText(*year, units))
                : QStringLiteral(": nothing is known of its temperature over the year.\n"));
    for (std::size_t i = 0; i < quarterWords.size(); ++i) {
        if (const auto& quarter = place.assumed.quarters[i])
            text += QStringLiteral("  %1: between %2.\n")
                        .arg(QString::fromUtf8(quarterWords[i]), rangeText(*quarter, units));
    }
    if (place.follows)
        text += QStringLiteral("  Goes with %1, %2 degrees C %3, %4 % of the swing damped.\n")
                    .arg(q(follows))
                    .arg(std::abs(place.follows->warmer))
                    .arg(place.follows->warmer < 0 ? QStringLiteral("colder") : QStringLiteral("warmer"))
                    .arg(place.follows->damped * 100);
    return text;
}

Result<Answer> setPlace(CommandContext& context, const PlaceOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
        auto change = changeOf(options);
        if (!change)
            return tl::unexpected(change.error());
        auto place = savePlaceNamed(shop, options.place, *change);
        if (!place)
            return tl::unexpected(place.error());
        auto catalogue = shop.catalogue();
        if (!catalogue)
            return tl::unexpected(catalogue.error());
        const std::string follows
            = place->follows ? catalogue->placeName(place->follows->place) : std::string();
        const auto& year = place->assumed.year;
        Answer answer;
        answer.json[u"place"] = jsonText(place->name);
        answer.json[u"low_c"] = year ? QJsonValue(year->low.value) : QJsonValue();
        answer.json[u"high_c"] = year ? QJsonValue(year->high.value) : QJsonValue();
        QJsonObject quarters;
        for (std::size_t i = 0; i < quarterKeys.size(); ++i)
            quarters[QString::fromUtf8(quarterKeys[i])] = jsonRange(place->assumed.quarters[i]);
        answer.json[u"quarters"] = quarters;
        answer.json[u"follows"] = place->follows
            ? QJsonValue(QJsonObject { { QStringLiteral("place"), jsonText(follows) },
                  { QStringLiteral("warmer"), place->follows->warmer },
                  { QStringLiteral("damped"), place->follows->damped } })
            : QJsonValue();
        answer.plain = placeText(*place, follows, shop.units());
        return answer;
    });
}

} // namespace

void addPlaceCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto options = std::make_shared<PlaceOptions>();
    auto* place = program.add_subcommand("place", "Makes a place, or says how warm it usually is");
    place->add_option("NAME", options->place, "The place")->required();
    auto* low = place->add_option("--low", options->low, "Usual low over the year: 5C, 41F");
    auto* high = place->add_option("--high", options->high, "Usual high over the year")->needs(low);
    low->needs(high);
    for (std::size_t i = 0; i < quarterOptions.size(); ++i) {
        place
            ->add_option(quarterOptions[i], options->quarters[i],
                std::string("Usual low and high, ") + quarterWords[i] + ": 5C 12C")
            ->expected(2);
    }
    auto* follows = place->add_option(
        "--follows", options->follows, "The place it goes with where it has no readings of its own");
    place->add_option("--warmer", options->warmer, "By so many degrees C it is warmer; negative: colder")
        ->needs(follows);
    place
        ->add_option(
            "--damped", options->damped, "Share of the day's swing that does not come through, 0 to 1")
        ->needs(follows);
    place->add_flag("--follows-none", options->alone, "It goes with no other place any more")
        ->excludes(follows);
    place->callback([&context, &pending, options] {
        pending = [&context, options] { return setPlace(context, *options); };
    });
}

} // namespace gw
