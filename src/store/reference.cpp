#include <charconv>
#include <cmath>
#include <set>

#include "measure/quoted.h"
#include "store/database.h"
#include "store/referencetables.h"

namespace gw {

namespace {

constexpr std::string_view editionKey = "reference.edition";
constexpr char keySeparator = '\x1f';

std::string quotedName(std::string_view name) { return '"' + std::string(name) + '"'; }

std::string joined(
    const std::vector<std::string_view>& names, std::string_view before, std::string_view between)
{
    std::string out;
    for (const auto name : names) {
        if (!out.empty())
            out += between;
        out += std::string(before) + quotedName(name);
    }
    return out;
}

// INSERT ... ON CONFLICT, in the order of the table's own columns.
std::string upsertOf(const ReferenceSpec& spec)
{
    const auto columns = words(spec.columns);
    const std::vector keys(columns.begin(), columns.begin() + static_cast<std::ptrdiff_t>(spec.keys));
    std::string marks, sets;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        marks += i == 0 ? "?" : ", ?";
        if (i >= spec.keys)
            sets += (sets.empty() ? "" : ", ") + quotedName(columns[i]) + " = excluded."
                + quotedName(columns[i]);
    }
    std::string sql = "INSERT INTO " + std::string(spec.name) + " (" + joined(columns, "", ", ")
        + ") VALUES (" + marks + ") ON CONFLICT (" + joined(keys, "", ", ") + ") DO UPDATE SET " + sets;
    if (!spec.updateWhen.empty())
        sql += " WHERE " + std::string(spec.updateWhen);
    return sql;
}

std::string whereKey(const ReferenceSpec& spec)
{
    const auto columns = words(spec.columns);
    std::string where = " WHERE ";
    for (std::size_t i = 0; i < spec.keys; ++i)
        where += (i == 0 ? "" : " AND ") + quotedName(columns[i]) + " = ?";
    return where;
}

Error wrongFile(const ReferenceSpec& spec, const std::string& what)
{
    return { ErrorCode::BadInput,
        "The reference table " + std::string(spec.name) + " cannot be used: " + what
            + "; install the reference data again." };
}

// Where each of the table's own columns stands in the file.
Result<std::vector<std::size_t>> placesOf(const ReferenceSpec& spec, const ReferenceTable& table)
{
    const auto columns = words(spec.columns);
    std::vector<std::size_t> places;
    for (const auto column : columns) {
        const auto found = std::ranges::find(table.columns, column);
        if (found == table.columns.end())
            return tl::unexpected(wrongFile(spec, "it has no column " + inQuotes(column)));
        places.push_back(static_cast<std::size_t>(found - table.columns.begin()));
    }
    for (const auto& column : table.columns) {
        if (std::ranges::count(table.columns, column) > 1)
            return tl::unexpected(wrongFile(spec, "it has the column " + inQuotes(column) + " twice"));
        if (std::ranges::find(columns, column) == columns.end())
            return tl::unexpected(
                wrongFile(spec, "it has a column " + inQuotes(column) + " that is not known"));
    }
    return places;
}

Result<Parameter> cell(
    const ReferenceSpec& spec, std::string_view column, const std::string& text, bool isKey)
{
    if (text.empty())
        return isKey ? parameter(text) : Parameter {};
    const auto numbers = words(spec.numbers);
    if (std::ranges::find(numbers, column) == numbers.end())
        return parameter(text);
    double value = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (fault != std::errc {} || end != text.data() + text.size() || !std::isfinite(value))
        return tl::unexpected(
            wrongFile(spec, inQuotes(text) + " in the column " + inQuotes(column) + " is no number"));
    return parameter(value);
}

std::string keyOf(const std::vector<std::string>& cells)
{
    std::string key;
    for (const auto& text : cells)
        key += text + keySeparator;
    return key;
}

using Keys = std::set<std::string>;

// Puts in the rows of one file; answers their keys.
Result<Keys> putIn(Database& database, const ReferenceSpec& spec, const ReferenceTable& table)
{
    const auto places = placesOf(spec, table);
    if (!places)
        return tl::unexpected(places.error());
    const auto columns = words(spec.columns);
    const std::string sql = upsertOf(spec);
    Keys keys;
    std::vector<Parameter> values(columns.size());
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
        const auto& row = table.rows[r];
        const std::string line = "line " + std::to_string(r + 2);
        if (row.size() != table.columns.size())
            return tl::unexpected(wrongFile(spec,
                line + " has " + std::to_string(row.size()) + " cells, not "
                    + std::to_string(table.columns.size())));
        std::vector<std::string> key;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            auto value = cell(spec, columns[i], row[(*places)[i]], i < spec.keys);
            if (!value)
                return tl::unexpected(value.error());
            values[i] = std::move(*value);
            if (i < spec.keys)
                key.push_back(row[(*places)[i]]);
        }
        if (key.front().empty())
            return tl::unexpected(wrongFile(spec, line + " has no " + inQuotes(columns.front())));
        if (!keys.insert(keyOf(key)).second)
            return tl::unexpected(wrongFile(spec, line + " repeats the key of an earlier one"));
        if (auto put = database.runWith(sql, values); !put) {
            if (put.error().code != ErrorCode::BadInput && put.error().code != ErrorCode::NotFound)
                return tl::unexpected(put.error());
            return tl::unexpected(wrongFile(spec, line + " was refused: " + put.error().sentence));
        }
    }
    return keys;
}

