#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include <QJsonArray>

#include "shop/waste.h"

namespace gw {

namespace {

QJsonValue jsonMoney(const std::optional<Money>& money)
{
    if (!money)
        return {};
    return QJsonObject { { QStringLiteral("minor_units"), static_cast<qint64>(money->minorUnits) },
        { QStringLiteral("currency"), jsonText(money->currency) } };
}

QJsonArray jsonSums(const std::vector<Money>& sums)
{
    QJsonArray list;
    for (const Money& sum : sums)
        list.append(jsonMoney(sum));
    return list;
}

QString moneyWords(const std::optional<Money>& money)
{
    return money ? q(formatMoney(*money)) : QStringLiteral("price not known");
}

QString sumWords(const std::vector<Money>& sums, int unpriced)
{
    QStringList texts;
    for (const Money& sum : sums)
        texts.append(q(formatMoney(sum)));
    QString text = texts.isEmpty() ? QStringLiteral("not known") : texts.join(QStringLiteral(" + "));
    if (unpriced > 0)
        text += QStringLiteral(", without %1 of no known price").arg(unpriced);
    return text;
}

Result<Answer> expiring(CommandContext& context, int days)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        const auto list = expiringSoon(shop, days, asOf);
        if (!list)
            return tl::unexpected(list.error());
        QJsonArray items;
        QList<QStringList> rows;
        for (const Expiring& item : list->items) {
            items.append(QJsonObject { { QStringLiteral("id"), jsonText(item.label) },
                { QStringLiteral("material"), jsonText(item.materialName) },
                { QStringLiteral("place"), jsonTextOrNull(item.place) },
                { QStringLiteral("left"), jsonAmount(item.left) },
                { QStringLiteral("good_until"), jsonDate(dateOf(item.until)) },
                { QStringLiteral("days"), item.days }, { QStringLiteral("worth"), jsonMoney(item.worth) },
                { QStringLiteral("use_on"), jsonTextOrNull(item.useOn) } });
            rows.append({ q(item.label), q(item.materialName), q(formatAmount(item.left, shop.units())),
                q(spokenDate(dateOf(item.until))), moneyWords(item.worth),
                item.useOn.empty() ? QStringLiteral("no work of yours takes it") : q(item.useOn) });
        }
        Answer answer;
        answer.json[u"days"] = days;
        answer.json[u"items"] = items;
        answer.json[u"worth"] = jsonSums(list->worth);
        answer.json[u"unpriced"] = list->unpriced;
        answer.plain = rows.isEmpty()
            ? QStringLiteral("Nothing that is good now goes off in the next %1 days.\n").arg(days)
            : columns(rows) + QStringLiteral("Worth %1\n").arg(sumWords(list->worth, list->unpriced));
        return answer;
    });
}

Result<Answer> disposal(CommandContext& context)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        const auto groups = disposalList(shop, asOf);
        if (!groups)
            return tl::unexpected(groups.error());
        Answer answer;
        QJsonArray list;
        for (const DisposalGroup& group : *groups) {
            QJsonArray handling, items;
            for (const std::string& text : group.handling) {
                handling.append(jsonText(text));
                answer.plain += q(text) + u'\n';
            }
            if (group.handling.empty())
                answer.plain
                    += QStringLiteral("Nothing is on record of how these are handled; read the label.\n");
            QList<QStringList> rows;
            for (const ToDispose& item : group.items) {
                items.append(QJsonObject { { QStringLiteral("id"), jsonText(item.label) },
                    { QStringLiteral("material"), jsonText(item.materialName) },
                    { QStringLiteral("place"), jsonTextOrNull(item.place) },
                    { QStringLiteral("left"), jsonAmount(item.left) },
                    { QStringLiteral("why"), jsonText(item.why) } });
                rows.append({ QStringLiteral("  ") + q(item.label), q(item.materialName),
                    q(formatAmount(item.left, shop.units())), q(item.place), q(item.why) });
            }
            answer.plain += columns(rows);
            list.append(
                QJsonObject { { QStringLiteral("handling"), handling }, { QStringLiteral("items"), items } });
        }
        answer.json[u"groups"] = list;
        answer.json[u"caution"] = jsonText(localRulesDecide());
        answer.plain += groups->empty() ? QStringLiteral("Nothing on the shelf is past use.\n")
                                        : q(localRulesDecide()) + u'\n';
        return answer;
    });
}

Result<Answer> waste(CommandContext& context)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        const auto year = wasteOfYear(shop, asOf);
        if (!year)
            return tl::unexpected(year.error());
        QJsonArray items;
        QList<QStringList> rows;
        for (const Wasted& item : year->items) {
            items.append(QJsonObject { { QStringLiteral("at"), jsonMoment(item.at) },
                { QStringLiteral("id"), jsonText(item.label) },
                { QStringLiteral("material"), jsonText(item.materialName) },
                { QStringLiteral("amount"), jsonAmount(item.amount) },
                { QStringLiteral("cost"), jsonMoney(item.cost) },
                { QStringLiteral("why"), jsonText(item.why) } });
            rows.append({ q(formatDate(dateOf(item.at))), q(item.label), q(item.materialName),
                q(formatAmount(item.amount, shop.units())), moneyWords(item.cost), q(item.why) });
        }
        Answer answer;
        answer.json[u"year"] = year->year;
        answer.json[u"items"] = items;
        answer.json[u"cost"] = jsonSums(year->cost);
        answer.json[u"used_cost"] = jsonSums(year->usedCost);
        answer.json[u"unpriced"] = year->unpriced;
        answer.plain = rows.isEmpty() ? QStringLiteral("Nothing was thrown away in %1.\n").arg(year->year)
                                      : columns(rows)
                + QStringLiteral("Thrown away in %1: %2\nUsed in the same time: %3\n")
                      .arg(year->year)
                      .arg(sumWords(year->cost, year->unpriced), sumWords(year->usedCost, 0));
        return answer;
    });
}

} // namespace

void addWasteCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto days = std::make_shared<int>(60);
    auto* command
        = program.add_subcommand("expiring", "What goes off soon, what it is worth and what to use it on");
    command->add_option("--days", *days, "How far to look ahead");
    command->callback(
        [&context, &pending, days] { pending = [&context, days] { return expiring(context, *days); }; });
    program.add_subcommand("disposal", "What is past use, by how such things are usually handled")
        ->callback([&context, &pending] { pending = [&context] { return disposal(context); }; });
    program.add_subcommand("waste", "What was thrown away this year, and what it cost")
        ->callback([&context, &pending] { pending = [&context] { return waste(context); }; });
}

} // namespace gw
