#pragma once

#include <functional>

#include "store/database.h"
#include "store/migrations.h"

namespace gw {

/// What there is before anything is done to it.
struct SchemaState {
    int version = 0; ///< 0: nothing yet
    bool isNew() const { return version == 0; }
};

/// Looks at the schema without changing it. Errors: StoreForeign (somebody else's tables), StoreNewer,
/// StoreDamaged (a migration that was applied is not the one this program knows).
Result<SchemaState> schemaOf(Database& database, const std::vector<Migration>& known);

/// Brings a store to the last of the migrations, all of them with their rows in schema_migration in one
/// transaction: when one fails the store stays as it was, and the program it was made with still opens it.
/// One program at a time: the others wait and then find nothing to do. `keep` is called before the first
/// change to an older store, under the lock; its failure ends the migration. Answers what there was.
Result<SchemaState> migrate(Database& database, const std::vector<Migration>& migrations, Moment now,
    const std::function<Result<void>(int olderVersion)>& keep);

} // namespace gw
