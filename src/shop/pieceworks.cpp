#include "shop/pieceworks.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <unordered_map>

#include <QString>

#include "shop/stock.h"

namespace gw {

namespace {

struct Read {
    Catalogue catalogue;
    std::vector<JobRecord> jobs;
    std::vector<GlueUpRecord> glueUps;
    std::vector<ContainerRecord> containers;
    std::vector<Entry> entries;
    std::vector<BatchRecord> batches;
    std::vector<BatchNote> notes; ///< of all of them
};

template <class T> Result<void> into(T& target, Result<T> read)
{
    if (!read)
        return tl::unexpected(read.error());
    target = std::move(*read);
    return {};
}

Result<void> readNotes(const Store& store, Read& all, Moment asOf)
{
    for (const BatchRecord& batch : all.batches) {
        const auto notes = store.batchNotes(batch.id, asOf);
        if (!notes)
            return tl::unexpected(notes.error());
        all.notes.insert(all.notes.end(), notes->begin(), notes->end());
    }
    return {};
}

Result<Read> readAll(const Shop& shop, Moment asOf)
{
    Read all;
    const Store& store = shop.store();
    const auto done = store.readTogether([&]() -> Result<void> {
        auto step = into(all.catalogue, shop.catalogue());
        if (step)
            step = into(all.jobs, store.jobs());
        if (step)
            step = into(all.glueUps, store.glueUps());
        if (step)
            step = into(all.containers, store.containers());
        if (step)
            step = into(all.entries, store.entriesUpTo(asOf));
        if (step)
            step = into(all.batches, store.batches(asOf, Moment::min()));
        return step ? readNotes(store, all, asOf) : step;
    });
    return done ? Result<Read>(std::move(all)) : tl::unexpected(done.error());
}

PieceUse useOf(const Entry& entry, const ContainerRecord& container, const Catalogue& catalogue)
{
    PieceUse use;
    use.container = container.id;
    use.label = container.label;
    use.lot = container.lot;
    use.amount = Amount { -entry.deltaMilli, container.capacity.dimension };
    if (const auto* material = catalogue.material(container.material))
        use.materialName = material->name;
    if (const auto* cls = catalogue.classOf(container.material)) {
        use.className = cls->name;
        use.classId = cls->id;
        const auto family = catalogue.families.find(cls->family);
        if (family != catalogue.families.end())
            use.comesApart = family->second.reversibleWith;
    }
    return use;
}

/// What was taken for each job and not taken back.
std::unordered_map<JobId, PieceWork> takingsByJob(const Read& all)
{
    std::unordered_map<ContainerId, const ContainerRecord*> containers;
    for (const ContainerRecord& container : all.containers)
        containers.emplace(container.id, &container);
    const auto reversed = reversedAmong(all.entries);
    std::unordered_map<JobId, PieceWork> works;
    for (const Entry& entry : all.entries) {
        if (!entry.job || !entry.container || entry.deltaMilli >= 0 || reversed.contains(entry.id))
            continue;
        const auto container = containers.find(*entry.container);
        if (container == containers.end())
            continue;
        PieceWork& work = works[*entry.job];
        work.at = work.uses.empty() ? entry.at : std::max(work.at, entry.at);
        work.uses.push_back(useOf(entry, *container->second, all.catalogue));
    }
    return works;
}

/// What went in out of a batch: of each container in it, as large a share as was used of the batch.
void addFromBatches(std::unordered_map<JobId, PieceWork>& works, const Read& all)
{
    std::unordered_map<ContainerId, const ContainerRecord*> containers;
    for (const ContainerRecord& container : all.containers)
        containers.emplace(container.id, &container);
    std::map<BatchId, const BatchRecord*> batches;
    for (const BatchRecord& batch : all.batches)
        batches.emplace(batch.id, &batch);
    std::set<EntryId> undone;
    for (const BatchNote& note : all.notes) {
        if (note.reverses)
            undone.insert(*note.reverses);
    }
    for (const BatchNote& note : all.notes) {
        const auto batch = batches.find(note.batch);
        if (note.kind != BatchNoteKind::Used || !note.job || undone.contains(note.id)
            || batch == batches.end() || batch->second->amount.milli <= 0)
            continue;
        const double share
            = -static_cast<double>(note.deltaMilli) / static_cast<double>(batch->second->amount.milli);
        PieceWork& work = works[*note.job];
        work.at = work.uses.empty() ? note.at : std::max(work.at, note.at);
        for (const BatchPart& part : batch->second->parts) {
            const auto container = part.container ? containers.find(*part.container) : containers.end();
            if (container == containers.end())
                continue;
            PieceUse use = useOf(Entry {}, *container->second, all.catalogue);
            use.amount = Amount { std::llround(share * static_cast<double>(part.amount.milli)),
                part.amount.dimension };
            use.batch = batch->second->label;
            work.uses.push_back(std::move(use));
        }
    }
}

} // namespace

std::string foldedPiece(const std::string& name)
{
    return QString::fromStdString(name).simplified().toCaseFolded().toStdString();
}

Result<std::map<std::string, WorksOfPiece>> worksByPiece(const Shop& shop, Moment asOf)
{
    auto all = readAll(shop, asOf);
    if (!all)
        return tl::unexpected(all.error());
    std::unordered_map<JobId, const GlueUpRecord*> records;
    for (const GlueUpRecord& record : all->glueUps) {
        if (record.at <= asOf && !(record.undone && *record.undone <= asOf))
            records.emplace(record.job, &record);
    }
    auto works = takingsByJob(*all);
    addFromBatches(works, *all);
    std::map<std::string, WorksOfPiece> pieces;
    for (const JobRecord& job : all->jobs) {
        const std::string& name = job.piece.empty() ? job.name : job.piece;
        WorksOfPiece& piece = pieces[foldedPiece(name)];
        if (piece.name.empty())
            piece.name = name;
        const auto work = works.find(job.id);
        const auto record = records.find(job.id);
        if (work == works.end() && record == records.end())
            continue;
        PieceWork done = work == works.end() ? PieceWork {} : std::move(work->second);
        done.jobName = job.name;
        if (record != records.end()) {
            done.record = *record->second;
            done.at = record->second->at;
        }
        piece.works.push_back(std::move(done));
    }
    for (auto& [folded, piece] : pieces)
        std::ranges::stable_sort(piece.works, std::ranges::greater {}, &PieceWork::at);
    return pieces;
}

} // namespace gw
