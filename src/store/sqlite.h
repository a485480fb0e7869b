#pragma once

#include "measure/error.h"

class QSqlDatabase;
class QString;

namespace gw {

struct DatabaseOptions;
struct StoreLocation;

/// "Glwr": what marks an SQLite file as a store of ours (PRAGMA application_id).
inline constexpr int sqliteApplicationId = 0x476c7772;

/// Opens an SQLite file that is ours, or empty. Anything else is refused before a byte of it is changed.
Result<void> connectSqlite(
    QSqlDatabase& connection, const StoreLocation& location, const DatabaseOptions& options);

/// Whether a file carries our mark, by its first bytes; without opening it as a database.
bool isOurSqliteFile(const QString& path);

} // namespace gw
