#include "shop/piecepage.h"

#include <algorithm>

#include <QString>

#include "measure/quoted.h"
#include "shop/cautions.h"
#include "shop/pieceworks.h"

namespace gw {

namespace {

void addOnce(std::vector<std::string>& all, const std::string& text)
{
    if (!text.empty() && std::ranges::find(all, text) == all.end())
        all.push_back(text);
}

/// The whole record, and how each container stood by it.
Result<void> complete(const Shop& shop, PieceWork& work)
{
    if (!work.record)
        return {};
    auto whole = shop.store().glueUp(work.record->id);
    if (!whole)
        return tl::unexpected(whole.error());
    if (!*whole)
        return {};
    work.record = std::move(**whole);
    for (PieceUse& use : work.uses) {
        const auto stood
            = std::ranges::find(work.record->containers, use.container, &GlueUpContainerRecord::container);
        if (stood == work.record->containers.end())
            continue;
        use.verdict = stood->verdict;
        use.reason = stood->reason;
    }
    return {};
}

Result<void> addCautions(const Shop& shop, PiecePage& page)
{
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());
    std::vector<const ClassRecord*> classes;
    for (const PieceWork& work : page.work) {
        for (const PieceUse& use : work.uses) {
            const auto cls = catalogue->classes.find(use.classId);
            if (cls == catalogue->classes.end())
                continue;
            classes.push_back(&cls->second);
            if (!cls->second.hazardNote.empty())
                addOnce(page.cautions, cls->second.name + ": " + cls->second.hazardNote);
            for (const std::string& pictogram : cls->second.pictograms)
                addOnce(page.pictograms, pictogram);
        }
    }
    std::ranges::sort(page.pictograms);
    const auto cautions = cautionsFor(shop, classes, { "sanding" });
    if (!cautions)
        return tl::unexpected(cautions.error());
    for (const std::string& caution : *cautions)
        addOnce(page.cautions, caution);
    return {};
}

bool matches(const PieceWork& work, const QString& sought)
{
    const auto has = [&sought](const std::string& text) {
        return QString::fromStdString(text).contains(sought, Qt::CaseInsensitive);
    };
    return has(work.jobName) || std::ranges::any_of(work.uses, [&](const PieceUse& use) {
        return has(use.materialName) || has(use.lot) || has(use.label) || has(use.className);
    });
}

PieceLine lineOf(const WorksOfPiece& piece)
{
    PieceLine line;
    line.name = piece.name;
    line.first = piece.works.back().at;
    line.last = piece.works.front().at;
    line.works = static_cast<int>(piece.works.size());
    for (const PieceWork& work : piece.works) {
        line.photos += work.record ? work.record->photos : 0;
        for (const PieceUse& use : work.uses)
            addOnce(line.materials, use.materialName);
    }
    return line;
}

} // namespace

std::vector<std::string> PieceWork::comesApart() const
{
    std::vector<std::string> ways;
    if (record)
        addOnce(ways, record->comesApart);
    if (ways.empty()) {
        for (const PieceUse& use : uses)
            addOnce(ways, use.comesApart);
    }
    return ways;
}

Result<PiecePage> piecePage(const Shop& shop, const std::string& piece, Moment asOf)
{
    const std::string folded = foldedPiece(piece);
    if (folded.empty())
        return fail(ErrorCode::BadInput, "Say which piece is meant.");
    auto pieces = worksByPiece(shop, asOf);
    if (!pieces)
        return tl::unexpected(pieces.error());
    PiecePage page;
    if (const auto found = pieces->find(folded); found != pieces->end()) {
        page.piece = found->second.name;
        page.work = std::move(found->second.works);
    } else {
        // By what was done, over all pieces.
        for (auto& [key, one] : *pieces) {
            for (PieceWork& work : one.works) {
                if (foldedPiece(work.jobName) != folded)
                    continue;
                page.piece = work.jobName;
                page.work.push_back(std::move(work));
            }
        }
        std::ranges::stable_sort(page.work, std::ranges::greater {}, &PieceWork::at);
    }
    if (page.piece.empty())
        return fail(ErrorCode::NotFound, "Nothing is recorded for a piece called " + inQuotes(piece) + ".");
    for (PieceWork& work : page.work) {
        if (auto done = complete(shop, work); !done)
            return tl::unexpected(done.error());
    }
    if (auto done = addCautions(shop, page); !done)
        return tl::unexpected(done.error());
    return page;
}

Result<std::vector<PieceLine>> pieceLines(const Shop& shop, const std::string& text, Moment asOf)
{
    auto pieces = worksByPiece(shop, asOf);
    if (!pieces)
        return tl::unexpected(pieces.error());
    const QString sought = QString::fromStdString(text).simplified();
    std::vector<PieceLine> lines;
    for (const auto& [folded, piece] : *pieces) {
        if (piece.works.empty())
            continue;
        const bool named = QString::fromStdString(piece.name).contains(sought, Qt::CaseInsensitive);
        if (named || std::ranges::any_of(piece.works, [&](const PieceWork& w) { return matches(w, sought); }))
            lines.push_back(lineOf(piece));
    }
    std::ranges::stable_sort(lines, std::ranges::greater {}, &PieceLine::last);
    return lines;
}

} // namespace gw
