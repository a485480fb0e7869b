#include "shop/usehistory.h"

#include <algorithm>
#include <set>

#include "shop/stock.h"

namespace gw {

namespace {

/// Which of the months before the plan a moment falls in: 0 the oldest; none outside them.
std::optional<std::size_t> monthIndex(Moment at, Date monthStart)
{
    const Date day = dateOf(at);
    const auto back = (monthStart.year() / monthStart.month()) - (day.year() / day.month());
    const int months = static_cast<int>(back.count());
    if (months < 1 || months > UseHistory::monthsLearned)
        return std::nullopt;
    return static_cast<std::size_t>(UseHistory::monthsLearned - months);
}

bool takesOut(const Entry& entry)
{
    return entry.container && entry.deltaMilli < 0
        && (entry.kind == EntryKind::Used || entry.kind == EntryKind::Mixed
            || entry.kind == EntryKind::Counted);
}

/// Containers by id, and what is left of an entry's change in the units the material is planned in.
class Takings {
public:
    Takings(const std::vector<ContainerRecord>& containers, const Catalogue& catalogue)
        : m_catalogue(catalogue)
    {
        for (const ContainerRecord& container : containers)
            m_containers.emplace(container.id, &container);
    }

    std::optional<std::pair<MaterialId, double>> of(const Entry& entry) const
    {
        const auto found = m_containers.find(*entry.container);
        if (found == m_containers.end())
            return std::nullopt;
        const ContainerRecord& container = *found->second;
        const ClassRecord* cls = m_catalogue.classOf(container.material);
        const MaterialRecord* material = m_catalogue.material(container.material);
        if (!cls || !material)
            return std::nullopt;
        const auto own = convert(Amount { -entry.deltaMilli, container.capacity.dimension }, cls->countedIn,
            densityOf(*cls, *material));
        if (!own)
            return std::nullopt;
        return std::pair(container.material, own->value());
    }

private:
    const Catalogue& m_catalogue;
    std::map<ContainerId, const ContainerRecord*> m_containers;
};

void countJobs(const std::map<JobTypeId, std::vector<Moment>>& done, Moment now, UseHistory& history)
{
    const Moment oldest = later(now, -meanMonth * UseHistory::monthsLearned);
    for (const auto& [type, moments] : done) {
        const Moment first = *std::min_element(moments.begin(), moments.end());
        const Moment from = std::max(first, oldest);
        JobsSeen& seen = history.seen[type];
        seen.months = daysBetween(from, now) / meanMonth;
        seen.jobs = static_cast<double>(
            std::count_if(moments.begin(), moments.end(), [&](Moment at) { return at > from; }));
    }
}

} // namespace

std::vector<double> UseHistory::weighed(const JobTypeId& type, const MaterialId& material) const
{
    std::vector<double> amounts;
    for (const JobTaking& taking : jobs) {
        if (taking.type == type && taking.material == material)
            amounts.push_back(taking.amount);
    }
    return amounts;
}

Result<UseHistory> useHistory(const Shop& shop, const Catalogue& catalogue, Date monthStart, Moment now)
{
    auto entries = shop.store().entriesUpTo(now);
    if (!entries)
        return tl::unexpected(entries.error());
    auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    auto jobs = shop.store().jobs();
    if (!jobs)
        return tl::unexpected(jobs.error());

    std::map<JobId, const JobRecord*> jobOf;
    for (const JobRecord& job : *jobs)
        jobOf.emplace(job.id, &job);
    const Takings takings(*containers, catalogue);
    const auto reversed = reversedAmong(*entries);
    UseHistory history;
    if (!entries->empty()) {
        const Moment begun
            = std::min_element(entries->begin(), entries->end(), [](const Entry& a, const Entry& b) {
                  return a.at < b.at;
              })->at;
        const auto oldest = monthIndex(begun, monthStart);
        const bool longAgo = begun < startOf(addMonths(monthStart, -UseHistory::monthsLearned));
        // The month it was begun in is no whole one.
        history.monthsKept = longAgo ? UseHistory::monthsLearned
            : oldest                 ? UseHistory::monthsLearned - 1 - *oldest
                                     : 0;
    }
    std::map<std::pair<JobId, MaterialId>, JobTaking> byJob;
    std::map<JobId, Moment> started;
    for (const Entry& entry : *entries) {
        if (!takesOut(entry) || reversed.contains(entry.id))
            continue;
        const auto taken = takings.of(entry);
        if (!taken)
            continue;
        const auto& [material, amount] = *taken;
        const auto job = entry.job ? jobOf.find(*entry.job) : jobOf.end();
        const JobTypeId type = job == jobOf.end() ? JobTypeId {} : job->second->type;
        if (const auto month = monthIndex(entry.at, monthStart))
            history.months.push_back({ *month, material, type, amount });
        if (type.empty())
            continue;
        const Moment at = job->second->at.value_or(entry.at);
        auto& taking
            = byJob.try_emplace({ job->first, material }, JobTaking { type, material, at }).first->second;
        taking.at = std::min(taking.at, at);
        taking.amount += amount;
        const auto start = started.try_emplace(job->first, at).first;
        start->second = std::min(start->second, at);
    }
    for (const auto& [key, taking] : byJob)
        history.jobs.push_back(taking);
    std::stable_sort(history.jobs.begin(), history.jobs.end(),
        [](const JobTaking& a, const JobTaking& b) { return a.at < b.at; });
    std::map<JobTypeId, std::vector<Moment>> done;
    for (const auto& [job, at] : started)
        done[jobOf.at(job)->type].push_back(at);
    countJobs(done, now, history);
    const auto planned = shop.store().plannedJobs();
    if (!planned)
        return tl::unexpected(planned.error());
    for (const PlannedJobRecord& job : *planned) {
        if (job.state == PlannedState::Open)
            history.planned[job.type].insert(
                history.planned[job.type].end(), static_cast<std::size_t>(job.pieces), job.day);
    }
    return history;
}

} // namespace gw
