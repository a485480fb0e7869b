#pragma once

#include <optional>
#include <string>
#include <vector>

#include "gluing/whichglue.h"
#include "shop/shop.h"

namespace gw {

/// A joint or a residue of the reference tables.
struct NamedKey {
    std::string key;
    std::string name;
};

/// What the reference tables say of families, joints, residues and places. Read once for many questions.
class SuitabilityTables {
public:
    /// Errors: those of Store::reference().
    static Result<SuitabilityTables> read(const Shop& shop);

    const std::vector<NamedKey>& joints() const { return m_joints; } ///< by key
    const std::vector<NamedKey>& residues() const { return m_residues; }

    /// By key, name, or a part of either that fits one alone. "tenon" fits two, which the gap tells apart;
    /// with no gap said it is the tight one. Errors: NotFound, naming those there are or that it fits.
    Result<NamedKey> joint(const std::string& text, std::optional<double> gapMm) const;
    Result<NamedKey> residue(const std::string& text) const;

    Suitability ofJoint(const NamedKey& joint, const FamilyId& family) const;
    Suitability overResidue(const NamedKey& residue, const FamilyId& family) const;

private:
    struct Row {
        std::string a, b, result, reason;
    };
    std::vector<NamedKey> m_joints, m_residues;
    std::vector<Row> m_fitness, m_over;
};

/// A place or a load against a family's own figures; the place outdoors and the hot one are joints of the
/// tables.
Suitability ofPlace(ServicePlace place, const FamilyRecord& family, const SuitabilityTables& tables);
Suitability ofLoad(Load load, const FamilyRecord& family);

} // namespace gw
