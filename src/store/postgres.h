#pragma once

#include <string>

#include "measure/error.h"

class QSqlDatabase;

namespace gw {

struct DatabaseOptions;
struct StoreLocation;

/// Opens a PostgreSQL database. What the address leaves out is left to libpq: PGPASSWORD, ~/.pgpass,
/// services.
Result<void> connectPostgres(
    QSqlDatabase& connection, const StoreLocation& location, const DatabaseOptions& options);

/// Whether the connection still stood when it was last used.
bool postgresAnswers(const QSqlDatabase& connection);

/// The address without user and password, for sentences.
std::string shownPostgres(const std::string& address);

} // namespace gw
