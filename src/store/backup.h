#pragma once

#include <functional>

#include "store/database.h"

namespace gw {

/// Writes a whole copy of a store into one SQLite file: beside it first, checked, flushed to the disk, then
/// renamed. Through a connection of its own, so that it may be called while another one holds the write lock,
/// and sees what was committed at one moment. `check` looks at the copy before it gets its name. Errors:
/// FileUnwritable, StoreFull, and those of reading the store.
Result<void> writeBackup(const StoreLocation& from, int schemaVersion, const std::string& file,
    const std::function<Result<void>(Database& copy)>& check);

/// Backs up a store of an older schema before it is changed, into the folder the options name or beside the
/// file.
Result<void> keepOlder(const StoreLocation& location, int schemaVersion, const OpenOptions& options);

} // namespace gw
