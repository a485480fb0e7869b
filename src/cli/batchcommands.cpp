#include <array>

#include <QJsonArray>

#include "cli/batchwords.h"
#include "cli/commands.h"
#include "cli/json.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr Days allTime { 100'000 };

struct BatchOptions {
    std::string id, kind, temperature, weight, amount, job, text, who;
    bool all = false;
};

/// What people type for each kind of note, in the order of the day.
constexpr std::array noteWords { BatchNoteKind::Soaked, BatchNoteKind::HeatOn, BatchNoteKind::HeatRead,
    BatchNoteKind::HeatOff, BatchNoteKind::ToppedUp, BatchNoteKind::Weighed, BatchNoteKind::Chilled,
    BatchNoteKind::Frozen, BatchNoteKind::Used, BatchNoteKind::UsedUp, BatchNoteKind::Spoiled,
    BatchNoteKind::ThrownAway, BatchNoteKind::Remark };

std::vector<std::string> kindNames()
{
    std::vector<std::string> names;
    for (const BatchNoteKind kind : noteWords)
        names.emplace_back(word(kind));
    return names;
}

Result<BatchNoteAsked> askedOf(const BatchOptions& o)
{
    BatchNoteAsked asked;
    asked.kind = batchNoteKindOfWord(o.kind).value_or(BatchNoteKind::Remark);
    asked.text = o.text;
    asked.who = o.who;
    if (!o.temperature.empty()) {
        const auto degrees = parseTemperature(o.temperature);
        if (!degrees)
            return tl::unexpected(degrees.error());
        asked.temperature = *degrees;
    }
    for (auto& [text, into] :
        { std::pair { &o.weight, &asked.weight }, std::pair { &o.amount, &asked.amount } }) {
        if (text->empty())
            continue;
        const auto amount = parseAmount(*text);
        if (!amount)
            return tl::unexpected(amount.error());
        *into = *amount;
    }
    return asked;
}

Result<JobId> jobNamed(const Shop& shop, const std::string& name)
{
    const auto jobs = shop.store().jobs();
    if (!jobs)
        return tl::unexpected(jobs.error());
    for (const JobRecord& job : *jobs) {
        if (job.id.text == name || job.name == name || job.piece == name)
            return job.id;
    }
    return fail(ErrorCode::NotFound,
        "There is no job and no piece " + inQuotes(name) + " in this shop; record a use for it first.");
}

Result<Answer> list(const Shop& shop, bool all, Moment asOf)
{
    const auto states = batchesAsOf(shop, asOf, all ? allTime : Days { 0 });
    if (!states)
        return tl::unexpected(states.error());
    QJsonArray batches;
    for (const BatchState& state : *states) {
        const auto json = jsonBatch(shop, state);
        if (!json)
            return tl::unexpected(json.error());
        batches.append(*json);
    }
    return Answer { { { QStringLiteral("batches"), batches } }, batchTable(*states, shop.units(), asOf), {} };
}

Result<Answer> show(const Shop& shop, const std::string& id, Moment asOf)
{
    const auto state = batchAsOf(shop, id, asOf);
    if (!state)
        return tl::unexpected(state.error());
    const auto json = jsonBatch(shop, *state);
    const auto text = batchText(shop, *state);
    if (!json || !text)
        return tl::unexpected(json ? text.error() : json.error());
    return Answer { *json, *text, {} };
}

Result<Answer> note(Shop& shop, const BatchOptions& o, ActTime time)
{
    auto asked = askedOf(o);
    if (!asked)
        return tl::unexpected(asked.error());
    if (!o.job.empty()) {
        const auto job = jobNamed(shop, o.job);
        if (!job)
            return tl::unexpected(job.error());
        asked->job = *job;
    }
    return actAnswer(shop, noteBatch(shop, o.id, *asked, time), time.now);
}

void addNoteCommand(
    CLI::App& batch, CommandContext& context, PendingCommand& pending, const std::shared_ptr<BatchOptions>& o)
{
    auto* command = batch.add_subcommand("note", "Notes what happened to a batch");
    command->add_option("ID", o->id, "The batch's label code, or its id")->required();
    command->add_option("WHAT", o->kind, "What happened")->required()->check(CLI::IsMember(kindNames()));
    command->add_option("--temp", o->temperature, "Of the glue: 61C, 142F");
    command->add_option("--weight", o->weight, "Vessel and glue together: 312g");
    command->add_option("--amount", o->amount, "Used: how much, 20g");
    command->add_option("--job", o->job, "Used: the job or piece it went into");
    command->add_option("--text", o->text, "What was seen or done");
    command->add_option("--who", o->who, "Who did it");
    command->callback([&context, &pending, o] {
        pending = [&context, o] {
            return withShop(
                context, [&](Shop& shop, Moment asOf) { return note(shop, *o, { asOf, context.now }); });
        };
    });
}

} // namespace

Result<Answer> actAnswer(const Shop& shop, const Result<ActDone>& done, Moment now)
{
    if (!done)
        return tl::unexpected(done.error());
    Answer answer;
    QJsonArray containers, batches;
    for (const ContainerId& id : done->containers) {
        auto page = containerPage(shop, id.text, now);
        // An undone arrival leaves no container to show.
        if (!page && page.error().code == ErrorCode::NotFound)
            continue;
        if (!page)
            return tl::unexpected(page.error());
        containers.append(jsonShelfItem(page->item));
    }
    for (const BatchId& id : done->batches) {
        const auto state = batchAsOf(shop, id.text, now);
        if (!state)
            return tl::unexpected(state.error());
        const auto json = jsonBatch(shop, *state);
        if (!json)
            return tl::unexpected(json.error());
        batches.append(*json);
    }
    answer.json[u"entry"] = jsonText(done->entry.text);
    answer.json[u"act"] = jsonText(done->act.text);
    answer.json[u"said"] = jsonText(done->said);
    answer.json[u"container"] = containers.isEmpty() ? QJsonValue() : containers.first();
    answer.json[u"containers"] = containers;
    if (!batches.isEmpty())
        answer.json[u"batch"] = batches.first();
    answer.plain = QString::fromStdString(
        done->said + "\nTo take it back: gluewright undo " + done->entry.text + "\n");
    return answer;
}

void addBatchCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto o = std::make_shared<BatchOptions>();
    auto* batch = program.add_subcommand("batch", "What was mixed: its clocks, and what happened to it");
    batch->require_subcommand(1);
    auto* listing = batch->add_subcommand("list", "What is mixed now");
    listing->add_flag("--all", o->all, "What is gone as well");
    listing->callback([&context, &pending, o] {
        pending = [&context, o] {
            return withShop(context, [&](Shop& shop, Moment asOf) { return list(shop, o->all, asOf); });
        };
    });
    auto* showing = batch->add_subcommand("show", "One batch");
    showing->add_option("ID", o->id, "The batch's label code, or its id")->required();
    showing->callback([&context, &pending, o] {
        pending = [&context, o] {
            return withShop(context, [&](Shop& shop, Moment asOf) { return show(shop, o->id, asOf); });
        };
    });
    addNoteCommand(*batch, context, pending, o);
}

} // namespace gw
