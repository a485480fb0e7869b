#include "shop/work.h"

#include <algorithm>

#include <QString>

#include "shop/stock.h"

namespace gw {

Result<std::vector<PieceLine>> pieceRecord(const Shop& shop, const std::string& piece)
{
    auto jobs = shop.store().jobs();
    if (!jobs)
        return tl::unexpected(jobs.error());
    const QString asked = QString::fromStdString(piece).simplified();
    std::map<JobId, std::string> ofPiece;
    for (const JobRecord& job : *jobs) {
        for (const std::string* name : { &job.piece, &job.name }) {
            if (QString::fromStdString(*name).simplified().compare(asked, Qt::CaseInsensitive) == 0)
                ofPiece.emplace(job.id, job.name);
        }
    }
    if (ofPiece.empty())
        return fail(ErrorCode::NotFound, "Nothing is recorded for a piece called \"" + piece + "\".");

    auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    auto entries = shop.store().entriesUpTo(Moment::max());
    if (!entries)
        return tl::unexpected(entries.error());
    auto containers = shop.store().containers();
    if (!containers)
        return tl::unexpected(containers.error());
    std::map<ContainerId, const ContainerRecord*> byId;
    for (const ContainerRecord& container : *containers)
        byId.emplace(container.id, &container);

    const auto reversed = reversedAmong(*entries);
    std::vector<PieceLine> lines;
    for (const Entry& entry : *entries) {
        if (!entry.job || !entry.container || entry.deltaMilli >= 0 || reversed.contains(entry.id))
            continue;
        const auto job = ofPiece.find(*entry.job);
        const auto container = byId.find(*entry.container);
        if (job == ofPiece.end() || container == byId.end())
            continue;
        PieceLine line;
        line.at = entry.at;
        line.jobName = job->second;
        line.label = container->second->label;
        line.lot = container->second->lot;
        line.amount = Amount { -entry.deltaMilli, container->second->capacity.dimension };
        if (const auto* material = catalogue->material(container->second->material))
            line.materialName = material->name;
        if (const auto* cls = catalogue->classOf(container->second->material)) {
            const auto family = catalogue->families.find(cls->family);
            if (family != catalogue->families.end())
                line.comesApart = family->second.reversibleWith;
        }
        lines.push_back(std::move(line));
    }
    std::sort(lines.begin(), lines.end(), [](const PieceLine& a, const PieceLine& b) { return a.at > b.at; });
    return lines;
}

} // namespace gw
