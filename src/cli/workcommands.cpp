#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include <QJsonArray>

#include "exchange/orderlist.h"
#include "shop/work.h"

namespace gw {

namespace {

struct CheckOptions {
    std::string jobType, air, wood, glue, joint, residue, period, place, load, woodStood, barrier, ventilated,
        batch;
    int pieces = 1;
    std::optional<double> humidity, moisture, otherMoisture, gap, surfaceAge, thickness;
};

struct OrderOptions {
    std::string month, csv;
    double service = 95;
};

Result<Conditions> conditionsOf(const CheckOptions& options)
{
    Conditions conditions;
    const auto temperature = [](const std::string& text, std::optional<Celsius>& into) -> Result<void> {
        if (text.empty())
            return {};
        auto read = parseTemperature(text);
        if (!read)
            return tl::unexpected(read.error());
        into = *read;
        return {};
    };
    if (auto read = temperature(options.air, conditions.air); !read)
        return tl::unexpected(read.error());
    if (auto read = temperature(options.wood, conditions.wood); !read)
        return tl::unexpected(read.error());
    if (auto read = temperature(options.glue, conditions.glue); !read)
        return tl::unexpected(read.error());
    conditions.humidity = options.humidity;
    conditions.woodMoisture = options.moisture;
    conditions.otherMoisture = options.otherMoisture;
    conditions.gapMm = options.gap;
    conditions.surfaceAgeHours = options.surfaceAge;
    conditions.thicknessMm = options.thickness;
    conditions.joint = options.joint;
    conditions.residue = options.residue;
    conditions.woodStood = options.woodStood;
    conditions.batch = options.batch;
    conditions.period = periodOfWord(options.period);
    conditions.barrier = yesOrNo(options.barrier);
    conditions.ventilated = yesOrNo(options.ventilated);
    conditions.servicePlace = servicePlaceOfWord(options.place);
    conditions.load = loadOfWord(options.load);
    return conditions;
}

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

Result<Answer> piece(CommandContext& context, const std::string& name)
{
    return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
        auto record = pieceRecord(shop, name);
        if (!record)
            return tl::unexpected(record.error());
        QJsonArray lines;
        QList<QStringList> rows;
        for (const PieceLine& line : *record) {
            lines.append(QJsonObject { { QStringLiteral("at"), jsonMoment(line.at) },
                { QStringLiteral("job"), jsonText(line.jobName) },
                { QStringLiteral("material"), jsonText(line.materialName) },
                { QStringLiteral("container"), jsonText(line.label) },
                { QStringLiteral("lot"), jsonTextOrNull(line.lot) },
                { QStringLiteral("amount"), jsonAmount(line.amount) },
                { QStringLiteral("comes_apart"), jsonTextOrNull(line.comesApart) } });
            rows.append({ QString::fromStdString(formatDate(dateOf(line.at))),
                QString::fromStdString(line.materialName),
                QString::fromStdString(formatAmount(line.amount, shop.units())),
                QString::fromStdString(line.lot.empty() ? "lot not known" : "lot " + line.lot),
                QString::fromStdString(line.comesApart) });
        }
        Answer answer;
        answer.json[u"piece"] = jsonText(name);
        answer.json[u"used"] = lines;
        answer.plain
            = rows.isEmpty() ? QStringLiteral("No stock is recorded as used on it.\n") : columns(rows);
        return answer;
    });
}

} // namespace

void addWorkCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto checkOptions = std::make_shared<CheckOptions>();
    auto* checkCommand
        = program.add_subcommand("check", "Before a glue-up: what to fix first, what to use, how much");
    checkCommand->add_option("JOBTYPE", checkOptions->jobType, "The job type's key or name (see: jobtypes)")
        ->required();
    checkCommand->add_option("--pieces", checkOptions->pieces, "How many");
    checkCommand->add_option("--air", checkOptions->air, "The room's temperature: 18C, 65F");
    checkCommand->add_option("--wood", checkOptions->wood, "The wood's temperature");
    checkCommand->add_option("--rh", checkOptions->humidity, "The room's relative humidity, percent");
    checkCommand->add_option(
        "--wood-moisture", checkOptions->moisture, "The wood's moisture, percent of its dry mass");
    checkCommand->add_option("--gap", checkOptions->gap, "The widest gap of the joint, mm");
    checkCommand->add_option("--other-moisture", checkOptions->otherMoisture,
        "The other part's moisture, where it was measured too");
    checkCommand->add_option("--glue", checkOptions->glue, "The glue's temperature, in pot or bottle");
    checkCommand->add_option(
        "--joint", checkOptions->joint, "The kind of joint, by key, name or a part of it");
    checkCommand->add_option(
        "--residue", checkOptions->residue, "What is still in the joint: wax, hide_old, pva_film");
    checkCommand->add_option(
        "--surface-age", checkOptions->surfaceAge, "Hours since the faces were planed or scraped");
    checkCommand->add_option("--thickness", checkOptions->thickness, "The piece's thickest part, mm");
    checkCommand->add_option(
        "--wood-stood", checkOptions->woodStood, "The place where the wood stood for weeks");
    checkCommand->add_option("--batch", checkOptions->batch,
        "The batch that will be used, by its label code; - for none. Else the best one mixed");
    checkCommand->add_option("--piece", checkOptions->period, "An old piece or a modern one")
        ->check(CLI::IsMember({ "period", "modern" }));
    addPieceOptions(*checkCommand, checkOptions->place, checkOptions->load);
    checkCommand->add_option("--barrier", checkOptions->barrier, "A barrier coat of hide glue is laid")
        ->check(CLI::IsMember({ "yes", "no" }));
    checkCommand
        ->add_option("--ventilated", checkOptions->ventilated, "The room is aired, with no flame or hot pot")
        ->check(CLI::IsMember({ "yes", "no" }));
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

    auto name = std::make_shared<std::string>();
    auto* pieceCommand
        = program.add_subcommand("piece", "What went into a piece, and how it comes apart again");
    pieceCommand->add_option("NAME", *name, "The client's piece or the job")->required();
    pieceCommand->callback(
        [&context, &pending, name] { pending = [&context, name] { return piece(context, *name); }; });
}

} // namespace gw
