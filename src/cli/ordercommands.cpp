#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include <QJsonArray>

#include "exchange/orderlist.h"
#include "exchange/orderpapers.h"
#include "shop/orders.h"
#include "shop/plannedwork.h"
#include "shop/setup.h"

namespace gw {

namespace {

struct OrderOptions {
    std::string month, csv, pdf, budget, doorstep, more, late;
    double service = 95;
    bool text = false, keep = false;
};

struct OrderedOptions {
    std::string list, supplier, line;
    std::optional<int> count;
    bool recall = false, close = false;
};

struct PlannedOptions {
    std::string jobType, on, piece, done, drop;
    int pieces = 1;
    bool all = false;
};

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

Result<void> writeOrderFiles(
    const OrderPlan& plan, const OrderHeading& heading, const OrderOptions& options, Answer& answer)
{
    const auto say = [&](QStringView key, const std::string& file, const Result<void>& written) {
        if (!written)
            return written;
        answer.json[key] = jsonText(file);
        if (!options.text) // what is to be pasted stands alone
            answer.plain += QStringLiteral("Written to %1\n").arg(q(file));
        return written;
    };
    if (!options.csv.empty()) {
        if (auto said = say(u"csv", options.csv, writeOrderCsv(plan, q(options.csv))); !said)
            return said;
    }
    if (!options.pdf.empty())
        return say(u"pdf", options.pdf, writeOrderPdf(plan, heading, q(options.pdf)));
    return {};
}

/// "NAME=N" as a name and a number over zero.
Result<std::pair<std::string, double>> supposed(const std::string& text)
{
    const auto at = text.rfind('=');
    bool isNumber = false;
    const double number = at == std::string::npos ? 0 : q(text.substr(at + 1)).toDouble(&isNumber);
    if (!isNumber || !(number > 0 && number <= 1000))
        return fail(ErrorCode::BadInput, "Suppose it as a name and a number up to 1000: chair_full=4.");
    return std::pair(text.substr(0, at), number);
}

Result<void> suppose(const Shop& shop, const OrderOptions& options, WhatIf& whatIf)
{
    if (!options.more.empty()) {
        const auto more = supposed(options.more);
        if (!more)
            return tl::unexpected(more.error());
        const auto type = findJobType(shop, more->first);
        if (!type)
            return tl::unexpected(type.error());
        whatIf.moreOf = type->id;
        whatIf.morePerMonth = more->second;
    }
    if (!options.late.empty()) {
        const auto late = supposed(options.late);
        if (!late)
            return tl::unexpected(late.error());
        whatIf.lateSupplier = late->first;
        whatIf.lateDays = late->second;
    }
    return {};
}

Result<Answer> order(CommandContext& context, const OrderOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto month = monthOf(options.month, asOf);
        if (!month)
            return tl::unexpected(month.error());
        OrderAsked asked { *month, options.service, {}, options.doorstep };
        if (!options.budget.empty()) {
            auto budget = parsePrice(options.budget);
            if (!budget)
                return tl::unexpected(budget.error());
            asked.budget = *budget;
        }
        if (auto supposed = suppose(shop, options, asked.whatIf); !supposed)
            return tl::unexpected(supposed.error());
        auto plan = orderForMonth(shop, asked, asOf);
        if (!plan)
            return tl::unexpected(plan.error());
        const auto heading = orderHeading(shop, *month, asOf);
        if (!heading)
            return tl::unexpected(heading.error());
        Answer answer { jsonOrder(*plan, *month),
            options.text ? q(orderMessage(*plan, *heading)) : orderText(*plan, *month, shop.units()), {} };
        if (options.text)
            answer.json[u"text"] = jsonText(orderMessage(*plan, *heading));
        if (options.keep) {
            const auto kept = keepOrderList(shop, *plan, asked, context.now);
            if (!kept)
                return tl::unexpected(kept.error());
            answer.json[u"list"] = jsonText(kept->text);
            if (!options.text)
                answer.plain += QStringLiteral("Kept; say with \"ordered %1\" when it is sent.\n")
                                    .arg(q(formatDate(*month).substr(0, 7)));
        }
        if (auto written = writeOrderFiles(*plan, *heading, options, answer); !written)
            return tl::unexpected(written.error());
        return answer;
    });
}

QJsonObject jsonKeptLine(const KeptOrderLine& line)
{
    return QJsonObject { { QStringLiteral("id"), jsonText(line.record.id.text) },
        { QStringLiteral("material"), jsonText(line.materialName) },
        { QStringLiteral("pack"), jsonText(line.record.packName) },
        { QStringLiteral("supplier"), jsonTextOrNull(line.record.supplier) },
        { QStringLiteral("count"), line.wanted }, { QStringLiteral("arrived"), line.arrived },
        { QStringLiteral("state"), q(word(line.state)) },
        { QStringLiteral("ordered"), jsonMoment(line.orderedAt) },
        { QStringLiteral("due"), jsonDate(line.due) }, { QStringLiteral("late_days"), line.lateDays } };
}

