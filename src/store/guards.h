#pragma once

#include "store/database.h"
#include "store/migrations.h"

/// The triggers that keep ledgers from being changed: all that stand in migrations whose topic ends in
/// "guards", so a table is guarded by such a migration alone.
namespace gw {

/// Takes them down, for a restore; in a transaction.
Result<void> dropGuards(Database& database);
/// Puts them up again.
Result<void> raiseGuards(Database& database);
/// Whether each stands as its migration made it and, on PostgreSQL, does what it should. Only those of the
/// migrations handed in are looked for.
Result<bool> guardsStand(Database& database, const std::vector<Migration>& migrations);

} // namespace gw
