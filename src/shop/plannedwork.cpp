#include "shop/plannedwork.h"

#include <algorithm>
#include <map>

#include "measure/quoted.h"
#include "shop/actbuilder.h"
#include "shop/setup.h"

namespace gw {

namespace {

constexpr int mostPieces = 1000;
constexpr int furthestDays = 731;

PlannedJob shown(const PlannedJobRecord& record, const std::string& jobType, Moment now)
{
    const bool over = std::chrono::sys_days { record.day } < std::chrono::sys_days { dateOf(now) };
    return { record, jobType, record.state == PlannedState::Open && over };
}

} // namespace

Result<std::vector<PlannedJob>> plannedWork(const Shop& shop, Moment now, bool all)
{
    const auto records = shop.store().plannedJobs();
    if (!records)
        return tl::unexpected(records.error());
    const auto types = shop.store().jobTypes();
    if (!types)
        return tl::unexpected(types.error());
    std::map<JobTypeId, std::string> names;
    for (const JobTypeRecord& type : *types)
        names.emplace(type.id, type.name);
    std::vector<PlannedJob> jobs;
    for (const PlannedJobRecord& record : *records) {
        if (all || record.state == PlannedState::Open)
            jobs.push_back(shown(record, names[record.type], now));
    }
    return jobs;
}

Result<PlannedJob> planJob(Shop& shop, const PlannedDraft& draft, Moment now)
{
    const auto type = findJobType(shop, draft.jobType);
    if (!type)
        return tl::unexpected(type.error());
    if (draft.pieces < 1 || draft.pieces > mostPieces)
        return fail(ErrorCode::BadInput, "Give how many are planned, from 1 to 1000.");
    const auto ahead = (std::chrono::sys_days { draft.day } - std::chrono::sys_days { dateOf(now) }).count();
    if (!draft.day.ok() || ahead < -1)
        return fail(
            ErrorCode::BadInput, "That day is past; work that was done is noted where its glue is used.");
    if (ahead > furthestDays)
        return fail(ErrorCode::BadInput, "That day is more than two years ahead; give one within that.");
    PlannedJobRecord record { PlannedJobId { newUuid() }, type->id, draft.day, draft.pieces, draft.piece,
        PlannedState::Open };
    if (auto saved = shop.store().savePlannedJob(record, now); !saved)
        return tl::unexpected(saved.error());
    return shown(record, type->name, now);
}

Result<PlannedJob> setPlanned(Shop& shop, const std::string& id, PlannedState state, Moment now)
{
    const auto jobs = plannedWork(shop, now, true);
    if (!jobs)
        return tl::unexpected(jobs.error());
    std::vector<const PlannedJob*> found;
    for (const PlannedJob& job : *jobs) {
        if (!id.empty() && job.record.id.text.starts_with(id))
            found.push_back(&job);
    }
    if (found.empty())
        return fail(
            ErrorCode::NotFound, "No planned job begins with " + inQuotes(id) + "; \"planned\" lists them.");
    if (found.size() > 1)
        return fail(
            ErrorCode::Conflict, "Several planned jobs begin with " + inQuotes(id) + "; give more of it.");
    PlannedJobRecord record = found.front()->record;
    record.state = state;
    if (auto saved = shop.store().savePlannedJob(record, now); !saved)
        return tl::unexpected(saved.error());
    return shown(record, found.front()->jobType, now);
}

} // namespace gw
