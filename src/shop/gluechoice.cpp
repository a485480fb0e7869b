#include "shop/gluechoice.h"

#include "shop/candidates.h"

namespace gw {

Result<WhichGlueAnswer> whichGlueFor(const Shop& shop, const GlueAsked& asked)
{
    const auto tables = SuitabilityTables::read(shop);
    if (!tables)
        return tl::unexpected(tables.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());

    WhichGlueQuestion question { {}, asked.period, asked.mustComeApart, asked.gapMm, asked.place, asked.load,
        {} };
    std::optional<NamedKey> joint, residue;
    if (!asked.joint.empty()) {
        auto found = tables->joint(asked.joint, asked.gapMm);
        if (!found)
            return tl::unexpected(found.error());
        joint = *found;
        question.jointName = found->name;
    }
    if (!asked.residue.empty()) {
        auto found = tables->residue(asked.residue);
        if (!found)
            return tl::unexpected(found.error());
        residue = *found;
    }
    for (const auto& [id, family] : catalogue->families) {
        GlueCandidate candidate { familyOf(family), {}, {}, {}, {} };
        if (joint)
            candidate.joint = tables->ofJoint(*joint, id);
        if (residue)
            candidate.residue = tables->overResidue(*residue, id);
        if (asked.place)
            candidate.place = ofPlace(*asked.place, family, *tables);
        if (asked.load)
            candidate.load = ofLoad(*asked.load, family);
        question.candidates.push_back(std::move(candidate));
    }
    return whichGlue(question);
}

} // namespace gw
