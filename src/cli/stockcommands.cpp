#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include <QJsonArray>

#include "shop/stockplan.h"

namespace gw {

namespace {

struct StockOptions {
    std::string file;
    bool look = false;
};

Result<Answer> takeOut(CommandContext& context, const StockOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto lines = takeOutStock(shop, asOf, q(options.file));
        if (!lines)
            return tl::unexpected(lines.error());
        Answer answer;
        answer.json[u"containers"] = *lines;
        answer.json[u"file"] = jsonText(options.file);
        answer.plain = QStringLiteral("%1 containers: %2\n").arg(*lines).arg(q(options.file));
        return answer;
    });
}

QJsonObject jsonPlan(const StockPlan& plan)
{
    using Fate = StockPlanRow::Fate;
    QJsonArray refused, differing;
    for (const StockRefusal& refusal : plan.refusals)
        refused.append(QJsonObject { { QStringLiteral("line"), refusal.line },
            { QStringLiteral("column"), jsonText(refusal.column) },
            { QStringLiteral("why"), jsonText(refusal.why) } });
    for (const StockPlanRow& row : plan.rows) {
        if (row.fate == Fate::Differs)
            differing.append(QJsonObject { { QStringLiteral("line"), row.row.line },
                { QStringLiteral("label"), jsonText(row.row.label) },
                { QStringLiteral("differs"), jsonText(row.differs) } });
    }
    QJsonArray materials, places;
    for (const std::string& name : plan.newMaterials)
        materials.append(jsonText(name));
    for (const std::string& name : plan.newPlaces)
        places.append(jsonText(name));
    return { { QStringLiteral("said"), jsonText(plan.said()) },
        { QStringLiteral("coming"), plan.count(Fate::Coming) },
        { QStringLiteral("here"), plan.count(Fate::Here) }, { QStringLiteral("differing"), differing },
        { QStringLiteral("refused"), refused }, { QStringLiteral("new_materials"), materials },
        { QStringLiteral("new_places"), places } };
}

QString planText(const StockPlan& plan)
{
    QString text = q(plan.said()) + u'\n';
    for (const StockRefusal& refusal : plan.refusals)
        text += QStringLiteral("  ") + q(refusalText(refusal)) + u'\n';
    for (const StockPlanRow& row : plan.rows) {
        if (row.fate == StockPlanRow::Fate::Differs)
            text += QStringLiteral("  line %1, %2: %3\n")
                        .arg(row.row.line)
                        .arg(q(row.row.label), q(row.differs));
    }
    return text;
}

Result<Answer> look(CommandContext& context, const CsvTable& table)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto plan = planStock(shop, table, asOf);
        if (!plan)
            return tl::unexpected(plan.error());
        Answer answer;
        answer.json = jsonPlan(*plan);
        answer.plain = planText(*plan);
        return answer;
    });
}

Result<Answer> bringIn(CommandContext& context, const StockOptions& options)
{
    auto table = readCsvFile(q(options.file));
    if (!table)
        return tl::unexpected(table.error());
    if (options.look)
        return look(context, *table);
    auto shop = context.shop();
    if (!shop)
        return tl::unexpected(shop.error());
    auto done = bringInStock(**shop, *table, { context.now, context.now });
    if (!done)
        return tl::unexpected(done.error());
    Answer answer;
    answer.json[u"said"] = jsonText(done->said);
    answer.json[u"entry"] = jsonText(done->entry.text);
    answer.json[u"containers"] = static_cast<qint64>(done->containers.size());
    answer.plain = q(done->said) + u'\n';
    return answer;
}

} // namespace

void addStockCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto* stock = program.add_subcommand("stock", "A table of what stands here: take it out, bring one in");
    stock->require_subcommand(1);

    auto options = std::make_shared<StockOptions>();
    auto* out = stock->add_subcommand("export", "Writes one line for each container");
    out->add_option("FILE", options->file, "The CSV file to write")->required();
    out->callback([&context, &pending, options] {
        pending = [&context, options] { return takeOut(context, *options); };
    });

    auto* in = stock->add_subcommand("import", "Brings in a table, all of it or nothing");
    in->add_option("FILE", options->file, "The CSV file to read")->required();
    in->add_flag("--look", options->look, "Only say what it would do");
    std::string footer = "Columns, in any order:\n";
    for (const StockColumn& column : stockColumns())
        footer += "  " + std::string(column.name) + (column.needed ? " (needed)" : "") + ": " + column.means
            + "\n";
    in->footer(footer);
    in->callback([&context, &pending, options] {
        pending = [&context, options] { return bringIn(context, *options); };
    });
}

} // namespace gw
