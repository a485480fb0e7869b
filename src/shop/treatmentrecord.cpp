#include <algorithm>

#include "measure/moment.h"
#include "shop/glueuprecord.h"
#include "shop/piecepage.h"

// What a client is given of a piece's page.
namespace gw {

namespace {

TreatmentStep stepOf(const PieceWork& work, UnitSystem units)
{
    TreatmentStep step;
    step.date = spokenDate(dateOf(work.at));
    step.title = work.jobName;
    for (const PieceUse& use : work.uses)
        step.materials.push_back(
            { use.materialName, use.className, use.lot, formatAmount(use.amount, units) });
    step.comesApart = work.comesApart();
    if (!work.record)
        return step;
    if (work.record->pieces > 1)
        step.title += ", " + std::to_string(work.record->pieces) + " of them";
    for (const FactKind& kind : factKinds) {
        if (const GlueUpFact* fact = work.record->fact(std::string(kind.key)))
            step.conditions.emplace_back(kind.name, factWords(*fact, units));
    }
    step.note = work.record->note;
    return step;
}

} // namespace

Treatment treatmentOf(const PiecePage& page, UnitSystem units, Moment printed)
{
    Treatment treatment;
    treatment.piece = page.piece;
    treatment.date = spokenDate(dateOf(printed));
    for (const PieceWork& work : page.work)
        treatment.steps.push_back(stepOf(work, units));
    std::ranges::reverse(treatment.steps);
    treatment.cautions = page.cautions;
    treatment.pictograms = page.pictograms;
    return treatment;
}

} // namespace gw
