#include "shop/suitability.h"

#include <algorithm>

#include <QString>

#include "measure/quoted.h"

namespace gw {

namespace {

constexpr double tenonGap = 0.15; // mm; wider is a loose one (db/reference/joints)

GateResult resultOfWord(const std::string& word)
{
    if (word == "right" || word == "pass")
        return GateResult::Pass;
    if (word == "possible" || word == "warn")
        return GateResult::Warn;
    return word == "wrong" || word == "stop" ? GateResult::Stop : GateResult::Unknown;
}

/// The cells of some columns, row by row. Errors: StoreDamaged when one is missing.
Result<std::vector<std::vector<std::string>>> cellsOf(
    const Shop& shop, const char* name, const std::vector<std::string>& wanted)
{
    const auto table = shop.store().reference(name);
    if (!table)
        return tl::unexpected(table.error());
    std::vector<std::size_t> at;
    for (const std::string& column : wanted) {
        const auto found = std::ranges::find(table->columns, column);
        if (found == table->columns.end())
            return fail(ErrorCode::StoreDamaged,
                "The reference data in the store cannot be read; verify the store under Shop.");
        at.push_back(static_cast<std::size_t>(found - table->columns.begin()));
    }
    std::vector<std::vector<std::string>> cells;
    for (const auto& row : table->rows) {
        std::vector<std::string> kept;
        for (const std::size_t i : at)
            kept.push_back(row[i]);
        cells.push_back(std::move(kept));
    }
    return cells;
}

QString folded(const std::string& text)
{
    return QString::fromStdString(text).simplified().toCaseFolded().replace(u'_', u' ');
}

/// Every row that a text names: one that it is, else those it is a part of.
std::vector<NamedKey> fitting(const std::vector<NamedKey>& all, const std::string& text)
{
    const QString sought = folded(text);
    std::vector<NamedKey> parts;
    for (const NamedKey& one : all) {
        if (folded(one.key) == sought || folded(one.name) == sought)
            return { one };
        if (!sought.isEmpty() && (folded(one.key).contains(sought) || folded(one.name).contains(sought)))
            parts.push_back(one);
    }
    return parts;
}

tl::unexpected<Error> notOne(const char* what, const std::string& text, const std::vector<NamedKey>& among)
{
    std::string names;
    for (const NamedKey& one : among)
        names += (names.empty() ? "" : ", ") + one.key;
    return fail(ErrorCode::NotFound,
        "Which " + std::string(what) + " is meant by " + inQuotes(text) + "? There are: " + names + ".");
}

Suitability lookUp(const auto& rows, const std::string& a, const FamilyId& family, const std::string& what)
{
    for (const auto& row : rows) {
        if (row.a == a && row.b == family.text)
            return { what, resultOfWord(row.result), row.reason };
    }
    return { what, GateResult::Unknown, {} };
}

/// 2 is right, 1 possible, 0 wrong (db/reference/README).
Suitability byFigure(const FamilyRecord& family, const char* figure, const std::string& what)
{
    const auto found = std::ranges::find(family.figures, figure, &Figure::figure);
    if (found == family.figures.end() || !found->value)
        return { what, GateResult::Unknown, {} };
    return { what,
        *found->value >= 2       ? GateResult::Pass
            : *found->value >= 1 ? GateResult::Warn
                                 : GateResult::Stop,
        found->text };
}

} // namespace

Result<SuitabilityTables> SuitabilityTables::read(const Shop& shop)
{
    SuitabilityTables tables;
    const auto named
        = [&shop](const char* table, const char* key, std::vector<NamedKey>& into) -> Result<void> {
        const auto cells = cellsOf(shop, table, { key, "name" });
        if (!cells)
            return tl::unexpected(cells.error());
        for (const auto& row : *cells)
            into.push_back({ row[0], row[1] });
        return {};
    };
    const auto rows = [&shop](const char* table, const std::vector<std::string>& columns,
                          std::vector<Row>& into) -> Result<void> {
        const auto cells = cellsOf(shop, table, columns);
        if (!cells)
            return tl::unexpected(cells.error());
        for (const auto& row : *cells)
            into.push_back({ row[0], row[1], row[2], row[3] });
        return {};
    };
    for (auto done :
        { named("joints", "joint", tables.m_joints), named("residues", "residue", tables.m_residues),
            rows("joint_fitness", { "joint", "family_id", "rating", "reason" }, tables.m_fitness),
            rows("incompatibilities", { "under", "over", "severity", "result" }, tables.m_over) }) {
        if (!done)
            return tl::unexpected(done.error());
    }
    return tables;
}

Result<NamedKey> SuitabilityTables::joint(const std::string& text, std::optional<double> gapMm) const
{
    const auto found = fitting(m_joints, text);
    if (found.size() == 1)
        return found.front();
    const auto named = [&found](const char* key) { return std::ranges::find(found, key, &NamedKey::key); };
    const auto tight = named("chair_tenon_sound");
    const auto loose = named("chair_tenon_loose");
    if (found.size() == 2 && tight != found.end() && loose != found.end())
        return gapMm.value_or(0) > tenonGap ? *loose : *tight;
    return notOne("joint", text, found.empty() ? m_joints : found);
}

Result<NamedKey> SuitabilityTables::residue(const std::string& text) const
{
    const auto found = fitting(m_residues, text);
    if (found.size() == 1)
        return found.front();
    return notOne("residue", text, found.empty() ? m_residues : found);
}

Suitability SuitabilityTables::ofJoint(const NamedKey& joint, const FamilyId& family) const
{
    return lookUp(m_fitness, joint.key, family, joint.name);
}

Suitability SuitabilityTables::overResidue(const NamedKey& residue, const FamilyId& family) const
{
    return lookUp(m_over, residue.key, family, residue.name);
}

Suitability ofPlace(ServicePlace place, const FamilyRecord& family, const SuitabilityTables& tables)
{
    const auto joint = [&](const char* key) {
        const auto found = std::ranges::find(tables.joints(), key, &NamedKey::key);
        return found == tables.joints().end() ? Suitability { key, GateResult::Unknown, {} }
                                              : tables.ofJoint(*found, family.id);
    };
    switch (place) {
    case ServicePlace::Dry:
        return { "A dry room", GateResult::Pass, {} };
    case ServicePlace::Damp:
        return byFigure(family, "damp_place", "A damp place");
    case ServicePlace::Outdoor:
        return joint("outdoor");
    case ServicePlace::Hot:
        break;
    }
    return joint("hot_place");
}

Suitability ofLoad(Load load, const FamilyRecord& family)
{
    switch (load) {
    case Load::Light:
        return { "Hardly any load", GateResult::Pass, {} };
    case Load::Lasting:
        return byFigure(family, "lasting_load", "A load that stays on");
    case Load::Shock:
        break;
    }
    return byFigure(family, "shock_load", "Knocks and racking");
}

} // namespace gw
