#include "cli/commands.h"
#include "cli/json.h"

#include <QJsonArray>

#include "shop/care.h"

namespace gw {

namespace {

Answer reportAnswer(const StoreReport& report, const QString& done)
{
    Answer answer;
    QJsonArray problems;
    for (const std::string& problem : report.problems) {
        problems.append(jsonText(problem));
        answer.plain += QString::fromStdString(problem) + u'\n';
    }
    answer.json[u"ok"] = report.ok;
    answer.json[u"engine"] = jsonText(report.engine);
    answer.json[u"schema"] = report.schemaVersion;
    answer.json[u"containers"] = static_cast<qint64>(report.containers);
    answer.json[u"entries"] = static_cast<qint64>(report.entries);
    answer.json[u"problems"] = problems;
    if (report.ok)
        answer.plain = QStringLiteral("%1 %2 containers, %3 entries.\n")
                           .arg(done)
                           .arg(report.containers)
                           .arg(report.entries);
    else
        answer.complaint = "The store has faults; restore the newest backup that is whole.";
    return answer;
}

} // namespace

void addCareCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto* demoCommand
        = program.add_subcommand("demo", "Fills an empty store with the invented demonstration shop");
    demoCommand->callback([&context, &pending] {
        pending = [&context] {
            return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
                auto counts = fillDemo(shop, asOf);
                if (!counts)
                    return tl::unexpected(counts.error());
                Answer answer;
                answer.json = QJsonObject { { QStringLiteral("containers"), counts->containers },
                    { QStringLiteral("materials"), counts->materials },
                    { QStringLiteral("places"), counts->places }, { QStringLiteral("jobs"), counts->jobs } };
                answer.plain = QStringLiteral(
                    "The demonstration shop is in: %1 containers of %2 materials in %3 places.\n")
                                   .arg(counts->containers)
                                   .arg(counts->materials)
                                   .arg(counts->places);
                return answer;
            });
        };
    });

    auto file = std::make_shared<std::string>();
    auto* backupCommand
        = program.add_subcommand("backup", "Writes the whole store to one file, from either engine");
    backupCommand->add_option("FILE", *file, "The file to write")->required();
    backupCommand->callback([&context, &pending, file] {
        pending = [&context, file] {
            return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
                auto report = shop.store().backup(*file);
                if (!report)
                    return tl::unexpected(report.error());
                return reportAnswer(*report, QStringLiteral("Backed up:"));
            });
        };
    });

    auto* restoreCommand
        = program.add_subcommand("restore", "Puts a backup in the place of all that is in the store");
    restoreCommand->add_option("FILE", *file, "The backup")->required();
    restoreCommand->callback([&context, &pending, file] {
        pending = [&context, file] {
            return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
                auto restored
                    = restoreBackup(shop, *file, defaultBackupFolder(shop.store().location()), context.now);
                if (!restored)
                    return tl::unexpected(restored.error());
                Answer answer = reportAnswer(restored->report, QStringLiteral("Restored:"));
                answer.json[u"kept"] = jsonText(restored->kept);
                answer.plain += QStringLiteral("What was there before is kept in %1\n")
                                    .arg(QString::fromStdString(restored->kept));
                return answer;
            });
        };
    });

    auto* verifyCommand
        = program.add_subcommand("verify", "Looks at everything that should hold in the store");
    verifyCommand->callback([&context, &pending] {
        pending = [&context] {
            return withShop(context, [&](Shop& shop, Moment) -> Result<Answer> {
                auto report = shop.store().verify();
                if (!report)
                    return tl::unexpected(report.error());
                return reportAnswer(*report, QStringLiteral("Everything holds:"));
            });
        };
    });
}

} // namespace gw
