#include "shop/cautions.h"

#include <algorithm>
#include <array>

namespace gw {

namespace {

/// Where the columns stand that are read here.
struct Columns {
    std::size_t appliesTo, moment, text;
};

Result<Columns> columnsOf(const ReferenceTable& table)
{
    const auto at = [&table](std::string_view name) {
        return static_cast<std::size_t>(
            std::find(table.columns.begin(), table.columns.end(), name) - table.columns.begin());
    };
    const Columns columns { at("applies_to"), at("moment"), at("text") };
    if (std::max({ columns.appliesTo, columns.moment, columns.text }) >= table.columns.size())
        return fail(ErrorCode::StoreDamaged,
            "The cautions in the store cannot be read; verify the store under Shop.");
    return columns;
}

bool applies(const std::string& to, const ClassRecord& cls)
{
    return to == "class:" + cls.id.text || to == "group:" + cls.group
        || (!cls.family.empty() && to == "family:" + cls.family.text);
}

void addOnce(std::vector<std::string>& texts, const std::string& text)
{
    if (std::find(texts.begin(), texts.end(), text) == texts.end())
        texts.push_back(text);
}

} // namespace

Result<std::vector<std::string>> cautionsFor(const Shop& shop, const std::vector<const ClassRecord*>& classes,
    const std::vector<std::string_view>& moments)
{
    const auto table = shop.store().reference("cautions");
    if (!table)
        return tl::unexpected(table.error());
    const auto columns = columnsOf(*table);
    if (!columns)
        return tl::unexpected(columns.error());
    std::vector<std::string> texts;
    for (const auto& row : table->rows) {
        const bool wanted = std::find(moments.begin(), moments.end(), row[columns->moment]) != moments.end();
        const bool meant = std::any_of(classes.begin(), classes.end(),
            [&](const ClassRecord* cls) { return cls && applies(row[columns->appliesTo], *cls); });
        if (wanted && meant)
            addOnce(texts, row[columns->text]);
    }
    return texts;
}

Result<std::vector<Caution>> allCautions(const Shop& shop)
{
    const auto table = shop.store().reference("cautions");
    if (!table)
        return tl::unexpected(table.error());
    const auto columns = columnsOf(*table);
    if (!columns)
        return tl::unexpected(columns.error());
    const auto catalogue = shop.catalogue();
    if (!catalogue)
        return tl::unexpected(catalogue.error());

    std::vector<Caution> all;
    for (const auto& row : table->rows) {
        auto caution = std::find_if(all.begin(), all.end(), [&](const Caution& known) {
            return known.moment == row[columns->moment] && known.text == row[columns->text];
        });
        if (caution == all.end())
            caution = all.insert(caution, { row[columns->moment], row[columns->text], {} });
        for (const auto& [id, cls] : catalogue->classes) {
            if (applies(row[columns->appliesTo], cls))
                addOnce(caution->classes, cls.name);
        }
    }
    for (Caution& caution : all)
        std::sort(caution.classes.begin(), caution.classes.end());
    constexpr std::array order { "storing", "opening", "mixing", "gluing", "sanding", "disposing" };
    std::stable_sort(all.begin(), all.end(), [&order](const Caution& a, const Caution& b) {
        return std::find(order.begin(), order.end(), a.moment)
            < std::find(order.begin(), order.end(), b.moment);
    });
    return all;
}

} // namespace gw
