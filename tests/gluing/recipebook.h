#pragma once

#include <QDir>

#include "gluing/recipe.h"
#include "support/csvrows.h"

/// The recipes of db/reference, as they are shipped.
namespace gw::test {

inline Recipe shippedRecipe(const QString& id, const QString& basedOn = {})
{
    const QDir folder(QStringLiteral(GW_SOURCE_DIR "/db/reference"));
    const auto number
        = [](const QString& text) { return text.isEmpty() ? std::nullopt : std::optional(text.toDouble()); };
    Recipe recipe { id.toStdString(), id.toStdString(), {}, {}, {} };
    for (const CsvRow& row : readCsvRows(folder.filePath(QStringLiteral("recipe_figures.csv")))) {
        const QString of = row.value(QStringLiteral("recipe_id"));
        if (of == id || (!basedOn.isEmpty() && of == basedOn))
            recipe.figures.push_back({ row.value(QStringLiteral("item")).toStdString(),
                row.value(QStringLiteral("parameter")).toStdString(),
                number(row.value(QStringLiteral("value"))), number(row.value(QStringLiteral("low"))),
                number(row.value(QStringLiteral("high"))), row.value(QStringLiteral("unit")).toStdString(),
                row.value(QStringLiteral("source")).toStdString(),
                row.value(QStringLiteral("confidence")).toStdString() });
    }
    for (const CsvRow& row : readCsvRows(folder.filePath(QStringLiteral("recipe_steps.csv")))) {
        if (row.value(QStringLiteral("recipe_id")) == id)
            recipe.steps.push_back(row.value(QStringLiteral("text")).toStdString());
    }
    return recipe;
}

} // namespace gw::test
