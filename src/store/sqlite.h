#pragma once

#include "measure/error.h"

class QSqlDatabase;

namespace gw {

struct DatabaseOptions;
struct StoreLocation;

/// "Glwr": what marks an SQLite file as a store of ours (PRAGMA application_id).
inline constexpr int sqliteApplicationId = 0x476c7772;

/// Opens an SQLite file that is ours, or empty. Anything else is refused before a byte of it is changed.
Result<void> connectSqlite(
    QSqlDatabase& connection, const StoreLocation& location, const DatabaseOptions& options);

} // namespace gw
