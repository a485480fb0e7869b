#pragma once

#include "store/database.h"

namespace gw {

/// Every table that holds what a shop has, each after those it refers to; schema_migration is no part of it.
std::vector<std::string> storeTables();

/// Copies every row of one store into another, which has the same schema and is empty. Both in a transaction.
Result<void> copyTables(Database& from, Database& to);

} // namespace gw
