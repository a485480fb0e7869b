#pragma once

#include <string>
#include <vector>

#include "store/database.h"

namespace gw {

/// Every month of readings that is not what was written: as sentences that name place and month. Walks all
/// of them, one month in memory at a time.
Result<std::vector<std::string>> readingsProblems(Database& database);

} // namespace gw
