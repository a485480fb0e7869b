#include "shop/lotpieces.h"

#include <algorithm>
#include <unordered_map>

#include "measure/quoted.h"
#include "shop/stock.h"

namespace gw {

namespace {

using ById = std::unordered_map<ContainerId, const ContainerRecord*>;

// The container that a row of decantings began with.
ContainerId firstOf(const ContainerRecord& container, const ById& byId)
{
    const ContainerRecord* at = &container;
    // A damaged store could go round in a ring.
    for (std::size_t step = 0; at->parent && step < byId.size(); ++step) {
        const auto parent = byId.find(*at->parent);
        if (parent == byId.end())
            break;
        at = parent->second;
    }
    return at->id;
}

Result<ById> lookedThrough(const Shop& shop, const std::vector<ContainerRecord>& containers,
    const std::string& asked, std::string& lot)
{
    ById all, found;
    for (const ContainerRecord& container : containers)
        all.emplace(container.id, &container);
    if (!asked.empty()) {
        for (const ContainerRecord& container : containers) {
            if (container.lot == asked)
                found.emplace(container.id, &container);
        }
    }
    if (!found.empty()) {
        lot = asked;
        return found;
    }
    const auto one = findContainer(shop, asked);
    if (!one && one.error().code != ErrorCode::NotFound)
        return tl::unexpected(one.error());
    if (!one)
        return fail(ErrorCode::NotFound,
            "No lot and no container here is called " + inQuotes(asked) + "; look at the label again.");
    lot = one->lot;
    const ContainerId first = firstOf(*one, all);
    for (const ContainerRecord& container : containers) {
        const bool same = lot.empty() ? firstOf(container, all) == first
                                      : container.lot == lot && container.material == one->material;
        if (same)
            found.emplace(container.id, &container);
    }
    return found;
}

LotUse useOf(
    const Entry& entry, const ContainerRecord& container, const JobRecord& job, const Catalogue& catalogue)
{
    LotUse use;
    use.at = entry.at;
    use.piece = job.piece.empty() ? job.name : job.piece;
    use.jobName = job.name;
    use.label = container.label;
    use.amount = Amount { -entry.deltaMilli, container.capacity.dimension };
    if (const auto* material = catalogue.material(container.material))
        use.materialName = material->name;
    if (const auto* cls = catalogue.classOf(container.material)) {
        const auto family = catalogue.families.find(cls->family);
        if (family != catalogue.families.end())
            use.comesApart = family->second.reversibleWith;
    }
    return use;
}

} // namespace

std::vector<std::string> LotPieces::pieces() const
{
    std::vector<std::string> names;
    for (const LotUse& use : uses) {
        if (std::ranges::find(names, use.piece) == names.end())
            names.push_back(use.piece);
    }
    return names;
}

Result<LotPieces> piecesWithLot(const Shop& shop, const std::string& lotOrContainer, Moment asOf)
{
    const auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    LotPieces answer;
    const auto ofLot = lookedThrough(shop, *containers, lotOrContainer, answer.lot);
    if (!ofLot)
        return tl::unexpected(ofLot.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    const auto jobs = shop.store().jobs();
    if (!jobs)
        return tl::unexpected(jobs.error());
    std::unordered_map<JobId, const JobRecord*> jobById;
    for (const JobRecord& job : *jobs)
        jobById.emplace(job.id, &job);
    const auto entries = shop.store().entriesUpTo(asOf);
    if (!entries)
        return tl::unexpected(entries.error());

    const auto reversed = reversedAmong(*entries);
    const auto holds = holdsAmong(*entries, reversed);
    for (const auto& [id, container] : *ofLot) {
        answer.labels.push_back(container->label);
        answer.onHold = answer.onHold || holds.contains(std::pair(container->material, container->lot));
    }
    std::ranges::sort(answer.labels);
    for (const Entry& entry : *entries) {
        const bool taken = entry.kind == EntryKind::Used || entry.kind == EntryKind::Mixed;
        if (!taken || !entry.container || entry.deltaMilli >= 0 || reversed.contains(entry.id))
            continue;
        const auto container = ofLot->find(*entry.container);
        if (container == ofLot->end())
            continue;
        const auto job = entry.job ? jobById.find(*entry.job) : jobById.end();
        if (job == jobById.end())
            ++answer.withoutPiece;
        else
            answer.uses.push_back(useOf(entry, *container->second, *job->second, *catalogue));
    }
    std::ranges::stable_sort(answer.uses, std::ranges::greater {}, &LotUse::at);
    return answer;
}

} // namespace gw