QStringList keptRow(const KeptOrderLine& line)
{
    QString state = q(spoken(line.state));
    if (line.lateDays > 0)
        state += QStringLiteral(" by %1 days").arg(line.lateDays);
    return { QStringLiteral("  ") + q(line.record.id.text.substr(0, 8)), q(line.materialName),
        QStringLiteral("%1 x %2").arg(line.wanted).arg(q(line.record.packName)), q(line.record.supplier),
        QStringLiteral("%1 came").arg(line.arrived), state };
}

Result<Answer> orders(CommandContext& context)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        const auto lists = keptOrderLists(shop, asOf);
        if (!lists)
            return tl::unexpected(lists.error());
        Answer answer;
        QJsonArray all;
        for (const KeptOrderList& list : *lists) {
            const auto happened = whatHappened(shop, list, asOf);
            if (!happened)
                return tl::unexpected(happened.error());
            QJsonArray lines, against;
            QList<QStringList> rows, told;
            for (const KeptOrderLine& line : list.lines) {
                lines.append(jsonKeptLine(line));
                rows.append(keptRow(line));
            }
            for (const OrderHappened& each : *happened) {
                against.append(QJsonObject { { QStringLiteral("material"), jsonText(each.materialName) },
                    { QStringLiteral("need"), jsonAmount(each.need) },
                    { QStringLiteral("used"), jsonAmount(each.used) },
                    { QStringLiteral("packs"), each.wanted }, { QStringLiteral("arrived"), each.arrived } });
                told.append({ QStringLiteral("  ") + q(each.materialName), q(each.text) });
            }
            const std::string month = formatDate(list.month).substr(0, 7);
            all.append(QJsonObject { { QStringLiteral("id"), jsonText(list.id.text) },
                { QStringLiteral("month"), jsonText(month) },
                { QStringLiteral("made"), jsonMoment(list.made) }, { QStringLiteral("lines"), lines },
                { QStringLiteral("happened"), against } });
            answer.plain += QStringLiteral("%1, made %2\n").arg(q(month), q(spokenDate(dateOf(list.made))))
                + columns(rows);
            if (startOf(list.month) <= asOf)
                answer.plain += QStringLiteral(" Against what happened:\n") + columns(told);
        }
        answer.json[u"lists"] = all;
        if (lists->empty())
            answer.plain = QStringLiteral("No order list is kept; \"order --keep\" keeps one.\n");
        return answer;
    });
}

Result<Answer> ordered(CommandContext& context, const OrderedOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto lines = orderLinesOf(shop, options.list, options.supplier, asOf);
        if (!lines)
            return tl::unexpected(lines.error());
        std::erase_if(*lines, [&](const KeptOrderLine& line) {
            return !options.line.empty() && !line.record.id.text.starts_with(options.line);
        });
        const OrderEventKind kind = options.count ? OrderEventKind::Counted
            : options.recall                      ? OrderEventKind::Recalled
            : options.close                       ? OrderEventKind::Closed
                                                  : OrderEventKind::Ordered;
        std::vector<OrderLineId> ids;
        for (const KeptOrderLine& line : *lines) {
            // Of a whole list only what it can be said of.
            const bool fits = kind == OrderEventKind::Ordered ? line.state == OrderState::Made
                : kind == OrderEventKind::Closed              ? line.state == OrderState::Late
                    || line.state == OrderState::PartArrived || line.state == OrderState::Ordered
                : kind == OrderEventKind::Recalled ? line.orderedAt && line.arrived == 0
                                                   : !line.orderedAt;
            if (fits || !options.line.empty())
                ids.push_back(line.record.id);
        }
        if (ids.empty())
            return fail(ErrorCode::Refused, "There is no line on that list this could be said of.");
        if (auto changed = changeOrder(shop, ids, kind, options.count, { asOf, context.now }); !changed)
            return tl::unexpected(changed.error());
        const auto now = orderLinesOf(shop, options.list, options.supplier, asOf);
        if (!now)
            return tl::unexpected(now.error());
        Answer answer;
        QJsonArray shown;
        QList<QStringList> rows;
        for (const KeptOrderLine& line : *now) {
            shown.append(jsonKeptLine(line));
            rows.append(keptRow(line));
        }
        answer.json[u"lines"] = shown;
        answer.json[u"changed"] = static_cast<qint64>(ids.size());
        answer.plain = columns(rows);
        return answer;
    });
}

