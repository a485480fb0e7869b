#include "store/database.h"

namespace gw {

Result<std::optional<std::string>> Store::setting(const std::string& key) const
{
    return m_database->first(
        "SELECT value FROM setting WHERE key = ?", [](Row& row) { return row.text(); }, key);
}

Result<void> Store::setSetting(const std::string& key, const std::string& value)
{
    const auto done = m_database->run("INSERT INTO setting (key, value) VALUES (?, ?) ON CONFLICT (key) DO "
                                      "UPDATE SET value = excluded.value",
        key, value);
    return done ? Result<void> {} : tl::unexpected(done.error());
}

} // namespace gw
