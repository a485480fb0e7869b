#include "cli/checkoptions.h"
#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include "shop/work.h"

namespace gw {

namespace {

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
}

} // namespace gw
