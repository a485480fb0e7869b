#include "store/copytables.h"

#include "store/referencetables.h"

namespace gw {

namespace {

constexpr std::string_view shopTables
    = "setting material material_figure material_lot_date material_photo pack pack_case place place_range "
      "place_follow reading_month job container entry batch batch_part batch_figure batch_note glue_up "
      "glue_up_fact glue_up_gate glue_up_container glue_up_photo glue_up_undone order_list order_line "
      "order_event planned_job";

// One statement for several rows: PostgreSQL takes as long for a statement as for twenty rows.
constexpr std::size_t cellsPerStatement = 360;

std::string insertOf(const std::string& table, const QStringList& columns, std::size_t rows)
{
    std::string names, marks, sql;
    for (const QString& column : columns) {
        names += (names.empty() ? "\"" : ", \"") + column.toStdString() + '"';
        marks += marks.empty() ? "(?" : ", ?";
    }
    marks += ')';
    sql = "INSERT INTO " + table + " (" + names + ") VALUES " + marks;
    for (std::size_t i = 1; i < rows; ++i)
        sql += ", " + marks;
    return sql;
}

std::string selectOf(const std::string& table, const QStringList& columns)
{
    std::string names;
    for (const QString& column : columns)
        names += (names.empty() ? "\"" : ", \"") + column.toStdString() + '"';
    return "SELECT " + names + " FROM " + table;
}

Result<void> copyTable(Database& from, Database& to, const std::string& table)
{
    const QStringList columns = to.columnsOf(QString::fromStdString(table));
    if (columns.isEmpty())
        return {};
    const auto width = static_cast<std::size_t>(columns.size());
    const std::size_t atOnce = std::max<std::size_t>(1, cellsPerStatement / width);
    const std::string many = insertOf(table, columns, atOnce), one = insertOf(table, columns, 1);
    std::vector<Parameter> cells;
    const auto write = [&](const std::string& sql, auto begin, auto end) -> Result<void> {
        const auto done = to.runWith(sql, std::vector<Parameter>(begin, end));
        return done ? Result<void> {} : tl::unexpected(done.error());
    };
    auto read = from.visit(selectOf(table, columns), [&](Row& row) -> Result<void> {
        for (std::size_t i = 0; i < width; ++i)
            cells.push_back(parameter(row.any()));
        if (cells.size() < atOnce * width)
            return {};
        auto done = write(many, cells.begin(), cells.end());
        cells.clear();
        return done;
    });
    if (!read)
        return read;
    for (auto row = cells.begin(); row != cells.end(); row += static_cast<std::ptrdiff_t>(width)) {
        if (auto done = write(one, row, row + static_cast<std::ptrdiff_t>(width)); !done)
            return done;
    }
    return {};
}

} // namespace

std::vector<std::string> storeTables()
{
    std::vector<std::string> tables;
    for (const auto& spec : referenceSpecs())
        tables.emplace_back(spec.name);
    for (const auto table : words(shopTables))
        tables.emplace_back(table);
    return tables;
}

Result<void> copyTables(Database& from, Database& to)
{
    for (const std::string& table : storeTables()) {
        if (auto done = copyTable(from, to, table); !done)
            return done;
    }
    return {};
}

} // namespace gw