// Takes out what the file has no more: rows whose parent stays at once, parents with all their rows or not at
// all.
class Clearing {
public:
    Clearing(Database& database, const std::map<std::string_view, Keys>& inFiles)
        : m_database(database)
        , m_inFiles(inFiles)
    {
    }

    Result<void> clear()
    {
        const auto specs = referenceSpecs();
        for (const auto& spec : specs) {
            if (!spec.parent.empty() || spec.keys > 1) {
                if (auto done = clearRows(spec); !done)
                    return done;
            }
        }
        for (auto spec = specs.rbegin(); spec != specs.rend(); ++spec) {
            if (spec->keys == 1) {
                if (auto done = clearParents(*spec); !done)
                    return done;
            }
        }
        return {};
    }

private:
    Result<std::vector<std::vector<std::string>>> goneFrom(const ReferenceSpec& spec)
    {
        const auto file = m_inFiles.find(spec.name);
        if (file == m_inFiles.end())
            return std::vector<std::vector<std::string>> {};
        const auto columns = words(spec.columns);
        const std::vector keys(columns.begin(), columns.begin() + static_cast<std::ptrdiff_t>(spec.keys));
        auto rows = m_database.list(
            "SELECT " + joined(keys, "", ", ") + " FROM " + std::string(spec.name), [&](Row& row) {
                std::vector<std::string> key;
                for (std::size_t i = 0; i < spec.keys; ++i)
                    key.push_back(row.text());
                return key;
            });
        if (rows)
            std::erase_if(*rows, [&](const auto& key) { return file->second.contains(keyOf(key)); });
        return rows;
    }

    bool parentStays(const ReferenceSpec& spec, const std::string& key) const
    {
        const auto file = m_inFiles.find(spec.parent);
        return spec.parent.empty() || file == m_inFiles.end() || file->second.contains(keyOf({ key }));
    }

    Result<void> remove(
        const ReferenceSpec& spec, const std::string& where, const std::vector<Parameter>& key)
    {
        std::string sql = "DELETE FROM " + std::string(spec.name) + where;
        if (!spec.shopMark.empty())
            sql += " AND NOT (" + std::string(spec.shopMark) + ")";
        auto done = m_database.runWith(sql, key);
        if (done && !spec.whenGone.empty())
            done = m_database.runWith(
                std::string(spec.whenGone) + where + " AND " + std::string(spec.shopMark), key);
        return done ? Result<void> {} : tl::unexpected(done.error());
    }

