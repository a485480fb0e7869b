#include "cli/commandline.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstring>
#include <string_view>
#include <vector>

#include <QGuiApplication>
#include <QLoggingCategory>
#include <QString>

#include <CLI/CLI.hpp>

#include "cli/commands.h"
#include "cli/words.h"
#include "scan/symbolreader.h"
#include "shop/work.h"

namespace gw {

namespace {

constexpr int wrongUsage = 2;

std::unique_ptr<CLI::App> makeProgram(CommandContext& context, PendingCommand& pending)
{
    auto program = std::make_unique<CLI::App>(
        "Keeps a furniture restorer's shelf of glues, finishes and consumables true.\n"
        "With no command it opens the window; with one it answers here.",
        "gluewright");
    program->set_version_flag("--version", [] {
        return QCoreApplication::applicationVersion().toStdString() + "\nReads symbols with " + engineNames();
    });
    program->add_option("--store", context.storeWhere, "The store: a file, or postgresql://...");
    program->add_option("--as-of", context.asOfText, "Answer as of then, or write for then (ISO 8601)");
    program->add_flag("--json", context.json, "Answer for programs");
    program->add_option("--units", context.unitsText, "How amounts are written")
        ->check(CLI::IsMember({ "metric", "us" }));
    program->fallthrough();
    program->require_subcommand(1);
    addShelfCommands(*program, context, pending);
    addActCommands(*program, context, pending);
    addArrivalCommands(*program, context, pending);
    addWorkCommands(*program, context, pending);
    addOrderCommands(*program, context, pending);
    addWasteCommands(*program, context, pending);
    addCalendarCommand(*program, context, pending);
    addMixCommands(*program, context, pending);
    addBatchCommands(*program, context, pending);
    addGlueCommands(*program, context, pending);
    addRecordCommands(*program, context, pending);
    addPieceCommands(*program, context, pending);
    addFailedCommand(*program, context, pending);
    addCareCommands(*program, context, pending);
    addSetupCommands(*program, context, pending);
    addPlaceCommands(*program, context, pending);
    addClimateCommands(*program, context, pending);
    addReadingsCommand(*program, context, pending);
    addLabelCommand(*program, context, pending);
    addStockCommands(*program, context, pending);
    addFigureCommands(*program, context, pending);
    return program;
}

/// A negative amount is an amount that cannot be, not an option; a space before it keeps the parser from
/// taking it for one.
std::vector<std::string> argumentsOf(int argc, char** argv)
{
    std::vector<std::string> arguments;
    for (int i = argc - 1; i > 0; --i) {
        const std::string_view argument = argv[i];
        const bool negative = argument.size() > 1 && argument[0] == '-'
            && (std::isdigit(static_cast<unsigned char>(argument[1])) || argument[1] == '.');
        arguments.push_back((negative ? " " : "") + std::string(argument));
    }
    return arguments;
}

void setUpCore()
{
    QCoreApplication::setApplicationName(QStringLiteral("gluewright"));
    QCoreApplication::setApplicationVersion(QStringLiteral(GW_VERSION));
}

/// Pages are drawn with letters, which takes a kind of application that is slower to start; no window is
/// shown.
std::unique_ptr<QCoreApplication> application(int argc, char** argv)
{
    static std::array<char, 10> option { "-platform" };
    static std::array<char, 10> value { "offscreen" };
    static std::array<char*, 4> arguments { argv[0], option.data(), value.data(), nullptr };
    const bool draws = std::any_of(argv, argv + argc, [](std::string_view argument) {
        return argument.starts_with("--pdf") || argument.starts_with("--printer");
    });
    static int count = draws ? 3 : 1;
    if (draws)
        return std::make_unique<QGuiApplication>(count, arguments.data());
    return std::make_unique<QCoreApplication>(count, arguments.data());
}

} // namespace

bool isCommand(int argc, char** argv)
{
    // The window has options of its own; whatever is no option of the window's asks for an answer here.
    for (int i = 1; i < argc; ++i) {
        const std::string_view argument = argv[i];
        if (argument == "--help" || argument == "-h" || argument == "--version")
            return true;
        if (argument == "--store" || argument == "--camera" || argument == "--theme"
            || argument == "--units") {
            ++i;
            continue;
        }
        if (!argument.starts_with("-"))
            return true;
        if (argument == "--json" || argument.starts_with("--as-of"))
            return true;
    }
    return false;
}

int runCommand(int argc, char** argv)
{
    setUpCore();
    const auto core = application(argc, argv);
    // One sentence of ours says what is wrong with a picture or a store; the libraries' own remarks only hide
    // it.
    QLoggingCategory::setFilterRules(QStringLiteral("qt.*.warning=false"));
    CommandContext context;
    context.now = clockNow();
    PendingCommand pending;
    const auto program = makeProgram(context, pending);
    try {
        program->parse(argumentsOf(argc, argv));
    } catch (const CLI::ParseError& error) {
        const int status = program->exit(error);
        return status == 0 ? 0 : wrongUsage;
    }
    return print(pending
            ? pending()
            : fail(ErrorCode::BadInput, "Say what you want to know; gluewright --help lists it."),
        context.json);
}

int runWithoutDisplay(const std::string& where)
{
    setUpCore();
    CommandContext context;
    context.storeWhere = where;
    context.now = clockNow();
    auto shop = context.shop();
    if (!shop)
        return print(tl::unexpected(shop.error()), false);

    auto items = shelf(**shop, { context.now, {}, {}, {}, false, true });
    if (!items)
        return print(tl::unexpected(items.error()), false);
    Answer answer;
    answer.plain = QStringLiteral("Today's shelf\n") + shelfTable(*items, (*shop)->units());
    auto glueUp = checkJob(**shop, "chair_full", 1, {}, context.now);
    if (!glueUp)
        return print(tl::unexpected(glueUp.error()), false);
    answer.plain += QStringLiteral("\nBefore gluing one chair (gluewright check chair_full --air 20C ...)\n")
        + glueUpText(*glueUp, (*shop)->units());

    const Date today = dateOf(context.now);
    const Date month = addMonths(Date { today.year(), today.month(), std::chrono::day { 1 } }, 1);
    auto plan = orderForMonth(**shop, { month, 95 }, context.now);
    if (!plan)
        return print(tl::unexpected(plan.error()), false);
    answer.plain += u'\n' + orderText(*plan, month, (*shop)->units());
    answer.plain += QStringLiteral("\nThere is no display here. For the window run the same command on a "
                                   "desktop, or under a virtual display:\n"
                                   "  xvfb-run -s \"-screen 0 1280x800x24\" gluewright\n"
                                   "For an invented shop to look at: gluewright demo\n");
    return print(answer, false);
}

} // namespace gw