Result<Answer> planned(CommandContext& context, const PlannedOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        if (!options.jobType.empty()) {
            const auto day = parseDate(options.on);
            if (!day)
                return fail(ErrorCode::BadInput, "Say with --on for which day: 2026-12-05.");
            auto made = planJob(shop, { options.jobType, *day, options.pieces, options.piece }, asOf);
            if (!made)
                return tl::unexpected(made.error());
        }
        for (const auto& [id, state] :
            { std::pair(options.done, PlannedState::Done), std::pair(options.drop, PlannedState::Dropped) }) {
            if (id.empty())
                continue;
            if (auto set = setPlanned(shop, id, state, asOf); !set)
                return tl::unexpected(set.error());
        }
        const auto jobs = plannedWork(shop, asOf, options.all);
        if (!jobs)
            return tl::unexpected(jobs.error());
        QJsonArray list;
        QList<QStringList> rows;
        for (const PlannedJob& job : *jobs) {
            list.append(QJsonObject { { QStringLiteral("id"), jsonText(job.record.id.text) },
                { QStringLiteral("job_type"), jsonText(job.jobType) },
                { QStringLiteral("day"), jsonDate(job.record.day) },
                { QStringLiteral("count"), job.record.pieces },
                { QStringLiteral("piece"), jsonTextOrNull(job.record.piece) },
                { QStringLiteral("state"), q(word(job.record.state)) },
                { QStringLiteral("overdue"), job.overdue } });
            rows.append({ q(job.record.id.text.substr(0, 8)), q(spokenDate(job.record.day)),
                QStringLiteral("%1 x %2").arg(job.record.pieces).arg(q(job.jobType)), q(job.record.piece),
                job.overdue ? QStringLiteral("overdue") : q(word(job.record.state)) });
        }
        return Answer { QJsonObject { { QStringLiteral("planned"), list } },
            rows.isEmpty() ? QStringLiteral("No work is planned with a date.\n") : columns(rows), {} };
    });
}

} // namespace

void addOrderCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto orderOptions = std::make_shared<OrderOptions>();
    auto* orderCommand = program.add_subcommand("order", "What to buy for a month, in which pack, and why");
    orderCommand->add_option("--month", orderOptions->month, "YYYY-MM; else the next one");
    orderCommand->add_option(
        "--service", orderOptions->service, "Percent of the time that it should be enough");
    orderCommand->add_option("--budget", orderOptions->budget,
        "Spend at most so much, \"150 EUR\"; what can wait is left for the next list, with the risk of it");
    orderCommand->add_option(
        "--doorstep", orderOptions->doorstep, "The place deliveries wait in, for what frost spoils");
    orderCommand->add_option("--csv", orderOptions->csv, "Write the list to this file too");
    orderCommand->add_option(
        "--pdf", orderOptions->pdf, "Write the list to this file as pages to print or send");
    orderCommand->add_flag(
        "--text", orderOptions->text, "Only what to send, by supplier, as plain text to paste into messages");
    orderCommand->add_option("--more", orderOptions->more, "What if so many more came a month: chair_full=4");
    orderCommand->add_option(
        "--late", orderOptions->late, "What if a supplier were so many days late: NAME=14");
    orderCommand->add_flag("--keep", orderOptions->keep, "Keep the list, to say later what was ordered");
    orderCommand->callback([&context, &pending, orderOptions] {
        pending = [&context, orderOptions] { return order(context, *orderOptions); };
    });

    program.add_subcommand("orders", "The order lists kept: what is ordered, what came, what is late")
        ->callback([&context, &pending] { pending = [&context] { return orders(context); }; });

    auto orderedOptions = std::make_shared<OrderedOptions>();
    auto* orderedCommand = program.add_subcommand("ordered", "Says of a kept list that it is ordered");
    orderedCommand->add_option("LIST", orderedOptions->list, "The month, YYYY-MM, or the list's id")
        ->required();
    orderedCommand->add_option("--supplier", orderedOptions->supplier, "Only what is from there");
    orderedCommand->add_option("--line", orderedOptions->line, "Only this line, by its id");
    auto* count = orderedCommand->add_option(
        "--count", orderedOptions->count, "Not ordered yet: so many packs are wanted; 0 takes it off");
    auto* recall
        = orderedCommand->add_flag("--recall", orderedOptions->recall, "It was not ordered after all");
    auto* close
        = orderedCommand->add_flag("--close", orderedOptions->close, "What has not come will not come");
    count->excludes(recall)->excludes(close);
    recall->excludes(close);
    orderedCommand->callback([&context, &pending, orderedOptions] {
        pending = [&context, orderedOptions] { return ordered(context, *orderedOptions); };
    });

    auto plannedOptions = std::make_shared<PlannedOptions>();
    auto* plannedCommand
        = program.add_subcommand("planned", "Work planned with a date: lists it, adds to it");
    plannedCommand->add_option("JOBTYPE", plannedOptions->jobType, "Add work of this job type");
    plannedCommand->add_option("--on", plannedOptions->on, "For which day: 2026-12-05");
    plannedCommand->add_option("--pieces", plannedOptions->pieces, "How many");
    plannedCommand->add_option("--piece", plannedOptions->piece, "The client's piece");
    plannedCommand->add_option("--done", plannedOptions->done, "This one is done, by its id");
    plannedCommand->add_option("--drop", plannedOptions->drop, "This one will not be done");
    plannedCommand->add_flag("--all", plannedOptions->all, "Those done and dropped too");
    plannedCommand->callback([&context, &pending, plannedOptions] {
        pending = [&context, plannedOptions] { return planned(context, *plannedOptions); };
    });
}

} // namespace gw
