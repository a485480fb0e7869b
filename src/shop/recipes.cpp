#include "shop/mixstock.h"

#include <algorithm>

#include <QString>

#include "measure/quoted.h"

namespace gw {

namespace {

struct Row {
    const ReferenceTable* table;
    const std::vector<std::string>* cells;
    std::string operator[](std::string_view column) const
    {
        const auto at = std::ranges::find(table->columns, column);
        return at == table->columns.end() ? std::string()
                                          : (*cells)[static_cast<std::size_t>(at - table->columns.begin())];
    }
};

std::optional<double> number(const std::string& text)
{
    bool ok = false;
    const double value = QString::fromStdString(text).toDouble(&ok);
    return ok ? std::optional(value) : std::nullopt;
}

QString folded(const std::string& text)
{
    return QString::fromStdString(text).simplified().toCaseFolded().replace(u'_', u' ');
}

struct Tables {
    ReferenceTable recipes, figures, steps;
};

Result<Tables> tablesOf(const Shop& shop)
{
    Tables tables;
    for (auto& [name, into] : { std::pair { "recipes", &tables.recipes },
             std::pair { "recipe_figures", &tables.figures }, std::pair { "recipe_steps", &tables.steps } }) {
        auto table = shop.store().reference(name);
        if (!table)
            return tl::unexpected(table.error());
        *into = std::move(*table);
    }
    return tables;
}

void addFigures(Recipe& recipe, const ReferenceTable& figures, const std::string& of)
{
    for (const auto& cells : figures.rows) {
        const Row row { &figures, &cells };
        if (row["recipe_id"] != of || recipe.figure(row["item"], row["parameter"]))
            continue; // its own figure beats that of the recipe it is based on
        recipe.figures.push_back({ row["item"], row["parameter"], number(row["value"]), number(row["low"]),
            number(row["high"]), row["unit"], row["source"], row["confidence"] });
    }
}

void addSteps(Recipe& recipe, const ReferenceTable& steps)
{
    std::vector<std::pair<double, std::string>> numbered;
    for (const auto& cells : steps.rows) {
        const Row row { &steps, &cells };
        if (row["recipe_id"] == recipe.id)
            numbered.emplace_back(number(row["step"]).value_or(0), row["text"]);
    }
    std::ranges::sort(numbered, {}, &std::pair<double, std::string>::first); // 10 after 9
    for (auto& [step, text] : numbered)
        recipe.steps.push_back(std::move(text));
}

} // namespace

Result<std::vector<Recipe>> recipes(const Shop& shop)
{
    const auto tables = tablesOf(shop);
    if (!tables)
        return tl::unexpected(tables.error());
    std::vector<Recipe> all;
    for (const auto& cells : tables->recipes.rows) {
        const Row row { &tables->recipes, &cells };
        Recipe recipe { row["recipe_id"], row["name"], row["note"], {}, {} };
        addFigures(recipe, tables->figures, recipe.id);
        if (const std::string base = row["based_on"]; !base.empty())
            addFigures(recipe, tables->figures, base);
        addSteps(recipe, tables->steps);
        all.push_back(std::move(recipe));
    }
    return all;
}

Result<Recipe> findRecipe(const Shop& shop, const std::string& text)
{
    const auto all = recipes(shop);
    if (!all)
        return tl::unexpected(all.error());
    const QString sought = folded(text);
    std::vector<const Recipe*> parts;
    std::string names;
    for (const Recipe& recipe : *all) {
        if (folded(recipe.id) == sought || folded(recipe.name) == sought)
            return recipe;
        if (!sought.isEmpty() && (folded(recipe.id).contains(sought) || folded(recipe.name).contains(sought)))
            parts.push_back(&recipe);
        names += (names.empty() ? "" : ", ") + recipe.id;
    }
    // A recipe based on another has that one's figures and its own: the one with fewest is the base of them.
    const auto base = std::ranges::min_element(parts, {}, [](const Recipe* r) { return r->figures.size(); });
    if (base != parts.end())
        return **base;
    return fail(ErrorCode::NotFound, "There is no recipe " + inQuotes(text) + "; there are: " + names + ".");
}

} // namespace gw
