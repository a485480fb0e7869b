#include "cli/commands.h"

#include "shop/acts.h"

namespace gw {

namespace {

struct ActOptions {
    std::string id, amount, place, why, job, lot, entry, note;
    bool pass = false, failed = false, grainy = false;
    std::optional<double> woodFailure;
};

/// Runs one act at the time --as-of gives, written down now.
template <class Act> Result<Answer> perform(CommandContext& context, Act&& act)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        const ActTime time { asOf, context.now };
        return actAnswer(shop, act(shop, time), context.now);
    });
}

/// The job a use belongs to: the newest of that name or id, else a new one of that name.
Result<JobRecord> jobNamed(const Shop& shop, const std::string& name)
{
    auto jobs = shop.store().jobs();
    if (!jobs)
        return tl::unexpected(jobs.error());
    for (const JobRecord& job : *jobs) {
        if (job.id.text == name || job.name == name || job.piece == name)
            return job;
    }
    JobRecord job;
    job.name = name;
    job.piece = name;
    return job;
}

Result<ActDone> use(Shop& shop, const ActOptions& options, ActTime time)
{
    auto amount = parseAmount(options.amount);
    if (!amount)
        return tl::unexpected(amount.error());
    if (options.job.empty())
        return useSome(shop, options.id, *amount, {}, time);
    auto job = jobNamed(shop, options.job);
    if (!job)
        return tl::unexpected(job.error());
    return useForJob(shop, { { options.id, *amount } }, *job, time);
}

/// Acts on a container with an amount beside it.
using AmountAct = Result<ActDone> (*)(Shop&, const ActOptions&, Amount, ActTime);

} // namespace

void addActCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto options = std::make_shared<ActOptions>();
    using Act = std::function<Result<ActDone>(Shop&, ActTime)>;
    const auto add = [&](const char* name, const char* about, const Act& act) {
        auto* command = program.add_subcommand(name, about);
        command->callback(
            [&context, &pending, act] { pending = [&context, act] { return perform(context, act); }; });
        return command;
    };
    const auto addOnContainer = [&](const char* name, const char* about, const Act& act) {
        auto* command = add(name, about, act);
        command->add_option("ID", options->id, "Our label code, or the id")->required();
        return command;
    };
    const auto addWithAmount = [&](const char* name, const char* about, AmountAct act) {
        auto* command
            = addOnContainer(name, about, [options, act](Shop& shop, ActTime time) -> Result<ActDone> {
                  auto amount = parseAmount(options->amount);
                  if (!amount)
                      return tl::unexpected(amount.error());
                  return act(shop, *options, *amount, time);
              });
        command->add_option("AMOUNT", options->amount, "As people write it: 500g, 8 fl oz, 2 each")
            ->required();
        return command;
    };

    addOnContainer("open", "Opens a container: its opened clock starts",
        [options](Shop& shop, ActTime time) { return openContainer(shop, options->id, time); });
    addOnContainer("move", "Moves a container to another place",
        [options](Shop& shop, ActTime time) { return moveTo(shop, options->id, options->place, time); })
        ->add_option("PLACE", options->place, "Where to; a new name makes a new place")
        ->required();
    auto* useCommand = addOnContainer(
        "use", "Takes some out", [options](Shop& shop, ActTime time) { return use(shop, *options, time); });
    useCommand->add_option("AMOUNT", options->amount, "As people write it: 500g, 8 fl oz, 2 each")
        ->required();
    useCommand->add_option("--job", options->job, "The job or piece it went into");
    addWithAmount("count", "Says how much is really left",
        [](Shop& shop, const ActOptions& o, Amount amount, ActTime time) {
            return countLeft(shop, o.id, amount, time);
        });
    addWithAmount("decant", "Pours some over into a new container, which inherits its dates",
        [](Shop& shop, const ActOptions& o, Amount amount, ActTime time) {
            return decant(shop, o.id, amount, o.place, time);
        })
        ->add_option("--place", options->place, "Where the new container goes; else beside the old one");
    addOnContainer("retire", "Takes a container off the shelf for good",
        [options](Shop& shop, ActTime time) { return retire(shop, options->id, options->why, time); })
        ->add_option("--why", options->why, "Used up, gone off, froze, spilt ...")
        ->required();

    auto* testCommand = addOnContainer("test", "Records a bench test", [options](Shop& shop, ActTime time) {
        return recordTest(
            shop, options->id, { options->pass, options->woodFailure, options->grainy, options->note }, time);
    });
    auto* result = testCommand->add_option_group("result", "How it went")->require_option(1);
    result->add_flag("--pass", options->pass, "It passed");
    result->add_flag("--fail", options->failed, "It failed");
    testCommand->add_option(
        "--wood-failure", options->woodFailure, "Percent of the broken face that tore in the wood");
    testCommand->add_flag("--grainy", options->grainy, "Grainy after frost");
    testCommand->add_option("--note", options->note, "What was seen");

    auto* holdCommand = add("hold", "Holds back every container of a lot",
        [options](Shop& shop, ActTime time) { return holdLot(shop, options->lot, options->why, time); });
    holdCommand->add_option("LOT", options->lot, "The maker's batch number")->required();
    holdCommand->add_option("--why", options->why, "Why");
    add("release", "Releases a lot held back",
        [options](Shop& shop, ActTime time) { return releaseLot(shop, options->lot, time); })
        ->add_option("LOT", options->lot, "The maker's batch number")
        ->required();
    add("undo", "Takes an act back: reverses its entries",
        [options](Shop& shop, ActTime time) { return undo(shop, EntryId { options->entry }, time.now); })
        ->add_option("ENTRY", options->entry, "The entry, as show and the acts name it")
        ->required();
}

} // namespace gw
