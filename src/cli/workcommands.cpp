#include "cli/checkoptions.h"
#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include "exchange/orderlist.h"
#include "shop/work.h"

namespace gw {

namespace {

struct OrderOptions {
    std::string month, csv;
    double service = 95;
};

Result<Answer> check(CommandContext& context, const CheckOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto conditions = conditionsOf(options);
        if (!conditions)
            return tl::unexpected(conditions.error());
        auto answer = checkJob(shop, options.jobType, options.pieces, *conditions, asOf);
        if (!answer)
            return tl::unexpected(answer.error());
        return Answer { jsonGlueUp(*answer), glueUpText(*answer, shop.units()), {} };
    });
}

/// The month asked for, else the one after this.
Result<Date> monthOf(const std::string& text, Moment now)
{
    const Date today = dateOf(now);
    if (text.empty())
        return addMonths(Date { today.year(), today.month(), std::chrono::day { 1 } }, 1);
    auto date = text.size() == 7 ? parseDate(text + "-01") : parseDate(text);
    if (!date)
        return fail(ErrorCode::BadInput, "Give the month as 2026-05, not \"" + text + "\".");
    return Date { date->year(), date->month(), std::chrono::day { 1 } };
}

Result<Answer> order(CommandContext& context, const OrderOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto month = monthOf(options.month, asOf);
        if (!month)
            return tl::unexpected(month.error());
        auto plan = orderForMonth(shop, *month, options.service, asOf);
        if (!plan)
            return tl::unexpected(plan.error());
        Answer answer { jsonOrder(*plan, *month), orderText(*plan, *month, shop.units()), {} };
        if (!options.csv.empty()) {
            if (auto written = writeOrderCsv(*plan, QString::fromStdString(options.csv)); !written)
                return tl::unexpected(written.error());
            answer.json[u"csv"] = jsonText(options.csv);
            answer.plain += QStringLiteral("Written to %1\n").arg(QString::fromStdString(options.csv));
        }
        return answer;
    });
}

} // namespace

void addWorkCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto checkOptions = std::make_shared<CheckOptions>();
    auto* checkCommand
        = program.add_subcommand("check", "Before a glue-up: what to fix first, what to use, how much");
    addCheckOptions(*checkCommand, *checkOptions);
    checkCommand->add_option("--piece,--piece-is", checkOptions->period, "An old piece or a modern one")
        ->check(CLI::IsMember({ "period", "modern" }));
    checkCommand->callback([&context, &pending, checkOptions] {
        pending = [&context, checkOptions] { return check(context, *checkOptions); };
    });

    auto orderOptions = std::make_shared<OrderOptions>();
    auto* orderCommand = program.add_subcommand("order", "What to buy for a month, in which pack, and why");
    orderCommand->add_option("--month", orderOptions->month, "YYYY-MM; else the next one");
    orderCommand->add_option(
        "--service", orderOptions->service, "Percent of the time that it should be enough");
    orderCommand->add_option("--csv", orderOptions->csv, "Write the list to this file too");
    orderCommand->callback([&context, &pending, orderOptions] {
        pending = [&context, orderOptions] { return order(context, *orderOptions); };
    });
}

} // namespace gw
