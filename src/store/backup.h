#pragma once

#include "store/store.h"

namespace gw {

/// Backs up a store of an older schema before it is changed, into the folder the options name or beside the
/// file. Through a connection of its own, so that it may be called while another one holds the write lock.
Result<void> keepOlder(const StoreLocation& location, int schemaVersion, const OpenOptions& options);

} // namespace gw
