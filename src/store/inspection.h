#pragma once

#include "store/database.h"

namespace gw {

/// What was found in a store, and whether it goes so deep that the store must not be restored from.
struct Inspection {
    StoreReport report;
    bool broken = false; ///< pages, references or texts that no sound store can have
};

/// What the engine itself finds wrong with its pages, indexes and checks; as sentences.
Result<std::vector<std::string>> engineProblems(Database& database);

/// Looks at everything that should hold in a store of the present schema. Faults that are findings become
/// problems; an error only when nothing could be looked at, such as a server that went away.
Result<Inspection> inspect(Database& database);

} // namespace gw