    Result<void> clearRows(const ReferenceSpec& spec)
    {
        const auto gone = goneFrom(spec);
        if (!gone)
            return tl::unexpected(gone.error());
        for (const auto& cells : *gone) {
            if (!parentStays(spec, cells.front()))
                continue;
            std::vector<Parameter> key;
            for (const auto& text : cells)
                key.push_back(parameter(text));
            if (auto done = remove(spec, whereKey(spec), key); !done)
                return done;
        }
        return {};
    }

    Result<void> clearParents(const ReferenceSpec& spec)
    {
        const auto gone = goneFrom(spec);
        if (!gone)
            return tl::unexpected(gone.error());
        for (const auto& cells : *gone) {
            const std::vector<Parameter> key { parameter(cells.front()) };
            // Whatever still refers to it, the shop's materials first of all, keeps it with all its figures.
            const auto done = m_database.attempt([&]() -> Result<void> {
                for (const auto& child : referenceSpecs()) {
                    if (child.parent != spec.name)
                        continue;
                    const std::string where = " WHERE " + quotedName(words(child.columns).front()) + " = ?";
                    if (auto cleared = remove(child, where, key); !cleared)
                        return cleared;
                }
                return remove(spec, whereKey(spec), key);
            });
            if (!done)
                return tl::unexpected(done.error());
        }
        return {};
    }

    Database& m_database;
    const std::map<std::string_view, Keys>& m_inFiles;
};

} // namespace

Result<void> Store::refreshReference(const std::vector<ReferenceTable>& tables, const std::string& edition)
{
    for (const auto& table : tables) {
        if (!referenceSpec(table.name))
            return fail(ErrorCode::BadInput,
                "There is no reference table " + inQuotes(table.name)
                    + "; install the reference data again.");
    }
    return m_database->write([&]() -> Result<void> {
        std::map<std::string_view, Keys> inFiles;
        for (const auto& spec : referenceSpecs()) {
            const auto table = std::ranges::find(tables, spec.name, &ReferenceTable::name);
            if (table == tables.end())
                continue;
            auto keys = putIn(*m_database, spec, *table);
            if (!keys)
                return m_database->spoil(keys.error());
            inFiles.emplace(spec.name, std::move(*keys));
        }
        if (auto cleared = Clearing(*m_database, inFiles).clear(); !cleared)
            return cleared;
        return setSetting(std::string(editionKey), edition);
    });
}

Result<std::string> Store::referenceEdition() const
{
    auto edition = setting(std::string(editionKey));
    if (!edition)
        return tl::unexpected(edition.error());
    return edition->value_or("");
}

Result<ReferenceTable> Store::reference(const std::string& table) const
{
    const auto* spec = referenceSpec(table);
    if (!spec)
        return fail(
            ErrorCode::NotFound, "There is no reference table " + inQuotes(table) + "; check its name.");
    const auto columns = words(spec->columns);
    ReferenceTable out;
    out.name = table;
    out.columns.assign(columns.begin(), columns.end());
    auto rows = m_database->list("SELECT " + joined(columns, "", ", ") + " FROM " + table, [&](Row& row) {
        std::vector<std::string> cells;
        for (std::size_t i = 0; i < columns.size(); ++i)
            cells.push_back(row.text());
        return cells;
    });
    if (!rows)
        return tl::unexpected(rows.error());
    out.rows = std::move(*rows);
    // Sorted here: the engines differ in how they order texts. Keys that are numbers are steps of few digits.
    const bool numbered = spec->keys == 2 && spec->numbers == columns[1];
    std::ranges::sort(out.rows, [&](const auto& a, const auto& b) {
        if (numbered && a[0] == b[0])
            return std::stod(a[1]) < std::stod(b[1]);
        return std::lexicographical_compare(a.begin(), a.begin() + static_cast<std::ptrdiff_t>(spec->keys),
            b.begin(), b.begin() + static_cast<std::ptrdiff_t>(spec->keys));
    });
    return out;
}

} // namespace gw
