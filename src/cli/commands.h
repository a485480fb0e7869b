#pragma once

#include <functional>
#include <optional>
#include <string>

#include <CLI/App.hpp>

#include "cli/answer.h"
#include "cli/context.h"
#include "shop/acts.h"

namespace gw {

/// What the parsed command line asks for; set by the one command that was named.
using PendingCommand = std::function<Result<Answer>()>;

/// Each adds its commands to the program; parsing one of them sets pending.
void addShelfCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addActCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addArrivalCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addRecordCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addCalendarCommand(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addWasteCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addOrderCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addPieceCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addFailedCommand(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addWorkCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addMixCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addBatchCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addGlueCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addCareCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addSetupCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addPlaceCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addClimateCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addReadingsCommand(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addLabelCommand(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addStockCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);
void addFigureCommands(CLI::App& program, CommandContext& context, PendingCommand& pending);

/// What an act answers: its entry, and the containers and the batch as they are after it.
Result<Answer> actAnswer(const Shop& shop, const Result<ActDone>& done, Moment now);

/// --place and --load, as the check and the choice of a glue have them.
void addPieceOptions(CLI::App& command, std::string& place, std::string& load);
/// "period" is an old piece, "modern" a modern one; "yes" and "no"; anything else was not said.
std::optional<bool> periodOfWord(const std::string& word);
std::optional<bool> yesOrNo(const std::string& word);

/// Runs steps on the shop: the frame of most commands.
template <class Steps> Result<Answer> withShop(CommandContext& context, Steps&& steps)
{
    auto shop = context.shop();
    if (!shop)
        return tl::unexpected(shop.error());
    auto asOf = context.asOf();
    if (!asOf)
        return tl::unexpected(asOf.error());
    return steps(**shop, *asOf);
}

} // namespace gw
