#include "store/backup.h"

namespace gw {

Result<void> keepOlder(const StoreLocation& location, int schemaVersion, const OpenOptions&)
{
    return fail(ErrorCode::StoreFailed,
        "The store " + location.shown() + " is of the older schema " + std::to_string(schemaVersion)
            + " and cannot be backed up yet.");
}

} // namespace gw
