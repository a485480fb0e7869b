#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include "shop/shopcalendar.h"

namespace gw {

namespace {

Result<Answer> calendar(CommandContext& context, const std::string& file)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        const auto days = shopCalendar(shop, asOf);
        if (!days)
            return tl::unexpected(days.error());
        const auto name = shop.store().setting("shop_name");
        if (!name)
            return tl::unexpected(name.error());
        if (auto written = writeCalendar(*days, name->value_or(std::string()), asOf, q(file)); !written)
            return tl::unexpected(written.error());
        Answer answer;
        answer.json[u"file"] = jsonText(file);
        answer.json[u"days"] = static_cast<qint64>(days->size());
        answer.plain = QStringLiteral("%1 days written to %2; importing it again updates them.\n")
                           .arg(days->size())
                           .arg(q(file));
        return answer;
    });
}

} // namespace

void addCalendarCommand(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto file = std::make_shared<std::string>();
    auto* command = program.add_subcommand(
        "calendar", "Good-until, order and delivery days and work planned, as an iCalendar file");
    command->add_option("FILE", *file, "The file to write: shop.ics")->required();
    command->callback(
        [&context, &pending, file] { pending = [&context, file] { return calendar(context, *file); }; });
}

} // namespace gw
