#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include <QJsonArray>

#include "shop/setup.h"

namespace gw {

namespace {

struct SetupOptions {
    std::string jobType, material, amount, gtin, price, supplier;
    double perMonth = 0;
    std::optional<double> leadDays;
    std::optional<int> soldBy, least;
};

Result<Answer> listClasses(CommandContext& context)
{
    return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
        auto classes = shop.store().classes();
        if (!classes)
            return tl::unexpected(classes.error());
        QJsonArray list;
        QList<QStringList> rows;
        for (const ClassRecord& cls : *classes) {
            list.append(QJsonObject { { QStringLiteral("id"), jsonText(cls.id.text) },
                { QStringLiteral("name"), jsonText(cls.name) },
                { QStringLiteral("group"), jsonText(cls.group) },
                { QStringLiteral("unit"), jsonText(std::string(baseUnit(cls.countedIn))) } });
            rows.append({ q(cls.id.text), q(cls.name) });
        }
        return Answer { QJsonObject { { QStringLiteral("classes"), list } }, columns(rows), {} };
    });
}

Result<Answer> listJobTypes(CommandContext& context)
{
    return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
        auto jobTypes = shop.store().jobTypes();
        if (!jobTypes)
            return tl::unexpected(jobTypes.error());
        QJsonArray list;
        QList<QStringList> rows;
        for (const JobTypeRecord& jobType : *jobTypes) {
            list.append(QJsonObject { { QStringLiteral("id"), jsonText(jobType.id.text) },
                { QStringLiteral("name"), jsonText(jobType.name) },
                { QStringLiteral("family"), jsonTextOrNull(jobType.family.text) },
                { QStringLiteral("per_month"), jobType.perMonth } });
            rows.append(
                { q(jobType.id.text), q(jobType.name), QStringLiteral("%1 a month").arg(jobType.perMonth) });
        }
        return Answer { QJsonObject { { QStringLiteral("job_types"), list } }, columns(rows), {} };
    });
}

Result<Answer> setRate(CommandContext& context, const SetupOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
        auto jobType = setJobRate(shop, options.jobType, options.perMonth, context.now);
        if (!jobType)
            return tl::unexpected(jobType.error());
        Answer answer;
        answer.json[u"job_type"] = jsonText(jobType->id.text);
        answer.json[u"per_month"] = jobType->perMonth;
        answer.plain = QStringLiteral("%1: %2 a month.\n").arg(q(jobType->name)).arg(jobType->perMonth);
        return answer;
    });
}

Result<Answer> setPack(CommandContext& context, const SetupOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
        PackOffered offered { options.material, options.amount, options.gtin, options.price, options.supplier,
            options.leadDays, options.soldBy, options.least };
        auto pack = savePackOffered(shop, offered);
        if (!pack)
            return tl::unexpected(pack.error());
        Answer answer;
        answer.json[u"material"] = jsonText(options.material);
        answer.json[u"amount"] = jsonAmount(pack->amount);
        answer.json[u"gtin"] = jsonTextOrNull(pack->gtin14);
        answer.json[u"sold_by"] = pack->soldBy;
        answer.json[u"least"] = pack->least;
        answer.plain = QStringLiteral("%1 is on offer in %2.\n")
                           .arg(q(options.material), q(formatAmount(pack->amount, shop.units())));
        return answer;
    });
}

} // namespace

void addSetupCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto options = std::make_shared<SetupOptions>();
    program.add_subcommand("classes", "The classes of material there are")->callback([&context, &pending] {
        pending = [&context] { return listClasses(context); };
    });
    program.add_subcommand("jobtypes", "The job types there are")->callback([&context, &pending] {
        pending = [&context] { return listJobTypes(context); };
    });

    auto* rateCommand = program.add_subcommand("rate", "Says how many of a job type come in a month");
    rateCommand->add_option("JOBTYPE", options->jobType, "The job type's key or name")->required();
    rateCommand->add_option("PER_MONTH", options->perMonth, "How many, on average")->required();
    rateCommand->callback([&context, &pending, options] {
        pending = [&context, options] { return setRate(context, *options); };
    });

    auto* packCommand = program.add_subcommand("pack", "Says in which pack a material is sold");
    packCommand->add_option("MATERIAL", options->material, "The material's name")->required();
    packCommand->add_option("--amount", options->amount, "What it holds: 500g")->required();
    packCommand->add_option("--gtin", options->gtin, "Its trade item number");
    packCommand->add_option("--price", options->price, "With its currency: \"12.50 EUR\"");
    packCommand->add_option("--supplier", options->supplier, "Who sells it");
    packCommand->add_option("--lead-days", options->leadDays, "Days from ordering to arrival");
    packCommand->add_option("--sold-by", options->soldBy, "Only so many together: a case of 12");
    packCommand->add_option("--least", options->least, "Fewer are not delivered");
    packCommand->callback([&context, &pending, options] {
        pending = [&context, options] { return setPack(context, *options); };
    });
}

} // namespace gw
