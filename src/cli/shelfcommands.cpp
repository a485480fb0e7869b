#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include <QJsonArray>

namespace gw {

namespace {

Result<std::optional<PlaceId>> placeOf(const Shop& shop, const std::string& name)
{
    if (name.empty())
        return std::optional<PlaceId> {};
    auto places = shop.store().places();
    if (!places)
        return tl::unexpected(places.error());
    std::string names;
    for (const PlaceRecord& place : *places) {
        if (QString::fromStdString(place.name).compare(QString::fromStdString(name), Qt::CaseInsensitive)
            == 0)
            return std::optional<PlaceId>(place.id);
        names += (names.empty() ? "" : ", ") + place.name;
    }
    return fail(ErrorCode::NotFound,
        "There is no place \"" + name + "\" in this shop"
            + (names.empty() ? "." : "; there are: " + names + "."));
}

Result<Answer> shelfAnswer(const Shop& shop, Moment asOf, const std::string& placeName,
    const std::string& verdictWord, const std::string& text, bool retired)
{
    auto place = placeOf(shop, placeName);
    if (!place)
        return tl::unexpected(place.error());
    ShelfQuery query;
    query.asOf = asOf;
    query.place = *place;
    query.text = text;
    query.retiredToo = retired;
    if (!verdictWord.empty())
        query.verdict = verdictOfWord(verdictWord);
    auto items = shelf(shop, query);
    if (!items)
        return tl::unexpected(items.error());

    QJsonArray containers;
    for (const ShelfItem& item : *items)
        containers.append(jsonShelfItem(item));
    Answer answer;
    answer.json[u"as_of"] = jsonMoment(asOf);
    answer.json[u"containers"] = containers;
    answer.plain = shelfTable(*items, shop.units());
    return answer;
}

Result<Answer> todayAnswer(const Shop& shop, Moment asOf)
{
    auto day = today(shop, asOf);
    if (!day)
        return tl::unexpected(day.error());
    QJsonArray items;
    for (const TodayItem& item : day->items) {
        items.append(QJsonObject { { QStringLiteral("container"), jsonText(item.label) },
            { QStringLiteral("material"), jsonText(item.title) },
            { QStringLiteral("text"), jsonText(item.text) },
            { QStringLiteral("verdict"), jsonText(std::string(word(item.verdict))) },
            { QStringLiteral("good_until"), jsonMoment(item.when) } });
    }
    QJsonObject counts;
    for (const auto& [verdict, count] : day->counts)
        counts[QString::fromStdString(std::string(word(verdict)))] = count;
    Answer answer;
    answer.json[u"as_of"] = jsonMoment(asOf);
    answer.json[u"containers"] = day->containers;
    answer.json[u"verdicts"] = counts;
    answer.json[u"items"] = items;
    answer.plain = todayText(*day);
    return answer;
}

} // namespace

void addShelfCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    struct Options {
        std::string place, verdict, text, id;
        bool retired = false;
    };
    auto options = std::make_shared<Options>();

    auto* shelfCommand = program.add_subcommand(
        "shelf", "Every container: what, how much, where, and whether it is still good");
    shelfCommand->add_option("--place", options->place, "Only what stands in this place");
    shelfCommand->add_option("--verdict", options->verdict, "Only this verdict")
        ->check(CLI::IsMember({ "good", "test_first", "do_not_use", "not_known" }));
    shelfCommand->add_option(
        "--find", options->text, "Only what has this text in its name, class, lot, code or place");
    shelfCommand->add_flag("--retired", options->retired, "Retired containers too");
    shelfCommand->callback([&context, &pending, options] {
        pending = [&context, options] {
            return withShop(context, [&](Shop& shop, Moment asOf) {
                return shelfAnswer(
                    shop, asOf, options->place, options->verdict, options->text, options->retired);
            });
        };
    });

    auto* showCommand
        = program.add_subcommand("show", "One container with its reasons and everything that happened to it");
    showCommand->add_option("ID", options->id, "Our label code, or the id")->required();
    showCommand->callback([&context, &pending, options] {
        pending = [&context, options] {
            return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
                auto page = containerPage(shop, options->id, asOf);
                if (!page)
                    return tl::unexpected(page.error());
                return Answer { jsonContainerPage(*page), containerText(*page, shop.units()), {} };
            });
        };
    });

    auto* todayCommand = program.add_subcommand("today", "What wants doing today");
    todayCommand->callback([&context, &pending] {
        pending = [&context] {
            return withShop(context, [&](Shop& shop, Moment asOf) { return todayAnswer(shop, asOf); });
        };
    });
}

} // namespace gw
