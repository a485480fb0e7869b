#include "cli/checkoptions.h"

#include <CLI/CLI.hpp>

#include "cli/commands.h"

namespace gw {

void addCheckOptions(CLI::App& command, CheckOptions& options)
{
    command.add_option("JOBTYPE", options.jobType, "The job type's key or name (see: jobtypes)")->required();
    command.add_option("--pieces", options.pieces, "How many");
    command.add_option("--air", options.air, "The room's temperature: 18C, 65F");
    command.add_option("--wood", options.wood, "The wood's temperature");
    command.add_option("--rh", options.humidity, "The room's relative humidity, percent");
    command.add_option("--wood-moisture", options.moisture, "The wood's moisture, percent of its dry mass");
    command.add_option("--gap", options.gap, "The widest gap of the joint, mm");
    command.add_option(
        "--other-moisture", options.otherMoisture, "The other part's moisture, where it was measured too");
    command.add_option("--glue", options.glue, "The glue's temperature, in pot or bottle");
    command.add_option("--joint", options.joint, "The kind of joint, by key, name or a part of it");
    command.add_option("--residue", options.residue, "What is still in the joint: wax, hide_old, pva_film");
    command.add_option("--surface-age", options.surfaceAge, "Hours since the faces were planed or scraped");
    command.add_option("--thickness", options.thickness, "The piece's thickest part, mm");
    command.add_option("--wood-stood", options.woodStood, "The place where the wood stood for weeks");
    command.add_option("--batch", options.batch,
        "The batch that will be used, by its label code; - for none. Else the best one mixed");
    addPieceOptions(command, options.place, options.load);
    command.add_option("--barrier", options.barrier, "A barrier coat of hide glue is laid")
        ->check(CLI::IsMember({ "yes", "no" }));
    command.add_option("--ventilated", options.ventilated, "The room is aired, with no flame or hot pot")
        ->check(CLI::IsMember({ "yes", "no" }));
}

Result<Conditions> conditionsOf(const CheckOptions& options)
{
    Conditions conditions;
    const auto temperature = [](const std::string& text, std::optional<Celsius>& into) -> Result<void> {
        if (text.empty())
            return {};
        auto read = parseTemperature(text);
        if (!read)
            return tl::unexpected(read.error());
        into = *read;
        return {};
    };
    if (auto read = temperature(options.air, conditions.air); !read)
        return tl::unexpected(read.error());
    if (auto read = temperature(options.wood, conditions.wood); !read)
        return tl::unexpected(read.error());
    if (auto read = temperature(options.glue, conditions.glue); !read)
        return tl::unexpected(read.error());
    conditions.humidity = options.humidity;
    conditions.woodMoisture = options.moisture;
    conditions.otherMoisture = options.otherMoisture;
    conditions.gapMm = options.gap;
    conditions.surfaceAgeHours = options.surfaceAge;
    conditions.thicknessMm = options.thickness;
    conditions.joint = options.joint;
    conditions.residue = options.residue;
    conditions.woodStood = options.woodStood;
    conditions.batch = options.batch;
    conditions.period = periodOfWord(options.period);
    conditions.barrier = yesOrNo(options.barrier);
    conditions.ventilated = yesOrNo(options.ventilated);
    conditions.servicePlace = servicePlaceOfWord(options.place);
    conditions.load = loadOfWord(options.load);
    return conditions;
}

} // namespace gw
