#pragma once

#include <string>

#include "measure/error.h"

class QSqlError;

namespace gw {

enum class Engine { Sqlite, Postgres };
std::string_view word(Engine engine); ///< "sqlite", "postgresql"

/// The one place where what an engine says becomes what a person is told. `shown` names the store.
Error faultOf(Engine engine, const QSqlError& error, const std::string& shown);

/// The same from the bare parts: SQLite's extended result code or PostgreSQL's SQLSTATE, and the engine's
/// words.
Error faultOf(Engine engine, const std::string& code, const std::string& words, const std::string& shown);

/// Whether a foreign key stood in the way, which a clean-up may expect.
bool isReferenceFault(Engine engine, const QSqlError& error);

} // namespace gw
